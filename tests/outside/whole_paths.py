"""Follows a visit along every path of a library, from the first question to the proof of the repair.

Written for test_ten_properties.py alone and by other means than the program's checker: the power of all
circuits is one joint state here, and a visit is followed through its causes, repairs and proof. Only the
loaded trees are shared with the program.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import NamedTuple

from assistant.tree.model import (
    Call,
    Compute,
    Do,
    Finding,
    HandOver,
    Look,
    Measure,
    Return,
    Stop,
    Watch,
)

MEETS = {"live": ("live", "unknown"), "off": ("off", "dead"), "dead": ("dead",)}


class Way(NamedTuple):
    """A way on: the step, how it was answered, and the readings it decided as {name: (reading, bands)}."""

    to: str
    answer: str
    decided: dict


def ways(step) -> Iterator[Way]:
    """The ways on from a step. On a page the first reading whose band names a way decides."""
    if isinstance(step, Look):
        yield from (Way(way.to, value, {}) for value, way in step.choices.items())
    elif isinstance(step, Call):
        yield from (Way(way.to, outcome, {}) for outcome, way in step.then.items())
    elif isinstance(step, Do):
        yield Way(step.then.to, "done", {})
    elif isinstance(step, (Measure, Watch, Compute)):
        if isinstance(step, Watch):
            yield from (Way(way.to, f"no {event}", {}) for event, way in step.missing.items())
        yield from _judged(step)
    for word in ("close", "cannot"):
        way = getattr(step, word, None)
        if way is not None:
            yield Way(way.to, word, {})


def _judged(step) -> Iterator[Way]:
    own = step.common.name
    page = [(step.result, step)] if isinstance(step, Compute) else [(r.name or own, r) for r in step.readings]
    before: dict = {}
    for name, reading in page:
        leads: dict[str | None, list] = {}
        for band in reading.bands:
            leads.setdefault(band.then.to if band.then else None, []).append(band)
        for to, bands in leads.items():
            if to is not None:
                settled = {} if len(leads) == 1 else {name: (reading, bands)}
                yield Way(to, " or ".join(band.label for band in bands), {**before, **settled})
        if leads and None not in leads:
            return
        if len(leads) > 1:
            before[name] = (reading, leads[None])
    if step.then is not None:
        yield Way(step.then.to, "then", dict(before))


@dataclass(frozen=True)
class Failure:
    where: str
    what: str


class Property:
    """What a property follows: a small state beside the power of the house, and where it fails."""

    start: object = None

    def __init__(self, vocabulary) -> None:
        self.vocabulary = vocabulary

    def act(self, state, act):
        """The state after an act."""
        return state

    def leave(self, state, tree, step, way):
        """The state after a step is left by a way."""
        return state

    def hand_over(self, state, complaint: str):
        """The state with which another complaint's walk begins."""
        return state

    def fails(self, state, house, tree, step) -> str | None:
        """Why this step must not be asked here, or None."""
        return None


class Paths:
    """Follows one property through a library; `failures` fills while it does."""

    def __init__(self, library, property_) -> None:
        self.library = library
        self.vocabulary = library.vocabulary
        self.property = property_
        self.failures: set[Failure] = set()
        self.asked: set[tuple[str, str]] = set()
        """(tree, step) of everything that was reached."""
        self._runs: dict = {}

    def follow(self) -> set[Failure]:
        """Every complaint with a tree, begun in a house that nobody has looked at."""
        house = tuple((name, "unknown") for name in self.vocabulary.circuits)
        for complaint in self.vocabulary.complaints.values():
            if complaint.tree in self.library.trees:
                self.run(complaint.tree, None, (house, self.property.start), frozenset())
        return self.failures

    def run(self, name: str, circuit: str | None, start, inside: frozenset) -> dict[str, set]:
        """The states in which a tree comes back, by return."""
        key = (name, circuit, start, inside)
        if key in self._runs:
            return self._runs[key]
        exits = self._runs[key] = {}
        tree = self.library.trees[name]
        inside |= {name}
        seen, queue = {(tree.start, start)}, [(tree.start, start)]
        while queue:
            at, state = queue.pop()
            step = tree.steps[at]
            self.asked.add((name, at))
            if isinstance(step, Return):
                exits.setdefault(step.outcome, set()).add(state)
                continue
            for ready in self.in_front(self.needs(step, circuit), state, inside):
                for after in self.through(tree, step, circuit, ready, inside):
                    if after not in seen:
                        seen.add(after)
                        queue.append(after)
        return exits

    def needs(self, step, circuit) -> dict[str, str]:
        own = step.common.needs.items()
        wanted = {circuit if name == "$circuit" else name: state for name, state in own}
        for name in getattr(step, "verifies", ()):
            wanted.setdefault(circuit if name == "$circuit" else name, "off")
        return wanted

    def in_front(self, needs: dict[str, str], state, inside: frozenset) -> set:
        """The states after the procedures that the walker puts in front where a need is not met."""
        states, tried = {state}, set()
        for _ in needs:
            after = set()
            for house, more in states:
                lacking = [(name, wanted) for name, wanted in needs.items()
                           if dict(house)[name] not in MEETS[wanted] and name not in tried]
                if not lacking:
                    after.add((house, more))
                    continue
                name, wanted = lacking[0]
                known = self.vocabulary.circuits[name]
                procedure = known.restore if wanted == "live" else known.make_dead
                if procedure is None or procedure in inside:
                    after.add((house, more))
                    continue
                bound = name if self.library.trees[procedure].takes else None
                after |= self.run(procedure, bound, (house, more), inside).get("done", set())
            states = after
        return states

    def through(self, tree, step, circuit, state, inside) -> Iterator:
        """(next step, state) of every way on, after looking at the step itself."""
        house, more = state
        why = self.property.fails(more, dict(house), tree, step)
        if why:
            self.failures.add(Failure(f"{tree.name}.{step.common.name}", why))
        if isinstance(step, Finding):
            self.after_finding(step, state, inside)
        if isinstance(step, HandOver):
            other = self.vocabulary.complaints[step.complaint].tree
            if other in self.library.trees:
                self.run(other, None, (house, self.property.hand_over(more, step.complaint)), frozenset())
        if isinstance(step, (Finding, HandOver, Stop)):
            return
        for way in ways(step):
            for after in self.left(step, circuit, way, state, inside):
                yield way.to, (after[0], self.property.leave(after[1], tree, step, way))

    def left(self, step, circuit, way, state, inside) -> set:
        house, more = state
        if way.answer == "cannot":
            return {state}
        if isinstance(step, Do) and step.act:
            return {self.acted(step.act, state)}
        if isinstance(step, Call):
            bound = circuit if step.circuit == "$circuit" else step.circuit
            known = self.vocabulary.circuits.get(bound)
            idle = known and ((known.make_dead, "dead"), (known.restore, "live"))
            if idle and (step.tree, dict(house)[bound]) in idle:
                return {state} if way.answer == "done" else set()
            takes = self.library.trees[step.tree].takes
            return self.run(step.tree, bound if takes else None, state, inside).get(way.answer, set())
        verifies = getattr(step, "verifies", ())
        if verifies and way.answer == "then":
            proved = {circuit if name == "$circuit" else name for name in verifies}
            house = tuple((name, "dead" if name in proved else power) for name, power in house)
        return {(house, more)}

    def acted(self, name: str, state):
        """The state after an act; one that would change nothing is passed over, as the walker does."""
        house, more = state
        act, power = self.vocabulary.acts[name], dict(house)
        same = all(power[c] in (MEETS["off"] if s == "off" else (s,)) for c, s in act.sets.items())
        if act.sets and same and not act.fits and not act.counts:
            return house, self.property.act(more, act)
        for circuit, before in house:
            at = circuit
            while at is not None and at not in act.sets:
                at = self.vocabulary.circuits[at].fed_by
            if at is not None:
                power[circuit] = act.sets[at]
            elif act.fits and before == "dead":
                power[circuit] = "off"
        return tuple(power.items()), self.property.act(more, act)

    def after_finding(self, finding: Finding, state, inside) -> None:
        """Each cause by itself found or none, then the repairs, then the proof."""
        endings = [(state, ())]
        for cause in finding.causes:
            for outcome, states in self.run(cause, None, endings[0][0], inside).items():
                returns = [step for step in self.library.trees[cause].steps.values()
                           if isinstance(step, Return) and step.outcome == outcome]
                endings += [(one, step.repair) for one in states for step in returns]
        for one, repairs in dict.fromkeys(endings):
            states = {one}
            for name in dict.fromkeys([*repairs, *finding.repair]):
                needs = self.vocabulary.acts[name].needs
                ready = {one for old in states for one in self.in_front(needs, old, inside)}
                states = {self.acted(name, one) for one in ready}
            if finding.proof is not None:
                for ready in states:
                    self.run(finding.proof, None, ready, inside)
