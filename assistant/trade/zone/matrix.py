"""How open a zone looks while another calls: its air against its own call, and against the caller's air
beside it.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass

from assistant.trade.zone.assign import Place
from assistant.trade.zone.chance import above, mean, middle
from assistant.trade.zone.survey import Cell, Flow, Survey

LOOK = 0.10
"""Share of the open flow from which a shut damper is worth a look (common practice)."""


@dataclass(frozen=True)
class Seen:
    """One register in a call that is not its own: its flow, and what it would pass with its damper open."""

    register: str
    flow: Flow
    open: Flow
    cell: Cell

    def over(self, share: float) -> float:
        """Probability that it is more than `share` open."""
        return above(self.flow, self.open, share)


def members(places: Mapping[str, Place], zone: str) -> list[str]:
    """The registers that were found to be the zone's."""
    return [r for r, p in places.items() if p.zone == zone]


def seen_under(survey: Survey, places: Mapping[str, Place], zone: str, mode: str, caller: str) -> list[Seen]:
    """The zone's registers as they were read while `caller` called, against what they would pass when open.

    With both plenum statics read, that is their own flow at this static. Without, it is the smaller of their
    own flow and what the caller's registers pass beside them: a zone alone is under more pressure than two
    together.
    """
    beside = [f for r in members(places, caller) if (f := survey.flow(mode, caller, r)) is not None]
    here, there = survey.static.get((mode, caller)), survey.static.get((mode, zone))
    out = []
    for r in members(places, zone):
        flow, own = survey.flow(mode, caller, r), _own(survey, mode, zone, r)
        if flow is None or own is None:
            continue
        if here and there and survey.flow(mode, zone, r) is not None:
            scale = math.sqrt(here / there)
            full = Flow(own.value * scale, own.u * scale)
        else:
            full = min([own, middle(beside)], key=lambda f: f.value) if beside else own
        out.append(Seen(r, flow, full, Cell(mode, caller, r)))
    return out


def _own(survey: Survey, mode: str, zone: str, register: str) -> Flow | None:
    """Its flow in its own call: in this mode, otherwise the largest of any mode."""
    if (flow := survey.flow(mode, zone, register)) is not None:
        return flow
    others = [f for m in survey.modes if (f := survey.flow(m, zone, register)) is not None]
    return max(others, key=lambda f: f.value) if others else None


def together(seen: list[Seen]) -> Seen | None:
    """Several registers as one, by their means."""
    if not seen:
        return None
    return Seen(
        ", ".join(s.register for s in seen),
        mean([s.flow for s in seen]),
        mean([s.open for s in seen]),
        seen[0].cell,
    )
