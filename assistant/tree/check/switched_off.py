"""Reading 0 V proves a circuit dead only where somebody has just switched it off. Before that, 0 V may be an
open neutral, a blown fuse or a call that has not come, and the proof would give a live circuit a clean bill.
"""

from __future__ import annotations

from assistant.tree.check.rule import Faults
from assistant.tree.check.study import Study
from assistant.tree.check.witness import witness
from assistant.tree.model import Tree
from assistant.tree.power import MEETS, proves_dead

MEND = "Put a do step with an act that switches the circuit off before the proof, on every path."


def in_tree(study: Study, tree: Tree) -> Faults:
    """Dead-proofs that can be reached without switching off."""
    for instance in study.instances_of(tree):
        trace = study.trace(instance)
        for name, houses in trace.arrivals.items():
            step = tree.steps[name]
            for circuit in proves_dead(step, instance.circuit):
                states = {chain[0] for chain in houses.get(circuit, ())} - MEETS["off"]
                if states:
                    yield step.common.place, (f"'{name}' would prove circuit '{circuit}' dead, but on some "
                                              "path it was not switched off before "
                                              f"({' or '.join(sorted(states))}); lead every path here "
                                              "through a do step whose act switches it off"), witness(
                                                  study, instance, name, circuit, states, ready=False)
