"""A visit's trail read back: all its files put in order, verified, and turned into events."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property
from itertools import pairwise
from pathlib import Path

from assistant.trail.chain import START
from assistant.trail.clock import set_back
from assistant.trail.encode import from_object
from assistant.trail.error import not_read
from assistant.trail.files import DISK, Files
from assistant.trail.order import Beside, put_in_order
from assistant.trail.segment import Damage, Line, Segment, read_segment
from assistant.walk.event import Event

COPY = "copy"
"""The field for what was worked out when the line was written; never read back as truth."""


@dataclass(frozen=True)
class Entry:
    """One event with where it stands. `rest` is what this version doesn't know of it."""

    line: Line
    event: Event
    rest: dict
    copies: dict


@dataclass(frozen=True)
class Trail:
    """A visit as it lies on disk, up to the first damaged line."""

    visit: str
    lines: tuple[Line, ...]
    """Every verified line in order, the first ones of files included."""
    segments: tuple[Segment, ...]
    damage: tuple[Damage, ...]
    beside: tuple[Beside, ...]
    newer: bool

    @cached_property
    def entries(self) -> tuple[Entry, ...]:
        """The lines as events; worked out when they are asked for, as a list of visits needs few of them."""
        return tuple(_entry(line) for line in self.lines if line.number > 1)

    @property
    def tips(self) -> tuple[str, ...]:
        """The hash of every line; the last one is the tip."""
        return tuple(line.hash for line in self.lines)

    @property
    def tip(self) -> str:
        return self.lines[-1].hash if self.lines else START

    @property
    def n(self) -> int:
        return self.lines[-1].n if self.lines else 0

    @property
    def events(self) -> list[Event]:
        return [entry.event for entry in self.entries]

    @property
    def practice(self) -> bool:
        """Whether any line says that this is practice on a simulated house, and no visit."""
        return any(line.fields.get("practice") is True for line in self.lines)

    @property
    def signed(self) -> bool:
        return self.last("signed") is not None

    def last(self, *kinds: str) -> Entry | None:
        """The latest event of one of these kinds."""
        found = (
            line for line in reversed(self.lines) if line.number > 1 and line.fields.get("kind") in kinds
        )
        line = next(found, None)
        return _entry(line) if line else None

    @property
    def torn(self) -> tuple[Segment, ...]:
        return tuple(part for part in self.segments if part.torn is not None)

    @property
    def remarks(self) -> list[str]:
        """What a person should know about this trail, in sentences; damage first."""
        return _remarks(self)


def trail_files(files: Files, folder: Path) -> list[str]:
    """Raises TrailError where the folder can't be read."""
    try:
        return [name for name in files.names(folder) if name.startswith("trail-") and name.endswith(".jsonl")]
    except OSError as problem:
        raise not_read(problem, f"The folder {folder}") from problem


def read_trail(folder: Path, files: Files = DISK) -> Trail:
    """Everything under `folder` that is a trail. Raises TrailError only where it can't be read at all."""
    segments = []
    for name in trail_files(files, folder):
        try:
            data = files.read(folder / name)
        except OSError as problem:
            raise not_read(problem, folder / name) from problem
        if data:
            segments.append(read_segment(name, data))
    order = put_in_order(segments)
    return Trail(
        order.visit,
        order.lines,
        tuple(segments),
        order.damage,
        order.beside,
        any(part.newer for part in segments),
    )


def event_of(line: Line) -> Event:
    """The event that a line holds, also one that stands beside the visit."""
    return _entry(line).event


def _entry(line: Line) -> Entry:
    event, rest = from_object({name: value for name, value in line.fields.items() if name not in ("n", COPY)})
    copies = line.fields.get(COPY)
    return Entry(line, event, rest, copies if isinstance(copies, dict) else {})


def _remarks(trail: Trail) -> list[str]:
    out = []
    if trail.damage:
        out.append(
            f"This visit was altered after it was written ({trail.damage[0]}). It is shown up to that line "
            "and opens for reading only; the files stay as they are."
        )
    if trail.newer:
        out.append(
            "This visit was written by a newer version of the program. It opens for reading only; what this "
            "version doesn't know is shown as it stands."
        )
    for before, after in pairwise(trail.entries):
        if set_back(before.event.at, after.event.at):
            out.append(
                f"The clock was set back before line {after.line.n} ({before.event.at}, then "
                f"{after.event.at}). The order of the lines is right; the times are as the clock gave them."
            )
    for side in trail.beside:
        lines = "1 line was" if side.count == 1 else f"{side.count} lines were"
        out.append(
            f"{lines} written on another computer at the same time ({side.file}, from line {side.number}). "
            "They stay in the folder beside this visit."
        )
    out += [
        f"{part.name} ends in the middle of a line: it was being written when the program or the power "
        "stopped, and was never shown as saved."
        for part in trail.torn
    ]
    return out
