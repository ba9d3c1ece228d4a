"""Proves that one limit lies under another for every plate and every reading the limits may use.

The plate values and readings of the two limits span a box. Where neither limit multiplies a value by itself,
their difference is extreme at the box's corners, and the corners settle it. Otherwise the difference is
bounded by interval arithmetic, and the box is cut in half along its widest side until the bound holds or a
point is found where it does not (branch and bound; Moore, Interval Analysis, 1966).

A plate value that is declared `over` another is that value plus something `by` its bounds: two ranges alone
could never show that a furnace's lowest rise is under its highest.
"""

from __future__ import annotations

import heapq
import itertools
import math
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass

from assistant.house.model import PlateValue
from assistant.quantity.interval import Interval
from assistant.tree import expression as written
from assistant.tree.expression import Expression
from assistant.tree.limits import Limit, evaluate

MOST_BOXES = 4000
"""Boxes looked at before giving up; one to three plate values settle in at most a few hundred."""

Values = Mapping[str, Interval]
Point = dict[str, float]


@dataclass(frozen=True)
class Bound:
    """A limit, or a fixed number (SI): one of the two sides that are compared."""

    limit: Limit | None
    fixed: float = 0.0
    unit: str = "count"

    @property
    def names(self) -> tuple[str, ...]:
        return self.limit.names if self.limit else ()

    def span(self, values: Values) -> Interval:
        return evaluate(self.limit, values, self.unit) if self.limit else Interval.exact(self.fixed)


@dataclass(frozen=True)
class Doubt:
    """Where the lower limit is not under the upper one; `settled` False: it could only not be shown."""

    at: Point
    settled: bool


def not_under(lower: Bound, upper: Bound, spans: Mapping[str, Interval],
              plate: Mapping[str, PlateValue]) -> Doubt | None:
    """None where `lower` <= `upper` everywhere and < somewhere; otherwise a point that says no.

    `spans` gives every name's values (SI), plate values included.
    """
    box = Box(tuple(dict.fromkeys(lower.names + upper.names)), spans, plate)
    corners = box.corners() if _multilinear(lower, box) and _multilinear(upper, box) else None
    return _by_corners(lower, upper, corners) if corners is not None else _by_halves(lower, upper, box)


class Box:
    """The values that a set of names can have together. A side is what is free to vary: a plate value or
    reading, a choice among a few numbers, or the amount by which one plate value is over another."""

    def __init__(self, names: tuple[str, ...], spans: Mapping[str, Interval],
                 plate: Mapping[str, PlateValue]) -> None:
        self.names = names
        self.over = {name: value.over for name in names
                     if (value := plate.get(name)) and value.over in names and value.by is not None}
        self.sides: dict[str, list[Interval]] = {}
        for name in names:
            value = plate.get(name)
            if name in self.over and value is not None and value.by is not None:
                self.sides[name] = [value.by]
            elif value is not None and value.choices:
                self.sides[name] = [Interval.exact(choice) for choice in value.choices]
            else:
                self.sides[name] = [spans.get(name, Interval(-math.inf, math.inf))]

    def values(self, sides: Mapping[str, Interval]) -> dict[str, Interval]:
        """The names' values for one choice of the sides."""
        return {name: self._value(name, sides) for name in self.names}

    def _value(self, name: str, sides: Mapping[str, Interval]) -> Interval:
        total, seen = sides[name], {name}
        while (under := self.over.get(name)) is not None and under not in seen:
            name = under
            seen.add(name)
            total = total + sides[name]
        return total

    def starts(self) -> Iterator[dict[str, Interval]]:
        """The whole box, once for each combination of choices."""
        for picked in itertools.product(*self.sides.values()):
            yield dict(zip(self.sides, picked, strict=True))

    def corners(self) -> list[dict[str, Interval]] | None:
        """The corners as values of the names; None where a side has no end."""
        ends = [[side for span in spans for side in _ends(span)] for spans in self.sides.values()]
        if any(not side.finite for side in itertools.chain(*ends)):
            return None
        picks = itertools.product(*ends)
        return [self.values(dict(zip(self.sides, picked, strict=True))) for picked in picks]


def _ends(span: Interval) -> list[Interval]:
    return [Interval.exact(end) for end in dict.fromkeys((span.lo, span.hi))]


def _by_corners(lower: Bound, upper: Bound, corners: list[dict[str, Interval]]) -> Doubt | None:
    gaps = [_gap(lower, upper, corner).lo for corner in corners]
    least, most = min(gaps), max(gaps)
    if least < 0 or most <= 0:
        return Doubt(_point(corners[gaps.index(least)]), True)
    return None


def _by_halves(lower: Bound, upper: Bound, box: Box) -> Doubt | None:
    queue: list[tuple[float, int, dict[str, Interval]]] = []
    count = itertools.count()
    some_room = False

    def put(sides: dict[str, Interval]) -> None:
        heapq.heappush(queue, (_gap(lower, upper, box.values(sides)).lo, next(count), sides))

    whole = {name: _hull(spans) for name, spans in box.sides.items()}
    for start in box.starts():
        put(start)
    for _ in range(MOST_BOXES):
        low, _, sides = queue[0]
        middle = {name: Interval.exact(side.middle) for name, side in sides.items()}
        room = _gap(lower, upper, box.values(middle))
        some_room = some_room or room.lo > 0
        if room.hi < 0:
            return Doubt(_point(box.values(middle)), True)
        if low >= 0 and some_room:
            return None
        widest = max(sides, key=lambda name: _share(sides[name], whole[name]), default=None)
        if widest is None or not sides[widest].width or not sides[widest].finite:
            break
        heapq.heappop(queue)
        side = sides[widest]
        put({**sides, widest: Interval(side.lo, side.middle)})
        put({**sides, widest: Interval(side.middle, side.hi)})
    middle = {name: Interval.exact(side.middle) for name, side in queue[0][2].items()}
    return Doubt(_point(box.values(middle)), False)


def _gap(lower: Bound, upper: Bound, values: Values) -> Interval:
    """`upper` - `lower`, where twelve digits can't tell them apart exactly nothing."""
    low, high = lower.span(values), upper.span(values)
    gap = high - low
    ends = [abs(end) for end in (low.lo, low.hi, high.lo, high.hi) if math.isfinite(end)]
    fuzz = 1e-12 * max(ends, default=0.0)
    return Interval(_snapped(gap.lo, fuzz), _snapped(gap.hi, fuzz))


def _snapped(value: float, fuzz: float) -> float:
    return 0.0 if abs(value) <= fuzz else value


def _share(side: Interval, whole: Interval) -> float:
    return side.width / whole.width if whole.width and whole.finite else math.inf if side.width else 0.0


def _hull(spans: list[Interval]) -> Interval:
    return Interval(min(span.lo for span in spans), max(span.hi for span in spans))


def _point(values: Values) -> Point:
    return {name: value.middle for name, value in values.items()}


def _multilinear(bound: Bound, box: Box) -> bool:
    """Whether the limit takes each side of the box at most once in any product."""
    if bound.limit is None:
        return True
    powers = _powers(bound.limit.expression, box.over)
    return powers is not None and all(power <= 1 for power in powers.values())


def _powers(part: Expression, over: Mapping[str, str]) -> dict[str, int] | None:
    """The highest power of each side in a part of a limit; None where it is no polynomial."""
    if isinstance(part, written.Number):
        return {}
    if isinstance(part, written.Name):
        powers, name = {part.name: 1}, part.name
        while name in over and over[name] not in powers:
            name = over[name]
            powers[name] = 1
        return powers
    if isinstance(part, written.Negative):
        return _powers(part.of, over)
    if not isinstance(part, written.Joined):
        return None
    left, right = _powers(part.left, over), _powers(part.right, over)
    if left is None or right is None or (part.sign == "/" and right):
        return None
    join: Callable[[int, int], int] = (lambda a, b: a + b) if part.sign == "*" else max
    return {name: join(left.get(name, 0), right.get(name, 0)) for name in {**left, **right}}
