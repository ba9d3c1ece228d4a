"""One visit to one simulated house over a hand-over, up to the proof of what the second walk repairs.

What the first walk left behind is the second one's house: wires off, a fan set to ON, a door switch held in.
"""

from __future__ import annotations

from dataclasses import dataclass

import pytest
from houses import library

from assistant.drill.case import nominal
from assistant.drill.hand import AT, Hand
from assistant.drill.kit import PERFECT
from assistant.drill.trial import ENDS, after_finding, opened, until_end
from assistant.rig.fault_file import shipped
from assistant.rig.house import Rig
from assistant.rig.unit import REFERENCE
from assistant.tree.model import HandOver
from assistant.walk.event import GoOn
from assistant.walk.points import blocks_signing
from assistant.walk.state import Visit
from assistant.walk.visit import asked, fold

FAULTS = shipped()[0]
ROOM = {"room_gas", "room_co"}


@dataclass(frozen=True)
class Over:
    """A fault, its first walk, where that hands over, where the next ends, and what is still known in it."""

    fault: str
    first: str
    over: str
    end: str
    known: frozenset[str] = frozenset()


ALL = (
    Over("breaker_tripped_by_short", "no_heat", "to_breaker", "tripped_breaker.blower_ground",
         frozenset(ROOM)),
    Over("no_power_at_switch", "no_heat", "to_breaker", "tripped_breaker.breaker_open",
         frozenset(ROOM | {"lg", "switch_feed"})),
    Over("blower_capacitor_open", "no_heat", "to_blower", "blower_silent.capacitor_bad", frozenset(ROOM)),
    Over("panel_for_other_dampers", "no_heat", "to_zones", "zone_spillover.type_set"),
    Over("limit_open", "zone_spillover", "to_heat", "no_heat.limit_bad"),
    Over("silent_breaker_open", "blower_silent", "to_breaker", "tripped_breaker.breaker_open",
         frozenset(ROOM | {"lg", "switch_feed"})),
)  # fmt: skip


def second(visit: Visit, hand: Hand) -> tuple[Visit, set[str]]:
    """Over the hand-over to the end of the next walk, and the readings that were still known in it."""
    known: set[str] = set()
    visit = fold(visit, GoOn(AT, asked(visit).step))
    for _ in range(400):
        ask = asked(visit)
        if ask.kind in ENDS:
            return visit, known
        known |= {record.name for record in ask.offer}
        visit = hand.answer(visit)
    raise AssertionError("the second walk has no end")


@pytest.mark.parametrize("one", ALL, ids=lambda one: f"{one.first} to {one.end}")
def test_a_visit_goes_over_a_hand_over_to_a_proved_repair(one: Over):
    fault = FAULTS[one.fault]
    rig = Rig(REFERENCE, fault, nominal(fault))
    hand = Hand(rig, PERFECT)
    visit, ask = until_end(opened(library(), one.first), hand, library())
    assert (ask.kind, ask.step) == ("handed_over", f"{one.first}.{one.over}")
    visit, known = second(visit, hand)
    assert asked(visit).step == one.end
    assert one.known <= known
    visit = after_finding(visit, hand, wholly=True)
    assert rig.cured
    assert [found.proof for found in visit.found] == ["proved"]
    assert not rig.mishaps
    assert {state.name: state.status for state in visit.complaints} == {
        one.first: "handed_over", one.end.partition(".")[0]: "proved"}  # fmt: skip
    assert asked(visit).kind == "leave"


def test_what_a_walk_left_undone_is_still_on_the_list_after_its_hand_over():
    """The door switch that the first walk held in is let out before anybody signs the second's report."""
    rig = Rig(REFERENCE, FAULTS["breaker_tripped_by_short"], "nominal")
    hand = Hand(rig, PERFECT)
    visit, _ = until_end(opened(library(), "no_heat"), hand, library())
    held = {point.key for point in blocks_signing(visit)}
    assert "undo.hold_door_switch" in held
    visit, _ = second(visit, hand)
    assert held <= {point.key for point in blocks_signing(visit)}


def test_every_complaint_that_hands_over_is_walked_over_one():
    over = {tree for tree, one in library().trees.items()
            if any(isinstance(step, HandOver) for step in one.steps.values())}
    assert over == {one.first for one in ALL}
