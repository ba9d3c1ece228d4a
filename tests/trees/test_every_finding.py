"""Every end of every complaint's tree is reached by a recorded walk with readings that a furnace would give.

Walks lie in walks/<tree>/<end>.yaml, one a finding, stop or hand-over.
"""

from __future__ import annotations

import pytest
from sound_furnace import ENDS, WALKS, Furnace, complaint_of, driven, opened, replayed, shipped, walked

from assistant.tree.model import Finding, HandOver, Stop
from assistant.walk.ask import Ask
from assistant.walk.visit import asked

ENDINGS = {(tree, name): step for tree in walked() for name, step in shipped().trees[tree].steps.items()
           if isinstance(step, (Finding, Stop, HandOver))}
FAULTS = [one for one, step in ENDINGS.items() if isinstance(step, Finding) and step.fault]
FILES = [(path.parent.name, path.stem) for path in sorted(WALKS.glob("*/*.yaml"))]
STILL_BROKEN = {
    "no_heat": {"first.blower.runs": "no", "two_more": "one failed"},
    "blower_silent": {"blows": "stands still and silent"},
    "tripped_breaker": {"first.blower.runs": "no", "two_more": "one failed"},
    "zone_spillover": {"fan_quiet": "260"},
}
"""What a furnace of each complaint answers to a proof while it still has its fault."""
SOUND = {"tripped_breaker": "never_tripped", "no_heat": "works_now", "blower_silent": "works_now",
         "zone_spillover": "quiet_now"}
"""Where a walk on a sound furnace ends."""


def replay(one: tuple[str, str]):
    tree, name = one
    return replayed(WALKS / tree / f"{name}.yaml")


def named(one: tuple[str, str]) -> str:
    return ".".join(one)


def test_there_is_a_walk_for_every_end():
    assert sorted(ENDINGS) == FILES


def test_every_tree_of_a_complaint_has_its_walks():
    trees = {one.tree for one in shipped().vocabulary.complaints.values() if one.tree}
    assert trees == set(walked()) == set(STILL_BROKEN) == set(SOUND)


@pytest.mark.parametrize("one", FILES, ids=named)
def test_a_walk_ends_where_its_file_says(one: tuple[str, str]):
    end = asked(replay(one))
    assert end.kind == {Finding: "finding", Stop: "stop", HandOver: "handed_over"}[type(ENDINGS[one])]
    assert end.step == named(one)


@pytest.mark.parametrize("one", [one for one, step in ENDINGS.items() if not isinstance(step, HandOver)],
                         ids=named)
def test_a_finding_lists_facts_that_were_decided(one: tuple[str, str]):
    step = ENDINGS[one]
    facts = replay(one).found
    if isinstance(step, Stop) and step.finding is None:
        assert not facts
        return
    known = [fact.name for fact in facts[-1].facts]
    assert set(known) <= set(step.shows)
    assert known or not step.shows
    if isinstance(step, Finding) and step.condemns and shipped().vocabulary.parts[step.condemns].costs:
        assert len(known) >= 2


@pytest.mark.parametrize("one", FAULTS, ids=named)
def test_a_repaired_furnace_passes_the_proof(one: tuple[str, str]):
    """From the finding on, the furnace answers as a sound one: causes, repair, and the proof to its end."""
    visit = driven(replay(one), Furnace(), until=("choose", "leave", "stop"))
    assert visit.found[-1].proof == "proved", asked(visit)
    assert visit.found[-1].repaired
    assert visit.state_of(complaint_of(one[0])).status == "proved"
    assert [entry.act for entry in visit.house.undone] == []


@pytest.mark.parametrize("one", FAULTS, ids=named)
def test_a_furnace_that_was_not_repaired_does_not_pass(one: tuple[str, str]):
    """The same walk again, proved on a furnace that still has what was complained about."""
    visit = driven(replay(one), Furnace(STILL_BROKEN[one[0]]), until=("choose", "leave", "stop"))
    assert visit.found[-1].proof == "not_proved"


@pytest.mark.parametrize("tree", walked())
def test_a_sound_furnace_ends_with_no_fault_and_leaves_nothing_open(tree: str):
    visit = driven(opened(complaint_of(tree)), Furnace(), until=ENDS)
    end: Ask = asked(visit)
    assert end.step == f"{tree}.{SOUND[tree]}"
    assert [entry.act for entry in visit.house.undone] == []
