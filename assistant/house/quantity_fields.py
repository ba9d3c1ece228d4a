"""The two fields that say what a number is: `quantity` and `unit`."""

from __future__ import annotations

from assistant.house.desk import Desk
from assistant.house.fields import Form
from assistant.house.unit_names import unit_problem
from assistant.quantity.kind import KINDS


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
