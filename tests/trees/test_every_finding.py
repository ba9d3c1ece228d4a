"""Every end of the no-heat tree is reached by a recorded walk with readings that a furnace would give."""

from __future__ import annotations

import pytest
from sound_furnace import ENDS, WALKS, Furnace, driven, opened, replayed, shipped

from assistant.tree.model import Finding, HandOver, Stop
from assistant.walk.ask import Ask
from assistant.walk.visit import asked

TREE = "no_heat"
ENDINGS = {name: step for name, step in shipped().trees[TREE].steps.items()
           if isinstance(step, (Finding, Stop, HandOver))}
FAULTS = [name for name, step in ENDINGS.items() if isinstance(step, Finding) and step.fault]
FILES = sorted(path.stem for path in WALKS.glob("*.yaml"))


def test_there_is_a_walk_for_every_end():
    assert sorted(ENDINGS) == FILES


@pytest.mark.parametrize("name", FILES)
def test_a_walk_ends_where_its_file_says(name: str):
    visit = replayed(WALKS / f"{name}.yaml")
    end = asked(visit)
    assert end.kind == {Finding: "finding", Stop: "stop", HandOver: "handed_over"}[type(ENDINGS[name])]
    assert end.step == f"{TREE}.{name}"


@pytest.mark.parametrize("name", [name for name, step in ENDINGS.items() if not isinstance(step, HandOver)])
def test_a_finding_lists_facts_that_were_decided(name: str):
    step = ENDINGS[name]
    facts = replayed(WALKS / f"{name}.yaml").found
    if isinstance(step, Stop) and step.finding is None:
        assert not facts
        return
    known = [fact.name for fact in facts[-1].facts]
    assert set(known) <= set(step.shows)
    assert known or not step.shows
    if isinstance(step, Finding) and step.condemns and shipped().vocabulary.parts[step.condemns].costs:
        assert len(known) >= 2


@pytest.mark.parametrize("name", FAULTS)
def test_a_repaired_furnace_passes_the_proof(name: str):
    """From the finding on, the furnace answers as a sound one: causes, repair, and the proof to its end."""
    visit = replayed(WALKS / f"{name}.yaml")
    visit = driven(visit, Furnace(), until=("choose", "leave", "stop"))
    assert visit.found[-1].proof == "proved", asked(visit)
    assert visit.found[-1].repaired
    assert visit.state_of(TREE).status == "proved"
    assert [entry.act for entry in visit.house.undone] == []


@pytest.mark.parametrize("name", FAULTS)
def test_a_furnace_that_was_not_repaired_does_not_pass(name: str):
    """The same walk again, proved on a furnace that still does not run its cycle."""
    visit = replayed(WALKS / f"{name}.yaml")
    still_broken = Furnace({"first.blower.runs": "no", "two_more": "one failed"})
    visit = driven(visit, still_broken, until=("choose", "leave", "stop"))
    assert visit.found[-1].proof == "not_proved"


def test_a_sound_furnace_ends_in_works_now_and_leaves_nothing_open():
    visit = driven(opened(), Furnace(), until=ENDS)
    end: Ask = asked(visit)
    assert end.step == f"{TREE}.works_now"
    assert [entry.act for entry in visit.house.undone] == []
