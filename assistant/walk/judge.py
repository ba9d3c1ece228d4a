"""What a reading means: an interval held against safe limits and bands.

Bands are in order; a value belongs to the first band whose limit it is strictly under. An interval may allow
several; the verdict then names the first and the last, and nothing is guessed. A limit that depends on a
plate value nobody could read is itself an interval.
"""

from __future__ import annotations

import math
from itertools import pairwise

from assistant.quantity.chance import chance_between, standard_uncertainty
from assistant.quantity.interval import Interval
from assistant.tree.limits import Limit, evaluate
from assistant.tree.model import Band, Safe
from assistant.walk.ask import Verdict


def judge(
    value: Interval,
    bands: tuple[Band, ...],
    env: dict[str, Interval],
    unit: str,
    safe: Safe | None = None,
    top_known: bool = True,
) -> Verdict:
    """The verdict on `value` (SI) against `bands` and `safe`, whose limits are evaluated with `env` (SI).

    `top_known=False` says that the display was over a range whose top nobody gave: the value then counts as
    lying from the last limit up. A value that may lie outside the safe limits counts as outside.
    """
    edges = tuple(_edge(band.under, env, unit) for band in bands)
    over = _edge(safe.over, env, unit) if safe else None
    under = _edge(safe.under, env, unit) if safe else None
    if not top_known:
        limits = [edge.hi for edge in (*edges, over) if edge is not None]
        value = Interval(max([value.lo, *limits]), math.inf)
    value = _tidied(value)
    unsafe = (over is not None and value.lo < over.hi) or (under is not None and value.hi >= under.lo)
    first = last = 0
    if bands:
        first = next(i for i, edge in enumerate(edges) if edge is None or value.lo < edge.hi)
        last = next(i for i, edge in enumerate(edges) if edge is None or value.hi < edge.lo)
    return Verdict(value, bands, edges, first, last, unsafe, over, under, _chances(value, edges))


def limit_names(bands: tuple[Band, ...], safe: Safe | None = None) -> list[str]:
    """The names that the limits of these bands use, in order of appearance, each once."""
    limits = [band.under for band in bands] + ([safe.over, safe.under] if safe else [])
    return list(dict.fromkeys(name for limit in limits if limit for name in limit.names))


def _chances(value: Interval, edges: tuple[Interval | None, ...]) -> tuple[float, ...]:
    """The chance of each band; empty for a value without an end."""
    if not value.finite:
        return ()
    uncertainty = standard_uncertainty(value)
    below = [
        1.0 if edge is None else chance_between(value.middle, uncertainty, high=edge.middle) for edge in edges
    ]
    return tuple(max(0.0, b - a) for a, b in pairwise([0.0, *below]))


def _edge(limit: Limit | None, env: dict[str, Interval], unit: str) -> Interval | None:
    return None if limit is None else _tidied(evaluate(limit, env, unit))


def _tidied(value: Interval) -> Interval:
    """Twelve significant digits, so that 1.10 x 120 V and a typed 132 V are the same number."""
    return Interval(_tidy(value.lo), _tidy(value.hi))


def _tidy(number: float) -> float:
    return float(f"{number:.12g}")
