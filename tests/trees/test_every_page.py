"""What every page of the shipped trees owes the person in front of it."""

from __future__ import annotations

import re
from xml.etree import ElementTree as ET

import pytest
from sound_furnace import TREES, shipped

from assistant.tree.check import check
from assistant.tree.model import Do, Finding, Look, Measure, Return, Stop, Watch

STEPS = [(f"{tree.name}.{name}", step)
         for tree in shipped().trees.values() for name, step in tree.steps.items()]
COMPLAINTS = {tree.name for tree in shipped().trees.values() if tree.purpose == "complaint"}
DRAWINGS = TREES.parent / "resources" / "drawing"
LONGEST_QUESTION = 100
"""Characters. At 24 pt on a small screen that is three lines."""


def of(*kinds):
    return [pytest.param(step, id=name) for name, step in STEPS if isinstance(step, kinds)]


def test_the_checker_has_nothing_to_say():
    assert [str(problem) for problem in check(shipped())] == []


@pytest.mark.parametrize("step", of(Measure))
def test_a_reading_says_why_or_how_with_what_and_how_long(step: Measure):
    assert step.common.why or step.common.how or len(step.readings) > 1
    assert step.common.minutes
    assert all(reading.meter and reading.at and reading.plausible for reading in step.readings)


@pytest.mark.parametrize("step", of(Measure, Look, Watch, Do))
def test_a_question_is_short(step):
    assert len(step.ask) <= LONGEST_QUESTION


@pytest.mark.parametrize("step", [one for one in of(Measure) if one.id.partition(".")[0] in COMPLAINTS])
def test_a_complaints_tree_says_why_and_how_for_every_reading(step: Measure):
    assert step.common.why
    assert step.common.how or len(step.readings) > 1


@pytest.mark.parametrize("step", of(Finding))
def test_a_fault_has_causes_a_repair_and_a_proof(step: Finding):
    if step.fault:
        assert step.causes and step.repair and step.proof
    else:
        assert step.reason


@pytest.mark.parametrize("step", [one for one in of(Return) if one.values[0].outcome == "found"])
def test_a_cause_found_is_told_twice_and_removed(step: Return):
    assert step.says and step.customer and step.repair


@pytest.mark.parametrize("step", [one for one in of(Stop) if one.values[0].finding])
def test_a_stop_that_is_a_finding_is_told_to_the_customer(step: Stop):
    assert step.customer
    assert any(words in step.customer for words in ("off", "closed", "power company"))


def test_every_point_is_on_its_drawing():
    for point in shipped().vocabulary.points.values():
        svg = ET.parse(DRAWINGS / f"{point.drawing}.svg")
        ids = {element.get("id") for element in svg.iter()}
        assert point.name in ids, f"{point.name} is not on {point.drawing}.svg"


def test_every_name_of_the_house_is_used():
    """A name nobody uses is one that somebody believes in."""
    text = "\n".join(path.read_text(encoding="utf-8") for path in TREES.glob("*/*.yaml"))
    vocabulary = shipped().vocabulary
    acts = {act.undo for act in vocabulary.acts.values()}
    unused = [name for name in (*vocabulary.acts, *vocabulary.cautions, *vocabulary.sources)
              if name not in acts and not re.search(rf"\b{re.escape(name)}\b", text)]
    assert unused == []
