"""Interval arithmetic on exact ends: fractions, or an infinity as a float.

The usual interval arithmetic (Moore, Interval Analysis, 1966), in fractions, so that no step of a limit
rounds.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from fractions import Fraction
from typing import Union

End = Union[Fraction, float]


@dataclass(frozen=True)
class Span:
    """All numbers from `lo` to `hi`."""

    lo: End
    hi: End

    def __neg__(self) -> Span:
        return Span(-self.hi, -self.lo)

    def __add__(self, other: Span) -> Span:
        return Span(_sum(self.lo, other.lo, -math.inf), _sum(self.hi, other.hi, math.inf))

    def __sub__(self, other: Span) -> Span:
        return self + -other

    def __mul__(self, other: Span) -> Span:
        if WHOLE in (self, other):
            return WHOLE  # it may come from a division by zero, and then nothing makes it a number again
        ends = [_product(a, b) for a in (self.lo, self.hi) for b in (other.lo, other.hi)]
        return Span(min(ends), max(ends))

    def __truediv__(self, other: Span) -> Span:
        """By an interval that holds zero: anything."""
        if other.lo <= 0 <= other.hi:
            return WHOLE
        return self * Span(_inverse(other.hi), _inverse(other.lo))


WHOLE = Span(-math.inf, math.inf)


def _sum(a: End, b: End, outwards: float) -> End:
    if isinstance(a, float):
        return outwards if isinstance(b, float) and a != b else a
    return b if isinstance(b, float) else a + b


def _product(a: End, b: End) -> End:
    if a == 0 or b == 0:
        return Fraction(0)
    if isinstance(a, float) or isinstance(b, float):
        return math.inf if (a > 0) == (b > 0) else -math.inf
    return a * b


def _inverse(end: End) -> Fraction:
    return Fraction(0) if isinstance(end, float) else 1 / end
