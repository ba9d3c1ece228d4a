"""What a person who writes faults from outside needs: all mistakes in one round, the names that can be given,
one walk to read, and every word of the output explained.
"""

from __future__ import annotations

import re
from dataclasses import replace

import pytest
from houses import FEW, library, texts

import assistant.__main__ as front
from assistant.command.prove import WORDS
from assistant.drill.ends_list import ends_list
from assistant.drill.fits import ends_of, problems_of
from assistant.drill.one_walk import case_of, walk_lines
from assistant.drill.proof import Proof, summary
from assistant.drill.table import table
from assistant.drill.trial import tried
from assistant.errors import UserError
from assistant.rig.fault import Deed
from assistant.rig.fault_file import faults_as_written, load_faults
from assistant.rig.fault_words import HOUSES
from assistant.rig.house import Rig
from assistant.rig.unit import FEATURES, REFERENCE

FAULTS, _ = load_faults(FEW, "few.yaml")
MANY_WRONG = b"""\
format: 1
faults:
  one:
    complaint: no_heat
    finding: igniter_opn
    cause: igniter_harms
    change: [{part: ignitor, change: open}]
  two:
    title: t
    complaint: no_hot
    change: [{part: igniter, change: open}]
"""


def test_every_mistake_of_a_file_is_told_in_one_round_even_of_a_fault_that_has_others():
    told = [(p.line, p.rule, p.message) for p in problems_of({"a.yaml": MANY_WRONG}, texts(), ["no_heat"])]
    assert [(line, rule) for line, rule, _ in told] == [
        (3, "missing"), (5, "name"), (6, "name"), (7, "name"), (8, "missing"), (10, "name"),
    ]  # fmt: skip
    words = " ".join(message for *_, message in told)
    for near in ("igniter_open", "igniter_harm", "igniter", "no_heat"):
        assert f"did you mean '{near}'?" in words
    assert "prove no_heat --findings" in words


def test_a_fault_with_a_mistake_is_still_never_walked():
    written, broken, problems = faults_as_written(MANY_WRONG, "a.yaml")
    assert set(written) == broken == {"one", "two"}
    assert problems
    assert load_faults(MANY_WRONG, "a.yaml")[0] == {}


def test_the_list_of_findings_has_every_end_and_every_cause_that_one_asks_for(capsys):
    assert front.main(["prove", "no_heat", "--findings"]) == 0
    said = capsys.readouterr().out
    listed = set(re.findall(r"^    (\w+): ", said, re.MULTILINE))
    tree = library().trees["no_heat"]
    assert set(ends_of(tree)) <= listed
    causes = listed - set(ends_of(tree))
    assert causes
    assert all(library().trees[name].purpose == "cause" for name in causes)
    both = re.findall(r"^    (\w+): ", ends_list(library(), ["no_heat", "tripped_breaker"]), re.MULTILINE)
    assert set(ends_of(library().trees["tripped_breaker"])) <= set(both)


def test_a_walk_tells_each_question_its_answer_and_the_minutes():
    case = case_of("cracked_element", {"no_heat": "no_heat"}, FAULTS, None)
    fault = FAULTS["cracked_element"]
    verdict, lines = walk_lines(case, library(), "no_heat", fault, 0)
    outcome = tried(case, library(), "no_heat", fault, 0)
    assert verdict == "right"
    assert f"minutes up to there: {outcome.minutes:.0f}, readings: {outcome.readings}" in lines
    assert any(line.startswith("ends at igniter_open:") for line in lines)
    assert f"part condemned: {outcome.condemns}" in lines
    counted = [float(found[1]) for line in lines if (found := re.match(r" *([\d.]+)  \w+\.\w+: \S", line))]
    assert counted == sorted(counted)
    assert counted[-1] > outcome.minutes > 0


def test_the_command_prints_a_walk_of_a_fault_of_ones_own(tmp_path, capsys):
    file = tmp_path / "mine.yaml"
    file.write_bytes(FEW)
    assert front.main(["prove", "no_heat", "--faults", str(file), "--walk", "cracked_element"]) == 0
    assert "verdict: right" in capsys.readouterr().out
    assert front.main(["prove", "no_heat", "--faults", str(file), "--walk", "cracked_elemnt"]) == 2
    assert "did you mean 'cracked_element'?" in capsys.readouterr().err


@pytest.mark.parametrize(
    ("words", "trees", "said"),
    [
        ("cracked_element:mild", {"no_heat": "no_heat"}, "no degree 'mild'; there is nominal"),
        ("healthy", {"no_heat": "no_heat", "blower_silent": "blower_silent"}, "Say in which tree"),
        ("helthy", {"no_heat": "no_heat"}, "did you mean 'healthy'?"),
    ],
)
def test_a_walk_that_is_none_gets_a_sentence(words: str, trees: dict[str, str], said: str):
    with pytest.raises(UserError, match=re.escape(said)):
        case_of(words, trees, FAULTS, None)


def test_a_walk_may_be_a_noisy_sample_or_of_another_complaints_tree():
    case = case_of("cracked_element", {"no_heat": "no_heat"}, FAULTS, 3)
    assert (case.noisy, case.number) == (True, 3)
    elsewhere = case_of("capacitor_open", {"no_heat": "no_heat"}, FAULTS, None)
    assert (elsewhere.tree, elsewhere.wholly) == ("no_heat", False)


def test_every_word_of_the_output_is_explained_and_every_feature_of_a_house():
    for word in (
        "right", "one of a group", "ambiguous", "isolated", "undecided", "wrong", "condemned wrongly",
        "cause named", "proved", "read", "min", "detected", "mean ambiguity", "best order", "over it",
        "floor", "too close to call",
    ):  # fmt: skip
        assert word in WORDS, word
    assert set(HOUSES) == set(FEATURES)
    for name, (title, words) in HOUSES.items():
        assert title
        assert set(words) in (set(), set(FEATURES[name]))


TWO_TROUBLES = b"""\
format: 1
faults:
  foil:
    title: Foil in the fuse's clip, and the igniter is broken
    complaint: no_heat
    finding: igniter_open
    change: [{part: control_fuse, change: bridged}, {part: igniter, change: open}]
"""


def test_what_a_proved_repair_left_wrong_is_told():
    fault = load_faults(TWO_TROUBLES, "two.yaml")[0]["foil"]
    case = case_of("foil", {"no_heat": "no_heat"}, {"foil": fault}, None)
    outcome = tried(case, library(), "no_heat", fault, 0)
    assert outcome.proved_too_soon
    assert outcome.left == ("24 V fuse on the board: somebody put metal in its place",)
    _, lines = walk_lines(case, library(), "no_heat", fault, 0)
    assert f"still wrong in the house: {outcome.left[0]}" in lines
    proof = Proof("no_heat", "no_heat", library(), {"foil": fault}, [outcome], {}, {})
    assert summary(proof)["proved_too_soon"] == 1
    assert f"  foil: {outcome.left[0]}" in table(proof).splitlines()


def test_the_kind_of_a_device_and_who_was_here_last_are_nothing_to_cure():
    changes = [("last_visit", "our shop"), ("ground_fault", "receptacle"), ("arc_fault", "fitted")]
    for part, change in changes:
        fault = replace(FAULTS["cracked_element"], deeds=(Deed(part, change),))
        assert Rig(REFERENCE, fault).cured, part
    fault = replace(FAULTS["cracked_element"], deeds=(Deed("ground_fault", "does not hold"),))
    rig = Rig(REFERENCE, fault)
    assert (rig.cured, rig.left) == (False, (fault.deeds[0].words,))
