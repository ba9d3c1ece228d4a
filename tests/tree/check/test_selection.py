"""What a path given to `check` means, what is printed, and the exit codes."""

import json
import shutil
from pathlib import Path

import pytest

from assistant.__main__ import main
from assistant.errors import UserError
from assistant.tree.check import RULES
from assistant.tree.check.selection import listing, select

EXAMPLES = Path(__file__).parent.parent / "examples"
SOUND = EXAMPLES / "sound"
FIELDS = {"file", "line", "column", "rule", "message", "path"}


def names(selection):
    return [entry["tree"] for entry in listing(selection)]


@pytest.fixture
def library(tmp_path):
    return shutil.copytree(SOUND, tmp_path / "library")


def run(capsys, *words):
    code = main(["check", *map(str, words)])
    out, err = capsys.readouterr()
    return code, out, err


def test_a_folder_with_a_house_is_a_library(library):
    entries = listing(select(library, SOUND))
    trees = ["dust", "holds", "lights", "make_dead", "no_heat", "restore", "trips"]
    assert [entry["tree"] for entry in entries] == trees
    fields = {"tree", "purpose", "steps", "findings", "problems"}
    assert all(set(entry) == fields for entry in entries)
    trips = next(entry for entry in entries if entry["tree"] == "trips")
    found = ["trips.comes_and_goes"]
    assert trips == {"tree": "trips", "purpose": "complaint", "steps": 6, "findings": found,
                     "problems": []}


def test_a_file_or_folder_below_is_checked_with_the_rest_and_shown_alone(library):
    assert names(select(library / "proof", SOUND)) == ["holds", "lights"]
    assert names(select(library / "proof" / "holds.yaml", SOUND)) == ["holds"]


def test_any_other_file_is_checked_among_the_shipped_trees(tmp_path):
    copied = tmp_path / "holds.yaml"
    copied.write_bytes((EXAMPLES / "bad" / "ways_on.close" / "proof" / "holds.yaml").read_bytes())
    (entry,) = listing(select(copied, SOUND))
    assert (entry["tree"], entry["purpose"], entry["steps"]) == ("holds", "proof", 3)
    assert [(problem["file"], problem["line"], problem["rule"]) for problem in entry["problems"]] == [
        (str(copied), 7, "ways_on")]


def test_a_new_tree_needs_no_folder(tmp_path):
    (tmp_path / "dirt.yaml").write_bytes((SOUND / "cause" / "dust.yaml").read_bytes())
    (entry,) = listing(select(tmp_path, SOUND))
    assert (entry["tree"], entry["purpose"], entry["problems"]) == ("dirt", "cause", [])


def test_a_file_that_does_not_load_is_listed_with_its_problems(library):
    (library / "cause" / "dust.yaml").write_text("format: 1\npurpose: cause\ntitle: [\n")
    entries = {entry["tree"]: entry for entry in listing(select(library, SOUND))}
    dust = entries["dust"]
    assert (dust["purpose"], dust["steps"], dust["findings"]) == ("cause", 0, [])
    assert entries["dust"]["problems"]
    others = [problem for name, entry in entries.items() if name != "dust" for problem in entry["problems"]]
    assert others == [], "a tree that does not load is there all the same"


def test_what_is_wrong_in_the_house_has_an_entry_of_its_own(library):
    house = library / "house.yaml"
    house.write_text(house.read_text().replace("tree: trips.yaml", "tree: trip.yaml"))
    entries = {entry["tree"]: entry for entry in listing(select(library, SOUND))}
    assert entries["house"]["purpose"] == "house"
    assert [problem["rule"] for problem in entries["house"]["problems"]] == ["called"]
    assert names(select(library / "proof", SOUND)) == ["holds", "lights"]


@pytest.mark.parametrize("path", ["nowhere", "empty", "library/notes.txt"])
def test_a_path_with_nothing_to_check_is_a_sentence(tmp_path, library, path):
    (tmp_path / "empty").mkdir()
    (library / "notes.txt").write_text("mine")
    with pytest.raises(UserError, match=Path(path).name):
        select(tmp_path / path, SOUND)


def test_two_files_of_one_name_are_not_mixed_up(tmp_path):
    for folder in ("old", "new"):
        (tmp_path / folder).mkdir()
        (tmp_path / folder / "dirt.yaml").write_bytes((SOUND / "cause" / "dust.yaml").read_bytes())
    with pytest.raises(UserError, match="one at a time"):
        select(tmp_path, SOUND)


def test_codes_and_words(capsys, library):
    code, out, _ = run(capsys, library)
    assert (code, out) == (0, "7 trees, 38 steps, 5 findings: no problem.\n")
    bad = EXAMPLES / "bad" / "circle" / "cause" / "dust.yaml"
    shutil.copy(bad, library / "cause" / "dust.yaml")
    code, out, _ = run(capsys, library)
    first, *path, last = out.splitlines()
    assert code == 1
    assert first.startswith(f"{library / 'cause' / 'dust.yaml'}:9:58: circle: this way leads back to 'look'")
    assert [line.split(":")[0] for line in path] == ["    look", "    wipe", "    again", "    look"]
    assert last == "7 trees, 40 steps, 5 findings: 1 problem."
    code, out, err = run(capsys, library / "missing.yaml")
    assert (code, out) == (2, "")
    assert "missing.yaml" in err
    assert "Traceback" not in err


def test_json_is_one_object_sorted_by_name(capsys, library):
    bad = EXAMPLES / "bad" / "two_facts" / "complaint" / "trips.yaml"
    shutil.copy(bad, library / "complaint" / "trips.yaml")
    code, out, _ = run(capsys, library / "proof", library / "complaint", "--json")
    said = json.loads(out)
    assert code == 1
    assert list(said) == ["trees"]
    assert [entry["tree"] for entry in said["trees"]] == ["holds", "lights", "no_heat", "trips"]
    (problem,) = said["trees"][3]["problems"]
    assert set(problem) == FIELDS
    assert isinstance(problem["line"], int)
    assert isinstance(problem["column"], int)


def test_a_tree_named_twice_is_listed_once(capsys, library):
    _, out, _ = run(capsys, library / "proof", library / "proof" / "holds.yaml", "--json")
    assert [entry["tree"] for entry in json.loads(out)["trees"]] == ["holds", "lights"]


def test_the_rules_can_be_read(capsys):
    code, out, _ = run(capsys, "--rules")
    assert code == 0
    assert out.startswith("called\n")
    assert "\n\ndead_proof\nOne reading of 0 V is not dead." in out


def test_a_rule_is_explained_with_its_reason_how_to_mend_and_an_example(capsys):
    code, out, _ = run(capsys, "--explain", "lockout")
    assert code == 0
    assert out.startswith("lockout\n\nA furnace that tried to light")
    assert "How to mend it: Turn the thermostat or the power off" in out
    assert "again:  # <- here" in out


@pytest.mark.parametrize(("arguments", "code", "begins"), [
    (["--explain"], 0, "Rules;"), (["--explain", "lockot"], 2, "There is no rule 'lockot'; did you mean")])
def test_without_a_rule_or_with_an_unknown_one_the_rules_are_listed(capsys, arguments, code, begins):
    given, out, _ = run(capsys, *arguments)
    assert (given, out.startswith(begins)) == (code, True)
    assert all(f"  {name} " in out for name in RULES)


def test_a_path_is_shown_as_its_questions(capsys, library):
    shutil.copy(EXAMPLES / "bad" / "undecided" / "complaint" / "trips.yaml", library / "complaint")
    _, out, _ = run(capsys, library)
    lines = out.splitlines()
    at = next(place for place, line in enumerate(lines) if ": undecided: " in line)
    assert lines[at + 1:at + 4] == [
        "    ground_ohms: Ohms from hot to ground -> ground_ohms: clear",
        "    neutral_ohms: Ohms from hot to neutral -> neutral_ohms: a load",
        "    more: Ohms of the coil -> can't be taken",
    ]
