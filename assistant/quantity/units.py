"""From a number in a unit to SI and back, and how a number is shown.

SI inside, units at the edge. A float is taken for the shortest decimal that names it (0.1 means one tenth),
and the factor is an exact fraction; so 12 typed in in. w.c. and 12 written in a limit are the same float.
"""

from __future__ import annotations

import math
from decimal import Decimal
from fractions import Fraction

from assistant.quantity.interval import Interval
from assistant.quantity.table import UNITS, Dimension, Unit

__all__ = ["UNITS", "Dimension", "Unit", "exact_si", "from_si", "show", "show_interval", "to_si"]

# A number with at most this many digits was typed or is a round one: it is shown whole. Longer ones were
# worked out and are rounded to what the unit deserves.
_SHOWN_WHOLE = 9


def exact_si(value: Fraction, unit: str) -> Fraction:
    """`value` in `unit`, as an exact fraction in SI. Raises KeyError for an unknown unit."""
    known = UNITS[unit]
    return value * known.factor + known.offset


def to_si(value: float, unit: str) -> float:
    """`value` in `unit` as the nearest float in SI; infinities stay. Raises KeyError for an unknown unit.

    >>> to_si(12, "mV"), to_si(32, "F")
    (0.012, 273.15)
    """
    known = UNITS[unit]
    if not math.isfinite(value):
        return value
    if known.factor == 1 and not known.offset:
        return float(value)
    return _nearest(Fraction(repr(float(value))) * known.factor + known.offset)


def from_si(value_si: float, unit: str) -> float:
    """`value_si` in SI as the nearest float in `unit`; infinities stay. KeyError for an unknown unit."""
    known = UNITS[unit]
    if not math.isfinite(value_si):
        return value_si
    if known.factor == 1 and not known.offset:
        return float(value_si)
    return _nearest((Fraction(repr(float(value_si))) - known.offset) / known.factor)


def _nearest(exact: Fraction) -> float:
    try:
        return float(exact)
    except OverflowError:
        return math.inf if exact > 0 else -math.inf


def show(value_si: float, unit: str, digits: int | None = None) -> str:
    """The number in `unit` with its symbol, as on a page: "118.4 V". Never in powers of ten.

    `digits` fixes the decimals. Without it a number that was typed is shown whole and a worked-out one is
    rounded to the unit's decimals, but never below three figures that count.

    >>> show(0.012, "mV"), show(120 / 7, "V"), show(871.8, "inwc"), show(118.4, "V", 2)
    ('12 mV', '17.1 V', '3.50 in. w.c.', '118.40 V')
    """
    return _with_symbol(_number(value_si, unit, digits), unit)


def show_interval(interval: Interval, unit: str, digits: int | None = None) -> str:
    """The interval in words: "118.4 V", "4.5 to 6 V", "more than 40 Mohm", "less than 6 V", "anything"."""
    low, high = interval.lo, interval.hi
    if low == high:
        return show(low, unit, digits)
    if math.isinf(low) and math.isinf(high):
        return "anything"
    if math.isinf(high):
        return f"more than {show(low, unit, digits)}"
    if math.isinf(low):
        return f"less than {show(high, unit, digits)}"
    return f"{_number(low, unit, digits)} to {show(high, unit, digits)}"


def _with_symbol(number: str, unit: str) -> str:
    symbol = UNITS[unit].symbol
    return f"{number} {symbol}" if symbol else number


def _number(value_si: float, unit: str, digits: int | None) -> str:
    value = from_si(value_si, unit)
    if math.isnan(value):
        return "no number of"
    if math.isinf(value):
        return "unlimited" if value > 0 else "unlimited below zero"
    number = Decimal(format(value, ".12g")).normalize()
    if digits is None:
        if len(number.as_tuple().digits) <= _SHOWN_WHOLE:
            return without_idle_minus(format(number, "f"))
        digits = max(UNITS[unit].decimals, 2 - number.adjusted())
    return without_idle_minus(format(Decimal(repr(value)), f".{max(digits, 0)}f"))


def without_idle_minus(number: str) -> str:
    """The number's text, without the minus of a "-0.00"."""
    return number[1:] if number.startswith("-") and not any(c in "123456789" for c in number) else number
