"""What people would rather look at than read: a computation as curves, with the reading's own place on them.

Plain numbers in the units of the axes; drawing them is somebody else's work. A sheet without a curve has
none.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace

from assistant.trade.systems import in_system
from assistant.trade.unit import from_si, symbol, to_si

Point = tuple[float, float]


@dataclass(frozen=True)
class Axis:
    """`log`: equal steps are equal factors. `low` and `high` are the ends, in `unit`."""

    words: str
    unit: str
    low: float
    high: float
    log: bool = False

    @property
    def title(self) -> str:
        return f"{self.words}, {symbol(self.unit)}" if self.unit else self.words


@dataclass(frozen=True)
class Curve:
    """`dashed` for what is only asked or allowed; the words stand at its end."""

    points: tuple[Point, ...]
    words: str = ""
    dashed: bool = False
    faint: bool = False


@dataclass(frozen=True)
class Mark:
    """The reading's own place, or a point worth a look."""

    x: float
    y: float
    words: str
    own: bool = True


@dataclass(frozen=True)
class Band:
    """Where values should lie: between two values of y."""

    low: float
    high: float
    words: str


@dataclass(frozen=True)
class Plot:
    """`spoken` says what the picture shows, for who can't see it."""

    title: str
    x: Axis
    y: Axis
    curves: tuple[Curve, ...] = ()
    marks: tuple[Mark, ...] = ()
    bands: tuple[Band, ...] = ()
    spoken: str = ""


MAKERS: dict[str, Callable[[Mapping, Mapping], Plot | None]] = {}
"""Computation -> what makes its plot of (arguments, results) in SI."""


def plot_of(name: str, values: Mapping[str, object], outcome: Mapping[str, object]) -> Plot | None:
    """The plot of a computation worked out, None where it has none or its values make none."""
    from assistant.trade import curves_air, curves_duct, curves_electric  # noqa: F401 - they fill MAKERS

    maker = MAKERS.get(name)
    if maker is None:
        return None
    try:
        return maker(values, outcome)
    except (ValueError, ArithmeticError, KeyError):
        return None


def in_units(plot: Plot, system: str) -> Plot:
    """The same plot with its axes in US customary units or SI."""
    x, y = _changed(plot.x, system), _changed(plot.y, system)
    if (x, y) == (plot.x, plot.y):
        return plot

    def across(value: float) -> float:
        return from_si(to_si(value, plot.x.unit), x.unit)

    def up(value: float) -> float:
        return from_si(to_si(value, plot.y.unit), y.unit)

    return replace(
        plot,
        x=x,
        y=y,
        curves=tuple(replace(c, points=tuple((across(a), up(b)) for a, b in c.points)) for c in plot.curves),
        marks=tuple(replace(m, x=across(m.x), y=up(m.y)) for m in plot.marks),
        bands=tuple(replace(b, low=up(b.low), high=up(b.high)) for b in plot.bands),
    )


def _changed(axis: Axis, system: str) -> Axis:
    unit = in_system(axis.unit, system)
    if unit == axis.unit:
        return axis
    low, high = (from_si(to_si(end, axis.unit), unit) for end in (axis.low, axis.high))
    return replace(axis, unit=unit, low=low, high=high if axis.log else nice(high))


def plotted(*names: str):
    """Says that the function under it makes the plots of these computations."""

    def keep(maker):
        for name in names:
            MAKERS[name] = maker
        return maker

    return keep


def steps(low: float, high: float, count: int = 60, log: bool = False) -> list[float]:
    """Values from low to high, evenly, or by equal factors."""
    if log:
        return [low * (high / low) ** (i / (count - 1)) for i in range(count)]
    return [low + (high - low) * i / (count - 1) for i in range(count)]


def nice(value: float) -> float:
    """The next round number at or above a positive value."""
    if value <= 0:
        return 1.0
    power = 10.0 ** math.floor(math.log10(value))
    return next(power * step for step in (1, 1.5, 2, 3, 4, 5, 6, 8, 10) if power * step >= value * (1 - 1e-9))


def inwc(value: float) -> float:
    """Pa as in. w.c."""
    return from_si(value, "inwc")


def cfm(value: float) -> float:
    """m³/s as cfm."""
    return from_si(value, "cfm")
