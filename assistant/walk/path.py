"""Moving along: what every answer does to the path, and the few ways a position can change."""

from __future__ import annotations

from dataclasses import replace

from assistant.tree.model import Way
from assistant.walk.ask import Record, Taken
from assistant.walk.cleared import who_clears
from assistant.walk.state import Frame, Mark, Position, Visit

CUT_SHORT = "shorter than asked"
"""How the answer of a wait that was not waited out ends."""
FALLBACK_STOP = "unsafe_reading"
"""The stop page shown where a tree names none: leave it off, and who to call."""


def write_down(
    visit: Visit,
    verb: str,
    answer: str,
    way: Way | None,
    at: str,
    records: tuple[Record, ...] = (),
    passed: bool = False,
    undecided: bool = False,
    address: str | None = None,
) -> Visit:
    """The visit with one more step taken; the records count from now on under their names in this tree."""
    position = visit.position
    assert position is not None
    top = position.top
    known = len(visit.readings)
    names = {**top.names, **{record.name: known + i for i, record in enumerate(records)}}
    taken = Taken(
        address or top.address,
        verb,
        answer,
        way.to if way else None,
        at,
        records,
        any(frame.why == "front" for frame in position.stack),
        passed,
        undecided,
        len(visit.history) + 1,
    )
    state = visit.state_of(visit.complaint or "")
    mark = Mark(position, visit.found, state.status if state else "")
    return replace(
        visit,
        readings=visit.readings + records,
        path=visit.path + (taken,),
        marks=visit.marks + (mark,),
        history=visit.history + (taken,),
        position=replace(position, stack=position.stack[:-1] + (replace(top, names=names),)),
    )


def go(visit: Visit, to: str) -> Visit:
    """The visit at another step of the same tree."""
    position = visit.position
    assert position is not None
    top = replace(position.top, step=to, tried=())
    return visit.at(replace(position, stack=position.stack[:-1] + (top,), retaking=None, hold=False))


def push(visit: Visit, frame: Frame) -> Visit:
    """The visit inside another tree."""
    position = visit.position
    assert position is not None
    return visit.at(replace(position, stack=position.stack + (frame,), retaking=None, hold=False))


def pop(visit: Visit) -> Visit:
    """The visit back in the tree that the present one was entered from."""
    position = visit.position
    assert position is not None
    return visit.at(replace(position, stack=position.stack[:-1], retaking=None, hold=False))


def stopped(visit: Visit, page: str | None) -> Visit:
    """The walk stops on a stop page. A stop pauses the walk, not the visit."""
    stops = visit.vocabulary.stops
    name = page if page in stops else FALLBACK_STOP if FALLBACK_STOP in stops else next(iter(stops), "")
    position = visit.position or Position()
    visit = replace(visit, out=name) if who_clears(visit.vocabulary, name) else visit
    return visit.at(replace(position, stage="stop", page=name)).with_status(visit.complaint, "stopped")


def ended(visit: Visit, status: str, note: str | None = None) -> Visit:
    """The walk is over; the complaint has its status, and the visit asks what comes next."""
    position = visit.position or Position()
    return visit.at(replace(position, stage="done")).with_status(visit.complaint, status, note)
