"""Lines from where a lane branches off to where it begins, on one sheet, in the gutters between columns."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from assistant.tree.chart.marks import Line, Mark
from assistant.tree.chart.rows import COLUMN

TRACKS = 5
"""Lines that lie side by side in a gutter at most; a further one, or one that would cross another, is left
out: its number will do. What was walked comes first."""


@dataclass(frozen=True)
class Branch:
    """A lane that branches off at the right edge of a column, at (x, y); `walked` draws it heavy."""

    head: str
    column: int
    x: float
    y: float
    walked: bool


def connect(branches: list[Branch], heads: dict[str, tuple[int, float]], left: Callable[[int], float],
            gutter: float, heavy: float, fine: float) -> list[Mark]:
    """The lines for branches whose lane begins in the same column or in the next. `heads`: where a lane's bar
    stands, its column and height; `left`: the left edge of a column."""
    marks: list[Mark] = []
    used: dict[int, list[list[tuple[float, float]]]] = {}
    for branch in sorted(branches, key=lambda one: (not one.walked,
                                                    abs(heads.get(one.head, (0, one.y))[1] - one.y))):
        if branch.head not in heads:
            continue
        column, y = heads[branch.head]
        if column - branch.column not in (0, 1):
            continue
        span = (min(y, branch.y) - 3, max(y, branch.y) + 3)
        tracks = used.setdefault(branch.column, [[] for _ in range(TRACKS)])
        end = left(column) if column > branch.column else left(column) + COLUMN
        for track, taken in enumerate(tracks):
            x = left(branch.column) + COLUMN + gutter * (track + 1) / (TRACKS + 1)
            line = Line(((branch.x, branch.y), (x, branch.y), (x, y), (end, y)),
                        heavy if branch.walked else fine, True)
            free = all(span[1] < low or span[0] > high for low, high in taken)
            if free and not crossings([*marks, line]):
                taken.append(span)
                marks.append(line)
                break
    return marks


def crossings(marks: list[Mark]) -> int:
    """How many pairs of lines cross, an end that only touches left out."""
    flat, upright = [], []
    for mark in marks:
        if isinstance(mark, Line):
            for (x1, y1), (x2, y2) in zip(mark.points, mark.points[1:], strict=False):
                if abs(y1 - y2) < 0.01:
                    flat.append((min(x1, x2), max(x1, x2), y1))
                elif abs(x1 - x2) < 0.01:
                    upright.append((min(y1, y2), max(y1, y2), x1))
    return sum(low + 0.1 < x < high - 0.1 and top + 0.1 < y < bottom - 0.1
               for low, high, y in flat for top, bottom, x in upright)
