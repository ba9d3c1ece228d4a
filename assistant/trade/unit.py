"""Units as the trade's formulas need them: those a person types, and a few compound ones only formulas speak.

The compound ones never stand in an entry field, so they live here and not in assistant/quantity.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from assistant.quantity.units import UNITS
from assistant.quantity.units import from_si as _from_si
from assistant.quantity.units import to_si as _to_si
from assistant.trade.constants import BTU, CUBIC_FOOT, FOOT, INCH_WATER, LB_FT3

POUND = 0.45359237
"""One pound, kg."""


@dataclass(frozen=True)
class Compound:
    """A compound unit: SI value = `factor` × number."""

    name: str
    symbol: str
    factor: float


COMPOUND = {
    u.name: u
    for u in (
        Compound("lbft3", "lb/ft3", LB_FT3),
        Compound("kgm3", "kg/m3", 1.0),
        Compound("btuhcfmF", "Btu/h per cfm and °F", BTU / 3600 / (CUBIC_FOOT / 60) * 9 / 5),
        Compound("inwc100ft", "in. w.c. per 100 ft", INCH_WATER / (100 * FOOT)),
        Compound("Pam", "Pa/m", 1.0),
        Compound("J", "J", 1.0),
        Compound("lbh", "lb/h", POUND / 3600),
        Compound("wattcfm", "W/cfm", 60 / CUBIC_FOOT),
        Compound("cfmft2", "cfm/ft2", CUBIC_FOOT / 60 / FOOT**2),
    )
}


def to_si(value: float, unit: str) -> float:
    """`value` in `unit`, in SI; no unit: as it is. Raises KeyError for an unknown unit."""
    if not unit:
        return float(value)
    if unit in COMPOUND:
        return value * COMPOUND[unit].factor
    return _to_si(value, unit)


def from_si(value: float, unit: str) -> float:
    """An SI value in `unit`; no unit: as it is. Raises KeyError for an unknown unit."""
    if not unit or not math.isfinite(value):
        return value
    if unit in COMPOUND:
        return value / COMPOUND[unit].factor
    return _from_si(value, unit)


def symbol(unit: str) -> str:
    """The unit as printed. A temperature difference prints as °F: the words beside it say so."""
    if not unit:
        return ""
    if unit in COMPOUND:
        return COMPOUND[unit].symbol
    return "°F" if unit == "Fdiff" else UNITS[unit].symbol


def known(unit: str) -> bool:
    """Whether this module can convert the unit."""
    return unit in UNITS or unit in COMPOUND
