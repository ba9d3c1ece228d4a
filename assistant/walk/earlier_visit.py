"""What is told of one of our own earlier visits, as it lies in the trail of a later one."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class PastReading:
    """A reading of an earlier visit. `lo` and `hi` are its value in SI, None where it has no end."""

    kind: str
    points: tuple[str, ...]
    unit: str
    text: str
    at: str
    lo: float | None = None
    hi: float | None = None
    words: str = ""
    """The verdict of that day."""
    asked: str = ""
    """Where it was asked: tree, step and reading; empty for one that was put down by itself."""


@dataclass(frozen=True)
class PastLook:
    """What was seen on an earlier visit."""

    step: str
    thing: str
    """Its name in house.yaml."""
    value: str
    at: str


@dataclass(frozen=True)
class Past:
    """One of our own earlier visits to this address or unit, as its trail tells it."""

    visit: str
    """The name of its folder."""
    began: str
    signed: str
    complaints: tuple[str, ...] = ()
    found: tuple[str, ...] = ()
    touched: tuple[str, ...] = ()
    left: tuple[str, ...] = ()
    doubted: tuple[str, ...] = ()
    fitted: tuple[tuple[str, str], ...] = ()
    """(part, time)."""
    readings: tuple[PastReading, ...] = ()
    healthy: bool = False
    """True for a visit whose readings are this unit's healthy numbers."""
    looks: tuple[PastLook, ...] = ()
