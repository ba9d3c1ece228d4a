"""Figures of how well tests tell faults apart: detected, isolated, ambiguity, false condemnations.

Definitions of MIL-STD-2165 (1985), task 202 and 203, and IEEE 1522-2004, from memory. A signature is all that
the tests of one fault say; faults with the same signature can't be told apart and form an ambiguity group.
Weights are failure rates; without any, all faults weigh the same.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Hashable, Mapping
from dataclasses import dataclass


@dataclass(frozen=True)
class Figures:
    """`detected`: share of the failure rate whose tests show that something is wrong. `groups` maps the size
    of an ambiguity group to the share of the detected rate that lies in groups of it. `ambiguity`: mean size
    of the group over the detected rate.
    """

    detected: float
    groups: Mapping[int, float]
    ambiguity: float

    def isolated(self, most: int = 1) -> float:
        """Share of the detected rate that is isolated to `most` faults or fewer."""
        return sum(share for size, share in self.groups.items() if size <= most)


def figures(
    signatures: Mapping[str, Hashable | None],
    weights: Mapping[str, float] | None = None,
    one: Mapping[str, Hashable] | None = None,
) -> Figures:
    """The figures of faults by name. A signature of None says that nothing was detected.

    `one` names what is replaced or mended together: two faults with the same one need not be told apart, and
    a group counts how many different ones are in it.
    """
    weights = weights or dict.fromkeys(signatures, 1.0)
    unit = one or {name: name for name in signatures}
    groups: dict[Hashable, list[str]] = defaultdict(list)
    for name, signature in signatures.items():
        if signature is not None:
            groups[signature].append(name)
    total = sum(weights[name] for name in signatures)
    rate = sum(weights[name] for names in groups.values() for name in names)
    shares: dict[int, float] = defaultdict(float)
    for names in groups.values():
        size = len({unit[name] for name in names})
        shares[size] += sum(weights[name] for name in names)
    if not rate:
        return Figures(0.0, {}, 0.0)
    by_size = {size: share / rate for size, share in sorted(shares.items())}
    return Figures(rate / total, by_size, sum(size * share for size, share in by_size.items()))
