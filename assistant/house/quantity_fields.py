"""The two fields that say what a number is, `quantity` and `unit`, and a number written with its unit."""

from __future__ import annotations

from assistant.house.desk import Desk
from assistant.house.fields import Form
from assistant.house.node import Text
from assistant.house.numbers import exact_number
from assistant.house.unit_names import unit_problem
from assistant.quantity.kind import KINDS
from assistant.quantity.units import exact_si


def quantity(form: Form, desk: Desk) -> str | None:
    """The field `quantity`, a name of the quantities there are."""
    text = form.text("quantity", need=True)
    if text is None or text.value in KINDS:
        return text.value if text else None
    desk.problems.unknown(text, "quantity", KINDS)
    return None


def unit_for(form: Form, kind: str | None, desk: Desk) -> str | None:
    """The field `unit`, one of the quantity's; it may be left out where the quantity has only one."""
    only = KINDS[kind].units[0] if kind and len(KINDS[kind].units) == 1 else None
    text = form.text("unit", need=only is None)
    if text is None:
        return only
    problem = unit_problem(text.value, kind)
    if problem is None:
        return text.value
    desk.problems.add(text.place, "unit", problem)
    return None


def amount(text: Text | None, kind: str, desk: Desk) -> float | None:
    """A number with a unit of the quantity, such as `30 inwc`, in SI."""
    if text is None:
        return None
    written, _, unit = text.value.strip().partition(" ")
    value, unit = exact_number(written), unit.strip()
    if value is None or unit not in KINDS[kind].units:
        desk.problems.add(text.place, "number", f"'{text.value[:40]}' is no {KINDS[kind].words}; write a "
                          f"number and its unit, such as 30 {KINDS[kind].units[0]}")
        return None
    return float(exact_si(value, unit))
