"""Registers on another zone's duct, and registers that are not of this system."""

from __future__ import annotations

from collections.abc import Mapping

from assistant.trade.zone.assign import NONE, Place
from assistant.trade.zone.chance import above
from assistant.trade.zone.survey import NOBODY, Finding, Flow, Survey


def strangers(survey: Survey, places: Mapping[str, Place], groups: Mapping[str, str]) -> list[Finding]:
    """A finding for each register that is not where it is drawn."""
    out = []
    for r, place in places.items():
        drawn = groups.get(survey.claimed.get(r, ""), None)
        steady = _steady(survey, r)
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
