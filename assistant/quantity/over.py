"""OL: more than the meter's range can show. On ohms that is a reading; elsewhere it has to be taken again.

It is understood as "OL", "O.L", "0L", "o l", "over", "OL 40M", ">40M". On resistance and insulation it means
from the top of the range (typed, or the instrument's) to infinity; it never means "infinite", "open" or
"good" by itself.
"""

from __future__ import annotations

import math
import re
from dataclasses import replace

from assistant.quantity.amount import amounts
from assistant.quantity.figure import with_dots
from assistant.quantity.interval import Interval
from assistant.quantity.kind import Kind
from assistant.quantity.meaning import Doubt, UnclearError, Understood, quoted, refuse
from assistant.quantity.spelling import unit_meant
from assistant.quantity.table import UNITS
from assistant.quantity.units import show

_OVER = re.compile(
    r"(?P<sign>[+-]?) ?(?:\.? ?[o0] ?[.,]? ?l ?\.?|over(?: ?load| ?range)?|ofl|(?P<more>>))"
    r"(?![a-z])(?P<rest>.*)",
    re.IGNORECASE,
)
_LEAD_IN = re.compile(r"^ ?(?:at|on|over|above|>|\()? ?|(?: ?range)? ?\)?$", re.IGNORECASE)


def over_range(text: str, kind: Kind, field: str, range_top: float | None) -> Understood | None:
    """The OL that `text` is, or None when it is none; `range_top` in SI. Raises UnclearError."""
    found = _OVER.fullmatch(text)
    if found is None or _is_a_number(text, kind, field):
        return None
    if not kind.over_range:
        if found["more"]:
            return None
        raise refuse(kind.over_sentence)
    if found["sign"] == "-":
        raise refuse(kind.minus_sentence)
    rest = _LEAD_IN.sub("", found["rest"])
    if any(c.isdigit() for c in rest):
        return _typed_top(rest, kind, field)
    if found["more"]:
        raise refuse(f"{quoted(text)} has no number. Write OL, or OL 40M with the top of the range.")
    unit = unit_meant(rest, kind, field) if rest else field
    return _known_top(range_top, unit, kind)


def _is_a_number(text: str, kind: Kind, field: str) -> bool:
    """ "0 L" is zero litres where litres are asked for."""
    try:
        amounts(with_dots(text), kind, field)
    except UnclearError:
        return False
    return True


def _typed_top(rest: str, kind: Kind, field: str) -> Understood:
    try:
        tops = amounts(with_dots(rest), kind, field)
    except UnclearError as unclear:
        if isinstance(unclear.meaning, Doubt):
            over = tuple(f"OL {choice}" for choice in unclear.meaning.choices)
            raise UnclearError(Doubt(unclear.meaning.message, over)) from None
        raise
    if len(tops) != 1 or tops[0].si <= 0:
        raise refuse("Behind OL write one number, the top of the range, like OL 40M.")
    top = tops[0]
    return _over(float(top.si), top.unit, f"more than {top.shown}", kind)


def _known_top(range_top: float | None, unit: str, kind: Kind) -> Understood:
    if range_top is None or not 0 < range_top < math.inf:
        return replace(_over(0.0, unit, "the top of the range is not known", kind), top_known=False)
    return _over(float(range_top), unit, f"more than {show(range_top, _readable(range_top, kind))}", kind)


def _over(top: float, unit: str, words: str, kind: Kind) -> Understood:
    echo = f"over the meter's range: {words}"
    return Understood(Interval(top, math.inf), unit, echo, over_range=True, kind=kind.name)


def _readable(value_si: float, kind: Kind) -> str:
    """The kind's largest unit in which the value is at least one."""
    fitting = [name for name in kind.units if UNITS[name].factor <= value_si]
    return max(fitting or kind.units[:1], key=lambda name: UNITS[name].factor)
