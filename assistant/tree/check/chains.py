"""What acts and proofs do to one circuit, as far as it can be told without looking at all circuits at once.

An act's effect on a circuit depends on the circuit's state and on the states of what feeds it, up to the
service: a chain. A circuit is followed as a set of possible chains, so that every circuit has its own small
search.
"""

from __future__ import annotations

from collections.abc import Iterable
from functools import cached_property

from assistant.house.model import Vocabulary
from assistant.tree import power

Chain = tuple[str, ...]
"""The state of a circuit, of what feeds it, and so on up."""

Houses = dict[str, frozenset[Chain]]
"""For each circuit, the chains that are possible."""


class Chains:
    """The chains of one vocabulary's circuits."""

    def __init__(self, vocabulary: Vocabulary) -> None:
        self.vocabulary = vocabulary
        self.of = {name: power.fed_from(vocabulary, name) for name in vocabulary.circuits}
        self._effects: dict[tuple[str, str, Chain], Chain] = {}

    @cached_property
    def anything(self) -> Houses:
        """Every chain that acts and proofs can bring about, starting from a house nobody has looked at."""
        return {circuit: self._reachable(circuit) for circuit in self.of}

    def _reachable(self, circuit: str) -> frozenset[Chain]:
        found = {("unknown",) * len(self.of[circuit])}
        queue = list(found)
        while queue:
            at = queue.pop()
            after = [self.effect(circuit, act.name, at) for act in self.vocabulary.acts.values()
                     if self._may(circuit, act.needs, at)]
            after += [(*at[:i], "dead", *at[i + 1:]) for i, state in enumerate(at) if state == "off"]
            fresh = {state for state in after if state not in found}
            found |= fresh
            queue += fresh
        return frozenset(found)

    def _may(self, circuit: str, needs: dict[str, str], chain: Chain) -> bool:
        """Whether an act's own needs let it be done, as far as this chain can tell."""
        states = self._states(circuit, chain)
        return not power.lacking({name: wanted for name, wanted in needs.items() if name in states}, states)

    def split(self, houses: Houses, circuit: str,
              states: Iterable[str]) -> tuple[Houses | None, Houses | None]:
        """The houses in which `circuit` is in one of `states`, and the others; None where there are none."""
        inside: Houses = {}
        outside: Houses = {}
        for name, chains in houses.items():
            if circuit not in self.of[name]:
                inside[name] = outside[name] = chains
                continue
            index = self.of[name].index(circuit)
            inside[name] = frozenset(chain for chain in chains if chain[index] in states)
            outside[name] = chains - inside[name]
        for part in (inside, outside):
            for index, feeder in enumerate(self.of[circuit][1:], 1):
                part[feeder] &= {chain[index:] for chain in part[circuit]}
        return (inside if inside[circuit] else None), (outside if outside[circuit] else None)

    def acted(self, houses: Houses, act_name: str) -> Houses:
        """The houses after an act; the walker passes over one that would change nothing (walk/house.py)."""
        act = self.vocabulary.acts.get(act_name)
        if act is None:
            return houses
        sets = {} if act.fits or act.counts else act.sets
        after: Houses = {}
        for circuit, chains in houses.items():
            ends = (self._acted(circuit, act_name, sets, chain, houses) for chain in chains)
            after[circuit] = frozenset().union(*ends)
        return after

    def _acted(self, circuit: str, act_name: str, sets: dict[str, str], chain: Chain,
               houses: Houses) -> set[Chain]:
        held = self._held(circuit, chain, sets, houses) if sets else {False}
        after = {chain} if True in held else set()
        if False in held:
            after.add(self.effect(circuit, act_name, chain))
        return after

    def _held(self, circuit: str, chain: Chain, sets: dict[str, str], houses: Houses) -> set[bool]:
        """Whether everything the act sets is so already: {True}, {False}, or both where it can't be told."""
        answers = {True}
        for name, state in sets.items():
            same = power.MEETS["off"] if state == "off" else {state}
            if name in self.of[circuit]:
                if chain[self.of[circuit].index(name)] not in same:
                    return {False}
            elif name in houses:
                found = {other[0] in same for other in houses[name]}
                if True not in found:
                    return {False}
                answers |= found
        return answers

    def effect(self, circuit: str, act_name: str, chain: Chain) -> Chain:
        """A chain after an act."""
        key = (circuit, act_name, chain)
        if key not in self._effects:
            states, _ = power.after_act(self.vocabulary, act_name, self._states(circuit, chain), {})
            self._effects[key] = tuple(states[name] for name in self.of[circuit])
        return self._effects[key]

    def proved(self, houses: Houses, circuits: Iterable[str]) -> Houses:
        """The houses after `circuits` were proved dead."""
        return {circuit: frozenset(self.proved_one(circuit, chain, circuits) for chain in chains)
                for circuit, chains in houses.items()}

    def proved_one(self, circuit: str, chain: Chain, proved: Iterable[str]) -> Chain:
        """A chain after some circuits were proved dead."""
        own = [name for name in proved if name in self.of[circuit]]
        states = power.after_proof(self._states(circuit, chain), own)
        return tuple(states[name] for name in self.of[circuit])

    def _states(self, circuit: str, chain: Chain) -> dict[str, str]:
        return dict(zip(self.of[circuit], chain, strict=True))


def union(parts: list[Houses]) -> Houses:
    """Everything that is possible in any of `parts` (at least one)."""
    return {circuit: frozenset().union(*(part[circuit] for part in parts)) for circuit in parts[0]}
