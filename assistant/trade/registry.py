"""The trade's computations in one place: looked up by name, called, bounded over intervals, explained.

Topic modules declare; this module only gathers them. `calc`, the workbench and a tree's compute step read it.
"""

from __future__ import annotations

import difflib
from collections.abc import Mapping

from assistant.quantity.interval import Interval
from assistant.trade import (
    air_density,
    airflow,
    ambient,
    blower,
    breaker,
    bypass,
    combustion,
    draft,
    duct_fittings,
    duct_friction,
    duct_shape,
    duct_system,
    electric_capacitor,
    electric_circuit,
    electric_control,
    electric_insulation,
    electric_motor,
    electric_neutral,
    electric_power,
    electric_supply,
    electric_wire,
    fan,
    flue,
    gas_altitude,
    gas_fuel,
    gas_meter,
    gas_orifice,
    measurement,
    reading,
    static,
    velocity,
    winding,
    zone_survey,
)
from assistant.trade.bounds import size
from assistant.trade.entry import ALL, ANY, TEXT, Argument, ArgumentError, Entry, check, refuse
from assistant.trade.figure import figure, plain, with_unit

TOPICS = (
    reading,
    measurement,
    electric_supply,
    electric_neutral,
    electric_power,
    electric_motor,
    winding,
    electric_capacitor,
    electric_circuit,
    electric_wire,
    breaker,
    electric_control,
    electric_insulation,
    air_density,
    airflow,
    velocity,
    static,
    fan,
    blower,
    duct_friction,
    duct_shape,
    duct_fittings,
    bypass,
    zone_survey,
    duct_system,
    gas_meter,
    gas_fuel,
    gas_altitude,
    gas_orifice,
    combustion,
    flue,
    draft,
    ambient,
)
"""The modules that declare computations, in the order in which lists show them."""

REGISTRY: dict[str, Entry] = {
    entry.name: entry for topic in TOPICS for entry in ALL if entry.function.__module__ == topic.__name__
}


def entry_of(name: str) -> Entry:
    """The entry of that name. Raises ArgumentError with the nearest names otherwise."""
    if name in REGISTRY:
        return REGISTRY[name]
    near = difflib.get_close_matches(name, REGISTRY, 3)
    hint = f"; near it: {', '.join(near)}" if near else "; calc --list shows all"
    raise ArgumentError(f"There is no computation '{name}'{hint}.", name)


def call(name: str, values: Mapping[str, object]) -> float | dict[str, object]:
    """The result in SI: one float, or named results. Raises ArgumentError with a sentence for bad input."""
    return entry_of(name).function(**values)


def on_intervals(
    name: str, values: Mapping[str, Interval | object], result: str | None = None
) -> Interval:
    """Every result that the intervals allow, as one interval in SI; `result` names one of several.

    Each argument is an Interval, a list of Intervals (for `many`), or the plain value. Monotone arguments go
    to their corners; the registry's own bound is used where there is one. Raises ArgumentError where an
    argument has width and no declared direction, where an end is infinite or out of range, or where the
    result is no number.
    """
    entry = entry_of(name)
    if entry.results and not one_number(entry, result):
        several = ", ".join(key for key in entry.results if one_number(entry, key))
        raise ArgumentError(f"{name} gives several results; name one number of them: {several}.", name)
    unknown = [key for key in values if key not in {a.name for a in entry.arguments}]
    if unknown:
        raise ArgumentError(
            f"{name} takes {', '.join(a.name for a in entry.arguments)} (got {unknown[0]} as well).", name
        )
    given = {a.name: _span(entry, a, values[a.name]) for a in entry.arguments if a.name in values}
    if entry.enclose is not None:
        for a in entry.arguments:
            if a.name not in given:
                if a.default is None:
                    raise refuse(name, a, None, "is missing")
                given[a.name] = a.default if a.choices or a.kind == TEXT else Interval.exact(a.default)
        return entry.enclose(**given)
    low, high = {}, {}
    for a in entry.arguments:
        if a.name in given:
            low[a.name], high[a.name] = _corners(entry, a, given[a.name])
    ends = [entry.function(**given) for given in (low, high)]
    if entry.results:
        ends = [end[result] for end in ends]
    return Interval(min(ends), max(ends))


def one_number(entry: Entry, result: str | None) -> bool:
    """Whether `result` names a single number among the several results of the computation."""
    if result not in entry.results or entry.results[result].kind == "words":
        return False
    found = call(entry.name, {a.name: a.example for a in entry.arguments})[result]
    return isinstance(found, (int, float))


def _span(entry: Entry, a: Argument, value):
    """The interval (or tuple of intervals, or word) of one argument, checked against its range."""
    if a.choices or a.kind == TEXT:
        return check(entry.name, a, value)
    if a.many:
        return tuple(_one(entry, a, v) for v in value)
    return _one(entry, a, value)


def _one(entry: Entry, a: Argument, value) -> Interval:
    interval = value if isinstance(value, Interval) else Interval.exact(float(value))
    if not interval.finite:
        raise refuse(
            entry.name, a, interval.hi, "has no end (a reading over the meter's range can't be computed with)"
        )
    if a.unsigned:
        interval = size(interval)
    if a.low == 0 and interval.lo < 0 <= interval.hi:
        interval = Interval(
            0.0, interval.hi
        )  # half a count below zero is the display's doing, not the quantity's
    for end in (interval.lo, interval.hi):
        _check_end(entry, a, end)
    return interval


def _check_end(entry: Entry, a: Argument, end: float) -> None:
    check(entry.name, a, (end,) if a.many else end)


def _corners(entry: Entry, a: Argument, span):
    """What goes in for the lowest and for the highest result."""
    if a.choices or a.kind == TEXT:
        return span, span
    items = span if a.many else (span,)
    if a.sense is None and any(i.width for i in items):
        raise refuse(
            entry.name, a, items[0].hi, "has no declared direction and must be one value, not a span"
        )
    low = tuple(i.hi if a.sense == -1 else i.lo for i in items)
    high = tuple(i.lo if a.sense == -1 else i.hi for i in items)
    return (low, high) if a.many else (low[0], high[0])


def explain(
    name: str,
    values: Mapping[str, object],
    units: Mapping[str, str] | None = None,
    result_unit: str | None = None,
) -> str:
    """The formula with the numbers in it: "heat rise = supply - return air = 120 - 68 = 52 °F".

    `values` in SI. `units` and `result_unit` give the display units of arguments and result of any kind; the
    others are fixed by the formula. Raises ArgumentError as `call` does.
    """
    entry = entry_of(name)
    outcome = call(name, values)
    units = units or {}
    text = entry.template
    full = {a.name: values.get(a.name, a.default) for a in entry.arguments}
    for a in entry.arguments:
        unit = units.get(a.name, a.unit) if a.kind == ANY else a.unit
        text = text.replace("{" + a.name + "}", _shown(a, full[a.name], unit))
    for key, (function, unit, _) in entry.where.items():
        text = text.replace("{" + key + "}", figure(function(**full), unit))
    parts = [entry.formula, text] if text != entry.template else [entry.formula]  # a sentence without numbers
    if entry.results:
        said = [f"{r.words} {shown_result(r, outcome[key])}" for key, r in entry.results.items()]
        return " = ".join(parts) + ": " + _mark(outcome).join(said)
    unit = result_unit if result_unit is not None and entry.result.kind == ANY else entry.result.unit
    return " = ".join(parts) + f" = {with_unit(outcome, unit) if unit else plain(outcome)}"


def _mark(outcome: Mapping[str, object]) -> str:
    """What stands between results: a comma, or a semicolon where one of them is a list."""
    return "; " if any(isinstance(value, tuple) for value in outcome.values()) else ", "


def _shown(a: Argument, value, unit: str) -> str:
    if a.choices or a.kind == TEXT:
        return str(value)
    if a.many:
        return ", ".join(figure(v, unit) for v in value) or "none"
    text = figure(abs(value) if a.unsigned else value, unit)
    return f"({text})" if text.startswith("-") else text


def shown_result(result, value) -> str:
    """One result in its display unit; words as they are, a list separated by commas."""
    if isinstance(value, (list, tuple)):
        return ", ".join(shown_result(result, v) for v in value)
    if isinstance(value, str) or value is None:
        return getattr(result, "nothing", "-") if value is None else value
    return with_unit(value, result.unit) if result.unit else plain(value)


__all__ = ["REGISTRY", "TOPICS", "call", "entry_of", "explain", "on_intervals", "shown_result"]
