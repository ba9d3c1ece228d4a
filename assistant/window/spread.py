"""Where things stand on a scale drawn from a step's own limits: pure arithmetic, no drawing.

The scale is not linear from end to end. Each band is as wide as its words need, and what is left over is
shared out by the square root of the bands' extents, so that "under 5 V" of 300 V can still be read; within a
band a value has its linear place.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from assistant.quantity.interval import Interval


@dataclass(frozen=True)
class Stretch:
    """One stretch of the scale, from `lo` to `hi` in SI (infinite where nothing bounds it).

    kind: 'band', 'normal' (a band that is normal) or 'stop' (outside the safe limits). `shade` is the limit
    at its lower end where that limit is itself an interval: somewhere in there the stretch begins.
    """

    words: str
    kind: str
    lo: float
    hi: float
    shade: Interval | None = None
    band: int | None = None
    """Which band of the step this is; None outside the safe limits."""


def stretches(
    bands: Sequence[tuple[str, bool]],
    edges: Sequence[Interval | None],
    over: Interval | None = None,
    under: Interval | None = None,
) -> list[Stretch]:
    """The stretches of a scale, from low to high. `bands` are (words, normal), `edges` their limits in SI.

    It is safe over `over` and under `under`; what lies outside is a stop.
    """
    out: list[Stretch] = []
    floor, ceiling = -math.inf, math.inf
    if over is not None:
        out.append(Stretch("stop", "stop", -math.inf, over.middle))
        floor = over.middle
    if under is not None:
        ceiling = under.middle
    low, shade = floor, over if over is not None and over.width else None
    for index, ((words, normal), edge) in enumerate(zip(bands, edges, strict=True)):
        high = min(ceiling, math.inf if edge is None else max(edge.middle, low))
        if high > low:
            out.append(Stretch(words, "normal" if normal else "band", low, high, shade, index))
            low, shade = high, edge if edge is not None and edge.width else None
    if not bands and (over is not None or under is not None):
        out.append(Stretch("safe", "band", floor, ceiling))
    if under is not None:
        out.append(Stretch("stop", "stop", ceiling, math.inf, under if under.width else None))
    return out


def bounds(parts: Sequence[Stretch], usual: tuple[float, float] | None) -> list[tuple[float, float]]:
    """Finite ends for each stretch: `usual` (plausible range, SI) closes the open ones where it can."""
    known = [end for part in parts for end in (part.lo, part.hi) if math.isfinite(end)]
    if not known:
        return [usual or (0.0, 1.0) for _ in parts]
    reach = (max(known) - min(known)) or abs(known[0]) or 1.0
    low, high = min(known) - reach / 2, max(known) + reach / 2
    if min(known) > 0 > low:
        low = 0.0
    if usual:
        low = usual[0] if usual[0] < min(known) else low
        high = usual[1] if usual[1] > max(known) else high
    return [(max(part.lo, low), min(part.hi, high)) for part in parts]


def widths(needed: Sequence[float], extents: Sequence[float], room: float) -> list[float]:
    """Share `room` out: what each needs first, the rest by the square root of the extents; squeezed when
    short.
    """
    short = sum(needed)
    if short >= room:
        return [need * room / short for need in needed]
    roots = [math.sqrt(max(extent, 0.0)) for extent in extents]
    total = sum(roots)
    spare = room - short
    return [
        need + (spare * root / total if total else spare / len(needed))
        for need, root in zip(needed, roots, strict=True)
    ]


def place(value: float, ends: Sequence[tuple[float, float]], lefts: Sequence[float], room: float) -> float:
    """The distance of `value` from the left end of a scale whose stretches begin at `lefts`."""
    if not ends or value <= ends[0][0]:
        return 0.0
    for index, (low, high) in enumerate(ends):
        last = index == len(ends) - 1
        if value < high or last:
            right = room if last else lefts[index + 1]
            share = 0.0 if high <= low else min(1.0, max(0.0, (value - low) / (high - low)))
            return lefts[index] + share * (right - lefts[index])
    return room
