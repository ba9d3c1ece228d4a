"""A house that works on arrival: the walk ends well, and what is said of it is judged right."""

from __future__ import annotations

from dataclasses import replace

from houses import library
from practice_matter import drills, faults
from test_practice_along import step

from assistant.drill.practice.along import Along, Loose
from assistant.drill.practice.answers import cause_is_right, findings, right_findings
from assistant.drill.practice.debrief import Debrief, debrief
from assistant.drill.practice.drills import all_drills, all_faults
from assistant.drill.trial import opened
from assistant.rig.fault import ComesAndGoes
from assistant.walk.event import GoOn, TakeUp

AT = "2026-01-14T09:00:00-05:00"


def shipped():
    """The shipped drill of a house that works on arrival."""
    return all_drills(library().vocabulary, all_faults()[0])[0]["worked_when_you_came"]


def to_the_stop():
    """That drill with a fault that is hardly ever there, until the tree says: only now and then."""
    fault = replace(all_faults()[0]["board_inducer_now_and_then"], comes_and_goes=ComesAndGoes(120.0, 1800.0))
    drill = replace(shipped(), fault=fault)
    along = Along(drill, library(), Loose(opened(library(), "no_heat", stated=True)), clock=lambda: 0.0)
    for _ in range(60):
        if along.ask().kind == "stop":
            return along
        step(along)
    raise AssertionError("the walk has no end")


def told(along) -> Debrief:
    return next(one for one in debrief(along, library(), faults()) if isinstance(one, Debrief))


def test_the_walk_ends_where_it_fails_only_now_and_then_and_that_is_right():
    along = to_the_stop()
    assert along.found() == ("comes_and_goes", "")
    along.live.send(GoOn(AT, along.ask().step))
    assert along.found() == ("comes_and_goes", "")
    along.conclude("comes_and_goes", "", "It ran while I was here. Please write down when it stops.")
    made = told(along)
    assert made.figures.right
    assert made.figures.right_first
    assert made.figures.cause is None
    assert not made.figures.unsafe
    said = "\n".join(line for one in made.sections for line in one.lines)
    assert "You found it: It fails only now and then" in said
    assert "missed" not in said
    assert "What comes and goes: The inducer's pin on the board makes contact" in said


def test_a_fault_that_comes_back_while_somebody_is_there_is_found():
    """It may have been away for as long as one walk looks: the page that says so asks to walk it again."""
    along = Along(shipped(), library(), Loose(opened(library(), "no_heat", stated=True)), clock=lambda: 0.0)
    for _ in range(200):
        if along.ask().kind == "finding":
            break
        if along.ask().kind == "stop":
            along.live.send(GoOn(AT, along.ask().step))
            along.live.send(TakeUp(AT, "no_heat"))
        step(along)
    assert along.found()[0] == "inducer_wire"
    assert along.found()[0] in right_findings(along.drill, library(), along.rig.rig.present)


def test_it_can_be_walked_again_from_the_start_and_each_end_is_right():
    """The page that it ends on says "walk this complaint again", and the drill lets it be done."""
    along = to_the_stop()
    assert not along.can_walk_again()
    along.live.send(GoOn(AT, along.ask().step))
    assert along.can_walk_again()
    along.live.send(TakeUp(AT, "no_heat"))
    assert along.ask().step == "no_heat.kind"
    for _ in range(60):
        if along.ask().kind in ("finding", "stop"):
            break
        step(along)
    assert along.found()[0] in right_findings(along.drill, library(), along.rig.rig.present)


def test_nothing_found_today_is_right_without_a_cause_and_condemning_the_part_needs_one():
    drill = drills()["comes_back"]
    right = right_findings(drill, library(), present=False)
    assert right[0] == "works_now"
    assert {"inducer_wire", "comes_and_goes"} <= set(right)
    assert cause_is_right(drill, library(), "works_now", "") is None
    assert cause_is_right(drill, library(), "comes_and_goes", "") is None
    assert cause_is_right(drill, library(), "inducer_wire", "") is False
    assert "comes_and_goes" not in right_findings(drills()["cold"], library())
    assert "comes_and_goes" in findings(library(), "no_heat")
