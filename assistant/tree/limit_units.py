"""What sort of number a limit gives: its dimension, and whether it is a temperature or a difference of two.

A temperature is a place on a scale: temperature + difference = temperature, temperature - temperature =
difference, and a temperature is never multiplied. A number without a unit fits any limit that is nothing but
such numbers (it is then in the reading's unit) and multiplies anything; it can't be added to a quantity.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from typing import TYPE_CHECKING

from assistant.house.nearest import suggestion
from assistant.quantity.kind import KINDS
from assistant.quantity.table import NUMBER
from assistant.quantity.units import UNITS, Dimension
from assistant.tree import expression as written
from assistant.tree.expression import BadLimit, Expression

if TYPE_CHECKING:
    from assistant.tree.limits import Limit


@dataclass(frozen=True)
class Sort:
    """`dimension` as exponents; `point`: a place on a scale; `plain`: a number without any unit."""

    dimension: Dimension
    point: bool = False
    plain: bool = False

    @property
    def words(self) -> str:
        """For a sentence: "a plain number", "a temperature", "something in V"."""
        if self.plain:
            return "a number without a unit"
        if self.point:
            return "a temperature"
        if self.dimension == NUMBER:
            return "a share such as percent, or a count"
        unit = next(
            (u.symbol or u.name for u in UNITS.values() if u.dimension == self.dimension and not u.is_point),
            None,
        )
        return f"something in {unit}" if unit else "something that no unit here measures"


PLAIN = Sort(NUMBER, plain=True)


@cache
def sort_of_kind(kind: str) -> Sort:
    """The sort of a quantity's readings. Raises KeyError for an unknown quantity."""
    return sort_of_unit(KINDS[kind].units[0])


@cache
def sort_of_unit(unit: str) -> Sort:
    """The sort of a number in `unit`. Raises KeyError for an unknown unit."""
    return Sort(UNITS[unit].dimension, UNITS[unit].is_point)


def unit_of(limit: Limit, kinds: Mapping[str, str]) -> Sort:
    """The sort of number that the limit gives; `kinds` has the quantity of every name it may use.

    Raises BadLimit where names are unknown or units don't go together.
    """
    return sort_of(limit.expression, kinds)


def sort_of(part: Expression, kinds: Mapping[str, str]) -> Sort:
    """The sort of one part of a limit. Raises BadLimit."""
    if isinstance(part, written.Number):
        return PLAIN if part.unit is None else sort_of_unit(part.unit)
    if isinstance(part, written.Name):
        if part.name not in kinds:
            raise BadLimit(
                part.at,
                f"'{part.name}' is no reading of this tree and no plate value{suggestion(part.name, kinds)}",
                "name",
            )
        return sort_of_kind(kinds[part.name])
    if isinstance(part, written.Negative):
        sort = sort_of(part.of, kinds)
        if sort.point:
            raise BadLimit(part.at, "the opposite of a temperature means nothing; take a difference of two")
        return sort
    if isinstance(part, written.Applied):
        return _applied(part, kinds)
    left, right = sort_of(part.left, kinds), sort_of(part.right, kinds)
    if part.sign in ("+", "-"):
        return _sum(part, left, right)
    if left.point or right.point:
        raise BadLimit(
            part.at, "a temperature can't be multiplied or divided; take a difference first", "unit"
        )
    power = 1 if part.sign == "*" else -1
    dimension = tuple(a + power * b for a, b in zip(left.dimension, right.dimension, strict=True))
    return Sort(dimension, plain=left.plain and right.plain)


def _sum(part: written.Joined, left: Sort, right: Sort) -> Sort:
    word = "added to" if part.sign == "+" else "taken from"
    if left.plain != right.plain or left.dimension != right.dimension:
        first, second = (left, right) if part.sign == "+" else (right, left)
        unit = "; write its unit" if left.plain != right.plain else ""
        raise BadLimit(part.at, f"{first.words} can't be {word} {second.words}{unit}", "unit")
    if part.sign == "+":
        if left.point and right.point:
            raise BadLimit(
                part.at, "two temperatures can't be added; write a difference in Fdiff or K", "unit"
            )
        return Sort(left.dimension, left.point or right.point, left.plain)
    if right.point and not left.point:
        raise BadLimit(part.at, "a temperature can't be taken from a difference", "unit")
    return Sort(left.dimension, left.point and not right.point, left.plain)


def _applied(part: written.Applied, kinds: Mapping[str, str]) -> Sort:
    from assistant.trade.entry import ANY
    from assistant.trade.registry import REGISTRY

    entry = REGISTRY.get(part.function)
    if entry is None:
        raise BadLimit(
            part.at, f"'{part.function}' is no computation{suggestion(part.function, REGISTRY)}", "name"
        )
    if not entry.monotone:
        raise BadLimit(
            part.at,
            f"{part.function} can't stand in a limit, because it does not follow each of its values in "
            "one direction; use a compute step first",
        )
    least = sum(argument.default is None for argument in entry.arguments)
    if not least <= len(part.arguments) <= len(entry.arguments):
        raise BadLimit(part.at, f"{part.function} takes {', '.join(a.name for a in entry.arguments)}")
    shared: Sort | None = None
    for argument, given in zip(entry.arguments, part.arguments, strict=False):
        sort = sort_of(given, kinds)
        if argument.kind == ANY:
            shared = sort if shared is None else shared
            argument_fits(part.function, argument.name, shared, sort, given.at)
        else:
            argument_fits(part.function, argument.name, sort_of_kind(argument.kind), sort, given.at)
    kind = result_kind(part.function, None)
    if kind is not None:
        return sort_of_kind(kind)
    if entry.result.kind != ANY or shared is None:
        raise BadLimit(part.at, f"what {part.function} gives has no unit that a reading could have")
    return Sort(shared.dimension)


def argument_fits(function: str, argument: str, wanted: Sort, got: Sort, at: int) -> None:
    """Raises BadLimit where a function's argument is of another sort than it takes, or has no unit."""
    if got.plain or got != wanted:
        unit = "; write its unit" if got.plain else ""
        raise BadLimit(at, f"{function}: {argument} is {wanted.words}, not {got.words}{unit}", "unit")


def result_kind(function: str, kind_given: str | None, gives: str | None = None) -> str | None:
    """The quantity that a registry function gives, or None where no reading is of its kind. `kind_given` is
    the quantity of its arguments where it takes any: the difference of two temperatures is a temperature
    difference. `gives` names one number of several results.
    """
    from assistant.trade.entry import ANY
    from assistant.trade.registry import REGISTRY, one_number

    entry = REGISTRY[function]
    if bool(entry.results) != (gives is not None) or (entry.results and not one_number(entry, gives)):
        return None
    kind = entry.results[gives].kind if entry.results else entry.result.kind
    if kind == ANY:
        return "temperature_difference" if kind_given == "temperature" else kind_given
    return kind if kind in KINDS else None
