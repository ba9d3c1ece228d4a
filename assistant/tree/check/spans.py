"""What is judged in a tree, with every value that the names in its limits can have."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass

from assistant.house.place import Place
from assistant.quantity.interval import Interval
from assistant.quantity.kind import from_si, show, to_si
from assistant.tree.check.box import Bound, Doubt
from assistant.tree.check.study import Study
from assistant.tree.limits import Limit
from assistant.tree.model import Band, Compute, Reading, Safe, Step, Tree, readings_of

ANYTHING = Interval(-math.inf, math.inf)


@dataclass(frozen=True)
class Judged:
    """A reading or computed value with its limits. `spans`: name -> every value it can have (SI)."""

    step: Step
    what: str
    kind: str
    unit: str
    bands: tuple[Band, ...]
    safe: Safe | None
    plausible: tuple[float, float] | None
    place: Place
    spans: dict[str, Interval]
    at: tuple[str, ...] = ()

    @property
    def limits(self) -> list[Limit]:
        own = [self.safe.over, self.safe.under] if self.safe else []
        return [limit for limit in [*(band.under for band in self.bands), *own] if limit is not None]

    def bound(self, limit: Limit) -> Bound:
        return Bound(limit, unit=self.unit)


def judged_in(study: Study, tree: Tree) -> Iterator[Judged]:
    """Everything in a tree that has limits, in the order of the file."""
    spans = study.keep(f"spans of {tree.name}", lambda: _spans(study, tree))
    for step in tree.steps.values():
        for reading in readings_of(step):
            yield Judged(step, reading.name or step.common.name, reading.kind, reading.unit, reading.bands,
                         reading.safe, reading.plausible, reading.place, spans, reading.at)
        if isinstance(step, Compute):
            for result, one in step.page:
                place = one.place if isinstance(one, Reading) else step.common.place
                yield Judged(step, result, one.kind, one.unit, one.bands, None, None, place, spans)


def _spans(study: Study, tree: Tree) -> dict[str, Interval]:
    spans = {name: value.span for name, value in study.vocabulary.plate.items()}
    for name, takers in study.named[tree.name].items():
        spans[name] = _hull([_span(what) for _, what in takers])
    return spans


def _span(what: Reading | Compute) -> Interval:
    if isinstance(what, Compute) or what.plausible is None:
        return ANYTHING
    low, high = (to_si(end, what.unit) for end in what.plausible)
    return Interval(low, high)


def _hull(spans: list[Interval]) -> Interval:
    return Interval(min(span.lo for span in spans), max(span.hi for span in spans))


def words_at(study: Study, judged: Judged, doubt: Doubt, low: Bound, high: Bound) -> str:
    """Where two limits cross: " with supply_volts 120 V: 108 V and 100 V"."""
    values = {name: Interval.exact(value) for name, value in doubt.at.items()}
    ends = " and ".join(show(bound.span(values).middle, judged.unit) for bound in (low, high))
    if not doubt.at:
        return f" ({ends})"
    given = ", ".join(f"{name} {_shown(study, name, value)}" for name, value in doubt.at.items())
    return f" with {given}: {ends}"


def _shown(study: Study, name: str, value: float) -> str:
    plate = study.vocabulary.plate.get(name)
    return show(value, plate.unit) if plate else f"{from_si(value, 'count'):g} (SI)"
