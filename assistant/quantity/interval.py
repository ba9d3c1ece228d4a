"""An interval of real numbers: what a reading may be, given how it was typed and taken.

Everything is in SI base units. A reading whose width is zero is the usual beginning; a spread such as
4.5-6, a display's half count or an instrument's accuracy widens it. Arithmetic is the usual interval
arithmetic (Moore, Interval Analysis, 1966): the result holds every value that the inputs allow.
"""

from __future__ import annotations

import math
from dataclasses import dataclass


@dataclass(frozen=True)
class Interval:
    """All numbers from `lo` to `hi`, both included; either end may be infinite, neither may be NaN.

    Raises ValueError when an end is NaN or `lo` is greater than `hi`.
    """

    lo: float
    hi: float

    def __post_init__(self) -> None:
        if math.isnan(self.lo) or math.isnan(self.hi):
            raise ValueError("an interval's ends must be numbers (got NaN)")
        if self.lo > self.hi:
            raise ValueError(f"an interval's low end must not exceed its high one (got {self.lo}, {self.hi})")

    @staticmethod
    def exact(value: float) -> Interval:
        """The interval of width zero at `value`."""
        return Interval(value, value)

    @property
    def width(self) -> float:
        return self.hi - self.lo if self.hi != self.lo else 0.0

    @property
    def middle(self) -> float:
        """The midpoint; the finite end where the other is infinite."""
        if math.isinf(self.lo) or math.isinf(self.hi):
            return self.lo if math.isfinite(self.lo) else self.hi
        return self.lo if self.lo == self.hi else (self.lo + self.hi) / 2

    @property
    def finite(self) -> bool:
        return math.isfinite(self.lo) and math.isfinite(self.hi)

    def holds(self, value: float) -> bool:
        return self.lo <= value <= self.hi

    def within(self, other: Interval) -> bool:
        return other.lo <= self.lo and self.hi <= other.hi

    def meets(self, other: Interval) -> bool:
        return self.lo <= other.hi and other.lo <= self.hi

    def __neg__(self) -> Interval:
        return Interval(-self.hi, -self.lo)

    def __add__(self, other: Interval) -> Interval:
        return Interval(self.lo + other.lo, self.hi + other.hi)

    def __sub__(self, other: Interval) -> Interval:
        return self + (-other)

    def __mul__(self, other: Interval) -> Interval:
        ends = [_product(a, b) for a in (self.lo, self.hi) for b in (other.lo, other.hi)]
        return Interval(min(ends), max(ends))

    def __truediv__(self, other: Interval) -> Interval:
        """Raises ZeroDivisionError when the divisor holds zero."""
        if other.holds(0.0):
            raise ZeroDivisionError("an interval that holds zero can't divide")
        return self * Interval(1 / other.hi, 1 / other.lo)


def _product(a: float, b: float) -> float:
    return 0.0 if a == 0 or b == 0 else a * b
