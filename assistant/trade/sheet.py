"""A computation worked out from what a person typed into its fields, as text; nothing typed is ever changed.

A field's text is understood as a reading is (assistant/quantity/entry.py); in a list a comma only separates
the items. The range of each argument is held, and what is wrong is told field by field.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, field

from assistant.quantity.entry import Blank, Doubt, Understood, understand
from assistant.quantity.kind import KINDS
from assistant.quantity.units import UNITS
from assistant.trade.entry import ANY, TEXT, Argument, ArgumentError, Entry, check, range_text
from assistant.trade.figure import with_unit
from assistant.trade.in_system import formula_in
from assistant.trade.registry import call, shown_result
from assistant.trade.systems import US, in_system
from assistant.trade.unit import COMPOUND, to_si

PARAGRAPH = 60
"""Letters from which a result is no value any more."""
NUMBER = re.compile(r"([+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d{1,3})?)(?:/(\d+))?\s*(.*)")
THOUSAND = re.compile(r"[+-]?\d{1,3},\d{3}(?!\d)")


@dataclass(frozen=True)
class Meant:
    """What a field's text means: `value` in SI (a list's as a tuple, a word as text), or `problem` as a
    sentence.

    `blank` is an empty field; `choices` are what may have been meant.
    """

    value: object = None
    echo: str = ""
    problem: str = ""
    choices: tuple[str, ...] = ()
    blank: bool = False
    unit: str = ""


@dataclass(frozen=True)
class Shown:
    """One result: its words and its value, ready to read."""

    key: str
    words: str
    text: str
    value: object


@dataclass(frozen=True)
class Worked:
    """A sheet worked out, or why not yet: `missing` names in words, `problem` where the whole does not
    fit.
    """

    meant: Mapping[str, Meant]
    results: tuple[Shown, ...] = ()
    formula: str = ""
    missing: tuple[str, ...] = ()
    problem: str = ""
    values: Mapping[str, object] = field(default_factory=dict)

    @property
    def done(self) -> bool:
        return bool(self.results)

    @property
    def said_shortly(self) -> str:
        """The same without what takes whole sentences or lists."""
        short = [
            f"{each.words} {each.text}"
            for each in self.results
            if len(each.text) <= PARAGRAPH and not isinstance(each.value, tuple)
        ]
        return "; ".join(short) or self.said

    @property
    def said(self) -> str:
        """The results in one line: "heat rise 52 °F"."""
        return "; ".join(f"{each.words} {each.text}" for each in self.results)


def work_out(
    entry: Entry, texts: Mapping[str, str], units: Mapping[str, str] | None = None, system: str = US
) -> Worked:
    """The sheet from its fields' texts; `units` is what each field stands in, its usual unit where none is
    given. Never raises on a text.
    """
    units = units or {}
    meant = {
        a.name: meaning(entry, a, texts.get(a.name, ""), units.get(a.name, a.unit)) for a in entry.arguments
    }
    missing = tuple(a.title for a in entry.arguments if meant[a.name].blank and a.default is None)
    values = {name: m.value for name, m in meant.items() if not m.blank and not m.problem}
    wrong = next((f"{entry.argument(n).title}: {m.problem}" for n, m in meant.items() if m.problem), "")
    if wrong or missing:
        return Worked(meant, missing=missing, problem=wrong, values=values)
    read_in = {name: m.unit for name, m in meant.items() if m.unit}
    try:
        if problem := _of_one_kind(entry, meant):
            return Worked(meant, problem=problem, values=values)
        outcome = call(entry.name, values)
        unit = result_unit(entry, read_in)
        formula = formula_in(system, entry, values, read_in, unit)
    except ArgumentError as error:
        return Worked(meant, problem=str(error).removeprefix(f"{entry.name}: "), values=values)
    except (ArithmeticError, ValueError):
        return Worked(
            meant, problem="These values together give no result; look at each again.", values=values
        )
    if entry.results:  # the results stand by themselves
        formula = formula[: formula.rfind(f": {entry.result.words} ")]
    several = entry.results or {"result": entry.result}
    got = outcome if entry.results else {"result": outcome}
    results = tuple(
        Shown(key, r.words, _shown(r, got[key], unit, system), got[key]) for key, r in several.items()
    )
    return Worked(meant, results, formula, values=values)


def meaning(entry: Entry, a: Argument, text: str, unit: str) -> Meant:
    """What one field's text means, its range held."""
    if not text.strip():
        return Meant(blank=True)
    if a.kind == TEXT or a.choices:
        word = text.strip()
        return _held(entry, a, Meant(word, word))
    if not a.many:
        return _held(entry, a, _one(a, text, unit))
    items = [_one(a, item, unit) for item in items_of(text)]
    wrong = next((item for item in items if item.problem), None)
    if wrong is not None:
        return wrong
    if not items:
        return Meant(blank=True)
    echo = ", ".join(item.echo for item in items)
    return _held(entry, a, Meant(tuple(item.value for item in items), echo, unit=items[0].unit))


def items_of(text: str) -> list[str]:
    """The items of a list: a comma or semicolon between them; spaces where there are only numbers."""
    if not re.search(r"[,;/]", text):
        return re.split(r"\s+(?=[-+.\d])", text.strip())
    return [item.strip() for item in re.split(r"[,;]", text) if item.strip()]


def _held(entry: Entry, a: Argument, meant: Meant) -> Meant:
    """The meaning with the argument's range held against it."""
    if meant.problem:
        return meant
    try:
        check(entry.name, a, meant.value)
    except ArgumentError:
        shown = meant.echo or str(meant.value)
        return Meant(problem=f"{shown} is outside what this can be ({range_text(a)}).")
    return meant


def _one(a: Argument, text: str, unit: str) -> Meant:
    if a.kind == ANY:
        return _any(text, unit)
    if a.kind not in KINDS or a.kind == "count":
        return _plain(a, text, unit)
    if unit not in KINDS[a.kind].units:
        unit = KINDS[a.kind].units[0]
    got = understand(text.strip(), a.kind, unit)
    if isinstance(got, Understood):
        if got.over_range:
            return Meant(problem="a reading over the meter's range can't be worked with.")
        step = got.resolution_si or 0.0
        nought = got.interval.lo == 0 and 0 < got.interval.hi < step
        value = 0.0 if nought else got.interval.middle
        echo = got.echo if nought or not got.interval.width else f"{got.echo}: its middle"
        return Meant(value, echo, unit=got.unit)
    if isinstance(got, Blank):
        return Meant(blank=True)
    if isinstance(got, Doubt):
        return Meant(problem=got.message, choices=got.choices)
    return Meant(problem=got.message)


def _plain(a: Argument, text: str, unit: str) -> Meant:
    """A plain number, or one in a unit that only formulas speak."""
    text = text.strip()
    if THOUSAND.match(text):
        plain = text.replace(",", "")
        dotted = text.replace(",", ".")
        return Meant(problem=f"is '{text}' {plain} or {dotted}?", choices=(plain, dotted))
    found = NUMBER.fullmatch(text.replace(",", "."))
    if found is None:
        return Meant(problem=f"'{text[:40]}' is no number; write it like {with_unit(_first(a), a.unit)}.")
    number, parts, spelled = found.groups()
    same = {a.unit, *(u for u in COMPOUND if unit in COMPOUND)} if a.unit else {""}
    if spelled and spelled not in same:
        return Meant(problem=f"'{spelled[:20]}' is no unit of this; leave it away.")
    if parts and int(parts) == 0:
        return Meant(problem="nothing can be divided by nought.")
    unit = spelled or unit
    value = to_si(float(number) / int(parts or 1), unit)
    return Meant(value, with_unit(value, unit), unit=unit)


def _any(text: str, unit: str) -> Meant:
    """A reading of any kind: by the unit typed behind it, else by the field's."""
    found = NUMBER.fullmatch(text.strip().replace(",", "."))
    if found is not None and not found[3] and not unit:
        value = float(found[1]) / int(found[2] or 1) if found[2] != "0" else 0.0
        return Meant(value, f"{value:g}")
    spelled = found[3].strip().lower() if found is not None else ""
    kinds = [kind for kind in KINDS.values() if kind.name != "count" and unit in kind.units]
    if spelled:
        named = [
            (kind, name)
            for kind in KINDS.values()
            for name in kind.units
            if spelled == name.lower() or spelled in UNITS[name].spellings
        ]
        kinds = [kind for kind, name in named if unit in kind.units] or [kind for kind, _ in named]
    if not kinds:
        return Meant(problem=f"'{text.strip()[:40]}' is no reading; write it like 7.2 inwc.")
    kind = kinds[0]
    got = understand(text.strip(), kind.name, unit if unit in kind.units else kind.units[0])
    if isinstance(got, Understood) and got.interval.finite:
        return Meant(got.interval.middle, got.echo, unit=got.unit)
    return Meant(
        problem=getattr(got, "message", "can't be worked with."), choices=getattr(got, "choices", ())
    )


def _of_one_kind(entry: Entry, meant: Mapping[str, Meant]) -> str:
    units = {meant[a.name].unit for a in entry.arguments if a.kind == ANY and not meant[a.name].blank}
    dimensions = {(UNITS[u].dimension if u in UNITS else u) for u in units}
    return "These readings must be of one kind; give them the same unit." if len(dimensions) > 1 else ""


def result_unit(entry: Entry, units: Mapping[str, str]) -> str:
    """The unit of the result; that of the readings where it is of their kind."""
    if entry.result.kind != ANY:
        return entry.result.unit
    unit = next((units[a.name] for a in entry.arguments if a.kind == ANY and units.get(a.name)), "")
    return {"F": "Fdiff", "C": "K"}.get(unit, unit)  # the difference of two temperatures is no temperature


def _shown(result, value, any_unit: str, system: str) -> str:
    unit = any_unit if result.kind == ANY else result.unit
    if isinstance(value, (int, float)) and unit:
        return with_unit(value, in_system(unit, system))
    if isinstance(value, tuple) and unit and all(isinstance(v, (int, float)) for v in value):
        return ", ".join(with_unit(v, in_system(unit, system)) for v in value)
    return shown_result(result, value)


def _first(a: Argument) -> float:
    return a.example[0] if isinstance(a.example, tuple) else a.example
