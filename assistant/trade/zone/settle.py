"""The one or two readings that would settle what a survey leaves open."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from assistant.trade.zone.assign import NONE, Place
from assistant.trade.zone.survey import NOBODY, Cell, Finding, Survey

ENOUGH = 0.95
MOST = 2
BY_LOOK = {
    "call nobody made": "with every thermostat satisfied, G to C at {0}'s panel terminals and at the furnace",
    "call behind the panel": "with every thermostat satisfied, G to C at each zone's panel terminals (0) and "
    "at the furnace (24); lift the panel's G wire and see whether the blower stays",
    "damper stays open": "the shaft mark of {0}'s damper while another zone calls, then its blade by hand, "
    "actuator off",
    "damper leaks": "the shaft mark of {0}'s damper and the plenum static, {0} shut",
    "opens with another": "volts at {0}'s damper terminals while the other zone calls alone",
    "one zone that is two": "how many dampers {0}'s registers hang on: follow the duct from the plenum",
    "two thermostats, one zone": "raise {1} alone and write what every damper does",
    "not of this system": "a tissue on {0} with the room's door shut and the blower off",
    "on another zone's duct": "volts and shaft of {1}'s damper while {0} blows",
    "shared leak": "smoke at the joints that {0} and {1} share",
    "open in every call": "where {0}'s run leaves: follow the duct from the plenum",
}


def settle(survey: Survey, places: Mapping[str, Place], findings: Sequence[Finding]) -> tuple[str, ...]:
    """Up to two readings in words, the one that answers most first. Nothing open: none."""
    words = []
    idle = any(survey.flow(m, NOBODY, r) is not None for m in survey.modes for r in survey.registers)
    if not idle and any(f.kind in ("damper stays open", "call nobody made") for f in findings):
        words.append(
            "the air at every register with every thermostat satisfied: a damper and a call look alike "
            "without it"
        )
    words += _by_call(_missing(survey, places), "")
    words += _by_call(_again(survey, places, findings), "again, mean of five: ")
    words += [BY_LOOK[f.kind].format(*f.about) for f in sorted(findings, key=lambda f: f.confidence)]
    return tuple(dict.fromkeys(words))[:MOST]


def _by_call(cells: Sequence[Cell], take: str) -> list[str]:
    """One walk through the house for each call, the one that answers most registers first."""
    calls: dict[tuple[str, str], list[str]] = {}
    for cell in dict.fromkeys(cells):
        calls.setdefault((cell.mode, cell.caller), []).append(cell.register)
    out = []
    for (mode, caller), registers in sorted(calls.items(), key=lambda item: -len(item[1])):
        who = NOBODY if caller == NOBODY else f"{caller} alone"
        out.append(f"{take}the air at {', '.join(registers)} with {who} calling ({mode})")
    return out


def _open(places: Mapping[str, Place]) -> dict[str, Place]:
    return {r: p for r, p in places.items() if p.zone != NONE and not p.always and p.confidence < ENOUGH}


def _missing(survey: Survey, places: Mapping[str, Place]) -> list[Cell]:
    """For each register whose zone is open: the unread call whose zone is likeliest."""
    out = []
    for r, place in _open(places).items():
        unread = [
            Cell(m, z, r)
            for z in sorted(place.chances, key=place.chances.get, reverse=True)
            for m in survey.modes
            if z in survey.zones and survey.flow(m, z, r) is None
        ]
        out += unread[:1]
    return out


def _again(survey: Survey, places: Mapping[str, Place], findings: Sequence[Finding]) -> list[Cell]:
    """Cells behind a finding that the anemometer leaves open, and registers whose two best zones it can't
    part.
    """
    out = [cell for f in findings if f.confidence < ENOUGH for cell in f.cells[:1]]
    for r, place in _open(places).items():
        best = max((z for z in place.chances if z in survey.zones), key=place.chances.get)
        mode = next((m for m in survey.modes if survey.flow(m, best, r) is not None), None)
        if mode:
            out.append(Cell(mode, best, r))
    return out
