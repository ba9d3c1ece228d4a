"""What every fuzz script does: so many inputs from a seed, the stages that each gets past, the complaints.

Each input has a chance of its own, made of seed and number: a complaint is met again by its number alone.
"""

from __future__ import annotations

import random
import sys
import time
import traceback
from collections import Counter
from collections.abc import Callable, Iterable

MOST_SECONDS = 5.0
"""An input that takes more of the processor is complained of; how busy the machine is does not count."""
TOLD, SHOWN, NEWS = 20, 5, 10_000
"""Complaints that are listed, those shown with where they came from, inputs between two lines of progress."""

One = Callable[[random.Random, int], "tuple[str, str, Iterable[str]]"]
"""From chance and number: the group that it is counted in, what it is called, and its stages in order. The
stages are worked out while they are counted; whatever they raise is a complaint.
"""


class Complaint(Exception):
    """Something that must not be; its text says what."""


def fuzz(what: str, one: One, count: int, seed: int) -> int:
    """Prints how many inputs of each group got past each stage, the slowest, and every complaint. 1 where
    there was one.
    """
    past: dict[str, Counter] = {}
    complaints: list[str] = []
    slowest = (0.0, "")
    begun = time.perf_counter()
    for number in range(count):
        group, name, stages = one(random.Random(f"{seed} {number}"), number)
        started = time.process_time()
        try:
            past.setdefault(group, Counter()).update(stages)
        except Exception as problem:  # noqa: BLE001 - any other way out is what is looked for
            complaints.append(f"{number} {name}: {type(problem).__name__}: {problem}")
            if len(complaints) <= SHOWN:
                traceback.print_exc()
        taken = time.process_time() - started
        slowest = max(slowest, (taken, f"{number} {name}"))
        if taken > MOST_SECONDS:
            complaints.append(f"{number} {name}: took {taken:.1f} s of the processor")
        if (number + 1) % NEWS == 0:
            print(f"{number + 1:,} {what}, {len(complaints)} complaints", flush=True)
    seconds = time.perf_counter() - begun
    print(f"{count:,} {what} from seed {seed} in {seconds:.0f} s; past each stage:")
    past = dict(sorted(past.items()))
    print(" " * 26 + "".join(f"{group:>14}" for group in past))
    for stage in dict.fromkeys(stage for counted in past.values() for stage in counted):
        print(f"  {stage:24}" + "".join(f"{counted[stage]:>14,}" for counted in past.values()))
    print(f"  slowest: {slowest[0] * 1000:.0f} ms of the processor, {slowest[1]}")
    print(f"  complaints: {len(complaints)}")
    print("\n".join(complaints[:TOLD]))
    return int(bool(complaints))


def asked_for(count: int = 100_000, seed: int = 1) -> tuple[int, int]:
    """How many and from which seed, as the command line says."""
    return (*map(int, sys.argv[1:3]), *(count, seed)[len(sys.argv[1:3]) :])
