"""The only way in for a reading: what a technician typed, as an interval with a unit.

understand() takes any text for a quantity and its field's unit and gives Blank, Understood, Doubt or
NotUnderstood; it never raises on a text. It holds no safe or expected limits: a reading that makes no sense
is still what was typed and is judged elsewhere. Nothing is rounded, clipped or filled in.
"""

from __future__ import annotations

from assistant.quantity.amount import Amount, amounts
from assistant.quantity.figure import with_dots
from assistant.quantity.interval import Interval
from assistant.quantity.kind import KINDS, Kind
from assistant.quantity.meaning import Blank, Doubt, Meaning, NotUnderstood, UnclearError, Understood, refuse
from assistant.quantity.over import over_range
from assistant.quantity.signs import plain
from assistant.quantity.units import show, show_interval

__all__ = ["Blank", "Doubt", "Meaning", "NotUnderstood", "Understood", "understand"]


def understand(text: str, kind: str, unit: str, range_top: float | None = None) -> Meaning:
    """What `text` means as a reading of `kind` (a name in KINDS) in a field whose unit is `unit`.

    `range_top` in SI is the top of the instrument's range, for an OL typed without one. Never raises on a
    text; raises ValueError for an unknown kind or a unit that the kind doesn't have.

    >>> understand("118,4", "ac_voltage", "V").echo
    '118.4 V'
    >>> understand("OL 40M", "resistance", "ohm").echo
    "over the meter's range: more than 40 Mohm"
    >>> understand("1,200", "resistance", "ohm").choices
    ('1200', '1.200')
    """
    if kind not in KINDS:
        raise ValueError(f"unknown quantity {kind!r}")
    if unit not in KINDS[kind].units:
        raise ValueError(f"{kind} has no unit {unit!r}; it has {', '.join(KINDS[kind].units)}")
    meaning = _meaning(text, KINDS[kind], unit, range_top)
    if isinstance(meaning, Doubt):
        return _with_good_choices(meaning, KINDS[kind], unit, range_top)
    return meaning


def _meaning(text: str, kind: Kind, field: str, range_top: float | None) -> Meaning:
    try:
        typed = plain(text)
        if not typed:
            return Blank()
        over = over_range(typed, kind, field, range_top)
        return over or _reading(amounts(with_dots(typed), kind, field), kind, field)
    except UnclearError as unclear:
        return unclear.meaning


def _with_good_choices(
    doubt: Doubt, kind: Kind, field: str, range_top: float | None
) -> Doubt | NotUnderstood:
    """The doubt with only the choices that are understood; one in doubt itself gives its own choices."""
    good: dict[str, None] = {}
    refusal = None
    waiting = list(doubt.choices)
    while waiting:
        choice = waiting.pop(0)
        meaning = _meaning(choice, kind, field, range_top)
        if isinstance(meaning, Understood):
            good[choice] = None
        elif isinstance(meaning, Doubt):
            waiting = [*meaning.choices, *waiting]
        elif isinstance(meaning, NotUnderstood):
            refusal = refusal or meaning
    return Doubt(doubt.message, tuple(good)) if good else refusal or NotUnderstood(doubt.message)


def _reading(typed: tuple[Amount, ...], kind: Kind, field: str) -> Understood:
    ordered = sorted(typed, key=lambda end: end.si)
    low, high = ordered[0], ordered[-1]
    if kind.name == "temperature" and low.si < 0:
        raise refuse(f"{low.shown} is colder than anything can be. Look at the sign and the unit.")
    unit = typed[-1].unit
    steps = [end.step for end in typed if end.step is not None]
    step = min(steps) if steps else None
    interval = Interval(float(low.si), float(high.si))
    echo = low.shown if low.shown == high.shown else _between(low, high)
    if high.si == 0 and kind.low_is_zero and step:
        interval = Interval(0.0, float(step / 2))
        echo = f"{echo}: at most {show(interval.hi, unit)}"
    elif any(end.unit != field or not end.plain for end in typed):
        echo = f"{echo} ({show_interval(interval, field)})"
    return Understood(interval, unit, echo, None if step is None else float(step), kind=kind.name)


def _between(low: Amount, high: Amount) -> str:
    one_unit = low.unit == high.unit and not low.has_units and not high.has_units
    return f"{low.number if one_unit else low.shown} to {high.shown}"
