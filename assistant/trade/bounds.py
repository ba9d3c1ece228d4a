"""Bounds of a result over intervals of its arguments, where corners alone would not do."""

from __future__ import annotations

from assistant.quantity.interval import Interval


def size(interval: Interval) -> Interval:
    """The interval of |x| for x in the interval."""
    low = 0.0 if interval.holds(0.0) else min(abs(interval.lo), abs(interval.hi))
    return Interval(low, max(abs(interval.lo), abs(interval.hi)))
