"""Calls that nobody made: air while every thermostat is satisfied, from a zone or from behind the panel."""

from __future__ import annotations

from collections.abc import Mapping

from assistant.trade.zone.assign import Place
from assistant.trade.zone.chance import above
from assistant.trade.zone.matrix import LOOK, Seen, members, seen_under, together
from assistant.trade.zone.survey import NOBODY, Finding, Flow, Survey


def callers(
    survey: Survey, places: Mapping[str, Place], groups: Mapping[str, str], strange: set[str]
) -> list[Finding]:
    """A finding for each mode in which air moves with nobody calling."""
    out = []
    zones = list(dict.fromkeys(groups.values()))
    for mode in survey.modes:
        blowing: dict[str, float] = {}
        cells = []
        for z in zones:
            seen = [s for s in seen_under(survey, places, z, mode, NOBODY) if s.register not in strange]
            s = together(seen)
            if s and (sure := _moves(survey, s)) > 0.5:
                blowing[z] = sure
                cells += [x.cell for x in seen]
        if not blowing:
            continue
        sure = min(blowing.values())
        if len(blowing) == 1:
            (zone,) = blowing
            out.append(
                Finding(
                    "call nobody made",
                    (zone,),
                    f"with every thermostat satisfied ({mode}) {zone} alone blows: its thermostat asks for "
                    "the fan (humidity, fan on, schedule) or its cable does",
                    sure,
                    tuple(cells),
                    mode,
                )
            )
        else:
            out.append(
                Finding(
                    "call behind the panel",
                    tuple(blowing),
                    f"with every thermostat satisfied ({mode}) {', '.join(blowing)} blow together: the "
                    "blower is called behind the panel (humidifier, fresh air, air cleaner, a left jumper), "
                    "and the dampers stand at rest",
                    sure,
                    tuple(cells),
                    mode,
                )
            )
    return out


def _moves(survey: Survey, s: Seen) -> float:
    """How sure there is air at all, and more of it than a shut damper passes."""
    still = Flow(survey.meter.floor, survey.meter.floor / 4)
    return min(above(s.flow, still), s.over(LOOK))


def idle_read(survey: Survey, places: Mapping[str, Place]) -> set[str]:
    """The modes in which any register of any zone was read with nobody calling."""
    return {
        m
        for m in survey.modes
        for z in survey.zones
        for r in members(places, z)
        if survey.flow(m, NOBODY, r) is not None
    }
