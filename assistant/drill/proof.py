"""The sums of a proof: what was isolated, left open or told wrongly, at what cost, against the best order."""

from __future__ import annotations

import math
from collections import Counter, defaultdict
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property

from assistant.drill.best_order import greedy, mean_cost, rollout
from assistant.drill.case import HEALTHY, features_of, nominal
from assistant.drill.every_test import Said
from assistant.drill.huffman import mean_depth
from assistant.drill.outcome import RIGHT, UNDECIDED, WRONG, Outcome, cause_named, judged
from assistant.drill.problem import cheapest, problem_of, widest
from assistant.drill.testability import Figures, figures
from assistant.rig.fault import Fault
from assistant.rig.part import Value
from assistant.tree.library import Library

RARE = 1e-9
"""Weight of the healthy house in the best order: it must be told from every fault, but nobody is called to
it.
"""


@dataclass(frozen=True)
class Costs:
    """Mean minutes over the faults that were told rightly: the tree's, the best order's, and the floor.

    `by` says which order was the best: greedy, rollout or the tree.
    """

    tree: float
    best: float
    by: str
    floor: float

    @property
    def over_best(self) -> float:
        """The tree's minutes over the best order's."""
        return self.tree / self.best if self.best else 1.0


@dataclass(frozen=True)
class Proof:
    """Everything that was walked for one tree."""

    tree: str
    complaint: str
    library: Library
    faults: Mapping[str, Fault]
    outcomes: Sequence[Outcome]
    said: Mapping[str, Mapping[str, Said]]
    """What each test says of each fault by itself."""
    sound: Mapping[tuple[tuple[str, Value], ...], Mapping[str, Said]]
    """What each test says of a sound house with those features, and of that sort."""

    def fault(self, outcome: Outcome) -> Fault | None:
        """The fault of a sample; None for a healthy house."""
        return self.faults.get(outcome.case.fault)

    def verdict(self, outcome: Outcome) -> str:
        """Right, wrong or undecided."""
        return judged(outcome, self.fault(outcome), self.complaint)

    @cached_property
    def own(self) -> list[Outcome]:
        """Samples of faults that make this tree's complaint."""
        return [o for o in self.outcomes if (f := self.fault(o)) and f.complaint == self.complaint]

    @cached_property
    def healthy(self) -> list[Outcome]:
        """Samples of healthy houses."""
        return [o for o in self.outcomes if o.case.fault == HEALTHY]

    @cached_property
    def elsewhere(self) -> list[Outcome]:
        """Samples of faults that make another complaint."""
        return [o for o in self.outcomes if (f := self.fault(o)) and f.complaint != self.complaint]

    @cached_property
    def usual(self) -> dict[str, Outcome]:
        """The walk of each own fault at its usual degree, without noise."""
        return {
            o.case.fault: o
            for o in self.own
            if not o.case.noisy and o.case.degree == nominal(self.faults[o.case.fault])
        }

    @cached_property
    def groups(self) -> dict[str, set[str]]:
        """End -> the right findings of all faults that come to it without noise."""
        found: dict[str, set[str]] = defaultdict(set)
        for outcome in self.own:
            if not outcome.case.noisy and outcome.kind != "open":
                found[outcome.end].add(self.faults[outcome.case.fault].finding)
        return found

    def isolated(self, outcome: Outcome) -> bool:
        """Right, and at an end that no fault with another right finding comes to."""
        return self.verdict(outcome) == RIGHT and len(self.groups.get(outcome.end, ())) <= 1

    @cached_property
    def figures(self) -> Figures:
        """The testability standards' figures over the own faults at their usual degree."""
        signatures = {
            name: None if o.kind == "nothing" else (o.kind, o.end) for name, o in self.usual.items()
        }
        return figures(signatures, one={name: self.faults[name].finding for name in self.usual})

    @cached_property
    def false_condemnations(self) -> int:
        """Samples in which a part was condemned that was not to be."""
        return sum(1 for o in self.outcomes if o.condemns and self.verdict(o) == WRONG)

    @cached_property
    def undecided_steps(self) -> dict[str, tuple[int, int]]:
        """Step -> (how often too close to call, how often taken), over the noisy samples."""
        taken: Counter[str] = Counter()
        close: Counter[str] = Counter()
        for outcome in self.outcomes:
            if outcome.case.noisy:
                for name, undecided in outcome.steps:
                    taken[name] += 1
                    close[name] += undecided
        return {name: (close[name], taken[name]) for name in sorted(taken)}

    def _tried(self, name: str) -> bool:
        """Whether every test was tried by itself on this fault and on a sound house of its kind."""
        return bool(self.said.get(name) and self.sound.get(features_of(self.faults[name])))

    @cached_property
    def costs(self) -> Costs | None:
        """None where no fault was told rightly, or the tests were not tried by themselves."""
        told = {name: o for name, o in self.usual.items() if self.verdict(o) == RIGHT and self._tried(name)}
        if not told or not self.sound.get(()):
            return None
        ends = {name: o.end for name, o in told.items()}
        weights = dict.fromkeys(told, 1.0)
        here = {name: against(self.said[name], self.sound[features_of(self.faults[name])]) for name in told}
        here[HEALTHY] = against(self.sound[()], self.sound[()])
        tree = self.library.trees[self.tree]
        problem = problem_of(self.library, tree, here, {**ends, HEALTHY: ""}, {**weights, HEALTHY: RARE})
        walked = math.fsum(o.minutes for o in told.values()) / len(told)
        orders = {
            "greedy": mean_cost(problem, greedy(problem)),
            "rollout": mean_cost(problem, rollout(problem)),
            "the tree": walked,
        }
        by = min(orders, key=lambda name: orders[name])
        tests = mean_depth(list(Counter(ends.values()).values()), widest(problem))
        floor = problem.start + tests * cheapest(problem)
        assert orders[by] >= floor - 1e-6, "an order below the floor is a bug"
        return Costs(walked, orders[by], by, floor)


def against(said: Mapping[str, Said], sound: Mapping[str, Said]) -> dict[str, Said]:
    """What tests say of a house, against a sound one of its kind."""
    return {name: one.against(sound[name]) for name, one in said.items()}


def summary(proof: Proof) -> dict[str, object]:
    """The sums as plain data. Counts are over samples; times are in minutes."""
    own = proof.own
    verdicts = Counter(proof.verdict(o) for o in own)
    causes = [named for o in own if (named := cause_named(o, proof.fault(o))) is not None]
    walked = [o for o in own if o.proof]
    costs = proof.costs
    return {
        "faults": len(proof.usual),
        "samples": len(own),
        "isolated": sum(proof.isolated(o) for o in own),
        "ambiguous": verdicts[RIGHT] - sum(proof.isolated(o) for o in own),
        "undecided": verdicts[UNDECIDED],
        "wrong": verdicts[WRONG],
        "false_condemnations": proof.false_condemnations,
        "fraction_detected": proof.figures.detected,
        "fraction_isolated_to_one": proof.figures.isolated(1),
        "fraction_isolated_to_two": proof.figures.isolated(2),
        "mean_ambiguity": proof.figures.ambiguity,
        "mean_readings": _mean([o.readings for o in own]),
        "mean_minutes": _mean([o.minutes for o in own]),
        "best_minutes": costs.best if costs else None,
        "best_by": costs.by if costs else None,
        "cost_over_best": costs.over_best if costs else None,
        "floor": costs.floor if costs else None,
        "causes_asked": len(causes),
        "causes_named": sum(causes),
        "repairs_proved": sum(o.proof == "proved" for o in walked),
        "repairs_walked": len(walked),
        "proved_too_soon": sum(o.proved_too_soon for o in walked),
        "healthy": _counts(proof, proof.healthy),
        "elsewhere": _counts(proof, proof.elsewhere),
    }


def together(proofs: Sequence[Proof]) -> dict[str, object]:
    """The same sums over all trees, and each tree's own under `trees`."""
    each = {proof.tree: summary(proof) for proof in proofs}
    total: dict[str, object] = {}
    for key in next(iter(each.values()), {}):
        known = [(sums[key], sums["samples"]) for sums in each.values() if sums[key] is not None]
        values = [value for value, _ in known]
        if key in COUNTS:
            total[key] = sum(values)
        elif values and isinstance(values[0], dict):
            total[key] = {name: sum(value[name] for value in values) for name in values[0]}
        elif values and isinstance(values[0], (int, float)):
            total[key] = math.fsum(v * weight for v, weight in known) / (sum(w for _, w in known) or 1)
        else:
            total[key] = values[0] if len(values) == 1 else None
    return {**total, "trees": each}


COUNTS = {
    "faults", "samples", "isolated", "ambiguous", "undecided", "wrong", "false_condemnations", "causes_asked",
    "causes_named", "repairs_proved", "repairs_walked", "proved_too_soon",
}  # fmt: skip


def _counts(proof: Proof, outcomes: Sequence[Outcome]) -> dict[str, int]:
    found = Counter(proof.verdict(o) for o in outcomes)
    return {"samples": len(outcomes), **{word: found[word] for word in (RIGHT, UNDECIDED, WRONG)}}


def _mean(values: Sequence[float]) -> float:
    return math.fsum(values) / len(values) if values else 0.0
