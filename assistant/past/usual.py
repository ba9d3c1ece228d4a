"""What was usually found on calls like this one, and which reading would tell most per minute next.

From the shop's own counts and nothing else. The tree leads: this is shut until two readings are in, and what
it says is shown as counts, never as a share of few.
"""

from __future__ import annotations

import math
from collections import Counter, defaultdict
from dataclasses import dataclass

from assistant.past.store import Store
from assistant.tree.model import Finding, Look, Measure, Watch
from assistant.walk.reach import still_unproved
from assistant.walk.state import Visit

OPENS_AFTER = 2
"""Readings that have to be in."""
PRIOR = 0.5
"""Visits that each finding still possible is given beforehand (the prior of Jeffreys for a count): a finding
that was never met stays possible."""
FEW = 5
"""Visits on which a step has to have been taken before its worth is told."""


@dataclass(frozen=True)
class Usual:
    """`times` of `of` visits with this complaint that came to one of the findings still possible."""

    step: str
    title: str
    times: int
    of: int


@dataclass(frozen=True)
class Telling:
    """A step that the walk can still come to. `gain` is what its answer tells, in bits by our counts;
    `minutes` what it took on our visits (or what the tree says); `visits` how many visits this rests on.
    """

    step: str
    ask: str
    gain: float
    minutes: float
    visits: int

    @property
    def per_minute(self) -> float:
        return self.gain / max(self.minutes, 0.25)


def opened(visit: Visit) -> bool:
    """Whether enough was read for this to be shown."""
    position = visit.position
    taken = [record for step in visit.path for record in step.records if record.computed is None]
    return position is not None and position.stage == "walking" and len(taken) >= OPENS_AFTER


def usual(store: Store, visit: Visit) -> list[Usual]:
    """The findings that can still be reached and were met on our calls, the most frequent first; empty while
    it is shut.
    """
    if not opened(visit):
        return []
    titles = {address: _title(step) for address, step in still_unproved(visit)}
    times = _times(store, visit.complaint or "", set(titles))
    total = sum(times.values())
    return [Usual(step, titles[step], count, total) for step, count in times.most_common()]


def _title(step) -> str:
    return step.title if isinstance(step, Finding) else step.finding or ""


def _times(store: Store, complaint: str, possible: set[str]) -> Counter[str]:
    return Counter(step for step in _ends(store, complaint).values() if step in possible)


def _ends(store: Store, complaint: str) -> dict[int, str]:
    """Visit -> the finding that its walk of this complaint came to last."""
    return dict(
        store.base.execute("select visit, step from found where complaint = ? order by rowid", (complaint,))
    )


def telling(store: Store, visit: Visit, most: int = 3) -> list[Telling]:
    """The looks and readings ahead that told most per minute on our calls; empty while it is shut or where
    our calls are too few to say.
    """
    if not opened(visit):
        return []
    possible = [address for address, _ in still_unproved(visit)]
    complaint = visit.complaint or ""
    ends = {v: step for v, step in _ends(store, complaint).items() if step in set(possible)}
    tree = visit.library.trees[visit.position.stack[0].tree]
    taken_already = {taken.step for taken in visit.path}
    ways: dict[str, dict[int, str]] = defaultdict(dict)
    minutes: dict[str, list[float]] = defaultdict(list)
    for number, step, way, took in store.base.execute(
        "select visit, step, way, minutes from taken"
        " where complaint = ? and verb in ('look', 'measure', 'watch')",
        (complaint,),
    ):
        if number in ends:
            ways[step][number] = way
            if took is not None:
                minutes[step].append(took)
    out = []
    for address, by_visit in ways.items():
        name = address.removeprefix(f"{tree.name}.")
        step = tree.steps.get(name)
        if address in taken_already or len(by_visit) < FEW or not isinstance(step, (Look, Measure, Watch)):
            continue
        gain = _gain([(by_visit[number], ends[number]) for number in by_visit], possible)
        took = minutes[address]
        mean = sum(took) / len(took) if took else step.common.minutes or 1.0
        if gain > 0.01:
            out.append(Telling(address, step.ask, gain, mean, len(by_visit)))
    return sorted(out, key=lambda each: (-each.per_minute, each.step))[:most]


def _gain(seen: list[tuple[str, str]], possible: list[str]) -> float:
    """Expected loss of uncertainty about the finding, in bits (mutual information from counts with the prior
    spread over the ways that were seen).
    """
    by_way: dict[str, Counter[str]] = defaultdict(Counter)
    for way, end in seen:
        by_way[way][end] += 1
    share = PRIOR / len(by_way)
    whole = Counter(end for _, end in seen)
    before = _bits([whole[end] + PRIOR for end in possible])
    total = len(seen) + PRIOR * len(possible)
    after = 0.0
    for ends in by_way.values():
        parts = [ends[end] + share for end in possible]
        after += sum(parts) / total * _bits(parts)
    return before - after


def _bits(parts: list[float]) -> float:
    total = math.fsum(parts)
    return -math.fsum(part / total * math.log2(part / total) for part in parts if part > 0)
