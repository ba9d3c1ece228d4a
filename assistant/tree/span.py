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

    @property
    def ends(self) -> tuple[End, ...]:
        """One end where both are the same object, as for a single value: fractions are slow to compare."""
        single = self.lo is self.hi and not isinstance(self.lo, float)
        return (self.lo,) if single else (self.lo, self.hi)

    @property
    def is_whole(self) -> bool:
        return isinstance(self.lo, float) and isinstance(self.hi, float)

    @staticmethod
    def of(*ends: End) -> Span:
        """The span from the first end to the last."""
        return Span(ends[0], ends[-1])

    def __neg__(self) -> Span:
        return Span.of(*(-end for end in reversed(self.ends)))

    def __add__(self, other: Span) -> Span:
        if len(self.ends) == len(other.ends) == 1:
            return Span.of(_sum(self.lo, other.lo, -math.inf))
        return Span(_sum(self.lo, other.lo, -math.inf), _sum(self.hi, other.hi, math.inf))

    def __sub__(self, other: Span) -> Span:
        return self + -other

    def __mul__(self, other: Span) -> Span:
        if self.is_whole or other.is_whole:
            return WHOLE  # it may come from a division by zero, and then nothing makes it a number again
        ends = [_product(a, b) for a in self.ends for b in other.ends]
        return Span(ends[0], ends[0]) if len(ends) == 1 else Span(min(ends), max(ends))

    def __truediv__(self, other: Span) -> Span:
        """By an interval that holds zero: anything."""
        if other.lo <= 0 <= other.hi:
            return WHOLE
        return self * Span.of(*(_inverse(end) for end in reversed(other.ends)))


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
