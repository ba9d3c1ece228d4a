"""Which unit somebody meant by what stands behind the number.

Only the units of the field's quantity are looked at, so that `"` is an inch for a length and an inch of water
for a pressure, and F is a temperature or a difference. Case is forgiven except where it decides a factor of a
thousand million: m is a thousandth, M a million.
"""

from __future__ import annotations

import re

from assistant.quantity.kind import KINDS, Kind
from assistant.quantity.meaning import quoted, refuse
from assistant.quantity.table import UNITS, Unit

# A capital K, U or N and a small g can't be mistaken for another prefix; m and M can.
_ONE_CASE = {"K": "k", "U": "u", "N": "n", "g": "G"}
_PREFIXES = ("m", "M", "k", "K", "u", "n", "G")
_SUPPLY = re.compile(r"(.*?)(ac|dc)", re.IGNORECASE)


def _index(kind: Kind) -> dict[str, str]:
    """Every spelling of the kind's units: lower case as it is, the strict ones with a mark in front."""
    index: dict[str, str] = {}
    for name in kind.units:
        unit = UNITS[name]
        for spelling in unit.spellings:
            index.setdefault(spelling, name)
        for spelling in unit.strict:
            index.setdefault(_strict(spelling), name)
    return index


def _strict(spelling: str) -> str:
    return "=" + spelling[:1] + spelling[1:].lower()


_INDEX = {name: _index(kind) for name, kind in KINDS.items()}
_RELATIVES = {
    (name, unit.stem, unit.prefix): unit.name
    for name, kind in KINDS.items() for unit in map(UNITS.__getitem__, kind.units) if unit.prefix
}
_ANYWHERE = {spelling: kind for kind in reversed(KINDS.values()) for spelling in _INDEX[kind.name]}


def compact(spelling: str) -> str:
    """The spelling without spaces and dots: "in. w.c." is "inwc"."""
    return spelling.replace(" ", "").replace(".", "")


def unit_named(spelling: str, kind: Kind, field: str) -> str | None:
    """The name of the kind's unit that is spelled so, None when there is none; "" is the field's own unit.

    A lone prefix ("1.2k") means that multiple of the field's unit.
    """
    short = compact(spelling)
    if not short or short in kind.units:
        return short or field
    index = _INDEX[kind.name]
    found = index.get(_strict(short)) or index.get(short.lower())
    if found:
        return found
    if short == "deg" and kind.name in ("temperature", "temperature_difference"):
        return field
    stem = UNITS[field].stem
    return _RELATIVES.get((kind.name, stem, _ONE_CASE.get(short, short)))


def unit_meant(spelling: str, kind: Kind, field: str) -> str:
    """As unit_named, also for "24 Vac"; raises UnclearError with the units that fit when there is none."""
    found = unit_named(spelling, kind, field)
    if found:
        return found
    supply = _SUPPLY.fullmatch(compact(spelling))
    if supply and kind.name in ("ac_voltage", "dc_voltage", "ac_current", "dc_current"):
        found = unit_named(supply[1], kind, field)
        if found and kind.name.startswith(supply[2].lower()):
            return found
        if found:
            raise refuse(
                f"{quoted(spelling)} is a reading in {supply[2].upper()}, and {kind.words} is asked for. "
                "Look at the meter's function and take it again."
            )
    raise refuse(f"{_what_it_is(spelling, kind)} Write it in {units_that_fit(kind)}, like {kind.example}.")


def is_thousandth_of_ohm(spelling: str, kind: Kind) -> bool:
    """True for a small m on ohms: no pocket meter reads thousandths of an ohm, so a person is asked."""
    small = compact(spelling).lower() in ("m", "mohm", "mohms") and spelling.startswith("m")
    return small and UNITS[kind.units[0]].stem == "ohm"


def units_that_fit(kind: Kind) -> str:
    """ "V, mV or kV": the units that the kind's readings are written in."""
    symbols = [_typed(UNITS[name]) for name in kind.units]
    return symbols[0] if len(symbols) == 1 else f"{', '.join(symbols[:-1])} or {symbols[-1]}"


def _typed(unit: Unit) -> str:
    return unit.name if unit.symbol in ("", "in. w.c.") or unit.name == "Fdiff" else unit.symbol


def _what_it_is(spelling: str, kind: Kind) -> str:
    short = compact(spelling)
    if short[:1] == "M" and unit_named("m" + short[1:], kind, kind.units[0]):
        return f"{quoted(spelling)} with a large M is a million; a thousandth is a small m."
    other = _ANYWHERE.get(_strict(short)) or _ANYWHERE.get(short.lower())
    if other is None or short in _PREFIXES:
        return f"{quoted(spelling)} is not a unit of {kind.words}."
    return f"{quoted(spelling)} is a unit of {other.words}, and {kind.words} is asked for."
