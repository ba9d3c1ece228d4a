"""From a step's limits to what its scale shows and says; the limits are evaluated, never judged, here."""

from __future__ import annotations

import math
from collections.abc import Sequence

from assistant.house.model import Source
from assistant.quantity.interval import Interval
from assistant.quantity.kind import show, show_interval, to_si
from assistant.tree.limits import Limit, evaluate
from assistant.tree.model import Band, Safe
from assistant.walk.ask import Verdict
from assistant.window import spread
from assistant.window.scale import Drawn


def gauge(
    bands: Sequence[Band],
    safe: Safe | None,
    unit: str,
    env: dict[str, Interval],
    plausible: tuple[float, float] | None = None,
    verdict: Verdict | None = None,
    shown_in: str = "",
) -> Drawn | None:
    """The scale of a reading, with its value on it once there is a verdict. None where it has no limits, or
    where one of them rests on a reading that is not there yet. `shown_in`: the unit of its numbers, where it
    is not the limits' own.
    """
    edges = [_edge(band.under, env, unit) for band in bands]
    if any(edge is None for edge in edges[:-1]):
        return None
    over, under = (_edge(limit, env, unit) for limit in ((safe.over, safe.under) if safe else (None, None)))
    parts = tuple(spread.stretches([(band.label, band.normal) for band in bands], edges, over, under))
    if not parts:
        return None
    usual = tuple(to_si(end, unit) for end in plausible) if plausible else None
    said = shown_in or unit
    numbers = tuple(_number(part, said) if place else "" for place, part in enumerate(parts))
    return Drawn(
        parts,
        numbers,
        usual,
        verdict.value if verdict else None,
        _may(parts, verdict) if verdict else frozenset(),
        _spoken(parts, said),
    )


def _may(parts: tuple[spread.Stretch, ...], verdict: Verdict) -> frozenset[int]:
    """The stretches that the verdict speaks of."""
    if verdict.unsafe:
        value = verdict.value
        return frozenset(
            place
            for place, part in enumerate(parts)
            if part.kind == "stop" and value.lo <= part.hi and value.hi >= part.lo
        )
    return frozenset(
        place
        for place, part in enumerate(parts)
        if part.band is not None and verdict.first <= part.band <= verdict.last
    )


def limits_said(
    bands: Sequence[Band],
    safe: Safe | None,
    unit: str,
    env: dict[str, Interval],
    sources: dict[str, Source],
    step_source: str | None,
) -> str:
    """Where the limits come from: "Limits 12 V, 108 V: common practice. Stop over 132 V: from memory."."""
    said: dict[str, list[str]] = {}
    for band in bands:
        edge = _edge(band.under, env, unit)
        if edge is not None:
            said.setdefault(_from(band.source or step_source, sources), []).append(show_interval(edge, unit))
    lines = [
        f"{'Limits' if len(numbers) > 1 else 'Limit'} {', '.join(numbers)}: {mark}."
        for mark, numbers in said.items()
    ]
    if safe:
        ends = [
            f"{word} {show_interval(edge, unit)}"
            for word, limit in (("over", safe.over), ("under", safe.under))
            if (edge := _edge(limit, env, unit)) is not None
        ]
        if ends:
            lines.append(f"Safe only {' and '.join(ends)}: {_from(safe.source or step_source, sources)}.")
    return " ".join(lines)


def _from(name: str | None, sources: dict[str, Source]) -> str:
    source = sources.get(name or "")
    if source is None:
        return "no source given"
    if source.mark in ("common practice", "from memory", "reasoned"):
        return source.mark
    where = " ".join(part for part in (source.number, source.year) if part) or source.title
    return f"{source.mark}, {where}" if where else source.mark


def _edge(limit: Limit | None, env: dict[str, Interval], unit: str) -> Interval | None:
    if limit is None or not set(limit.names) <= set(env):
        return None
    try:
        return evaluate(limit, env, unit)
    except (ArithmeticError, ValueError):
        return None


def _number(part: spread.Stretch, unit: str) -> str:
    if part.shade is not None:
        return show_interval(part.shade, unit)
    return show(part.lo, unit) if math.isfinite(part.lo) else ""


def _spoken(parts: tuple[spread.Stretch, ...], unit: str) -> str:
    out = []
    for part in parts:
        if math.isinf(part.lo) and math.isinf(part.hi):
            out.append(part.words)
        elif math.isinf(part.lo):
            out.append(f"under {show(part.hi, unit)} {part.words}")
        else:
            out.append(f"from {show(part.lo, unit)} {part.words}")
    return "; ".join(out)
