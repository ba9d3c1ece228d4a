"""Takes a tree apart into lanes: runs of steps that follow each other, drawn straight down.

Each step that asks or does something stands in one lane. From a step the lane goes on with the way behind
which most of the tree lies; every other way ends at its right, begins a lane of its own, or names a step that
stands elsewhere.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable
from dataclasses import dataclass, field

from assistant.tree.check.graph import Edge, Graph
from assistant.tree.model import Finding, HandOver, Return, Step, Stop

ENDS = (Finding, HandOver, Return, Stop)


@dataclass(frozen=True)
class Way:
    """A drawn way on: the answers that go it, and where it leads."""

    answers: tuple[Edge, ...]
    to: str


@dataclass
class Lane:
    """A run of steps. `came` is the step and the way it branches off by; None for the start, and for what
    nothing leads to. `folded` counts the steps that are not drawn because the lane is folded."""

    steps: list[str] = field(default_factory=list)
    came: tuple[str, Way] | None = None
    folded: int = 0


def ways(graph: Graph, step: str) -> list[Way]:
    """The decided ways on from a step, one for each step they lead to, in the order of the file."""
    return _by_target(edge for edge in graph.out.get(step, ()) if edge.sure)


def weak_ways(graph: Graph, step: str) -> list[Way]:
    """The ways on from a step on which nothing was decided: can't be taken, too close to call."""
    return _by_target(edge for edge in graph.out.get(step, ()) if not edge.sure)


def _by_target(edges: Iterable[Edge]) -> list[Way]:
    found: dict[str, list[Edge]] = {}
    for edge in edges:
        found.setdefault(edge.to, []).append(edge)
    return [Way(tuple(several), to) for to, several in found.items()]


def ends_here(step: Step) -> bool:
    """Whether a step ends a walk, and so stands beside the lanes and not in one."""
    return isinstance(step, ENDS)


def lanes_of(graph: Graph, unfolded: Collection[str] | None = None) -> list[Lane]:
    """The lanes in the order in which they are read: each is followed by those that branch off it. Where
    `unfolded` is given, lanes without one of these steps are folded: their head alone is kept."""
    tree, weight = graph.tree, _weights(graph)
    taken: set[str] = set()
    lanes: list[Lane] = []
    reached = set(graph.from_start)
    heads = [tree.start, *(name for name in tree.steps if name not in reached)]
    for head in heads:
        waiting: list[tuple[str, tuple[str, Way] | None]] = [(head, None)]
        while waiting:
            at, came = waiting.pop()
            if at in taken or at not in tree.steps or (came is not None and ends_here(tree.steps[at])):
                continue
            lane = _lane(graph, at, came, taken, weight)
            lanes.append(lane)
            branches = [(way.to, (step, way)) for kind in (ways, weak_ways) for step in lane.steps
                        for way in kind(graph, step)
                        if way.to not in taken and not ends_here(tree.steps[way.to])]
            waiting += branches[::-1]
    return lanes if unfolded is None else _folded(lanes, set(unfolded))


def _lane(graph: Graph, at: str, came: tuple[str, Way] | None, taken: set[str],
          weight: dict[str, int]) -> Lane:
    lane = Lane([], came)
    while True:
        lane.steps.append(at)
        taken.add(at)
        onward = [way.to for way in ways(graph, at)
                  if way.to not in taken and not ends_here(graph.tree.steps[way.to])]
        if not onward:
            return lane
        at = max(onward, key=lambda name: (weight[name], onward.index(name)))


def _weights(graph: Graph) -> dict[str, int]:
    """How many steps lie behind each step."""
    behind: dict[str, int] = {}
    bit = {name: 1 << place for place, name in enumerate(graph.tree.steps)}
    for name in reversed(graph.order):
        bits = bit[name]
        for edge in graph.out[name]:
            bits |= behind.get(edge.to, 0)
        behind[name] = bits
    return {name: behind.get(name, 0).bit_count() for name in graph.tree.steps}


def _folded(lanes: list[Lane], kept: set[str]) -> list[Lane]:
    """Lanes without a kept step keep their head alone; those that branch off them are left out."""
    shown: set[str] = set()
    out: list[Lane] = []
    for lane in lanes:
        if lane.came is not None and lane.came[0] not in shown:
            if out and out[-1].folded:
                out[-1].folded += len(lane.steps)
            continue
        if lane.came is None or kept & set(lane.steps):
            out.append(lane)
            shown |= set(lane.steps)
        else:
            out.append(Lane(lane.steps[:1], lane.came, len(lane.steps)))
    return out
