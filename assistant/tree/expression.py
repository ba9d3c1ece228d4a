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
    """A number, in `unit` or without one."""

    value: Fraction
    unit: str | None
    place: Place


@dataclass(frozen=True)
class Name:
    """A plate value or a reading of the same tree."""

    name: str
    place: Place


@dataclass(frozen=True)
class Negative:
    """The opposite of an expression."""

    of: Expression
    place: Place


@dataclass(frozen=True)
class Joined:
    """Two expressions with + - * or / between them."""

    sign: str
    left: Expression
    right: Expression
    place: Place


@dataclass(frozen=True)
class Applied:
    """A registry function with its arguments in order."""

    function: str
    arguments: tuple[Expression, ...]
    place: Place


Expression = Union[Number, Name, Negative, Joined, Applied]


class BadLimit(ValueError):
    """A limit that can't be used; `problem` says where and what to write instead."""

    def __init__(self, problem: Problem) -> None:
        super().__init__(problem.message)
        self.problem = problem


def refuse(place: Place, message: str, rule: str = "limit") -> NoReturn:
    """Raises BadLimit with a problem at `place`."""
    raise BadLimit(Problem.at(place, rule, message))


def parse(text: str, place: Place) -> Expression:
    """The expression that `text` writes; `place` is where its first character stands. Raises BadLimit."""
    if len(text) > LONGEST:
        refuse(
            place,
            f"{len(text):,} characters are too many for a limit; at most {LONGEST}. Use a compute step first",
        )
    return _Parser(text, place).whole()


class _Parser:
    """Recursive descent over the tokens; one token is looked at before it is taken."""

    def __init__(self, text: str, place: Place) -> None:
        self.text = text
        self.start = place
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
                refuse(
                    self.place(at),
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
        refuse(
            self.place(at),
            f"{character!a} can't stand in a limit; {instead}"
            if not character.isprintable()
            else f"'{character}' can't stand in a limit; {instead}",
        )

    def place(self, at: int) -> Place:
        return Place(self.start.file, self.start.line, self.start.column + at)

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
            refuse(
                self.place(at), "a comma only stands between the arguments of a function; write 1000 or 1.5"
            )
        if text == ")":
            refuse(self.place(at), "a ) without its (")
        refuse(self.place(at), f"a sign is missing before '{text}'; write + - * or /")

    def sum(self) -> Expression:
        left = self.product()
        while self.look() in ("+", "-"):
            _, sign, at = self.take()
            left = Joined(sign, left, self.product(), self.place(at))
        return left

    def product(self) -> Expression:
        left = self.signed()
        while self.look() in ("*", "/"):
            _, sign, at = self.take()
            if self.look() in ("*", "/"):
                refuse(self.place(at), f"'{sign}{self.look()}' can't be written; a limit knows + - * and /")
            left = Joined(sign, left, self.signed(), self.place(at))
        return left

    def signed(self) -> Expression:
        if self.look() != "-":
            return self.atom()
        at = self.take()[2]
        if self.tokens[self.next][0] == "number":
            # A sign before a number belongs to it: -5 F is a temperature, not the opposite of one.
            number = self.atom()
            return Number(-number.value, number.unit, self.place(at))
        self.deeper(at)
        expression = Negative(self.signed(), self.place(at))
        self.depth -= 1
        return expression

    def atom(self) -> Expression:
        kind, text, at = self.take()
        if kind == "number":
            return self.number(text, at)
        if kind == "word":
            if self.look() == "(":
                return self.applied(text, at)
            return Name(text, self.place(at))
        if text == "(":
            self.deeper(at)
            expression = self.sum()
            self.close(at)
            self.depth -= 1
            return expression
        refuse(
            self.place(at),
            f"a number or a name is missing before '{text}'"
            if text
            else "the limit ends here, but a number or a name is missing",
        )

    def number(self, text: str, at: int) -> Number:
        value = exact_number(text)
        if value is None:
            refuse(self.place(at), f"'{text[:40]}' is no number for a limit{number_hint(text)}", "number")
        kind, word, word_at = self.tokens[self.next]
        if kind != "word":
            return Number(value, None, self.place(at))
        self.take()
        if word.startswith("_"):
            refuse(self.place(word_at), "no _ inside a number; write 1000")
        return Number(value, word, self.place(at))

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
        return Applied(function, tuple(arguments), self.place(at))

    def close(self, opened: int) -> None:
        kind, text, at = self.take()
        if text == ")":
            return
        if kind == "end":
            refuse(self.place(opened), "this ( is not closed")
        refuse(self.place(at), f"a sign or a ) is missing before '{text}'")

    def deeper(self, at: int) -> None:
        self.depth += 1
        if self.depth > DEEPEST:
            refuse(self.place(at), f"nested deeper than {DEEPEST} levels; use a compute step first")
