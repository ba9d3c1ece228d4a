"""The duct system's answer in words with the numbers: what one zone sees alone, what the ducts carry."""

from __future__ import annotations

import math

from assistant.trade.constants import CUBIC_FOOT, FOOT, INCH_WATER
from assistant.trade.duct_house import House, alone, run, zones_of
from assistant.trade.duct_link import Constant
from assistant.trade.duct_network import Solved

CFM = CUBIC_FOOT / 60
FPM = FOOT / 60


def cfm(flow: float) -> str:
    """A flow in m³/s as "1,185 cfm" without the comma: "1185 cfm"."""
    return f"{flow / CFM:.0f} cfm"


def inches(pressure: float) -> str:
    """A pressure in Pa as "0.54 in. w.c."."""
    return f"{pressure / INCH_WATER:.2f} in. w.c."


def _fan_words(solved: Solved) -> str:
    if solved.held is None:
        return ""
    return ", which the motor still holds" if solved.held else ", with the motor at its limit"


def zone_words(house: House, zone: str) -> str:
    """What one open zone alone sees, in one paragraph: blower flow, static, register flows and velocities,
    bypass.
    """
    solved = alone(house, zone)
    parts = [
        f"With {zone} open alone the blower moves {cfm(solved.flow['blower'])} against "
        f"{inches(solved.fan_rise)} total external static{_fan_words(solved)}; the plenum stands at "
        f"{inches(solved.pressure['plenum'])}"
    ]
    runs = []
    for b in house.branches:
        if b.zone == zone:
            flow = solved.flow[b.name]
            text = f"{b.name} {cfm(flow)}"
            if b.damper:
                text += f" at {flow / (math.pi / 4 * b.damper**2) / FPM:.0f} fpm"
            runs.append(text)
    parts.append("It gets " + ", ".join(runs) + ".")
    past = sum(solved.flow[b.name] for b in house.branches if b.zone not in (zone, None))
    if past > 0:
        parts.append(f"Past all shut dampers together go {cfm(past)}.")
    if house.bypass:
        share = solved.flow["bypass"] / solved.flow["blower"]
        parts.append(f"The bypass carries {cfm(solved.flow['bypass'])}, {100 * share:.0f} % of the air.")
    return " ".join(parts)


def capacity_words(house: House, wanted: float, rated: float) -> str:
    """Whether the ducts can carry `wanted` (m³/s) within `rated` (Pa), with every zone open."""
    solved = run(house)
    flow, rise = solved.flow["blower"], solved.fan_rise
    able = flow * math.sqrt(rated / rise) if rise > 0 else math.inf
    found = f"With all zones open the blower moves {cfm(flow)} against {inches(rise)}"
    if able >= wanted:
        return (
            f"{found} At its rated {inches(rated)} these ducts carry {cfm(able)}; {cfm(wanted)} are wanted: "
            "enough."
        )
    held = (
        "a motor that is made to hold it works above its rating, and the next motor will die too."
        if isinstance(house.fan, Constant)
        else "a motor made to try works above its rating."
    )
    return (
        f"{found} At its rated {inches(rated)} these ducts carry {cfm(able)}, and {cfm(wanted)} are wanted: "
        f"this system can never move that much air at that static, and {held}"
    )


def survey_words(house: House) -> dict[str, str]:
    """zone_words for every zone."""
    return {zone: zone_words(house, zone) for zone in zones_of(house)}
