"""Where the shop's own trees draw the line on a computation: the bands of their compute steps, on a scale."""

from __future__ import annotations

from dataclasses import dataclass

from assistant.quantity.interval import Interval
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


def limits_of(library: Library, function: str, value: float | None, visit: Visit | None) -> list[TreeLimit]:
    """The different limits that the trees set on `function`, with the value (SI) on their scales; plate
    values are those of the visit, their whole range where none was read.
    """
    env = _plate(library, visit)
    out: dict[tuple, TreeLimit] = {}
    for tree in library.trees.values():
        for step in tree.steps.values():
            if not isinstance(step, Compute) or step.function != function or not step.bands or step.gives:
                continue
            if not set(limit_names(step.bands)) <= set(env):
                continue
            verdict = judge(Interval.exact(value), step.bands, env, step.unit) if value is not None else None
            key = tuple((edge.lo, edge.hi) if edge else None for edge in _edges(step, env))
            scale = gauge.gauge(step.bands, None, step.unit, env, None, verdict)
            if scale is not None and key not in out:
                out[key] = TreeLimit(f"As \u201c{tree.title}\u201d draws it", scale, _said(verdict))
            if len(out) == MOST:
                return list(out.values())
    return list(out.values())


def _plate(library: Library, visit: Visit | None) -> dict[str, Interval]:
    env = {name: value.span for name, value in library.vocabulary.plate.items()}
    for name, read in (visit.plate if visit is not None else {}).items():
        if isinstance(read, Record):
            env[name] = read.value
    return env


def _edges(step: Compute, env: dict[str, Interval]) -> tuple[Interval | None, ...]:
    return judge(Interval.exact(0.0), step.bands, env, step.unit).edges


def _said(verdict: Verdict | None) -> str:
    if verdict is None:
        return "nothing worked out yet"
    return verdict.words if verdict.decided else "that rests on the rating plate, which is not read here"
