"""Files of drills, what a foreman makes, and what is kept of a drill."""

from __future__ import annotations

import csv
import io
import json

import pytest
from houses import library
from practice_matter import drills, faults

from assistant.drill.fits import problems_of
from assistant.drill.hand import Hand
from assistant.drill.kit import PERFECT
from assistant.drill.practice import make, record
from assistant.drill.practice.answers import answerable, causes
from assistant.drill.practice.debrief import Debrief, debrief
from assistant.drill.practice.drill import DIFFICULTIES, ENDINGS, Drill
from assistant.drill.practice.drill_file import load_drills
from assistant.drill.practice.drills import all_drills, all_faults, from_fault, good, save, written
from assistant.drill.practice.make import Own
from assistant.drill.practice.sitting import Sitting
from assistant.drill.trial import after_finding, opened, until_end
from assistant.errors import UserError
from assistant.quantity.units import to_si
from assistant.rig.fault_file import load_faults
from assistant.rig.house import Rig


@pytest.fixture(autouse=True)
def home(tmp_path, monkeypatch):
    """A user folder of the test's own."""
    monkeypatch.setenv("FAULT_TRAIL_HOME", str(tmp_path / "home"))
    return tmp_path / "home"


def test_the_shipped_drills_read_without_a_problem_and_cover_every_way_to_end():
    known, wrong = all_faults()
    assert not wrong
    found, problems = all_drills(library().vocabulary, known)
    assert not problems
    assert {drill.ending for drill in found.values()} == set(ENDINGS)
    assert {drill.difficulty for drill in found.values()} == set(DIFFICULTIES)
    assert {drill.complaint for drill in found.values()} == set(library().vocabulary.complaints)
    for drill in found.values():
        if drill.fault and drill.complaint == "no_heat":
            assert answerable(drill, library())
            assert drill.fault.cause is None or drill.fault.cause in causes(library())


def test_the_faults_of_drills_fit_the_trees():
    from assistant.resources import resources_folder

    files = {
        path.name: path.read_bytes() for path in (resources_folder() / "drills" / "faults").glob("*.yaml")
    }
    assert files
    assert not problems_of(files, library().texts, ["no_heat"])


@pytest.mark.parametrize(
    ("change", "rule"),
    [
        (("fault: cracked_element", "fault: craked_element"), "name"),
        (("complaint: no_heat", "complaint: no_heet"), "name"),
        (("difficulty: easy", "difficulty: very easy"), "name"),
        (("    fault: cracked_element\n", "    ending: fault\n"), "missing"),
        (
            ("    fault: cracked_element\n", "    fault: cracked_element\n    ending: nothing wrong\n"),
            "ending",
        ),
        (
            ("    fault: cracked_element\n", "    fault: cracked_element\n    ending: everybody out\n"),
            "missing",
        ),
        (("    fault: cracked_element\n", "    fault: cracked_element\n    plate: {input: 3 V}\n"), "number"),
        (("    fault: cracked_element\n", "    fault: cracked_element\n    plate: {panel_va: 40}\n"), "name"),
        (("    fault: cracked_element\n", "    fault: cracked_element\n    another: many\n"), "number"),
        (("    fault: cracked_element\n", "    fault: cracked_element\n    house: {kind: old}\n"), "name"),
        (("format: 1", "format: 2"), "format"),
        (("words: It tries and gives up.", "wards: It tries and gives up."), "field"),
    ],
)
def test_a_mistake_in_a_file_of_drills_is_told_at_its_place(change, rule):
    text = (
        "format: 1\ndrills:\n  cold:\n    title: T\n    complaint: no_heat\n    difficulty: easy\n"
        "    words: It tries and gives up.\n    fault: cracked_element\n"
    )
    assert not load_drills(text.encode(), "d.yaml", faults(), library().vocabulary)[1]
    _, problems = load_drills(text.replace(*change).encode(), "d.yaml", faults(), library().vocabulary)
    assert all(problem.line >= 1 for problem in problems)
    assert rule in {problem.rule for problem in problems}


def test_a_drill_is_written_as_it_is_read():
    plate = {"input": to_si(100_000, "Btuh"), "rise_min": to_si(40, "Fdiff")}
    drill = Drill(
        "x", 'A "quoted" title', "no_heat", "It's cold: no #heat", "hard", fault=faults()["lead_off"],
        plate=plate, house={"float": "yes"}, senses="a smell", another=4, seed=7,
    )  # fmt: skip
    text = written(drill, library().vocabulary)
    found, problems = load_drills(text.encode(), "x.yaml", faults(), library().vocabulary)
    assert not problems
    again = found["x"]
    assert (again.title, again.words, again.senses, again.seed) == (
        drill.title, drill.words, drill.senses, drill.seed,
    )  # fmt: skip
    assert again.plate == pytest.approx(plate)
    assert again.unit().input == pytest.approx(to_si(100_000, "Btuh"))


def test_a_foremans_own_fault_becomes_a_drill_and_a_file_that_prove_takes():
    own = Own("igniter", "open", "nominal", "no_heat", "igniter_open", "igniter_harm")
    drill, text = make.of_own(own, "It is cold.", "hard")
    assert not problems_of({"own.yaml": text.encode()}, library().texts, ["no_heat"])
    kept = save(drill, library().vocabulary, text)
    known, wrong = all_faults()
    found, problems = all_drills(library().vocabulary, known)
    assert not wrong
    assert not problems
    assert found[kept.name].fault.cause == "igniter_harm"
    assert found[kept.name].origin == "made here"
    assert save(drill, library().vocabulary, text).name != kept.name


def test_every_component_that_is_offered_makes_a_fault():
    for part in make.components():
        for change in make.changes(part):
            for degree in make.degrees(part, change):
                fault, text = make.own_fault(Own(part, change, degree, "no_heat", "igniter_open"))
                assert fault.settings(degree)
                assert load_faults(text.encode(), "x")[0]


@pytest.fixture(scope="module")
def finished():
    """A visit on which a part was found broken, and renewed."""
    rig = Rig(fault=faults()["cracked_element"])
    hand = Hand(rig, PERFECT)
    visit, _ = until_end(opened(library(), "no_heat"), hand, library())
    return after_finding(visit, hand, wholly=False)


def test_a_finished_visit_becomes_a_drill_without_its_people(finished):
    person = {"name": "Ann O'Hara", "address": "12 Mill Lane", "phone": "555 0199"}
    from dataclasses import replace

    said = replace(finished.complaints[0], words="Ann O'Hara here, Mill Lane, 555-0199: no heat since noon.")
    visit = replace(finished, complaints=(said,))
    drill = make.of_visit(visit, faults(), person)
    text = written(drill, library().vocabulary)
    assert drill.fault.finding == "igniter_open"
    assert drill.words == "here, no heat since noon."
    for word in ("Ann", "Hara", "Mill", "Lane", "0199", "2026"):
        assert word not in text
    assert drill.plate


def test_a_visit_without_a_finding_makes_no_drill():
    with pytest.raises(UserError, match="nothing to hide"):
        make.of_visit(opened(library(), "no_heat"), faults(), {})


def test_a_finding_that_no_fault_reaches_is_said(finished):
    with pytest.raises(UserError, match="knows no fault"):
        make.of_visit(finished, {}, {})


def ended(name: str = "dark", finding: str = "switch_off"):
    sitting = Sitting(drills()[name], library(), clock=lambda: 0.0)
    sitting.look("service_switch")
    sitting.conclude(finding, "switched_off", "Somebody had switched it off.")
    told = next(one for one in debrief(sitting, library(), faults()) if isinstance(one, Debrief))
    return sitting, told


def test_what_came_of_a_drill_is_kept_by_apprentice_and_looked_back_on():
    sitting, told = ended()
    for who, began in (
        ("Ed", "2026-11-02T09:00:00-05:00"),
        ("Ed", "2026-11-01T09:00:00-05:00"),
        ("Zoe", "x"),
    ):
        folder = record.new_folder(who, sitting.drill) / began[8:10]
        record.keep(folder.parent, who, began, sitting, told)
    assert record.apprentices() == ["Ed", "Zoe"]
    done = record.history("ed")  # the same person, however it is written
    assert [one.began[:10] for one in done] == ["2026-11-01", "2026-11-02"]
    assert done[0].right_first
    assert done[0].unsafe == 0
    assert record.history("Nobody") == []


def test_a_page_that_can_not_be_read_hides_no_other():
    sitting, told = ended()
    record.keep(record.new_folder("Ed", sitting.drill), "Ed", "2026", sitting, told)
    for text in ("{", "[]", '{"done": {"apprentice": 1}}'):
        folder = record.new_folder("Ed", sitting.drill)
        folder.mkdir(parents=True)
        (folder / record.PAGE).write_text(text, encoding="utf-8")
    assert len(record.history("Ed")) == 1


def test_the_table_says_practice_in_every_line_and_runs_nothing():
    sitting, told = ended()
    done = record.keep(record.new_folder("=cmd", sitting.drill), "=cmd", "2026", sitting, told)
    rows = list(csv.reader(io.StringIO(record.to_csv([done]))))
    assert rows[0][:3] == ["practice", "apprentice", "began"]
    assert rows[1][0] == "practice"
    assert rows[1][1] == "'=cmd"
    assert len(rows[1]) == len(rows[0])


def test_names_of_people_and_files_are_kept_apart():
    with pytest.raises(UserError):
        record.folder_of("   ")
    for name in ("../..", "Zoë", "李", "con"):
        folder = record.folder_of(name)
        assert folder.parent == record.practice_folder()
    assert len(record.apprentices()) == 4
    assert good("As seen: 24 V!") == "as_seen_24_v"
    assert good("24 V") == "drill_24_v"


def test_the_foreman_sets_whether_a_prediction_is_asked_for():
    assert record.asks_to_predict()
    record.set_predict(False)
    assert not record.asks_to_predict()
    record.set_predict(True)
    assert record.asks_to_predict()


def test_the_page_that_is_kept_is_marked():
    sitting, told = ended()
    folder = record.new_folder("Ed", sitting.drill)
    record.keep(folder, "Ed", "2026", sitting, told)
    page = json.loads((folder / record.PAGE).read_text(encoding="utf-8"))
    assert page["practice"] is True
    assert page["what"].startswith("PRACTICE")


def test_a_fault_of_a_file_is_a_drill_with_the_complaints_words():
    drill = from_fault(faults()["lead_off"], library().vocabulary)
    assert drill.words == library().vocabulary.complaints["no_heat"].words
