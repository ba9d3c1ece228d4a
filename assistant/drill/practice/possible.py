"""What each look and reading told: how many of the faults that were still possible it ruled out.

Everything the apprentice did is done again to the same house with each other fault in it. A fault stays
possible as long as that house would have answered alike. Nothing is asked of the trees, so that free work is
judged by the same rule as a walk.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from assistant.drill.practice.calls import Call, again, alike
from assistant.drill.practice.drill import Drill
from assistant.drill.practice.entry import Entry
from assistant.drill.practice.houses import SOUND, Houses
from assistant.rig.fault import Fault
from assistant.rig.house import Rig


@dataclass(frozen=True)
class Told:
    """One entry: how many faults were possible before and after it. The house's own is one of them."""

    entry: int
    before: int
    after: int

    @property
    def bits(self) -> float:
        """Information gained, in bits: each halving of what is possible is one."""
        return math.log2(self.before / self.after) if self.after else 0.0

    @property
    def nothing(self) -> bool:
        """Whether no house that was still possible would have answered anything else."""
        return self.before == self.after


@dataclass(frozen=True)
class Narrowing:
    """All of it. `left` are the titles of what was still possible at the end, the house's own left out."""

    told: tuple[Told, ...]
    left: tuple[str, ...]

    def of(self, entry: int) -> Told | None:
        """What one entry told; None where it asked the house nothing."""
        return next((one for one in self.told if one.entry == entry), None)


def narrowing(
    drill: Drill,
    entries: list[Entry],
    calls: list[Call],
    faults: Mapping[str, Fault],
    houses: Houses | None = None,
) -> Iterator[tuple[int, int] | Narrowing]:
    """(done, of all) while it goes on, and the Narrowing last. `houses`: those that are made already."""
    houses = houses or Houses(drill, faults)
    others = houses.others
    asking = [
        (n, entry)
        for n, entry in enumerate(entries)
        if entry.asks or entry.told or entry.blind
    ]
    telling = {call: n for n, entry in asking for call in entry.told}
    out_at: dict[str, int | None] = {}
    for number, name in enumerate(others, 1):
        out_at[name] = _ruled_out(houses.take(name), calls, telling)
        yield number, len(others)
    told = []
    for n, _ in asking:
        before = 1 + sum(at is None or at >= n for at in out_at.values())
        after = 1 + sum(at is None or at > n for at in out_at.values())
        told.append(Told(n, before, after))
    left = tuple(others[name].title if others[name] else SOUND for name, at in out_at.items() if at is None)
    yield Narrowing(tuple(told), left)


def _ruled_out(rig: Rig, calls: list[Call], telling: Mapping[int, int]) -> int | None:
    """The entry that showed that this house is not the drill's; None where nothing did."""
    last = max(telling, default=-1)
    for number, call in enumerate(calls[: last + 1]):
        gave = again(call, rig)
        if number in telling and not alike(call, gave):
            return telling[number]
    return None
