"""Names of quantities and units as files write them, with what to write instead."""

from __future__ import annotations

from assistant.house.nearest import suggestion
from assistant.quantity.kind import KINDS
from assistant.quantity.units import UNITS


def unit_suggestion(word: str) -> str:
    """ "; write 'V'" for a spelling such as volts, in. w.c. or %; otherwise the nearest unit's name, or
    nothing.
    """
    bare = word.replace(" ", "").replace(".", "")
    for unit in UNITS.values():
        if bare in unit.strict or bare.lower() in unit.spellings or word == unit.symbol:
            return f"; write '{unit.name}'"
    return suggestion(word, UNITS)


def unit_problem(unit: str, kind: str | None) -> str | None:
    """Why `unit` can't be the unit of a reading of `kind` (None: any), or None when it can."""
    if unit not in UNITS:
        return f"'{unit}' is no unit{unit_suggestion(unit)}"
    if kind is None or unit in KINDS[kind].units:
        return None
    allowed = ", ".join(KINDS[kind].units)
    return f"'{unit}' is no unit of the quantity {kind}; there is {allowed}"
