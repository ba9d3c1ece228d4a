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


Given = "Uncertain | tuple[Uncertain, ...] | str"
"""What an argument is given: a value, a list of them, or one of its words."""


def carried(function: str, values: dict[str, Given], gives: str | None = None) -> Uncertain:
    """The registry's `function` of uncertain values. Raises ValueError with a sentence if it refuses one.

    `gives` names one of several results. Each value of a list is propagated like an argument of its own.
    """
    result = on_intervals(function, {name: _each(v, _span) for name, v in values.items()}, gives)
    flat: dict[tuple[str, int], Uncertain] = {}
    for name, given in values.items():
        if not isinstance(given, str):
            flat |= {(name, i): v for i, v in enumerate(given if isinstance(given, tuple) else (given,))}

    def worked_out(middles: dict[tuple[str, int], float]) -> float:
        whole = {
            name: v
            if isinstance(v, str)
            else tuple(middles[name, i] for i in range(len(v)))
            if isinstance(v, tuple)
            else middles[name, 0]
            for name, v in values.items()
        }
        got = call(function, whole)
        return got[gives] if gives is not None else got

    middle = {key: v.value.middle for key, v in flat.items()}
    known = {key: v.parts for key, v in flat.items() if v.parts}
    parts = propagated(worked_out, middle, known)
    margin = COVERAGE * standard(parts)
    return Uncertain(Interval(result.lo - margin, result.hi + margin), parts)


def middles(values: dict[str, Given]) -> dict[str, object]:
    """The best values, for the formula with the numbers in it."""
    return {name: _each(v, lambda one: one.value.middle) for name, v in values.items()}


def _each(given: Given, what):
    if isinstance(given, str):
        return given
    return tuple(map(what, given)) if isinstance(given, tuple) else what(given)


def _span(value: Uncertain) -> Interval:
    return Interval.exact(value.value.middle) if value.parts else value.value
