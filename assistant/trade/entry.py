"""What a computation of the trade declares about itself, and the decorator that declares it.

A topic module holds plain functions of floats in SI units. `computation` stands in front of each: it names
the arguments with kind, display unit, valid range, example and the direction in which the result follows
them, and says where the formula comes from. The registry collects what stands here; `calc`, the workbench and
a tree's compute step read it. Ranges are data: the checked function refuses what lies outside with a
sentence.
"""

from __future__ import annotations

import functools
import math
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field

from assistant.quantity.interval import Interval
from assistant.trade.figure import figure, with_unit
from assistant.trade.unit import to_si

MARKS = ("read", "computed", "reasoned", "common practice", "from memory")
ANY = "any"
"""Kind of an argument that takes a reading of any kind, as long as all such arguments are of one kind."""
CHOICE = "choice"
"""Kind of an argument that is one of a few words."""
ENDLESS = 1e12
"""A range that ends there has no end that anybody meets."""
TEXT = "text"
"""Kind of an argument that is a line of its own form, such as a survey's rows; its function reads it."""


@dataclass(frozen=True)
class Source:
    """Where a formula or limit stands: title, number, year, place, and how well it is known (MARKS)."""

    text: str
    mark: str

    def __str__(self) -> str:
        return f"{self.text} ({self.mark})"


@dataclass(frozen=True)
class Argument:
    """One input. `low`, `high`, `example` and `default` are in SI; `unit` is what a person usually types.

    `sense`: +1 the result never falls as it rises, -1 never rises, 0 unaffected, None not monotone.
    `unsigned`: only its size counts (a vacuum typed as 0.9 or -0.9); range and sense speak of the size.
    `many`: a list of such values; with the default () it may be left out. `choices`: the words it may be,
    where `kind` is "choice". `form`: how it is written, where `kind` is "text".
    """

    name: str
    kind: str
    unit: str
    low: float
    high: float
    example: float | str | tuple[float, ...]
    sense: int | None
    words: str
    unsigned: bool = False
    many: bool = False
    choices: tuple[str, ...] = ()
    default: float | str | tuple[float, ...] | None = None
    form: str = ""

    @property
    def title(self) -> str:
        return self.name.replace("_", " ")


@dataclass(frozen=True)
class Result:
    """What comes out: kind, display unit (empty for words and plain numbers), its name in words; `nothing` is
    said where it is None.
    """

    kind: str
    unit: str
    words: str
    nothing: str = "-"


@dataclass(frozen=True)
class Entry:
    """A computation as the registry lists it. `results` is filled where it gives several named values.

    `template` is the right-hand side in display units with {argument} places; `where` gives further places of
    the template a value: name -> (function of the arguments, unit, words).
    """

    name: str
    title: str
    arguments: tuple[Argument, ...]
    result: Result
    template: str
    source: Source
    function: Callable
    results: Mapping[str, Result] = field(default_factory=dict)
    where: Mapping[str, tuple[Callable, str, str]] = field(default_factory=dict)
    enclose: Callable[..., Interval] | None = None

    @property
    def formula(self) -> str:
        """The formula as text, with the arguments' names in it."""
        text = self.template
        for name in [a.name for a in self.arguments] + list(self.where):
            text = text.replace("{" + name + "}", name.replace("_", " "))
        return f"{self.result.words} = {text}"

    def argument(self, name: str) -> Argument:
        return next(a for a in self.arguments if a.name == name)

    @property
    def monotone(self) -> bool:
        """Whether a tree's limit may call it: one number out, and every argument's direction declared."""
        return not self.results and all(a.sense is not None and not a.many for a in self.arguments)


class ArgumentError(ValueError):
    """An argument that a computation can't take. The message is a sentence for the person who typed it.

    Carries `computation`, `argument` (the Argument, or None when several are at odds), `value` (SI) and
    `example`.
    """

    def __init__(self, message: str, computation: str, argument: Argument | None = None, value=None) -> None:
        super().__init__(message)
        self.computation = computation
        self.argument = argument
        self.value = value
        self.low = argument.low if argument else None
        self.high = argument.high if argument else None
        self.example = argument.example if argument else None


def argument(
    name: str, kind: str, unit: str, low: float, high: float, example, sense: int | None, words: str, **more
) -> Argument:
    """An Argument written in its display unit; range, example and default are turned into SI here."""

    def si(value):
        return to_si(value, unit) if unit else float(value)

    if more.get("many"):
        example = tuple(si(v) for v in example)
    else:
        example = si(example)
    default = more.get("default")
    if default is not None:
        more["default"] = tuple(si(v) for v in default) if more.get("many") else si(default)
    return Argument(name, kind, unit, si(low), si(high), example, sense, words, **more)


def choice(name: str, choices: Sequence[str], words: str, default: str | None = None) -> Argument:
    """An Argument that is one of a few words; the first stands as the example."""
    return Argument(
        name, CHOICE, "", math.nan, math.nan, choices[0], None, words, choices=tuple(choices), default=default
    )


def line(name: str, form: str, example: str, words: str, default: str | None = None) -> Argument:
    """An Argument that is a line of text; `form` says how it is written: "rows with / between them"."""
    return Argument(name, TEXT, "", math.nan, math.nan, example, None, words, default=default, form=form)


def range_text(a: Argument) -> str:
    """The valid range in words: "from 0 to 15 %", "one of solid, stranded"."""
    if a.kind == TEXT:
        return a.form
    if a.choices:
        return "one of " + ", ".join(a.choices)
    if max(abs(a.low), abs(a.high)) >= ENDLESS:
        least = "" if a.low <= -ENDLESS else ", 0 or above" if a.low == 0 else ", above 0"
        return f"any number{least}"
    low = figure(a.low, a.unit)
    return f"from {low} to {with_unit(a.high, a.unit)}" + (" in size" if a.unsigned else "")


def example_text(a: Argument) -> str:
    """How the argument is typed, as in `supply=120F`."""
    if a.choices or a.kind == TEXT:
        return f"{a.name}={a.example}"
    values = a.example if a.many else (a.example,)
    return f"{a.name}=" + ",".join(figure(v, a.unit) + a.unit for v in values)


def refuse(computation: str, a: Argument, value, why: str) -> ArgumentError:
    """The error for one argument: what is wrong, the range, an example."""
    return ArgumentError(
        f"{computation}: '{a.name}' ({a.words}) {why}; it must be {range_text(a)}, for example "
        f"{example_text(a)}.",
        computation,
        a,
        value,
    )


def check(computation: str, a: Argument, value) -> float | str | tuple[float, ...]:
    """The value if it is in the argument's range; raises ArgumentError otherwise."""
    if a.choices:
        if value not in a.choices:
            raise refuse(computation, a, value, f"can't be '{value}'")
        return value
    if a.kind == TEXT:
        if not isinstance(value, str):
            raise refuse(computation, a, value, "must be a line of text")
        return value
    if a.many:
        if isinstance(value, (str, bytes)) or not isinstance(value, Sequence) or not value:
            raise refuse(computation, a, value, "must be a list of values")
        return tuple(_in_range(computation, a, v) for v in value)
    return _in_range(computation, a, value)


def _in_range(computation: str, a: Argument, value) -> float:
    if isinstance(value, bool) or not isinstance(value, (int, float)) or not math.isfinite(value):
        raise refuse(computation, a, value, f"must be a number (got {value})")
    size = abs(value) if a.unsigned else value
    # 15 % typed is not refused for a rounding in the last bit
    if not a.low - 1e-9 * abs(a.low) <= size <= a.high + 1e-9 * abs(a.high):
        raise refuse(computation, a, value, f"can't be {with_unit(value, a.unit)}")
    return float(value)


ALL: list[Entry] = []
"""Every computation declared so far, in the order of its module."""


def computation(
    title: str,
    takes: Sequence[Argument],
    gives: Result | Mapping[str, Result],
    formula: str,
    source: Source,
    where=None,
    enclose=None,
) -> Callable[[Callable], Callable]:
    """Declares the function under it as a computation of that name and puts the range check in front of it.

    A function of many arguments may take them as `**given`, each checked all the same. A list of values may
    stand for an argument declared `many`. Raises (when called) ArgumentError.
    """

    def declare(function: Callable) -> Callable:
        name = function.__name__
        names = tuple(a.name for a in takes)
        several = dict(gives) if isinstance(gives, Mapping) else {}
        first = next(iter(several.values())) if several else gives

        @functools.wraps(function)
        def checked(*values, **named):
            given = dict(zip(names, values, strict=False), **named)
            clean = {}
            for a in takes:
                if a.name in given:
                    clean[a.name] = check(name, a, given.pop(a.name))
                elif a.default is not None:
                    clean[a.name] = a.default
                else:
                    raise refuse(name, a, None, "is missing")
            if given or len(values) > len(names):
                extra = ", ".join(given) or "too many values"
                raise ArgumentError(f"{name} takes {', '.join(names)} (got {extra} as well).", name)
            return function(**clean)

        entry = Entry(
            name, title, tuple(takes), first, formula, source, checked, several, where or {}, enclose
        )
        checked.entry = entry
        ALL.append(entry)
        return checked

    return declare
