"""Where the shop's own trees draw the line on a computation: the bands of their compute steps, on a scale."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from assistant.quantity.interval import Interval
from assistant.trade.systems import US, in_system
from assistant.tree.library import Library
from assistant.tree.model import Compute
from assistant.walk.ask import Record, Verdict
from assistant.walk.judge import judge, limit_names
from assistant.walk.state import Visit
from assistant.window import gauge
from assistant.window.scale import Drawn

MOST = 2


@dataclass(frozen=True)
class TreeLimit:
    """One tree's bands for a result of this kind: which tree, the scale, and the verdict in words."""

    words: str
    scale: Drawn
    verdict: str


def limits_of(
    library: Library,
    function: str,
    value: float | None,
    visit: Visit | None,
    typed: Mapping[str, Interval] | None = None,
    system: str = US,
) -> tuple[list[TreeLimit], tuple[str, ...]]:
    """The different limits that the trees set on `function`, with the value (SI) on their scales, in the
    system's units; and the plate values that others of them still want. Plate values are those of the visit,
    or `typed`. A limit that wants one that is not there has no scale: it would judge without it.
    """
    plate = {**(typed or {}), **_read(visit)}
    out: dict[tuple, TreeLimit] = {}
    wanted: dict[str, None] = {}
    for tree in library.trees.values():
        for step in tree.steps.values():
            if not isinstance(step, Compute) or step.function != function or not step.bands or step.gives:
                continue
            names = set(limit_names(step.bands))
            if not names <= set(library.vocabulary.plate):
                continue
            if not names <= set(plate):
                missing = names - set(plate)
                wanted.update(dict.fromkeys(n for n in library.vocabulary.plate if n in missing))
                continue
            verdict = (
                judge(Interval.exact(value), step.bands, plate, step.unit) if value is not None else None
            )
            key = tuple((edge.lo, edge.hi) if edge else None for edge in _edges(step, plate))
            unit = in_system(step.unit, system)
            scale = gauge.gauge(step.bands, None, step.unit, plate, None, verdict, unit)
            if scale is not None and key not in out and len(out) < MOST:
                out[key] = TreeLimit(f"As \u201c{tree.title}\u201d draws it", scale, _said(verdict))
    return list(out.values()), tuple(wanted)


def _read(visit: Visit | None) -> dict[str, Interval]:
    """The plate values that were read on the visit."""
    plate = visit.plate if visit is not None else {}
    return {name: read.value for name, read in plate.items() if isinstance(read, Record)}


def _edges(step: Compute, env: dict[str, Interval]) -> tuple[Interval | None, ...]:
    return judge(Interval.exact(0.0), step.bands, env, step.unit).edges


def _said(verdict: Verdict | None) -> str:
    if verdict is None:
        return "nothing worked out yet"
    return verdict.words if verdict.decided else "too close to call"
