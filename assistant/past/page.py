"""What one visit leaves in the index: how it stands in the list, its words, and what it came to."""

from __future__ import annotations

from dataclasses import dataclass, field

from assistant.trail.shelf import Shelved

SECTIONS = ("name", "complaint", "part", "finding", "reading", "note")
"""The kinds of words that a visit is found by."""


@dataclass(frozen=True)
class FoundRow:
    """A finding that was reached. `fault` is False where nothing had failed; `proof` is as in a visit's
    finding, empty where none was walked.
    """

    complaint: str
    step: str
    title: str
    fault: bool
    part: str
    proof: str
    at: str


@dataclass(frozen=True)
class StepRow:
    """A step that was answered: where it led, and how many minutes after the answer before it. `minutes` is
    None where a pause, a new day or a clock set back lies between.
    """

    complaint: str
    step: str
    verb: str
    way: str
    minutes: float | None


@dataclass(frozen=True)
class ReadRow:
    """A reading by its identity: quantity and points, with what was shown and what it was called."""

    kind: str
    points: str
    text: str
    verdict: str
    step: str
    at: str


@dataclass(frozen=True)
class Page:
    """One visit as the index holds it. `place` is what tells one address from another (trail/earlier.py);
    empty where none is known.
    """

    shelved: Shelved
    signature: str
    practice: bool = False
    place: str = ""
    words: dict[str, str] = field(default_factory=dict)
    found: tuple[FoundRow, ...] = ()
    steps: tuple[StepRow, ...] = ()
    readings: tuple[ReadRow, ...] = ()
    fitted: tuple[tuple[str, str], ...] = ()
    """(part, when)."""
