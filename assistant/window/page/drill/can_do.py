"""What free work lists: things to look at, acts, waits, the plate, and what was done so far."""

from __future__ import annotations

from assistant.drill.practice.sitting import Sitting
from assistant.quantity.kind import show

METER, LOOK, DO, WAIT, LOG = "meter", "look", "do", "wait", "log"
ONCE = (LOOK, DO, WAIT)
"""A tap selects; the button, Enter or a second tap on the same row does it, once."""
LEADS_TOGETHER, PLATE = "leads together", "plate"
WAITS = {
    "10 s": "10 seconds",
    "30 s": "30 seconds",
    "1 min": "1 minute",
    "2 min": "2 minutes",
    "5 min": "5 minutes",
    "15 min": "15 minutes",
    "30 min": "half an hour",
}


def said_minutes(minutes: float) -> str:
    """1 minute, 2 minutes."""
    whole = f"{minutes:.0f}"
    return "1 minute" if whole == "1" else f"{whole} minutes"


def listed(mode: str, sitting: Sitting) -> tuple[str, dict[str, str]]:
    """A heading, and what can be picked under it, in words by name."""
    if mode == LOOK:
        return "What to look at", {PLATE: "rating plate", **sitting.things()}
    if mode == DO:
        return "What to do", {**sitting.acts(), LEADS_TOGETHER: "Hold the two meter leads together, on ohms"}
    if mode == WAIT:
        return "How long to wait", WAITS
    lines = {
        str(n): f"{n}. {entry.words}{f': {entry.shown}' if entry.shown else ''}"
        for n, entry in enumerate(sitting.log.entries, 1)
    }
    return "What was done so far", dict(reversed(lines.items())) or {"0": "Nothing yet"}


def plate_words(sitting: Sitting) -> dict[str, str]:
    """The rating plate's values."""
    known = sitting.rig.plate()
    return {
        name: f"{plate.title}: {show(known[name], plate.unit)}"
        for name, plate in sitting.library.vocabulary.plate.items()
        if name in known
    }


def slot_words(sitting: Sitting) -> dict[str, str]:
    """What the meter is set to and where its leads are, by slot; the numbers are those on the drawing."""
    meter, points = sitting.meter, sitting.library.vocabulary.points

    def where(point: str) -> str:
        return points[point].label if point else "nowhere yet"

    return {
        "function": f"Function: {meter.picked.title}",
        "red": f"{'Red (1)' if meter.picked.leads == 2 else 'At (1)'}: {where(meter.red)}",
        "black": f"Black (2): {where(meter.black)}",
    }
