"""Going back, and taking up again after an interruption: the position moves, the house does not.

Nobody un-throws a breaker by pressing Back. Where the step gone back to needs the circuit as it no longer is,
its procedure starts anew; after an interruption nobody knows what was switched, so every procedure does.
"""

from __future__ import annotations

from dataclasses import replace

from assistant.tree import power
from assistant.walk.event import Back, Resumed
from assistant.walk.house import lacking, resumed
from assistant.walk.state import BadAnswer, Frame, Visit


def back(visit: Visit, event: Back) -> Visit:
    """Position goes back; the house does not. A procedure whose needs no longer hold starts anew."""
    places = [i for i, taken in enumerate(visit.path) if taken.step == event.step]
    if not places:
        raise BadAnswer(f"{event.step} was not taken on this walk, so there is nothing to go back to.")
    mark = visit.marks[places[-1]]
    position = replace(mark.position, retaking=None, hold=True)
    if position.stack:
        position = replace(position, stack=_entered_anew(visit, position.stack))
    taken_back = visit.path[places[-1]].records if event.why == "slip" else ()
    visit = replace(
        visit,
        slips=visit.slips + taken_back,
        position=position,
        path=visit.path[: places[-1]],
        marks=visit.marks[: places[-1]],
        found=mark.found,
        out="",
    )
    return visit.with_status(visit.complaint, mark.status)


def _entered_anew(visit: Visit, stack: tuple[Frame, ...]) -> tuple[Frame, ...]:
    top = stack[-1]
    _, step = visit.step(top.address)
    if not lacking(visit.house, power.needs_of(step, top.circuit)):
        return stack[:-1] + (replace(top, tried=()),)
    front = next((i for i, frame in enumerate(stack) if frame.why == "front"), None)
    if front is not None:
        stack = stack[:front]
    elif top.why == "call" and visit.library.trees[top.tree].purpose == "procedure":
        stack = stack[:-1] + (replace(top, step=visit.library.trees[top.tree].start),)
    return stack[:-1] + (replace(stack[-1], tried=()),)


def taken_up_again(visit: Visit, _event: Resumed) -> Visit:
    """Nobody knows what was switched meanwhile: every circuit unknown, every procedure from its start."""
    visit = replace(visit, paused=None, house=resumed(visit.house, visit.vocabulary))
    position = visit.position
    if position is None or not position.stack:
        return visit
    stack = position.stack
    front = next((i for i, frame in enumerate(stack) if frame.why == "front"), None)
    if front is not None:
        stack = stack[:front]
    trees = visit.library.trees
    stack = tuple(
        replace(frame, step=trees[frame.tree].start, tried=())
        if i == len(stack) - 1 and frame.why == "call" and trees[frame.tree].purpose == "procedure"
        else replace(frame, tried=())
        for i, frame in enumerate(stack)
    )
    return visit.at(replace(position, stack=stack, retaking=None))
