"""Dampers that leak or stay open, zones that are two, and leaks that two zones share."""

from __future__ import annotations

from collections.abc import Mapping

from assistant.trade.figure import with_unit
from assistant.trade.zone.assign import OPEN, Place
from assistant.trade.zone.matrix import LOOK, Seen, members, seen_under, together
from assistant.trade.zone.survey import Finding, Survey

SURE = 0.9


def dampers(survey: Survey, places: Mapping[str, Place], groups: Mapping[str, str]) -> list[Finding]:
    """A finding for each zone that is open, half shut or split while others call."""
    zones = list(dict.fromkeys(groups.values()))
    found, leaks = [], {}
    for z in zones:
        calls = {
            (mode, c): seen
            for mode in survey.modes
            for c in zones
            if c != z
            if (seen := seen_under(survey, places, z, mode, c))
        }
        split = _split(z, calls)
        if split:
            found.append(split)
            loose = set(split.about[1:])
            calls = {
                k: left for k, seen in calls.items() if (left := [s for s in seen if s.register not in loose])
            }
        found += _open(survey, z, calls)
        leaks |= {(z, c): s for (_, c), seen in calls.items() if (s := together(seen)) and _leaking(s) > 0.5}
    return found + _leaks(survey, places, leaks) + _nowhere(places)


def _leaking(s: Seen) -> float:
    return s.over(LOOK) - s.over(OPEN)


def _open(survey: Survey, zone: str, calls: Mapping[tuple[str, str], list[Seen]]) -> list[Finding]:
    """Open in every call read: the damper stays open. Open in one mode only: somebody calls there."""
    by = {key: s for key, seen in calls.items() if (s := together(seen))}
    is_open = {key: s for key, s in by.items() if s.over(OPEN) > 0.5}
    if not is_open:
        return []
    sure, cells = min(s.over(OPEN) for s in is_open.values()), tuple(s.cell for s in is_open.values())
    modes = [m for m in survey.modes if any(mode == m for mode, _ in is_open)]
    if len(modes) < len({mode for mode, _ in by}):
        where = " and ".join(modes)
        words = (
            f"{zone} opens in {where} while another calls, and not in the other modes: its own thermostat or "
            "the panel asks for it there"
        )
        return [Finding("call nobody made", (zone,), words, sure, cells, where)]
    callers = {c for _, c in is_open}
    shut = [s for (_, c), s in by.items() if c not in callers]
    if any(s.over(LOOK) > 0.5 for s in shut):
        return []  # half shut with the others: it leaks, and more where the pressure is higher
    if shut:
        words = (
            f"{zone} opens when {', '.join(sorted(callers))} calls and shuts with the others: crossed or "
            "paralleled damper wires, or a setting"
        )
        return [Finding("opens with another", (zone,), words, sure, cells)]
    words = (
        f"{zone} blows whoever calls: its damper stays open (set screw, blade or actuator; look at the shaft "
        "mark before the actuator)"
    )
    return [Finding("damper stays open", (zone,), words, sure, cells)]


def _split(zone: str, calls: Mapping[tuple[str, str], list[Seen]]) -> Finding | None:
    """Some registers surely open and others surely shut in one and the same call: two dampers, not one."""
    best = None
    for seen in calls.values():
        loose = [s for s in seen if s.over(OPEN) > SURE]
        tight = [s for s in seen if s.over(LOOK) < 1 - SURE]
        if not loose or not tight:
            continue
        sure = min([s.over(OPEN) for s in loose] + [1 - s.over(LOOK) for s in tight])
        if best is None or (len(loose), sure) > (len(best.about) - 1, best.confidence):
            names = tuple(s.register for s in loose)
            words = (
                f"air at {', '.join(names)} while the rest of {zone} is shut: not on {zone}'s damper (a "
                "second damper that stays open, or a run that leaves before the damper)"
            )
            best = Finding("one zone that is two", (zone, *names), words, sure, tuple(s.cell for s in loose))
    return best


def _nowhere(places: Mapping[str, Place]) -> list[Finding]:
    """Registers that are open in every call and drawn under no zone."""
    return [
        Finding(
            "open in every call",
            (r,),
            f"{r} blows whoever calls, and no drawing says whose it is: air can't tell its zone",
            1 - p.confidence,
        )
        for r, p in places.items()
        if p.always and p.zone is None
    ]


def _leaks(
    survey: Survey, places: Mapping[str, Place], leaks: Mapping[tuple[str, str], Seen]
) -> list[Finding]:
    out, done = [], set()
    for (z, c), s in leaks.items():
        if z in done:
            continue
        alone = all(caller == c for zone, caller in leaks if zone == z)
        if (c, z) in leaks and alone and len(survey.zones) > 2 and members(places, z):
            done |= {z, c}
            words = (
                f"{z} and {c} leak into each other and into no other: a joint, boot or chase that they share"
            )
            out.append(
                Finding("shared leak", (z, c), words, min(_leaking(s), _leaking(leaks[c, z])), (s.cell,))
            )
            continue
        done.add(z)
        worst = max((v for key, v in leaks.items() if key[0] == z), key=_leaking)
        words = (
            f"{z} passes about {with_unit(worst.flow.value, 'cfm')} at each register while others call, more "
            "than a shut damper and less than an open one: it does not shut tight, or has a set minimum; "
            "look at blade and seal"
        )
        out.append(Finding("damper leaks", (z,), words, _leaking(worst), (worst.cell,)))
    return out
