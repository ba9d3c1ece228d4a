"""What each look and reading told: how many of the faults that were still possible it ruled out.

Everything the apprentice did is done again to the same house with each other fault in it. A fault stays
possible as long as that house would have answered alike. Nothing is asked of the trees, so that free work is
judged by the same rule as a walk.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from assistant.drill.case import nominal
from assistant.drill.practice.calls import Call, again, alike
from assistant.drill.practice.drill import Drill
from assistant.drill.practice.entry import Entry
from assistant.rig.fault import Fault
from assistant.rig.house import Rig

SOUND = "nothing wrong"


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


def candidates(drill: Drill, faults: Mapping[str, Fault]) -> dict[str, Fault | None]:
    """Every other fault of this complaint that this house can have, and a house with nothing wrong."""
    features = drill.unit().features
    own = drill.fault
    found: dict[str, Fault | None] = {
        name: fault
        for name, fault in faults.items()
        if fault.complaint == drill.complaint
        and (own is None or name != own.name)
        and all(features[key] == value for key, value in fault.house.items())
    }
    return {**found, SOUND: None} if own is not None else found


def narrowing(
    drill: Drill, entries: list[Entry], calls: list[Call], faults: Mapping[str, Fault]
) -> Iterator[tuple[int, int] | Narrowing]:
    """(done, of all) while it goes on, and the Narrowing last."""
    others = candidates(drill, faults)
    asking = [(n, entry) for n, entry in enumerate(entries) if entry.asks or entry.told or entry.blind]
    telling = {call: n for n, entry in asking for call in entry.told}
    out_at: dict[str, int | None] = {}
    for number, (name, fault) in enumerate(others.items(), 1):
        out_at[name] = _ruled_out(drill, fault, calls, telling)
        yield number, len(others)
    told = []
    for n, _ in asking:
        before = 1 + sum(at is None or at >= n for at in out_at.values())
        after = 1 + sum(at is None or at > n for at in out_at.values())
        told.append(Told(n, before, after))
    left = tuple(others[name].title if others[name] else SOUND for name, at in out_at.items() if at is None)
    yield Narrowing(tuple(told), left)


def _ruled_out(
    drill: Drill, fault: Fault | None, calls: list[Call], telling: Mapping[int, int]
) -> int | None:
    """The entry that showed that this is not the fault; None where nothing did."""
    unit = drill.unit()
    rig = Rig(unit, fault, nominal(fault), drill.seed) if fault else Rig(unit, seed=drill.seed)
    last = max(telling, default=-1)
    for number, call in enumerate(calls[: last + 1]):
        gave = again(call, rig)
        if number in telling and not alike(call, gave):
            return telling[number]
    return None
