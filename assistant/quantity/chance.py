"""The chance that a quantity lies between two limits, given what was read and how uncertain that is.

The quantity is taken as normally distributed about the reading (JCGM 106:2012, clause 7.3). The chance is
kept beside a verdict and decides nothing: the interval does.
"""

from __future__ import annotations

import math

from assistant.quantity.interval import Interval

COVERAGE = 2.0
"""Standard uncertainties to each side of a computed value (JCGM 100:2008, 6.2: about 95 %)."""


def standard_uncertainty(limits: Interval) -> float:
    """Half-width over the root of three: limits with nothing known between them (JCGM 100:2008, 4.3.7)."""
    return limits.width / 2 / math.sqrt(3) if limits.finite else math.inf


def chance_between(value: float, uncertainty: float, low: float = -math.inf, high: float = math.inf) -> float:
    """The chance that the quantity lies from `low` to `high`; all in one unit, `uncertainty` not negative.

    Raises ValueError when `low` exceeds `high`.
    """
    if low > high:
        raise ValueError(f"the low limit must not exceed the high one (got {low} and {high})")
    if uncertainty == 0:
        return 1.0 if low <= value < high or low == value == high else 0.0
    return _below(high, value, uncertainty) - _below(low, value, uncertainty)


def _below(limit: float, value: float, uncertainty: float) -> float:
    if math.isinf(limit):
        return 1.0 if limit > 0 else 0.0
    return 0.5 * math.erfc((value - limit) / (uncertainty * math.sqrt(2)))
