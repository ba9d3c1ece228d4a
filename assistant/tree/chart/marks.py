"""What a diagram is drawn of: boxes, lines and words with places in points, y downwards.

`ink` is one of: ink (text and lines), quiet (what stands back), paper (on a dark box), soft (a light ground).
"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Union


@dataclass(frozen=True)
class Box:
    """A rectangle, `round` at its corners; `fill` is an ink or None, `weight` the width of its line."""

    x: float
    y: float
    width: float
    height: float
    weight: float = 0.8
    fill: str | None = None
    dashed: bool = False
    round: float = 0.0


@dataclass(frozen=True)
class Line:
    """A line through points; `arrow` at its last."""

    points: tuple[tuple[float, float], ...]
    weight: float = 0.8
    arrow: bool = False
    ink: str = "ink"


@dataclass(frozen=True)
class Words:
    """One line of text; y is its base line. `anchor` is start, middle or end."""

    x: float
    y: float
    text: str
    size: float
    bold: bool = False
    ink: str = "ink"
    anchor: str = "start"


Mark = Union[Box, Line, Words]


@dataclass
class Sheet:
    """One sheet with its marks; `places` is where each step's box lies on it: x, y, width, height."""

    number: int
    marks: list[Mark] = field(default_factory=list)
    places: dict[str, tuple[float, float, float, float]] = field(default_factory=dict)


@dataclass(frozen=True)
class Chart:
    """A whole diagram: sheets of one size. `title` stands on each, `crossings` counts lines that cross."""

    title: str
    width: float
    height: float
    sheets: tuple[Sheet, ...]
    crossings: int = 0
    numbers: dict[str, str] = field(default_factory=dict)
    """Step -> the number that its box has, "12" or "F3"."""

    def step_of(self, number: str) -> str | None:
        """The drawn step with this number."""
        wanted = number.lower()
        named = (step for step, own in self.numbers.items() if own.lower() == wanted)
        return next((step for step in named if self.sheet_of(step)), None)

    def sheet_of(self, step: str) -> Sheet | None:
        """The sheet on which a step's box stands."""
        return next((sheet for sheet in self.sheets if step in sheet.places), None)
