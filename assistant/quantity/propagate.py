"""How the uncertainties of readings come through a computation, each reading counted once.

First-order propagation (JCGM 100:2008, 5.1.2), kept as signed contributions of the base readings: a reading
that enters twice is then what it is, one reading, and correlated inputs need no table (5.2.2). Derivatives
are central differences over one standard uncertainty, one-sided where the function refuses one side.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Hashable, Mapping

Parts = Mapping[Hashable, float]
"""Base reading -> its signed standard-uncertainty contribution."""


def standard(parts: Parts) -> float:
    """The standard uncertainty that the contributions amount to."""
    return math.hypot(*parts.values())


def propagated(
    function: Callable[[dict[str, float]], float], middle: Mapping[str, float], parts: Mapping[str, Parts]
) -> dict[Hashable, float]:
    """The contributions to `function(middle)` of everything that contributes to its arguments.

    `function` takes the arguments by name and may raise ValueError outside its range.
    """
    out: dict[Hashable, float] = {}
    for name, contributions in parts.items():
        slope = _slope(function, middle, name, standard(contributions))
        for base, part in contributions.items():
            out[base] = out.get(base, 0.0) + slope * part
    return out


def _slope(function: Callable, middle: Mapping[str, float], name: str, step: float) -> float:
    if step == 0:
        return 0.0
    up, down = _at(function, middle, name, step), _at(function, middle, name, -step)
    if up is not None and down is not None:
        return (up - down) / (2 * step)
    here = function(dict(middle))
    if up is not None:
        return (up - here) / step
    return (here - down) / step if down is not None else 0.0


def _at(function: Callable, middle: Mapping[str, float], name: str, offset: float) -> float | None:
    try:
        return function({**middle, name: middle[name] + offset})
    except ValueError:
        return None
