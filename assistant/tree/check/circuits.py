"""The power states that each circuit can have at each step, through calls and put-in procedures.

One search per circuit (chains.py). A joint search over all circuits would say no more for these rules and
grows with four to the power of the circuits; this one is linear in the steps.

Every tree is searched from any state a house can be in: a walk may begin after another complaint's, a
procedure may be put in front of anything. Where another circuit's need puts a procedure in front, that
circuit's own search says whether it can happen.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import NamedTuple

from assistant.house.model import Vocabulary
from assistant.tree import power
from assistant.tree.check.chains import Chains, Houses, union
from assistant.tree.check.graph import Edge, Graph
from assistant.tree.model import Call, Do, Return, Step, Tree


class Instance(NamedTuple):
    """A tree with its `$circuit` bound (None where it takes none)."""

    tree: str
    circuit: str | None


class Unmet(NamedTuple):
    """A need that nothing on the way to its step could meet."""

    step: str
    circuit: str
    wanted: str
    why: str


@dataclass
class Trace:
    """What one search of a tree saw: the houses at each step before (`arrivals`) and after (`ready`) the
    procedures that its needs put in front, and those it comes back with (`exits`)."""

    arrivals: dict[str, Houses] = field(default_factory=dict)
    ready: dict[str, Houses] = field(default_factory=dict)
    put_in: dict[str, list[tuple[Instance, bool]]] = field(default_factory=dict)
    """Step -> procedures in front of it, each with whether it may be left out."""
    unmet: list[Unmet] = field(default_factory=list)
    exits: dict[str, Houses] = field(default_factory=dict)


class Circuits:
    """Searches the trees of one library for the power state of every circuit."""

    def __init__(self, vocabulary: Vocabulary, graphs: dict[str, Graph]) -> None:
        self.vocabulary = vocabulary
        self.graphs = graphs
        self.chains = Chains(vocabulary)
        self._runs: dict[tuple, Trace] = {}

    def trace(self, instance: Instance) -> Trace:
        """The search of a tree from any state of the house."""
        return self._run(instance, self.chains.anything, frozenset())

    def _run(self, instance: Instance, start: Houses, inside: frozenset[str]) -> Trace:
        key = (instance, tuple(start.values()), inside)
        if key not in self._runs:
            self._runs[key] = Trace()  # what a circle of calls finds; another rule reports the circle
            self._runs[key] = self._search(instance, start, inside | {instance.tree})
        return self._runs[key]

    def _search(self, instance: Instance, start: Houses, inside: frozenset[str]) -> Trace:
        graph, trace = self.graphs[instance.tree], Trace()
        tree = graph.tree
        trace.arrivals[tree.start] = start
        for name in graph.order:
            houses = trace.arrivals.get(name)
            if houses is None:
                continue
            step = tree.steps[name]
            if isinstance(step, Return):
                _join(trace.exits, step.outcome, houses)
                continue
            houses = trace.ready[name] = self._prepared(step, instance, houses, inside, trace)
            if not all(houses.values()):
                continue
            for edge in graph.out[name]:
                for after in self._across(step, edge, instance, houses, inside):
                    _join(trace.arrivals, edge.to, after)
        return trace

    def _prepared(self, step: Step, instance: Instance, houses: Houses, inside: frozenset[str],
                  trace: Trace) -> Houses:
        """The houses after the procedures that the step's needs put in front, as the walker does it."""
        needs = {circuit: wanted for circuit, wanted in power.needs_of(step, instance.circuit).items()
                 if circuit in houses}
        tried: dict[str, str] = {}
        while (circuit := _first_lacking(needs, houses, tried)) is not None:
            tried[circuit] = "another need of the step undoes it"
            wanted = needs[circuit]
            name = self.procedure_for(circuit, wanted)
            if name is None or name in inside:
                tried[circuit] = f"{name} is under way" if name else "no procedure makes it so"
                continue
            met, lacking = self.chains.split(houses, circuit, power.MEETS[wanted])
            assert lacking is not None
            done: Houses | None = lacking  # believed to do its work where it did not load; that is reported
            if name in self.graphs:
                procedure = self.bound(name, circuit)
                trace.put_in.setdefault(step.common.name, []).append((procedure, met is not None))
                done = self._run(procedure, lacking, inside).exits.get("done")
            parts = [met, self._believed(done, circuit, wanted)]
            parts = [part for part in parts if part is not None]
            houses = union(parts) if parts else dict.fromkeys(houses, frozenset())
        trace.unmet += [Unmet(step.common.name, circuit, needs[circuit], why)
                        for circuit, why in tried.items() if _lacks(needs, houses, circuit)]
        return houses

    def _believed(self, done: Houses | None, circuit: str, wanted: str) -> Houses | None:
        """The houses after a procedure as the walker believes them: its circuit is as it should be. Whether
        the procedure keeps that promise is a rule of its own, and one report of it is enough."""
        if done is None:
            return None
        kept, _ = self.chains.split(done, circuit, power.MEETS[wanted])
        return kept or {**done, circuit: frozenset((wanted, *chain[1:]) for chain in done[circuit])}

    def procedure_for(self, circuit: str, wanted: str) -> str | None:
        """The procedure that brings a circuit into a state, as the house names it."""
        known = self.vocabulary.circuits[circuit]
        return known.restore if wanted == "live" else known.make_dead

    def bound(self, tree: str, circuit: str | None) -> Instance:
        return Instance(tree, circuit if self.graphs[tree].tree.takes else None)

    def _across(self, step: Step, edge: Edge, instance: Instance, houses: Houses,
                inside: frozenset[str]) -> list[Houses]:
        """The houses after leaving `step` by `edge`: none where that way can't be taken."""
        if not edge.sure:  # nothing was done, called or proved
            return [houses]
        if isinstance(step, Call):
            return self._called(step, edge, instance, houses, inside)
        if isinstance(step, Do) and step.act:
            return [self.chains.acted(houses, step.act)]
        proved = power.proves_dead(step, instance.circuit)
        if proved and edge.words == "then":
            return [self.chains.proved(houses, proved)]
        return [houses]

    def _called(self, step: Call, edge: Edge, instance: Instance, houses: Houses,
                inside: frozenset[str]) -> list[Houses]:
        if step.tree not in self.graphs:
            return [houses]
        circuit = instance.circuit if step.circuit == power.BOUND else step.circuit
        known = self.vocabulary.circuits.get(circuit or "")
        passed, entering = None, houses
        if known is not None and step.tree in (known.make_dead, known.restore) and "done" in step.then:
            state = "dead" if step.tree == known.make_dead else "live"
            passed, entering = self.chains.split(houses, known.name, (state,))
        out = [passed] if passed is not None and edge.outcome == "done" else []
        if entering is not None:
            exits = self._run(self.bound(step.tree, circuit), entering, inside).exits
            out += [exits[edge.outcome]] if edge.outcome in exits else []
        return out


def bindings(vocabulary: Vocabulary, trees: dict[str, Tree]) -> dict[str, list[str | None]]:
    """What `$circuit` can stand for in each tree: [None] where the tree takes none."""
    bound: dict[str, dict[str | None, None]] = {name: {} for name in trees}
    for circuit in vocabulary.circuits.values():
        for name in (circuit.make_dead, circuit.restore):
            if name in bound:
                bound[name][circuit.name] = None
    for tree in trees.values():
        for step in tree.steps.values():
            if isinstance(step, Call) and step.tree in bound and step.circuit in vocabulary.circuits:
                bound[step.tree][step.circuit] = None
    return {name: (list(bound[name]) or list(vocabulary.circuits)) if trees[name].takes else [None]
            for name in trees}


def _lacks(needs: dict[str, str], houses: Houses, circuit: str) -> bool:
    return any(chain[0] not in power.MEETS[needs[circuit]] for chain in houses[circuit])


def _first_lacking(needs: dict[str, str], houses: Houses, tried: dict[str, str]) -> str | None:
    waiting = (circuit for circuit in needs if circuit not in tried)
    return next((circuit for circuit in waiting if _lacks(needs, houses, circuit)), None)


def _join(into: dict[str, Houses], key: str, houses: Houses) -> None:
    into[key] = union([into[key], houses]) if key in into else houses
