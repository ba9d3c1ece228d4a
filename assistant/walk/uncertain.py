"""A computed value and how uncertain it is: plus and minus two standard uncertainties.

A plate value that nobody could read is no random quantity: it stays a span, and the result spans it too.
"""

from __future__ import annotations

from dataclasses import dataclass, field

from assistant.quantity.chance import COVERAGE
from assistant.quantity.interval import Interval
from assistant.quantity.propagate import propagated, standard
from assistant.trade.registry import call, on_intervals


@dataclass(frozen=True)
class Uncertain:
    """A value with the signed standard-uncertainty contribution of each base reading (SI)."""

    value: Interval
    parts: dict[int, float] = field(default_factory=dict)


def carried(function: str, values: dict[str, Uncertain]) -> Uncertain:
    """The registry's `function` of uncertain values. Raises ValueError with a sentence if it refuses one."""
    spans = {name: Interval.exact(v.value.middle) if v.parts else v.value for name, v in values.items()}
    result = on_intervals(function, spans)
    middle = {name: v.value.middle for name, v in values.items()}
    known = {name: v.parts for name, v in values.items() if v.parts}
    parts = propagated(lambda given: call(function, given), middle, known)
    margin = COVERAGE * standard(parts)
    return Uncertain(Interval(result.lo - margin, result.hi + margin), parts)
