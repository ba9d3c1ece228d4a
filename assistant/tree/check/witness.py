"""A shortest path on which a circuit is in a state that a step must not meet.

The searches over power states (circuits.py) keep states and no paths, so that they stay linear. Where a rule
is broken, one more search of that circuit alone finds the path that shows it.
"""

from __future__ import annotations

from assistant.tree.check.chains import Chain
from assistant.tree.check.circuits import Instance
from assistant.tree.check.graph import Edge
from assistant.tree.check.search import Search
from assistant.tree.check.study import Study
from assistant.tree.model import Do, Step, Tree
from assistant.tree.power import proves_dead


def witness(study: Study, instance: Instance, step: str, circuit: str, states: set[str],
            ready: bool = True) -> list[str]:
    """The steps of a shortest path to `step` with `circuit` in one of `states`; before the procedures that
    the walker puts in front where not `ready`. Empty where this simpler search finds none."""
    chains = study.circuits.chains

    def cross(_tree: Tree, at: Step, edge: Edge, chain: Chain) -> Chain:
        if isinstance(at, Do) and edge.sure and at.act in study.vocabulary.acts:
            return chains.effect(circuit, at.act, chain)
        proved = proves_dead(at, instance.circuit)
        return chains.proved_one(circuit, chain, proved) if proved and edge.words == "then" else chain

    walked = Search(study, cross).walk(instance, sorted(chains.anything[circuit]))
    for node in walked.came:
        name, chain, prepared = node
        if name == step and prepared == ready and chain[0] in states:
            return walked.path_to(node)
    return []
