"""A reading over time as a straight line: a steady fall warns long before a single value does."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass


@dataclass(frozen=True)
class Line:
    """y = intercept + slope·x with standard uncertainties, their correlation, and the spread of the points
    about it.
    """

    intercept: float
    slope: float
    u_intercept: float
    u_slope: float
    correlation: float
    spread: float
    dof: int

    def at(self, x: float) -> tuple[float, float]:
        """The line's value at x and its standard uncertainty."""
        variance = (
            self.u_intercept**2
            + (x * self.u_slope) ** 2
            + 2 * x * self.u_intercept * self.u_slope * self.correlation
        )
        return self.intercept + self.slope * x, math.sqrt(max(0.0, variance))


def line(x: Sequence[float], y: Sequence[float]) -> Line:
    """Least squares, as in GUM annex H.3. Raises ValueError for fewer than three points or a single x.

    Source: GUM (JCGM 100:2008) H.3, as coded in a metrology library (read).
    """
    count = len(x)
    if count != len(y) or count < 3 or len(set(x)) < 2:
        raise ValueError("a trend needs three points or more, at two times at least")
    mean = sum(x) / count
    spread_x = sum((v - mean) ** 2 for v in x)
    slope = sum((v - mean) * w for v, w in zip(x, y, strict=True)) / spread_x
    intercept = sum(y) / count - slope * mean
    left = sum((w - intercept - slope * v) ** 2 for v, w in zip(x, y, strict=True))
    spread = math.sqrt(left / (count - 2))
    u_slope = spread / math.sqrt(spread_x)
    square = sum(v * v for v in x)
    u_intercept = u_slope * math.sqrt(square / count)
    together = -mean * count / math.sqrt(count * square)
    return Line(intercept, slope, u_intercept, u_slope, together, spread, count - 2)
