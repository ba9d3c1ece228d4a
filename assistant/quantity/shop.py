"""The shop's list of instruments, from plain lists and texts to Instruments, with every error as a sentence.

One entry: name, covers (list of kinds), and optional percent, counts (each one value for all kinds, or a
value per kind), resolution and range_top (a value per kind), impedance (low or high) and lead_resistance.
Values are written as a reading is: "40 Mohm", "1 %".
"""

from __future__ import annotations

from collections.abc import Mapping
from difflib import get_close_matches

from assistant.quantity.entry import Blank, Understood, understand
from assistant.quantity.instrument import Instrument
from assistant.quantity.kind import KINDS
from assistant.quantity.meaning import quoted

_FIELDS = ("name", "covers", "percent", "counts", "resolution", "range_top", "impedance", "lead_resistance")
_LIKE = {"range_top": "40 Mohm", "resolution": "0.1 ohm"}
_HIGHEST_PERCENT = 100.0


def read_instruments(listed: object) -> tuple[dict[str, Instrument], list[str]]:
    """The instruments that could be read, by name, and a sentence for all that could not. Never raises."""
    instruments: dict[str, Instrument] = {}
    problems: list[str] = []
    if not isinstance(listed, (list, tuple)):
        return {}, ["instruments is a list with one entry for each instrument."]
    for number, entry in enumerate(listed, start=1):
        where = f"instrument {number}"
        if not isinstance(entry, Mapping):
            problems.append(f"{where}: write it as fields, beginning with name and covers.")
            continue
        name = entry.get("name")
        if not isinstance(name, str) or not name.strip():
            problems.append(f"{where}: it has no name.")
            continue
        name = name.strip()
        if name in instruments:
            problems.append(f"{where}: there is already one named {quoted(name)}.")
            continue
        before = len(problems)
        instrument = _instrument(name, entry, f"instrument {quoted(name)}", problems)
        if len(problems) == before:
            instruments[name] = instrument
    return instruments, problems


def _instrument(name: str, entry: Mapping, where: str, problems: list[str]) -> Instrument:
    problems += [
        f"{where}: {quoted(str(key))} is not a field.{_nearest(key, _FIELDS)}"
        for key in entry if key not in _FIELDS
    ]
    covers = _covers(entry.get("covers"), where, problems)
    impedance = entry.get("impedance", "")
    if impedance not in ("", "low", "high"):
        problems.append(f"{where}: impedance is low or high (got {quoted(str(impedance))}).")
    leads = entry.get("lead_resistance", "0 ohm")
    percent = _per_kind(entry, "percent", covers, where, problems)
    for kind, value in percent.items():
        if value * 100 > _HIGHEST_PERCENT:
            problems.append(f"{where}: percent for {kind} is at most {_HIGHEST_PERCENT:g}.")
    return Instrument(
        name=name,
        covers=covers,
        percent={kind: float(f"{value * 100:.12g}") for kind, value in percent.items()},
        counts=_per_kind(entry, "counts", covers, where, problems),
        range_top=_per_kind(entry, "range_top", covers, where, problems),
        resolution=_per_kind(entry, "resolution", covers, where, problems),
        impedance=impedance if isinstance(impedance, str) else "",
        lead_resistance=_value(leads, "resistance", f"{where}: lead_resistance", problems) or 0.0,
    )


def _covers(listed: object, where: str, problems: list[str]) -> tuple[str, ...]:
    if not isinstance(listed, (list, tuple)) or not listed:
        problems.append(f"{where}: covers lists the quantities that it reads, like [ac_voltage, resistance].")
        return ()
    known = [kind for kind in listed if isinstance(kind, str) and kind in KINDS]
    problems += [
        f"{where}: {quoted(str(kind))} is not a quantity.{_nearest(kind, KINDS)}"
        for kind in listed if kind not in known
    ]
    return tuple(dict.fromkeys(known))


def _per_kind(
    entry: Mapping, name: str, covers: tuple[str, ...], where: str, problems: list[str]
) -> dict[str, float]:
    given = entry.get(name)
    if given is None:
        return {}
    if not isinstance(given, Mapping):
        if name in ("range_top", "resolution"):
            problems.append(f"{where}: write {name} for each quantity, like resistance: {_LIKE[name]}.")
            return {}
        given = dict.fromkeys(covers, given)
    values: dict[str, float] = {}
    for kind, text in given.items():
        if kind not in covers:
            near = _nearest(kind, covers)
            problems.append(f"{where}: {name} names {quoted(str(kind))}, which is not in covers.{near}")
            continue
        asked_as = {"percent": "percent", "counts": "count"}.get(name, kind)
        if name == "resolution" and kind == "temperature":
            asked_as = "temperature_difference"  # a step of 0.1 F is no temperature near absolute zero
        value = _value(text, asked_as, f"{where}: {name} for {kind}", problems)
        if value is not None:
            values[kind] = value
    return values


def _value(given: object, kind: str, where: str, problems: list[str]) -> float | None:
    """One exact value in SI, or None with a problem noted."""
    if isinstance(given, bool) or not isinstance(given, (str, int, float)):
        problems.append(f"{where}: write a number with its unit, like {KINDS[kind].example}.")
        return None
    meaning = understand(str(given), kind, KINDS[kind].units[0])
    if isinstance(meaning, Understood) and not meaning.over_range:
        zero = meaning.interval.lo == 0
        if zero or meaning.interval.width == 0:
            return meaning.interval.lo
        problems.append(f"{where}: write one number, not a spread.")
    elif isinstance(meaning, Understood):
        problems.append(f"{where}: write a number with its unit, not OL.")
    else:
        problems.append(f"{where}: {'it is empty.' if isinstance(meaning, Blank) else meaning.message}")
    return None


def _nearest(name: object, known: object) -> str:
    near = get_close_matches(str(name), list(known), n=1)
    return f" Did you mean {near[0]}?" if near else ""
