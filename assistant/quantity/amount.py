"""The ends of an entry in SI: sign, figure and unit put together, exactly.

In a spread a unit written once holds for both ends ("4.5-6 mV"). "5 ft 3 in", "2 min 30 s" and "1:30" are one
amount.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from assistant.quantity.figure import clock, figure
from assistant.quantity.kind import Kind
from assistant.quantity.meaning import Doubt, UnclearError, quoted, refuse
from assistant.quantity.spelling import is_thousandth_of_ohm, unit_meant, unit_named
from assistant.quantity.split import End, ends
from assistant.quantity.table import UNITS
from assistant.quantity.units import exact_si

_IN_PARTS = {"length": ("ft", "in"), "duration": ("h", "min", "s")}


@dataclass(frozen=True)
class Amount:
    """One end in SI. `number` is the figure with its sign as shown, `unit` the unit it was typed in.

    `step` is one count of the last digit in SI, None for a fraction. `plain` is False where the figure is no
    decimal number in one unit (3/8, 1:30, 5 ft 3 in); `number` then holds its units where there are several.
    """

    si: Fraction
    step: Fraction | None
    number: str
    unit: str
    plain: bool = True
    has_units: bool = False

    @property
    def shown(self) -> str:
        """Number and unit as on a page."""
        symbol = UNITS[self.unit].symbol
        return self.number if self.has_units or not symbol else f"{self.number} {symbol}"


def amounts(text: str, kind: Kind, field: str) -> tuple[Amount, ...]:
    """The one or two ends of an entry with decimal dots, in the order typed. Raises UnclearError."""
    typed = ends(text, kind)
    _ask_about_small_m(typed, kind)
    if len(typed) == 1:
        return (_amount(typed[0], kind, field, ""),)
    first, second = (end.pairs[-1][1] for end in typed)
    return _amount(typed[0], kind, field, first or second), _amount(typed[1], kind, field, second or first)


def _amount(end: End, kind: Kind, field: str, unit_text: str) -> Amount:
    if end.sign and not kind.can_be_negative:
        raise refuse(kind.minus_sentence)
    if len(end.pairs) > 1:
        return _in_parts(end, kind)
    text, own_unit = end.pairs[0]
    if ":" in text:
        return _time(text, own_unit, kind, field)
    meant = figure(text, kind)
    unit = unit_meant(own_unit or unit_text, kind, field)
    factor = UNITS[unit].factor
    return Amount(
        si=exact_si(-meant.value if end.sign else meant.value, unit),
        step=None if meant.step is None else meant.step * factor,
        number=end.sign + meant.shown if meant.value else meant.shown,
        unit=unit,
        plain=meant.step is not None,
    )


def _time(text: str, unit_text: str, kind: Kind, field: str) -> Amount:
    if kind.name != "duration":
        raise refuse(f"{quoted(text)} is a time; {kind.words} is asked for. Write it like {kind.example}.")
    unit = unit_meant(unit_text, kind, field)
    meant = None if unit_text and unit == "s" else clock(text, hours=unit == "h")
    if meant is None:
        raise refuse(f"{quoted(text)} is not a time. Write minutes and seconds like 1:30, or like 90 s.")
    return Amount(meant.value, meant.step, meant.shown, field, plain=False, has_units=True)


def _in_parts(end: End, kind: Kind) -> Amount:
    order = _IN_PARTS.get(kind.name, ())
    units = [unit_named(unit_text, kind, kind.units[0]) if unit_text else None for _, unit_text in end.pairs]
    places = [order.index(unit) for unit in units if unit in order]
    if len(places) < len(units) or places != sorted(set(places)):
        raise refuse(f"{quoted(end.typed)} is more than one number. Write one, like {kind.example}.")
    if any(text.startswith(".") for text, _ in end.pairs[1:]):
        # The dot of "4 ft.6 in" may end the unit or begin the number.
        raise refuse(f"{quoted(end.typed)} has a dot between a unit and a number. Write it in one unit.")
    figures = [figure(text, kind) for text, _ in end.pairs]
    for larger, unit, smaller, below in zip(figures, units, figures[1:], units[1:], strict=False):
        fits = smaller.value * UNITS[below].factor < UNITS[unit].factor
        if larger.value.denominator != 1 or larger.step != 1 or not fits:
            raise refuse(f"{quoted(end.typed)} does not add up. Write it in one unit, like {kind.example}.")
    parts = list(zip(figures, units, strict=True))
    shown = " ".join(f"{meant.shown} {UNITS[unit].symbol}" for meant, unit in parts)
    step = figures[-1].step
    return Amount(
        si=sum((exact_si(meant.value, unit) for meant, unit in parts), Fraction(0)),
        step=None if step is None else step * UNITS[units[-1]].factor,
        number=shown, unit=units[-1], plain=False, has_units=True,
    )


def _ask_about_small_m(typed: tuple[End, ...], kind: Kind) -> None:
    pairs = [end.pairs[0] for end in typed]
    if any(end.sign or len(end.pairs) > 1 for end in typed):
        return
    spellings = [spelling for _, spelling in pairs if spelling]
    if not spellings or not all(is_thousandth_of_ohm(spelling, kind) for spelling in spellings):
        return
    values = [figure(text, kind) for text, _ in pairs]
    if any(value.step is None for value in values):
        return
    large = " to ".join(text for text, _ in pairs)
    thousandths = " to ".join(_thousandth(value.shown) for value in values)
    raise UnclearError(Doubt(
        "m is a thousandth and M is a million. Which is it?", (f"{large} Mohm", f"{thousandths} ohm"),
    ))


def _thousandth(shown: str) -> str:
    whole, _, decimals = shown.partition(".")
    whole = whole.zfill(4)
    return f"{whole[:-3]}.{whole[-3:]}{decimals}"
