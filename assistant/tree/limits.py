"""Limits: expressions over plate values, readings of the same tree and registry functions, on intervals.

`parse_limit` reads the text, `unit_of` (limit_units.py) checks the units, `evaluate` works it out. The
arithmetic on the ends is exact (fractions of the decimals as written) and rounded once at the end, so that
0.9 * 120 V is the same number as a typed 108 V. What can't be known - a name without a value, a division by
an interval that holds zero, a function outside its range - is the whole line: anything is possible.
"""

from __future__ import annotations

import math
import sys
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from fractions import Fraction
from functools import lru_cache

from assistant.house.numbers import exact_number
from assistant.house.place import Place
from assistant.quantity.interval import Interval
from assistant.quantity.units import UNITS, exact_si
from assistant.tree import expression as written
from assistant.tree.expression import BadLimit, Expression, parse
from assistant.tree.limit_units import unit_of
from assistant.tree.span import WHOLE, Span

__all__ = ["BadLimit", "Limit", "evaluate", "parse_limit", "parse_quantity", "unit_of"]


@dataclass(frozen=True)
class Limit:
    """A limit as written. `names` and `functions` in order of appearance, each once. `plain`: numbers without
    a unit only, which are then in the unit of the reading that the limit judges."""

    text: str
    place: Place = field(compare=False)
    expression: Expression = field(compare=False, repr=False)
    names: tuple[str, ...]
    functions: tuple[str, ...]
    plain: bool


def parse_limit(text: str, place: Place) -> Limit:
    """Read a limit; `place` is where its first character stands. Raises BadLimit with a sentence."""
    return Limit(text, place, *_read(text))


@lru_cache(maxsize=4096)
def _read(text: str) -> tuple[Expression, tuple[str, ...], tuple[str, ...], bool]:
    """Expression, names, functions and whether it is nothing but numbers without a unit."""
    expression = parse(text)
    parts = list(_parts(expression))
    names = dict.fromkeys(part.name for part in parts if isinstance(part, written.Name))
    functions = dict.fromkeys(part.function for part in parts if isinstance(part, written.Applied))
    units = any(isinstance(part, written.Number) and part.unit for part in parts)
    return expression, tuple(names), tuple(functions), not (names or functions or units)


def parse_quantity(text: str) -> tuple[float, str] | None:
    """A number with its unit as a tree file writes it ("5 min", "-0.1 inwc", "20"), as (number, unit); None
    when it is none. A number without a unit has the unit `count`.
    """
    number, _, unit = text.strip().partition(" ")
    value, unit = exact_number(number), unit.strip() or "count"
    return None if value is None or unit not in UNITS else (float(value), unit)


def evaluate(limit: Limit, env: Mapping[str, Interval], unit: str) -> Interval:
    """Every value that the limit can have, in SI, given the intervals of its names in `env` (SI).

    `unit` is the unit of the reading that is judged. Never raises for a limit that parsed and a known unit.
    """
    span = _worked_out(limit.expression, env)
    if limit.plain:
        span = Span.of(*(end if isinstance(end, float) else exact_si(end, unit) for end in span.ends))
    return _interval(span)


def _worked_out(part: Expression, env: Mapping[str, Interval]) -> Span:
    if isinstance(part, written.Number):
        return Span(part.si, part.si)
    if isinstance(part, written.Name):
        value = env.get(part.name)
        return WHOLE if value is None else _span(value)
    if isinstance(part, written.Negative):
        return -_worked_out(part.of, env)
    if isinstance(part, written.Applied):
        return _applied(part, env)
    left, right = _worked_out(part.left, env), _worked_out(part.right, env)
    if part.sign == "+":
        return left + right
    if part.sign == "-":
        return left - right
    return left * right if part.sign == "*" else left / right


def _applied(part: written.Applied, env: Mapping[str, Interval]) -> Span:
    from assistant.trade.registry import REGISTRY, on_intervals

    entry = REGISTRY.get(part.function)
    spans = [_worked_out(argument, env) for argument in part.arguments]
    if entry is None or not entry.monotone:
        return WHOLE
    values = {argument.name: _interval(span) for argument, span in zip(entry.arguments, spans, strict=False)}
    try:
        result = on_intervals(part.function, values)
    except (ValueError, ArithmeticError):
        return WHOLE
    return _span(result)


def _span(value: Interval) -> Span:
    low = _exact(value.lo)
    return Span(low, low if value.lo == value.hi else _exact(value.hi))


def _interval(span: Span) -> Interval:
    low = _float(span.lo, -1)
    single = len(span.ends) == 1 and abs(low) < sys.float_info.max
    return Interval(low, low if single else _float(span.hi, +1))


@lru_cache(maxsize=1024)
def _exact(end: float) -> Fraction | float:
    """The decimal that the float stands for, exactly; infinities stay."""
    return Fraction(repr(float(end))) if math.isfinite(end) else float(end)


def _float(end: Fraction | float, side: int) -> float:
    """The nearest float; beyond the greatest one, outwards: -1 for a low end, +1 for a high one."""
    try:
        return float(end)
    except OverflowError:
        if (end > 0) == (side > 0):
            return side * math.inf
        return -side * sys.float_info.max


def _parts(part: Expression) -> Iterator[Expression]:
    yield part
    if isinstance(part, written.Negative):
        yield from _parts(part.of)
    elif isinstance(part, written.Joined):
        yield from _parts(part.left)
        yield from _parts(part.right)
    elif isinstance(part, written.Applied):
        for argument in part.arguments:
            yield from _parts(argument)
