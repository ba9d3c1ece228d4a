"""The cheapest order of tests that could be found: greedy information per minute, and rollout over it.

Greedy takes the test with most bits about the end for its minutes. Rollout looks one test further: it tries
each of the best few and goes on greedily behind it, and so is never worse (D. P. Bertsekas and others,
Rollout algorithms for combinatorial optimization, 1997, from memory). Neither is proved to be the optimum.
"""

from __future__ import annotations

import math
from collections.abc import Hashable
from dataclasses import dataclass, field

from assistant.drill.sequence import Problem, Situation

TRIED = 8
"""Tests that rollout tries at each place."""


@dataclass(frozen=True)
class Order:
    """A tree of tests: `test` is None at an end. `cost`: mean minutes from here, times the weight."""

    test: int | None
    faults: tuple[int, ...]
    cost: float
    ways: dict[Hashable, Order] = field(default_factory=dict)

    def depth(self, problem: Problem) -> float:
        """Number of tests on the way to each end, times the weight."""
        own = problem.weight(self.faults) if self.test is not None else 0.0
        return own + math.fsum(way.depth(problem) for way in self.ways.values())


def greedy(problem: Problem) -> Order:
    """By most information per minute."""
    return _greedy(problem, _all(problem), Situation())


def rollout(problem: Problem, tried: int = TRIED) -> Order:
    """By trying the best few tests and going on greedily."""
    return _rollout(problem, _all(problem), Situation(), tried)


def mean_cost(problem: Problem, order: Order) -> float:
    """Mean minutes over all faults, the common start included."""
    return problem.start + order.cost / math.fsum(problem.weights)


def minutes_to(problem: Problem, order: Order, fault: int) -> float:
    """Minutes from the start to the end of one fault, what its end owes included."""
    at, total = Situation(), problem.start
    while order.test is not None:
        total += problem.price(order.test, at)
        at = problem.after(order.test, at)
        order = order.ways[problem.tests[order.test].outcomes[fault]]
    return total + problem.closing(fault, at)


def _all(problem: Problem) -> tuple[int, ...]:
    return tuple(range(len(problem.weights)))


def _greedy(problem: Problem, faults: tuple[int, ...], at: Situation) -> Order:
    ranked = _ranked(problem, faults, at, 1)
    if not ranked:
        return _end(problem, faults, at)
    return _taken(problem, ranked[0], faults, at, _greedy)


def _rollout(problem: Problem, faults: tuple[int, ...], at: Situation, tried: int) -> Order:
    ranked = _ranked(problem, faults, at, tried)
    if not ranked:
        return _end(problem, faults, at)
    chosen = ranked[0]
    if len(ranked) > 1:
        chosen = min(ranked, key=lambda index: _taken(problem, index, faults, at, _greedy).cost)
    return _taken(problem, chosen, faults, at, lambda p, f, a: _rollout(p, f, a, tried))


def _taken(problem: Problem, index: int, faults: tuple[int, ...], at: Situation, onward) -> Order:
    """The order that begins with a test and goes on by `onward` behind each of its outcomes."""
    after = problem.after(index, at)
    ways = {outcome: onward(problem, part, after) for outcome, part in problem.split(index, faults).items()}
    cost = problem.price(index, at) * problem.weight(faults)
    return Order(index, faults, cost + math.fsum(way.cost for way in ways.values()), ways)


def _end(problem: Problem, faults: tuple[int, ...], at: Situation) -> Order:
    cost = math.fsum(problem.weights[fault] * problem.closing(fault, at) for fault in faults)
    return Order(None, faults, cost)


def _ranked(problem: Problem, faults: tuple[int, ...], at: Situation, most: int) -> list[int]:
    """The tests to take next, best first; none where all have one end or nothing tells them apart.

    A test that others have to be taken before is weighed with them, and the first of them is taken.
    """
    if len(faults) < 2 or problem.told(faults):
        return []
    before = _bits(problem, faults)
    total = problem.weight(faults)
    found: list[tuple[float, int]] = []
    for index in range(len(problem.tests)):
        if index in at.done:
            continue
        bundle = problem.bundle(index, at)
        parts = problem.parted(bundle, faults)
        if len(parts) < 2:
            continue
        left = math.fsum(problem.weight(part) / total * _bits(problem, part) for part in parts)
        gained = before - left
        if gained > 1e-9:
            found.append((-gained / max(problem.bundle_price(bundle, at), 1e-9), bundle[0]))
    return list(dict.fromkeys(index for _, index in sorted(found)))[:most]


def _bits(problem: Problem, faults: tuple[int, ...]) -> float:
    """Entropy of the end over these faults."""
    by_end: dict[Hashable, float] = {}
    for fault in faults:
        by_end[problem.ends[fault]] = by_end.get(problem.ends[fault], 0.0) + problem.weights[fault]
    total = math.fsum(by_end.values())
    return -math.fsum(w / total * math.log2(w / total) for w in by_end.values() if w > 0)
