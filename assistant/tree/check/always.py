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


def always(graph: Graph, gives: Gives) -> dict[str, frozenset[Fact]]:
    """For each step that is reached, the facts that hold on every path to it."""
    holds: dict[str, frozenset[Fact]] = {graph.tree.start: frozenset()}
    for name in graph.order:
        here = holds[name]
        for edge in graph.out[name]:
            there = here.union(gives(edge))
            holds[edge.to] = holds[edge.to] & there if edge.to in holds else there
    return holds


def without(graph: Graph, gives: Gives, fact: Fact, to: str) -> list[str]:
    """The steps of a shortest path to `to` on which `fact` never holds; empty where there is none."""
    came: dict[str, str | None] = {graph.tree.start: None}
    queue = deque(came)
    while queue:
        name = queue.popleft()
        if name == to:
            path = [name]
            while (before := came[path[-1]]) is not None:
                path.append(before)
            return path[::-1]
        for edge in graph.out[name]:
            if edge.to not in came and fact not in gives(edge):
                came[edge.to] = name
                queue.append(edge.to)
    return []


def fewest(graph: Graph, gives: Gives, facts: frozenset[Fact], to: str) -> tuple[frozenset[Fact], list[str]]:
    """The smallest set of `facts` that some path to `to` gathers, and the steps of that path."""
    start = (graph.tree.start, frozenset())
    came: dict[tuple[str, frozenset[Fact]], tuple[str, frozenset[Fact]] | None] = {start: None}
    queue = deque(came)
    while queue:
        node = queue.popleft()
        for edge in graph.out[node[0]]:
            after = (edge.to, node[1] | (facts & frozenset(gives(edge))))
            if after not in came:
                came[after] = node
                queue.append(after)
    ends = [node for node in came if node[0] == to]
    if not ends:
        return frozenset(), []
    node = min(ends, key=lambda end: len(end[1]))
    path = [node]
    while (before := came[path[-1]]) is not None:
        path.append(before)
    return node[1], [name for name, _ in path[::-1]]


def decided(edge: Edge) -> list[str]:
    """The names that a way decides."""
    return [one.name for one in edge.decides]


def read(edge: Edge) -> tuple[str, ...]:
    """The names that have a value after a way."""
    return edge.reads
