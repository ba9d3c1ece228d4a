"""What can still come: findings not yet proved or ruled out, and the readings that may be asked next."""

from __future__ import annotations

from collections import deque
from collections.abc import Iterator

from assistant.tree.model import Call, Finding, Measure, Reading, Step, Stop, Tree, readings_of, ways_of
from assistant.walk.state import Visit


def still_unproved(visit: Visit) -> tuple[tuple[str, Finding | Stop], ...]:
    """The findings of the walked complaint that can still be reached from here, nearest first."""
    position = visit.position
    if position is None or not position.stack or position.stage != "walking":
        return ()
    bottom = position.stack[0]
    tree = visit.library.trees[bottom.tree]
    return tuple(
        (f"{tree.name}.{step.common.name}", step)
        for step in _from(tree, bottom.step)
        if isinstance(step, Finding) or (isinstance(step, Stop) and step.finding is not None)
    )


def next_readings(visit: Visit, most: int = 12) -> list[tuple[str, Reading]]:
    """The readings that may be asked next, nearest first: a list to take along to the unit."""
    position = visit.position
    if position is None or not position.stack:
        return []
    out: list[tuple[str, Reading]] = []
    for frame in reversed(position.stack):
        tree = visit.library.trees[frame.tree]
        for step in _from(tree, frame.step):
            if isinstance(step, Call) and step.tree in visit.library.trees:
                called = visit.library.trees[step.tree]
                out += [
                    (f"{called.name}.{s.common.name}", r)
                    for s in _from(called, called.start)
                    if isinstance(s, Measure)
                    for r in s.readings
                ]
            out += [(f"{tree.name}.{step.common.name}", reading) for reading in readings_of(step)]
    unique = {(address, reading.name, reading.ask): (address, reading) for address, reading in out}
    return list(unique.values())[:most]


def _from(tree: Tree, start: str) -> Iterator[Step]:
    """The steps that can be reached from `start`, breadth first, `start` included."""
    seen, queue = {start}, deque([start])
    while queue:
        step = tree.steps[queue.popleft()]
        yield step
        for _, way in ways_of(step):
            if way.to not in seen:
                seen.add(way.to)
                queue.append(way.to)
