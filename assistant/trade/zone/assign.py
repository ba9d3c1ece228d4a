"""Which zone each register belongs to: the thermostat whose call alone gives it the most air.

Bayes over the zones and "none of them", each mode as evidence of its own. Where a zone's damper stays open,
its registers still get most in their own call: the fewest others are open then. A single register that is
open in every call is the exception: the smallest other zone gives it the most, air can't tell its zone, and
the drawing stands.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from assistant.trade.zone.chance import above, all_of, middle
from assistant.trade.zone.survey import Flow, Survey

NONE = "none"
STRANGER = 0.02
"""How likely a register is not of this system, before any reading."""
STRAY = 0.06
"""How likely a register blows outside its own call, before any reading."""
LEAST = 1e-12
OPEN = 0.40
"""Share of the open flow from which a register counts as open; a half-open blade passes 62 % (computed)."""


@dataclass(frozen=True)
class Place:
    """`zone` of a register (None: undecided, NONE: of no zone here), how sure, and the chances of all.

    `always`: it is open in every call that was read.
    """

    zone: str | None
    confidence: float
    chances: Mapping[str, float]
    always: bool = False


def places(survey: Survey, groups: Mapping[str, str]) -> dict[str, Place]:
    """A Place for each register.

    `groups` maps each thermostat to the one that stands for it (merged thermostats).
    """
    zones = list(dict.fromkeys(groups.values()))
    first = {register: _place(survey, register, zones) for register in survey.registers}
    always = {r: sure for r in first if (sure := _always(survey, first, r, zones)) > 0.5}
    out = {}
    for r, place in first.items():
        whole = all(other in always for other, p in first.items() if p.zone == place.zone)
        if r not in always or whole:
            out[r] = Place(place.zone, place.confidence, place.chances, r in always)
        else:
            drawn = groups.get(survey.claimed.get(r, ""))
            out[r] = Place(drawn, always[r] if drawn else 0.0, place.chances, True)
    return out


def _place(survey: Survey, register: str, zones: list[str]) -> Place:
    weight = {z: (1 - STRANGER) / len(zones) for z in zones} | {NONE: STRANGER}
    seen = False
    for mode in survey.modes:
        flows = {z: f for z in zones if (f := survey.flow(mode, z, register)) is not None}
        if not flows:
            continue
        seen = True
        for z in weight:
            weight[z] *= max(LEAST, _likely(survey, z, flows))
    total = sum(weight.values())
    chances = {z: w / total for z, w in weight.items()}
    best = max(chances, key=chances.get)
    return Place(best if seen and chances[best] >= 0.5 else None, chances[best], chances)


def _likely(survey: Survey, zone: str, flows: Mapping[str, Flow]) -> float:
    """How well the flows of one mode fit that the register belongs to `zone`."""
    still = Flow(1.5 * survey.meter.floor, survey.meter.floor / 4)
    if zone in flows:
        own = flows[zone]
        return above(own, still) * all_of([above(own, f) for z, f in flows.items() if z != zone])
    still_all = all_of([above(still, f) for f in flows.values()])
    if zone == NONE:
        return still_all
    return STRAY + (1 - STRAY) * still_all  # its own call was not read: the others are still, or it strays


def _always(survey: Survey, first: Mapping[str, Place], register: str, zones: list[str]) -> float:
    """How sure the register is open in every call that was read, three at least: beside the caller's own
    registers, or by itself in the call of its own zone where it is the only one.
    """
    sure, calls = 1.0, 0
    still = Flow(1.5 * survey.meter.floor, survey.meter.floor / 4)
    for mode in survey.modes:
        for z in zones:
            flow = survey.flow(mode, z, register)
            beside = [
                f
                for r, p in first.items()
                if p.zone == z and r != register and (f := survey.flow(mode, z, r)) is not None
            ]
            if flow is None or (not beside and survey.claimed.get(register) != z):
                continue
            calls += 1
            sure = min(sure, above(flow, middle(beside), OPEN) if beside else above(flow, still))
    return sure if calls >= 3 else 0.0
