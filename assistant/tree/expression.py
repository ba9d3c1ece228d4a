"""The little language of limits: numbers, numbers with a unit, names, + - * /, parentheses and function
calls.

A limit is data. The parser below is all there is: no attribute, no comparison, no power, no text; nothing
that a limit could reach but the names and functions that the caller resolves. Long, deep and huge ones are
refused.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction
from typing import NoReturn, Union

from assistant.house.numbers import exact_number, number_hint
from assistant.house.place import Place, Problem
from assistant.house.unit_names import unit_suggestion
from assistant.quantity.units import UNITS, exact_si

LONGEST = 300
"""Characters in one limit."""
DEEPEST = 20
"""Parentheses, minus signs and function calls inside each other."""
MOST_TOKENS = 100

_TOKEN = re.compile(
    r"(?P<number>\d+(?:\.\d+)?(?:[eE][+-]?\d+)?)|(?P<word>[A-Za-z_][A-Za-z0-9_]*)|(?P<sign>[-+*/(),])"
)
_INSTEAD = {
    "%": "write 'percent'",
    "°": "write F for a temperature or Fdiff for a difference",
    "µ": "write u, as in uA",
    "−": "write the minus of the keyboard, -",
    "–": "write the minus of the keyboard, -",
    "×": "write *",
    "·": "write *",
    "÷": "write /",
    "^": "powers can't be written; multiply",
    "<": "a limit is a number; 'under' and 'over' compare",
    ">": "a limit is a number; 'under' and 'over' compare",
    "=": "a limit is a number; 'under' and 'over' compare",
    ".": "write digits on both sides of the point, as in 0.5",
    "$": "a limit can't name the circuit",
    '"': "no quotes inside a limit",
    "'": "no quotes inside a limit",
}


@dataclass(frozen=True)
class Number:
    """A number, in `unit` or without one; `si` is the same in SI, or as it is without a unit."""

    value: Fraction
    unit: str | None
    si: Fraction
    at: int


@dataclass(frozen=True)
class Name:
    """A plate value or a reading of the same tree."""

    name: str
    at: int


@dataclass(frozen=True)
class Negative:
    """The opposite of an expression."""

    of: Expression
    at: int


@dataclass(frozen=True)
class Joined:
    """Two expressions with + - * or / between them."""

    sign: str
    left: Expression
    right: Expression
    at: int


@dataclass(frozen=True)
class Applied:
    """A registry function with its arguments in order."""

    function: str
    arguments: tuple[Expression, ...]
    at: int


Expression = Union[Number, Name, Negative, Joined, Applied]


class BadLimit(ValueError):
    """A limit that can't be used: what is wrong at character `at` of its text, and what to write instead."""

    def __init__(self, at: int, message: str, rule: str = "limit") -> None:
        super().__init__(message)
        self.at = at
        self.message = message
        self.rule = rule

    def problem(self, place: Place) -> Problem:
        """The problem, where the limit's first character stands at `place`."""
        return Problem(place.file, place.line, place.column + self.at, self.rule, self.message)


def parse(text: str) -> Expression:
    """The expression that `text` writes. Raises BadLimit."""
    if len(text) > LONGEST:
        raise BadLimit(
            0,
            f"{len(text):,} characters are too many for a limit; at most {LONGEST}. Use a compute step first",
        )
    return _Parser(text).whole()


class _Parser:
    """Recursive descent over the tokens; one token is looked at before it is taken."""

    def __init__(self, text: str) -> None:
        self.text = text
        self.depth = 0
        self.tokens = list(self.split())
        self.next = 0

    def split(self):
        at, count = 0, 0
        while True:
            while at < len(self.text) and self.text[at] in " \n":
                at += 1
            if at == len(self.text):
                break
            found = _TOKEN.match(self.text, at)
            if found is None:
                self.strange(at)
            count += 1
            if count > MOST_TOKENS:
                raise BadLimit(
                    at,
                    f"more than {MOST_TOKENS} numbers, names and signs; use a compute step first",
                )
            yield found.lastgroup, found.group(), at
            at = found.end()
        yield "end", "", at

    def strange(self, at: int) -> NoReturn:
        character = self.text[at]
        instead = _INSTEAD.get(
            character, "only numbers, units, names, + - * / and parentheses can stand here"
        )
        raise BadLimit(
            at,
            f"{character!a} can't stand in a limit; {instead}"
            if not character.isprintable()
            else f"'{character}' can't stand in a limit; {instead}",
        )

    def look(self) -> str:
        return self.tokens[self.next][1] if self.tokens[self.next][0] == "sign" else ""

    def take(self) -> tuple[str, str, int]:
        token = self.tokens[self.next]
        self.next += token[0] != "end"
        return token

    def whole(self) -> Expression:
        expression = self.sum()
        kind, text, at = self.take()
        if kind == "end":
            return expression
        if text == ",":
            raise BadLimit(at, "a comma only stands between the arguments of a function; write 1000 or 1.5")
        if text == ")":
            raise BadLimit(at, "a ) without its (")
        raise BadLimit(at, f"a sign is missing before '{text}'; write + - * or /")

    def sum(self) -> Expression:
        left = self.product()
        while self.look() in ("+", "-"):
            _, sign, at = self.take()
            left = Joined(sign, left, self.product(), at)
        return left

    def product(self) -> Expression:
        left = self.signed()
        while self.look() in ("*", "/"):
            _, sign, at = self.take()
            if self.look() in ("*", "/"):
                raise BadLimit(at, f"'{sign}{self.look()}' can't be written; a limit knows + - * and /")
            left = Joined(sign, left, self.signed(), at)
        return left

    def signed(self) -> Expression:
        if self.look() != "-":
            return self.atom()
        at = self.take()[2]
        if self.tokens[self.next][0] == "number":
            # A sign before a number belongs to it: -5 F is a temperature, not the opposite of one.
            number = self.atom()
            return _number(-number.value, number.unit, at)
        self.deeper(at)
        expression = Negative(self.signed(), at)
        self.depth -= 1
        return expression

    def atom(self) -> Expression:
        kind, text, at = self.take()
        if kind == "number":
            return self.number(text, at)
        if kind == "word":
            if self.look() == "(":
                return self.applied(text, at)
            return Name(text, at)
        if text == "(":
            self.deeper(at)
            expression = self.sum()
            self.close(at)
            self.depth -= 1
            return expression
        raise BadLimit(
            at,
            f"a number or a name is missing before '{text}'"
            if text
            else "the limit ends here, but a number or a name is missing",
        )

    def number(self, text: str, at: int) -> Number:
        value = exact_number(text)
        if value is None:
            raise BadLimit(at, f"'{text[:40]}' is no number for a limit{number_hint(text)}", "number")
        kind, word, word_at = self.tokens[self.next]
        if kind != "word":
            return _number(value, None, at)
        self.take()
        if word.startswith("_"):
            raise BadLimit(word_at, "no _ inside a number; write 1000")
        if word not in UNITS:
            product = f"; for a product write a * before '{word}'" if len(word) > 5 else ""
            raise BadLimit(word_at, f"'{word}' is no unit{unit_suggestion(word)}{product}", "unit")
        return _number(value, word, at)

    def applied(self, function: str, at: int) -> Applied:
        opened = self.take()[2]
        self.deeper(at)
        arguments: list[Expression] = []
        if self.look() != ")":
            arguments.append(self.sum())
            while self.look() == ",":
                self.take()
                arguments.append(self.sum())
        self.close(opened)
        self.depth -= 1
        return Applied(function, tuple(arguments), at)

    def close(self, opened: int) -> None:
        kind, text, at = self.take()
        if text == ")":
            return
        if kind == "end":
            raise BadLimit(opened, "this ( is not closed")
        raise BadLimit(at, f"a sign or a ) is missing before '{text}'")

    def deeper(self, at: int) -> None:
        self.depth += 1
        if self.depth > DEEPEST:
            raise BadLimit(at, f"nested deeper than {DEEPEST} levels; use a compute step first")


def _number(value: Fraction, unit: str | None, at: int) -> Number:
    return Number(value, unit, value if unit is None else exact_si(value, unit), at)
