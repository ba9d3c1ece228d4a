"""The problem of which test comes next: faults, tests with outcomes and prices, and what each end still owes.

A test's price is its own minutes, the minutes of what has to be set up for it once, and those of switching
the house dead or live where it needs that. An end that condemns a part owes facts: where they were not read
on the way, the cheapest tests that give them are paid for before it counts.
"""

from __future__ import annotations

import math
from collections.abc import Hashable, Mapping
from dataclasses import dataclass, field

LIVE, DEAD = "live", "dead"


@dataclass(frozen=True)
class Test:
    """`outcomes` and `facts` are per fault, in the problem's order. `needs` is live, dead or "".

    `setups` are (name, minutes) to be done before, each once; `behind` are tests that have to be taken before
    it, for what they might stop or because it asks of what was watched.
    """

    name: str
    minutes: float
    outcomes: tuple[Hashable, ...]
    needs: str = ""
    setups: tuple[tuple[str, float], ...] = ()
    facts: tuple[frozenset[str], ...] = ()
    behind: tuple[int, ...] = ()
    shows: frozenset[int] = frozenset()
    """Faults whose end it shows."""


@dataclass(frozen=True)
class Owed:
    """What must be read before an end may be told: at least `least` of `facts`, and one of `guards`."""

    facts: frozenset[str] = frozenset()
    least: int = 0
    guards: frozenset[str] = frozenset()

    def left(self, known: frozenset[str]) -> int:
        """How many facts are still missing."""
        missing = max(0, min(self.least, len(self.facts)) - len(self.facts & known))
        return missing + bool(self.guards and not self.guards & known)

    def helps(self, facts: frozenset[str], known: frozenset[str]) -> bool:
        """Whether a reading with these facts would pay some of it off."""
        return self.left(known | facts) < self.left(known)


@dataclass(frozen=True)
class Situation:
    """The house as the tests so far have left it."""

    power: str = LIVE
    ready: frozenset[str] = frozenset()
    done: frozenset[int] = frozenset()


@dataclass(frozen=True)
class Problem:
    """`ends[i]` is what fault i has to be told as; two faults with the same end need not be told apart.

    `switching` has the minutes from one power state to the other, by the state wanted. `start`: minutes
    before the first test may be taken, the same for all.
    """

    weights: tuple[float, ...]
    ends: tuple[Hashable, ...]
    tests: tuple[Test, ...]
    owed: Mapping[Hashable, Owed] = field(default_factory=dict)
    switching: Mapping[str, float] = field(default_factory=dict)
    start: float = 0.0

    def price(self, index: int, at: Situation) -> float:
        """Minutes of a test in a situation."""
        test = self.tests[index]
        setting_up = math.fsum(minutes for name, minutes in test.setups if name not in at.ready)
        switched = self.switching.get(test.needs, 0.0) if test.needs and test.needs != at.power else 0.0
        return test.minutes + setting_up + switched

    def after(self, index: int, at: Situation) -> Situation:
        """The situation that a test leaves."""
        test = self.tests[index]
        ready = at.ready | {name for name, _ in test.setups}
        return Situation(test.needs or at.power, ready, at.done | {index})

    def bundle(self, index: int, at: Situation) -> tuple[int, ...]:
        """A test with those that still have to be taken before it, in order."""
        return (*(one for one in self.tests[index].behind if one not in at.done), index)

    def bundle_price(self, bundle: tuple[int, ...], at: Situation) -> float:
        """Minutes of tests taken one after the other."""
        total = 0.0
        for index in bundle:
            total += self.price(index, at)
            at = self.after(index, at)
        return total

    def split(self, index: int, faults: tuple[int, ...]) -> dict[Hashable, tuple[int, ...]]:
        """The faults by what a test says of them."""
        parts: dict[Hashable, list[int]] = {}
        outcomes = self.tests[index].outcomes
        for fault in faults:
            parts.setdefault(outcomes[fault], []).append(fault)
        return {outcome: tuple(members) for outcome, members in parts.items()}

    def parted(self, bundle: tuple[int, ...], faults: tuple[int, ...]) -> list[tuple[int, ...]]:
        """The faults by what several tests say together."""
        parts: dict[Hashable, list[int]] = {}
        for fault in faults:
            parts.setdefault(tuple(self.tests[one].outcomes[fault] for one in bundle), []).append(fault)
        return [tuple(members) for members in parts.values()]

    def told(self, faults: tuple[int, ...]) -> bool:
        """Whether all of them have one end."""
        return len({self.ends[fault] for fault in faults}) == 1

    def weight(self, faults: tuple[int, ...]) -> float:
        """How often one of them is met."""
        return math.fsum(self.weights[fault] for fault in faults)

    def closing(self, fault: int, at: Situation) -> float:
        """Minutes of the cheapest tests, one after the other, that pay off what the fault's end owes: the
        reading that shows it, so that nothing is told because nothing else in a file of faults is left, and
        the facts that it takes.
        """
        total, at = self._shown(fault, at)
        owed = self.owed.get(self.ends[fault])
        if owed is None:
            return total
        known = frozenset().union(*(self._facts(index, fault) for index in at.done))
        while owed.left(known):
            useful = [
                (self.bundle_price(bundle, at), bundle)
                for index in range(len(self.tests))
                if index not in at.done
                and owed.helps(self._facts(index, fault), known)
                and (bundle := self.bundle(index, at))
            ]
            if not useful:
                break
            minutes, bundle = min(useful)
            total += minutes
            for index in bundle:
                known |= self._facts(index, fault)
                at = self.after(index, at)
        return total

    def _shown(self, fault: int, at: Situation) -> tuple[float, Situation]:
        """Minutes of the cheapest test that shows the fault's end, and the situation after it. Nothing where
        one was taken, or where no test by itself does.
        """
        showing = [index for index, test in enumerate(self.tests) if fault in test.shows]
        if not showing or at.done.intersection(showing):
            return 0.0, at
        minutes, bundle = min(
            (self.bundle_price(bundle, at), bundle) for bundle in (self.bundle(one, at) for one in showing)
        )
        for index in bundle:
            at = self.after(index, at)
        return minutes, at

    def _facts(self, index: int, fault: int) -> frozenset[str]:
        facts = self.tests[index].facts
        return facts[fault] if facts else frozenset()
