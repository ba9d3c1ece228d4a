"""Every test of a tree in one house with one fault, each by itself, whatever the tree would have asked first.

A test is done on a copy of the house in which only what lasts on every way to it was set up before, so that
no test spoils another. The hand does it as it would on a walk; the walk's own limits judge it.
"""

from __future__ import annotations

from collections.abc import Hashable
from copy import deepcopy
from dataclasses import dataclass, replace

from assistant.drill.hand import AT, Hand, Stuck
from assistant.drill.kit import PERFECT
from assistant.drill.setups import prepared, same, start_of, tests_of
from assistant.drill.trial import opened
from assistant.rig.house import Rig
from assistant.tree.library import Library
from assistant.tree.model import Tree
from assistant.walk.advance import settle
from assistant.walk.ask import Taken
from assistant.walk.state import Frame, Position, Visit

MOST_ANSWERS = 40
AS_SOUND = "as a sound house"
NORMAL = "!"
"""Stands before the name of a fact that lies in a band marked normal."""


@dataclass(frozen=True)
class Said:
    """What a test says: `outcome` is equal for two faults that it can't tell apart."""

    outcome: Hashable
    facts: frozenset[str]
    way: str | None = None
    """The step that it leads to."""

    def against(self, sound: Said) -> Said:
        """The same with nothing said where a sound house of that kind says the same: a look at what a house
        has tells no fault from another.
        """
        return replace(self, outcome=AS_SOUND) if self.outcome == sound.outcome else self


@dataclass(frozen=True)
class Place:
    """A house with a hand and a visit in front of it."""

    rig: Rig
    visit: Visit

    def hand(self) -> Hand:
        """A hand for this house."""
        return Hand(self.rig, PERFECT, pace=0.0)

    def copied(self) -> Place:
        """The same house once more."""
        return Place(deepcopy(self.rig), self.visit)


def every_test(library: Library, tree: Tree, complaint: str, rig: Rig) -> dict[str, Said]:
    """What each test of the tree says of this house. A test that can't be taken says so."""
    places: dict[tuple[str, ...], Place] = {(): _at_the_start(library, tree, complaint, rig)}
    ready = prepared(tree, library)
    said: dict[str, Said] = {}
    for name in tests_of(tree, library):
        place = _set_up(library, tree, ready[name], places).copied()
        said[name] = _said(place, tree, name)
    return said


def _at_the_start(library: Library, tree: Tree, complaint: str, rig: Rig) -> Place:
    """After what comes before the first test."""
    place = Place(rig, opened(library, complaint))
    begun = [
        f"{tree.name}.{name}"
        for last in start_of(tree, library)[-1:]
        for name, step in tree.steps.items()
        if same(step) == same(tree.steps[last])
    ]
    hand, visit = place.hand(), place.visit
    for _ in range(MOST_ANSWERS):
        if _ended(visit) or not begun or any(taken.step in begun for taken in visit.path):
            break
        visit = hand.answer(visit)
    return Place(rig, visit)


def _set_up(
    library: Library, tree: Tree, needed: tuple[str, ...], places: dict[tuple[str, ...], Place]
) -> Place:
    if needed not in places:
        place = _set_up(library, tree, needed[:-1], places).copied()
        places[needed] = _passed(place, tree, needed[-1])
    return places[needed]


def _passed(place: Place, tree: Tree, name: str) -> Place:
    """The place after the walk was put to a step and has gone past it."""
    visit, hand = _jumped(place.visit, tree, name), place.hand()
    for _ in range(MOST_ANSWERS):
        if _ended(visit) or visit.position.stack[0].step != name:
            break
        try:
            visit = hand.answer(visit)
        except Stuck as stop:
            visit = stop.visit
            break
    return Place(place.rig, visit)


def _jumped(visit: Visit, tree: Tree, name: str) -> Visit:
    """The visit at a step, in the house as it is."""
    names = visit.position.stack[0].names if visit.position and visit.position.stack else {}
    position = Position((Frame(tree.name, name, names=names),))
    return settle(replace(visit, position=position), AT)


def _ended(visit: Visit) -> bool:
    position = visit.position
    return position is None or position.stage != "walking" or not position.stack


def _said(place: Place, tree: Tree, name: str) -> Said:
    seen = len(place.visit.path)
    visit = _passed(place, tree, name).visit
    own = [taken for taken in visit.path[seen:] if taken.step.partition(".")[0] == tree.name]
    own = [taken for taken in own if taken.verb in ("look", "measure", "watch", "compute")]
    if not own:
        return Said(("stopped", visit.position.page if visit.position else None), frozenset())
    last = own[-1]
    return Said((last.way, *(_word(taken) for taken in own)), _facts(own), last.way)


def _word(taken: Taken) -> Hashable:
    """The bands of a step's readings; for a look or a watch the answer's way only."""
    verdicts = [record.verdict for record in taken.records if record.verdict and record.verdict.bands]
    return tuple((verdict.first, verdict.last, verdict.unsafe) for verdict in verdicts)


def _facts(own: list[Taken]) -> frozenset[str]:
    found = set()
    for taken in own:
        for record in taken.records:
            if record.verdict and record.verdict.decided:
                found.add(record.name)
                if record.verdict.band and record.verdict.band.normal:
                    found.add(NORMAL + record.name)
    return frozenset(found)
