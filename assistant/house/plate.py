"""The rating plate's values of house.yaml, in SI beside the unit they are written in."""

from __future__ import annotations

from fractions import Fraction

from assistant.house.desk import Desk, ring
from assistant.house.fields import Form, spoken
from assistant.house.model import PlateValue
from assistant.house.numbers import number, pair
from assistant.house.quantity_fields import quantity, unit_for
from assistant.house.reader import Fields, Items
from assistant.quantity.interval import Interval
from assistant.quantity.units import UNITS, exact_si


def plate(section: Fields | None, desk: Desk) -> dict[str, PlateValue]:
    """`plate:`, ranges in SI; `over` another value of the same quantity and in no circle."""
    built = desk.forms(section, "plate value", lambda name, form: _value(name, form, desk))
    for name, value in built.items():
        lower = built.get(value.over) if value.over else None
        if lower is not None and lower.kind != value.kind:
            desk.problems.add(
                value.place,
                "unit",
                f"'{name}' is a {value.kind}, so it can't be over '{value.over}', a {lower.kind}",
            )
        circle = ring(name, lambda at: built[at].over if at in built else None)
        if circle and name == min(circle):
            desk.problems.add(
                value.place, "circle", f"plate values over each other in a circle: {' > '.join(circle)}"
            )
    return built


def _value(name: str, form: Form, desk: Desk) -> PlateValue | None:
    kind = quantity(form, desk)
    unit = unit_for(form, kind, desk)
    title = form.words("title") or form.words("ask") or spoken(name)
    form.get("ask")
    where = form.words("where", need=True)
    over = desk.known(form.text("over"), "plate", "plate value")
    by = pair(form.get("by"), "'by'", desk.problems)
    unreadable = form.words("unreadable")
    span, choices = _span(name, form, desk)
    if form.has("over") != form.has("by"):
        desk.problems.add(
            form.place(),
            "missing",
            f"plate value '{name}' needs 'over' (another plate value that is "
            "always lower) and 'by' ([least, most] difference) together",
        )
    if by is not None and by[0] < 0:
        desk.problems.add(
            form.place("by"), "number", "'by' is how much more it is; its low end can't be negative"
        )
    if kind is None or unit is None or span is None:
        return None
    low, high = (float(exact_si(end, unit)) for end in span)
    amount = UNITS[unit].factor
    return PlateValue(
        name,
        title,
        kind,
        unit,
        Interval(low, high),
        tuple(float(exact_si(choice, unit)) for choice in choices),
        over,
        Interval(float(by[0] * amount), float(by[1] * amount)) if by else None,
        where or "",
        form.place(),
        unreadable,
    )


def _span(name: str, form: Form, desk: Desk) -> tuple[tuple[Fraction, Fraction] | None, tuple[Fraction, ...]]:
    """The range in the written unit, and the only values there are (empty: any of the range)."""
    range_, one_of = form.get("range"), form.get("one_of")
    if (range_ is None) == (one_of is None):
        desk.problems.add(
            form.place(),
            "missing" if range_ is None else "field",
            f"plate value '{name}' needs one of 'range' ([low, high]) and 'one_of' (the values there are)",
        )
        return None, ()
    if one_of is None:
        return pair(range_, "'range'", desk.problems), ()
    if not isinstance(one_of, Items) or not one_of.items:
        desk.problems.add(one_of.place, "type", "'one_of' is a list of numbers such as [120, 240]")
        return None, ()
    found = [number(item, "'one_of'", desk.problems) for item in one_of.items]
    if None in found:
        return None, ()
    if sorted(set(found)) != found:
        desk.problems.add(one_of.place, "number", "the numbers of 'one_of' stand in order, each once")
        return None, ()
    return (found[0], found[-1]), tuple(found)
