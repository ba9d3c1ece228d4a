"""US customary and SI: which unit of the one stands for which of the other, and what else a field may be
in.
"""

from __future__ import annotations

from assistant.quantity.kind import KINDS
from assistant.trade.entry import ANY, Argument
from assistant.trade.unit import COMPOUND

US, SI = "US customary", "SI"
SI_FOR = {
    "F": "C", "Fdiff": "K", "inwc": "Pa", "psi": "kPa", "osi": "kPa", "cfm": "Lps", "cfh": "m3h",
    "Btuh": "kW", "kBtuh": "kW", "fpm": "mps", "in": "mm", "ft": "m", "ft2": "m2", "in2": "m2", "ft3": "m3",
    "gal": "L", "btuft3": "MJm3", "hp": "kW", "inwc100ft": "Pam", "lbft3": "kgm3",
}  # fmt: skip
"""What has no entry is the same in both: volts, amperes, percent, seconds."""
READINGS = (
    "", "V", "A", "ohm", "inwc", "F", "cfm", "Btuh", "uF", "VA", "W", "percent", "s", "ft", "in", "fpm",
    "ppm",
)  # fmt: skip
"""Units offered where a reading of any kind goes in; other ones can be typed."""


def in_system(unit: str, system: str) -> str:
    """The unit that the system uses where a formula uses `unit`."""
    return SI_FOR.get(unit, unit) if system == SI else unit


def units_of(a: Argument) -> tuple[str, ...]:
    """The units that an argument's field can be switched to, the usual one first."""
    if a.choices or a.kind == "text":
        return ()
    if a.kind == ANY:
        return READINGS
    if a.kind in KINDS and a.unit:
        return (a.unit, *(unit for unit in KINDS[a.kind].units if unit != a.unit))
    si = SI_FOR.get(a.unit)
    return (a.unit, si) if a.unit in COMPOUND and si else (a.unit,) if a.unit else ()
