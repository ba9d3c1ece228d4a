"""What holds on every path to a step, and a path that shows where it does not.

Facts only gather: a reading taken stays taken. What holds at a step is what all ways into it have in common,
so one pass in the order of the steps is enough.
"""

from __future__ import annotations

from collections import deque
from collections.abc import Callable, Hashable, Iterable

from assistant.tree.check.graph import Edge, Graph

Fact = Hashable
Gives = Callable[[Edge], Iterable[Fact]]
"""The facts that a way adds."""


class Always:
    """For each step that is reached, the facts that hold on every path to it. Facts are kept as the bits of a
    number, because a long tree has as many names as steps."""

    def __init__(self, graph: Graph, gives: Gives) -> None:
        self._bits: dict[Fact, int] = {}
        self._held: dict[str, int] = {graph.tree.start: 0}
        for name in graph.order:
            here = self._held[name]
            for edge in graph.out[name]:
                there = here
                for fact in gives(edge):
                    there |= self._bits.setdefault(fact, 1 << len(self._bits))
                self._held[edge.to] = self._held.get(edge.to, there) & there

    def has(self, step: str, fact: Fact) -> bool:
        """Whether a fact holds on every path to a step."""
        return bool(self._held[step] & self._bits.get(fact, 0))

    def of(self, step: str, facts: Iterable[Fact]) -> set[Fact]:
        """Those of `facts` that hold on every path to a step."""
        return {fact for fact in facts if self.has(step, fact)}


def without(graph: Graph, gives: Gives, fact: Fact, to: str) -> list[str]:
    """The steps of a shortest path to `to` on which `fact` never holds; empty where there is none."""
    came: dict[str, Edge | None] = {graph.tree.start: None}
    queue = deque(came)
    while queue:
        name = queue.popleft()
        if name == to:
            edges = []
            while (edge := came[edges[-1].start if edges else to]) is not None:
                edges.append(edge)
            return _named(edges[::-1], to)
        for edge in graph.out[name]:
            if edge.to not in came and fact not in gives(edge):
                came[edge.to] = edge
                queue.append(edge.to)
    return []


def fewest(graph: Graph, gives: Gives, facts: frozenset[Fact], to: str) -> tuple[frozenset[Fact], list[str]]:
    """The smallest set of `facts` that some path to `to` gathers, and the steps of that path."""
    start = (graph.tree.start, frozenset())
    came: dict[tuple[str, frozenset[Fact]], tuple[tuple[str, frozenset[Fact]], Edge] | None] = {start: None}
    queue = deque(came)
    while queue:
        node = queue.popleft()
        for edge in graph.out[node[0]]:
            after = (edge.to, node[1] | (facts & frozenset(gives(edge))))
            if after not in came:
                came[after] = (node, edge)
                queue.append(after)
    ends = [node for node in came if node[0] == to]
    if not ends:
        return frozenset(), []
    end = node = min(ends, key=lambda one: len(one[1]))
    edges = []
    while (before := came[node]) is not None:
        node = before[0]
        edges.append(before[1])
    return end[1], _named(edges[::-1], to)


def _named(edges: list[Edge], to: str) -> list[str]:
    """The steps of a path, with a word beside each that it leaves undecided."""
    return [edge.start if edge.sure else f"{edge.start} ({edge.words})" for edge in edges] + [to]


def decided(edge: Edge) -> list[str]:
    """The names that a way decides to one band, so that they can be shown as facts."""
    return [one.name for one in edge.decides if one.a_fact]


def read(edge: Edge) -> tuple[str, ...]:
    """The names that have a value after a way."""
    return edge.reads
