"""Registers on another zone's duct, and registers that are not of this system."""

from __future__ import annotations

from collections.abc import Mapping

from assistant.trade.zone.assign import NONE, Place
from assistant.trade.zone.chance import above
from assistant.trade.zone.survey import NOBODY, Finding, Flow, Survey


def strangers(survey: Survey, places: Mapping[str, Place], groups: Mapping[str, str]) -> list[Finding]:
    """A finding for each register that is not where it is drawn."""
    out = []
    air = {r: steady for r in places if (steady := _steady(survey, r)) is not None}
    for r, place in places.items():
        drawn = groups.get(survey.claimed.get(r, ""), None)
        steady = None if _called(survey, r, air) else air.get(r)
        if place.zone == NONE:
            out.append(
                Finding(
                    "not of this system",
                    (r,),
                    f"{r} is still in every call: shut by hand, blocked, or not of this system (tissue on "
                    "it, door shut)",
                    place.confidence,
                )
            )
        elif steady is not None:
            out.append(
                Finding(
                    "not of this system",
                    (r,),
                    f"{r} moves the same air in every call and in none: it is not this system's air (room "
                    "pressure, gravity, another unit)",
                    steady,
                )
            )
        elif place.zone and drawn and place.zone != drawn:
            out.append(
                Finding(
                    "on another zone's duct",
                    (r, place.zone, drawn),
                    f"{r} is drawn under {drawn} and follows {place.zone}: its run hangs on {place.zone}'s "
                    "duct",
                    place.confidence,
                )
            )
    return out


def _called(survey: Survey, register: str, steady: Mapping[str, float]) -> bool:
    """Whether every register of its zone blows as steadily: then the zone is called, and it is the blower."""
    zone = survey.claimed.get(register)
    beside = [r for r in survey.registers if r != register and survey.claimed.get(r) == zone]
    return zone is not None and bool(beside) and all(r in steady for r in beside)


def _steady(survey: Survey, register: str) -> float | None:
    """How sure its air is the same in all calls, the idle one included; None where it clearly is not."""
    flows: list[Flow] = []
    idle = False
    for mode in survey.modes:
        for caller in (*survey.zones, NOBODY):
            if (flow := survey.flow(mode, caller, register)) is not None:
                flows.append(flow)
                idle |= caller == NOBODY
    if not idle or len(flows) < 3:
        return None
    low, high = min(flows, key=lambda f: f.value), max(flows, key=lambda f: f.value)
    if low.value < 2 * survey.meter.floor:
        return None
    sure = above(low, high, 0.7)
    return sure if sure > 0.5 else None
