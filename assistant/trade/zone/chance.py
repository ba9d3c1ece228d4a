"""How sure one flow is above another, or above a share of another, given the anemometer."""

from __future__ import annotations

import math
from collections.abc import Sequence

from assistant.trade.zone.survey import Flow


def above(a: Flow, b: Flow, share: float = 1.0) -> float:
    """Probability that a is more than `share` of b (normal, independent)."""
    off, u = a.value - share * b.value, math.hypot(a.u, share * b.u)
    return 0.5 * math.erfc(-off / (u * math.sqrt(2))) if u else float(off > 0)


def mean(flows: Sequence[Flow]) -> Flow:
    """Mean of several readings with the uncertainty of the mean.

    One instrument took them all, so its share of error is common to them: the uncertainties are averaged, not
    divided.
    """
    count = len(flows)
    return Flow(sum(f.value for f in flows) / count, sum(f.u for f in flows) / count)


def middle(flows: Sequence[Flow]) -> Flow:
    """The median reading."""
    return sorted(flows, key=lambda f: f.value)[len(flows) // 2]


def all_of(chances: Sequence[float]) -> float:
    """Probability that all hold, independent."""
    return math.prod(chances)
