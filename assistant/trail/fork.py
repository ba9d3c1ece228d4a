"""A visit that two computers wrote at the same time: two files that name the same tip.

Both sides stay on disk. The longer one is the visit; the other is shown, and a person joins them by saying
so: from then on the first line of a file names what stands beside it, and a note says who has read it.
"""

from __future__ import annotations

from dataclasses import dataclass

from assistant.trail.read import Trail, event_of
from assistant.walk.event import Event, Note

FORKED = (
    "This visit was written on two computers at the same time. It opens for reading only until somebody has "
    "read both sides and joins them."
)


@dataclass(frozen=True)
class Side:
    """What stands beside the visit: the events of another file from an earlier line on, in order."""

    file: str
    number: int
    events: tuple[Event, ...]


def sides_of(trail: Trail) -> list[Side]:
    """What was written elsewhere at the same time and nobody has read yet."""
    out = []
    for beside in trail.beside:
        if beside.named:
            continue
        part = next(part for part in trail.segments if part.name == beside.file)
        lines = [line for line in part.lines if line.number >= beside.number]
        out.append(Side(beside.file, beside.number, tuple(event_of(line) for line in lines)))
    return out


def joined(sides: list[Side], by: str, at: str) -> Note:
    """What goes into the trail when a person joins them."""
    count = sum(len(side.events) for side in sides)
    files = ", ".join(side.file for side in sides)
    lines = f"{count} line{'s' * (count != 1)}"
    said = f"Joined: {lines} of {files}, written elsewhere at the same time, stand beside this visit."
    return Note(at, f"{said} {by} has read them." if by else said)
