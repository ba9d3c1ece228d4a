"""The records of what the report tells around the walk; assistant/report/beside.py fills them."""

from __future__ import annotations

from dataclasses import dataclass

from assistant.house.model import Tonight
from assistant.walk.earlier_visit import Past
from assistant.walk.event import Advised
from assistant.walk.waiting import Wanted


@dataclass(frozen=True)
class SheetTold:
    """A sheet: its title, what was answered, and what nobody answered."""

    title: str
    answers: tuple[tuple[str, str], ...]
    skipped: tuple[str, ...] = ()


@dataclass(frozen=True)
class Setting:
    """One setting as found and as left; an empty side was not written down."""

    what: str
    found: str
    left: str

    @property
    def differs(self) -> bool:
        return bool(self.found and self.left) and self.found.strip() != self.left.strip()


@dataclass(frozen=True)
class Warranty:
    """A part that was fitted or is wanted, for the warranty desk."""

    part: str
    finding: str
    fitted: str
    ruled_out: tuple[str, ...]
    conclusion: str
    again: tuple[str, ...]
    """When we fitted one here before."""
    number: str = ""
    """Part number of the one that was fitted; empty where nobody wrote it down."""
    ordered: str = ""
    """Part number and supplier of the order, as they were written down."""


@dataclass(frozen=True)
class Beside:
    """Everything around the walk, ready to be read; empty where nothing was written down."""

    sheets: tuple[SheetTold, ...] = ()
    unit: tuple[tuple[str, str], ...] = ()
    settings: tuple[Setting, ...] = ()
    photos_found: tuple[str, ...] = ()
    photos_left: tuple[str, ...] = ()
    wanted: tuple[Wanted, ...] = ()
    wanted_mark: str = ""
    """How well it is known what a substitute must not differ in."""
    order: tuple[tuple[str, str], ...] = ()
    next_time: tuple[str, ...] = ()
    advice: tuple[Advised, ...] = ()
    outlook: tuple[tuple[str, str], ...] = ()
    options: tuple[tuple[str, str], ...] = ()
    past: tuple[Past, ...] = ()
    twice: tuple[str, ...] = ()
    warranty: tuple[Warranty, ...] = ()
    compared: tuple[tuple[str, str, str, str], ...] = ()
    """(what was read, the earlier reading and its day, today's, how it differs)."""
    tonight: Tonight | None = None
    """The plan for a house that is left without heat."""
    tonight_said: tuple[tuple[str, str], ...] = ()
    """What was said and agreed about that night: (question, answer)."""
    baseline: bool = False
    healthy: tuple[tuple[str, str], ...] = ()
    """Of a healthy unit: (what was read, the value), the last of each place."""
