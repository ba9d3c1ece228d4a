"""The fewest tests that could tell faults apart on average, whatever the tests: Huffman's bound.

A test with d outcomes is a branching of d ways, so the mean number of tests is at least the mean depth of
Huffman's tree with d branches (D. A. Huffman, A method for the construction of minimum-redundancy codes,
1952, from memory). Bits of entropy are a floor only for tests with two outcomes.
"""

from __future__ import annotations

import heapq
import math
from collections.abc import Sequence


def mean_depth(weights: Sequence[float], branches: int = 2) -> float:
    """Mean number of tests with `branches` outcomes for faults of these weights. Raises ValueError for fewer
    than two branches.
    """
    if branches < 2:
        raise ValueError("a test has two outcomes or more")
    total = math.fsum(weights)
    heap = [weight / total for weight in weights if weight > 0] if total else []
    if len(heap) < 2:
        return 0.0
    heap += [0.0] * (-(len(heap) - 1) % (branches - 1))
    heapq.heapify(heap)
    depth = 0.0
    while len(heap) > 1:
        joined = math.fsum(heapq.heappop(heap) for _ in range(branches))
        depth += joined
        heapq.heappush(heap, joined)
    return depth


def entropy(weights: Sequence[float]) -> float:
    """Bits of a distribution with these weights (C. E. Shannon 1948, from memory)."""
    total = math.fsum(weights)
    return -math.fsum(w / total * math.log2(w / total) for w in weights if w > 0)
