"""One library under study: what several rules need is worked out once and kept here."""

from __future__ import annotations

from collections.abc import Callable
from functools import cached_property
from typing import TypeVar

from assistant.house.model import Vocabulary
from assistant.tree.check.circuits import Circuits, Instance, Trace, bindings
from assistant.tree.check.graph import Edge, Graph, names_read
from assistant.tree.check.search import bound
from assistant.tree.model import Call, Compute, Reading, Step, Tree

Made = TypeVar("Made")


class Study:
    """The trees of a library that loaded, their graphs, and the power states along every path."""

    def __init__(self, vocabulary: Vocabulary, trees: dict[str, Tree],
                 known: frozenset[str] = frozenset()) -> None:
        self.vocabulary = vocabulary
        self.trees = trees
        self.known = known | frozenset(trees)
        """Names of every tree file there is, those that did not load included."""
        self.graphs = {name: Graph(tree) for name, tree in trees.items()}
        self.circuits = Circuits(vocabulary, self.graphs)
        self._kept: dict[str, object] = {}
        self._traces: dict[Instance, Trace] = {}

    @cached_property
    def bindings(self) -> dict[str, list[str | None]]:
        return bindings(self.vocabulary, self.trees)

    @cached_property
    def instances(self) -> list[Instance]:
        """Every tree with everything its `$circuit` can stand for."""
        return [Instance(name, circuit) for name in self.trees for circuit in self.bindings[name]]

    def instances_of(self, tree: Tree) -> list[Instance]:
        return [Instance(tree.name, circuit) for circuit in self.bindings[tree.name]]

    @cached_property
    def named(self) -> dict[str, dict[str, list[tuple[Step, Reading | Compute]]]]:
        """Tree -> name of a reading or compute -> the steps that give it a value."""
        return {name: names_read(tree) for name, tree in self.trees.items()}

    def trace(self, instance: Instance) -> Trace:
        """The power states in a tree that is entered in any state of the house."""
        if instance not in self._traces:
            self._traces[instance] = self.circuits.trace(instance)
        return self._traces[instance]

    def put_in(self, instance: Instance, step: str) -> list[tuple[Instance, bool]]:
        """The procedures that the walker may put in front of a step, each with whether it may be left out."""
        return self.trace(instance).put_in.get(step, [])

    def called(self, instance: Instance, step: Call) -> Instance:
        return self.circuits.bound(step.tree, bound(step, instance.circuit))

    def may_pass(self, instance: Instance, step: Call, edge: Edge) -> bool:
        """Whether the walker may pass over a call: it does where the circuit is already as the procedure
        makes it."""
        circuit = self.vocabulary.circuits.get(bound(step, instance.circuit) or "")
        own = circuit is not None and step.tree in (circuit.make_dead, circuit.restore)
        return own and edge.outcome == "done"

    def keep(self, name: str, make: Callable[[], Made]) -> Made:
        """What `make` gives, worked out once for this study."""
        if name not in self._kept:
            self._kept[name] = make()
        return self._kept[name]  # type: ignore[return-value]
