"""A drill's trail: practice on a simulated house. Every line of it says so; it can't be had for a visit."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from assistant.trail.error import TrailError

if TYPE_CHECKING:
    from assistant.trail.read import Trail

MARK = {"practice": True}
"""What stands in every line of a drill's trail, its first one included."""
WORDS = "PRACTICE on a simulated house. No house was visited, and this stands for no visit."


class PracticeError(TrailError):
    """A drill's trail where a visit was asked for."""


def refuse(trail: Trail, folder: Path) -> None:
    """Raises PracticeError for a drill's trail."""
    if trail.practice:
        raise PracticeError(f"{folder} holds a drill. {WORDS}")
