"""Readings that know their own uncertainty, carried through any computation, correlations included.

First-order propagation by the law of the GUM (JCGM 100:2008, clause 5): each value remembers how far it moves
for one standard deviation of every independent source, so that a reading that enters twice counts once. Small
enough to own; tests/oracles compares it with two well-kept libraries.
"""

from __future__ import annotations

import itertools
import math
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field

from assistant.quantity.interval import Interval
from assistant.trade.registry import call

_names = itertools.count(1)


@dataclass(frozen=True)
class Uncertain:
    """`value` in SI; `parts`: source -> how far the value moves for one standard deviation of it, with its
    sign.

    `freedom`: degrees of freedom of the sources that have any (the others are taken as known exactly).
    """

    value: float
    parts: Mapping[str, float] = field(default_factory=dict)
    freedom: Mapping[str, float] = field(default_factory=dict)

    @property
    def u(self) -> float:
        """Combined standard uncertainty."""
        return math.sqrt(sum(p * p for p in self.parts.values()))

    @property
    def dof(self) -> float:
        """Effective degrees of freedom (Welch and Satterthwaite, GUM G.4.1), infinite without any."""
        below = sum(p**4 / self.freedom[s] for s, p in self.parts.items() if s in self.freedom)
        return self.u**4 / below if below else math.inf

    def interval(self, factor: float = 2.0) -> Interval:
        """Plus and minus `factor` standard uncertainties: what decides for a computed value."""
        return Interval(self.value - factor * self.u, self.value + factor * self.u)


def measured(value: float, u: float, source: str | None = None, dof: float = math.inf) -> Uncertain:
    """A value with its standard uncertainty from one source of its own (a new one, unless named)."""
    name = source or f"source {next(_names)}"
    return Uncertain(value, {name: u}, {} if math.isinf(dof) else {name: dof})


def correlation(a: Uncertain, b: Uncertain) -> float:
    """Correlation coefficient of two values, 0 where one is exact."""
    shared = sum(p * b.parts.get(s, 0.0) for s, p in a.parts.items())
    return shared / (a.u * b.u) if a.u and b.u else 0.0


def correlated(
    values: Sequence[float], uncertainties: Sequence[float], matrix: Sequence[Sequence[float]]
) -> list[Uncertain]:
    """Values with given standard uncertainties and correlation matrix, as mixtures of independent sources.

    Raises ValueError where the matrix can't be one of correlations.
    """
    names = [f"source {next(_names)}" for _ in values]
    lower: list[list[float]] = []
    for i in range(len(values)):
        row: list[float] = []
        for j in range(i + 1):
            rest = (
                matrix[i][j] - sum(row[k] * lower[j][k] for k in range(j))
                if j < i
                else (matrix[i][i] - sum(r * r for r in row))
            )
            if j == i:
                if rest < -1e-9:
                    raise ValueError("no values can have these correlations")
                row.append(math.sqrt(max(0.0, rest)))
            else:
                row.append(rest / lower[j][j] if lower[j][j] else 0.0)
        lower.append(row)
    return [
        Uncertain(v, {names[k]: u * share for k, share in enumerate(row)})
        for v, u, row in zip(values, uncertainties, lower, strict=True)
    ]


def of_samples(*series: Sequence[float]) -> list[Uncertain]:
    """Means of series taken together, with the standard uncertainties and correlations of the means (GUM 4.2,
    H.2).

    Raises ValueError for series of different length or fewer than two readings.
    """
    count = len(series[0])
    if count < 2 or any(len(s) != count for s in series):
        raise ValueError("series must have the same number of readings, two at least")
    means = [sum(s) / count for s in series]
    off = [[x - m for x in s] for s, m in zip(series, means, strict=True)]
    spread = [math.sqrt(sum(d * d for d in row) / (count * (count - 1))) for row in off]
    matrix = [
        [
            _dot(a, b) / (count * (count - 1)) / (sa * sb) if sa and sb else float(i == j)
            for j, (b, sb) in enumerate(zip(off, spread, strict=True))
        ]
        for i, (a, sa) in enumerate(zip(off, spread, strict=True))
    ]
    return correlated(means, spread, matrix)


def _dot(a: Sequence[float], b: Sequence[float]) -> float:
    return sum(x * y for x, y in zip(a, b, strict=True))


def combine(function: Callable[..., float], values: Sequence[Uncertain | float]) -> Uncertain:
    """function(*values) with its uncertainty: each value's parts times the function's slope there (central
    step).
    """
    plain = [v.value if isinstance(v, Uncertain) else v for v in values]
    parts: dict[str, float] = {}
    freedom: dict[str, float] = {}
    for i, v in enumerate(values):
        if not isinstance(v, Uncertain) or not v.u:
            continue
        slope = _slope(lambda x, i=i: function(*plain[:i], x, *plain[i + 1 :]), v.value, v.u)
        for source, part in v.parts.items():
            parts[source] = parts.get(source, 0.0) + slope * part
        freedom.update(v.freedom)
    return Uncertain(function(*plain), parts, freedom)


def through(name: str, values: Mapping[str, Uncertain | float | str]) -> Uncertain:
    """A registry computation with its uncertainty. Raises ArgumentError as `call` does."""
    moving = [k for k, v in values.items() if isinstance(v, Uncertain)]
    fixed = {k: v for k, v in values.items() if k not in moving}
    return combine(
        lambda *xs: call(name, {**fixed, **dict(zip(moving, xs, strict=True))}), [values[k] for k in moving]
    )


def _slope(function: Callable[[float], float], at: float, u: float) -> float:
    """Slope by a small central step; by a one-sided one where the range of the function ends."""
    step = 1e-5 * max(abs(at), u)
    try:
        return (function(at + step) - function(at - step)) / (2 * step)
    except ValueError:
        pass
    try:
        return (function(at + step) - function(at)) / step
    except ValueError:
        return (function(at) - function(at - step)) / step
