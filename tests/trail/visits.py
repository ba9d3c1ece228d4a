"""Visits to write, for the tests of the trail: their words are invented."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from assistant.trail.keep import sha256
from assistant.trail.read import read_trail
from assistant.walk.event import (
    Back,
    Did,
    InstrumentUsed,
    Note,
    Opened,
    Paused,
    PlateRead,
    Read,
    Resumed,
    Saw,
    Signed,
    Typed,
)

TEXTS = {
    "house.yaml": b"circuits: {}\n",
    "complaint/no_heat.yaml": "title: Kein Heizen, 24 V \u2126\n".encode(),
}


@dataclass
class Shelf:
    """Stands for the library: the recorder asks for its texts only."""

    texts: dict


LIBRARY = Shelf(TEXTS)


def load_events(folder: Path) -> tuple[list, list[str]]:
    """The visit's events up to the first damaged line, and remarks in sentences."""
    trail = read_trail(folder)
    return trail.events, trail.remarks


def at(minute: int) -> str:
    return f"2026-01-14T{9 + minute // 60:02d}:{minute % 60:02d}:00-05:00"


def opened(minute: int = 0) -> Opened:
    files = {name: sha256(text) for name, text in TEXTS.items()}
    return Opened(at(minute), (("no_heat", "no heat since last night"),), files, program="0.1")


def answers(count: int, start: int = 1) -> list:
    """A mixed lot of answers, as many as asked for."""
    out = []
    for number in range(start, start + count):
        when = at(number)
        out.append(
            [
                Read(
                    when,
                    "no_heat.volts",
                    {"plug_volts": Typed("118,4", "clamp meter 2", sure=number % 2 == 0)},
                ),
                Saw(when, "no_heat.light", "three flashes"),
                Did(when, "make_dead.off", 300.0),
                Read(
                    when,
                    "make_dead.dead",
                    {f"pair_{i}": Typed(t, ago=0.5) for i, t in enumerate(["0", "0,1", "OL"])},
                ),
                # the control character is written as an escape, whose letters have two cases
                Note(
                    when,
                    "Water under the unit \u2014 customer says\x1f \u201csince Tuesday\u201d \U0001f4a7",
                    "no_heat.light",
                ),
                PlateRead(when, "supply_volts", "120"),
                InstrumentUsed(when, "clamp meter 2"),
                Back(when, "no_heat.light", "slip"),
                Paused(when, "waiting for a part"),
                Resumed(when, "the same technician"),
            ][number % 10]
        )
    return out


def finished(count: int) -> list:
    return [*answers(count), Signed(at(count + 1), "A. Technician")]
