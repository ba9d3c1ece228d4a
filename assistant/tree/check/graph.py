"""A tree as steps joined by ways, with what each way says about the readings.

The ways and what they prove are those of the walker (assistant/walk/decide.py): the first reading of a page
whose band names a way decides; if none does, the step's own `then`. `close` and `cannot` decide nothing.
"""

from __future__ import annotations

from collections import deque
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property
from itertools import pairwise

from assistant.tree.model import (
    Band,
    Call,
    Compute,
    Do,
    Look,
    Measure,
    Reading,
    Step,
    Tree,
    Watch,
    Way,
    readings_of,
)


@dataclass(frozen=True)
class Decided:
    """A reading or computed value that a way has settled: it lies in one of `bands`, not in the others."""

    name: str
    what: Reading | Compute
    bands: tuple[Band, ...]

    @property
    def a_fact(self) -> bool:
        """Whether it lies in one band for certain: no two of its bands are neighbours, between which a value
        could lie undecided and still go this way."""
        places = [index for index, band in enumerate(self.what.bands) if band in self.bands]
        return all(high - low > 1 for low, high in pairwise(places))

    @property
    def normal(self) -> bool:
        return all(band.normal for band in self.bands)


@dataclass(frozen=True)
class Edge:
    """One way on from a step. `sure` is False for `close` and `cannot`: nothing was decided there."""

    start: str
    to: str
    words: str
    way: Way
    sure: bool = True
    reads: tuple[str, ...] = ()
    """Names whose value is known on this way."""
    decides: tuple[Decided, ...] = ()

    @property
    def outcome(self) -> str:
        """For a call: the return it stands for."""
        return self.words


def edges_of(step: Step) -> list[Edge]:
    """Every way on from a step, in the order of the file."""
    name = step.common.name
    if isinstance(step, Look):
        edges = [Edge(name, way.to, value, way) for value, way in step.choices.items()]
        return edges + _undecided(step, ())
    if isinstance(step, Call):
        return [Edge(name, way.to, outcome, way) for outcome, way in step.then.items()] + _undecided(step, ())
    if isinstance(step, Do):
        return [Edge(name, step.then.to, "done", step.then), *_undecided(step, ())]
    if isinstance(step, Compute):
        page = [(result, one, one.bands) for result, one in step.page]
        reads = tuple(entry[0] for entry in page)
        return list(_decided(name, page, step.then, reads)) + _undecided(step, reads)
    if isinstance(step, (Measure, Watch)):
        page = [(reading.name or name, reading, reading.bands) for reading in step.readings]
        reads = tuple(entry[0] for entry in page)
        edges = []
        if isinstance(step, Watch):
            edges = [Edge(name, way.to, f"{event} missing", way) for event, way in step.missing.items()]
        return edges + list(_decided(name, page, step.then, reads)) + _undecided(step, reads)
    return []


def _decided(start: str, page: list[tuple[str, Reading | Compute, tuple[Band, ...]]], then: Way | None,
             reads: tuple[str, ...]) -> Iterator[Edge]:
    before: list[Decided] = []
    for name, what, bands in page:
        for target in dict.fromkeys(band.then.to for band in bands if band.then):
            led = tuple(band for band in bands if band.then and band.then.to == target)
            here = () if len(led) == len(bands) else (Decided(name, what, led),)
            words = f"{name}: {' or '.join(band.label for band in led)}"
            way = led[0].then
            assert way is not None
            yield Edge(start, target, words, way, True, reads, (*before, *here))
        onward = tuple(band for band in bands if band.then is None)
        if bands and not onward:
            return
        if bands and len(onward) < len(bands):
            before.append(Decided(name, what, onward))
    if then is not None:
        yield Edge(start, then.to, "then", then, True, reads, tuple(before))


def _undecided(step: Step, reads: tuple[str, ...]) -> list[Edge]:
    name = step.common.name
    close, cannot = getattr(step, "close", None), getattr(step, "cannot", None)
    edges = []
    if close is not None:
        edges.append(Edge(name, close.to, "too close to call", close, False, reads))
    if cannot is not None:
        edges.append(Edge(name, cannot.to, "can't be taken", cannot, False))
    return edges


class Graph:
    """The steps of one tree, the ways between them, and what can be reached from the start."""

    def __init__(self, tree: Tree) -> None:
        self.tree = tree
        self.out = {name: [edge for edge in edges_of(step) if edge.to in tree.steps]
                    for name, step in tree.steps.items()}

    @cached_property
    def into(self) -> dict[str, list[Edge]]:
        """The ways that lead to each step."""
        back: dict[str, list[Edge]] = {name: [] for name in self.tree.steps}
        for edges in self.out.values():
            for edge in edges:
                back[edge.to].append(edge)
        return back

    @cached_property
    def from_start(self) -> dict[str, Edge | None]:
        """Each step that can be reached, with the way that reaches it first (None for the start)."""
        return self.onward(self.tree.start)

    def onward(self, start: str) -> dict[str, Edge | None]:
        """Each step that can be reached from `start`, with the way on a shortest path to it."""
        found: dict[str, Edge | None] = {start: None} if start in self.tree.steps else {}
        queue = deque(found)
        while queue:
            for edge in self.out[queue.popleft()]:
                if edge.to not in found:
                    found[edge.to] = edge
                    queue.append(edge.to)
        return found

    def path(self, to: str, found: dict[str, Edge | None] | None = None) -> list[str]:
        """The step names of a shortest path to `to`, both ends included."""
        found = self.from_start if found is None else found
        names = [to]
        while (edge := found.get(names[-1])) is not None:
            names.append(edge.start)
        return names[::-1]

    @cached_property
    def order(self) -> list[str]:
        """Reached steps, each after all that lead to it (as far as the tree has no circle)."""
        done: list[str] = []
        seen: set[str] = set()
        stack = [(self.tree.start, iter(self.out.get(self.tree.start, ())))] if self.from_start else []
        seen.update(name for name, _ in stack)
        while stack:
            name, edges = stack[-1]
            for edge in edges:
                if edge.to not in seen:
                    seen.add(edge.to)
                    stack.append((edge.to, iter(self.out[edge.to])))
                    break
            else:
                done.append(name)
                stack.pop()
        return done[::-1]

    @cached_property
    def back(self) -> Edge | None:
        """A way that leads back to a step before it; None where there is none."""
        place = {name: index for index, name in enumerate(self.order)}
        edges = (edge for name in self.order for edge in self.out[name])
        return next((edge for edge in edges if place[edge.to] <= place[edge.start]), None)


def names_read(tree: Tree) -> dict[str, list[tuple[Step, Reading | Compute]]]:
    """Every name of a tree's readings and computes, with the steps that give it a value."""
    named: dict[str, list[tuple[Step, Reading | Compute]]] = {}
    for step in tree.steps.values():
        for reading in readings_of(step):
            named.setdefault(reading.name or step.common.name, []).append((step, reading))
        if isinstance(step, Compute):
            for result, one in step.page:
                named.setdefault(result, []).append((step, one))
    return named
