"""A voltage or a current read on a circuit that is switched off is zero, and zero would be taken for "no
supply". The step says needs: live for each circuit it reads; where the power is off, the walker has it put
back first. Only the reading that proves a circuit dead is taken with the power off.
"""

from __future__ import annotations

from assistant.tree.check.points import ENERGIZED, circuits_at
from assistant.tree.check.rule import Faults
from assistant.tree.check.study import Study
from assistant.tree.model import Tree, readings_of
from assistant.tree.power import needs_of, proves_dead

MEND = ("Write needs: with the circuit live on the step; a reading that proves a circuit dead is "
        "named under verifies:.")


def in_tree(study: Study, tree: Tree) -> Faults:
    """Voltages and currents on a circuit that the step does not ask to be live."""
    for step in tree.steps.values():
        for reading in readings_of(step):
            if reading.kind not in ENERGIZED:
                continue
            for circuit in circuits_at(study.vocabulary, reading):
                bound = [one.circuit for one in study.instances_of(tree)]
                if any(circuit not in proves_dead(step, one) and needs_of(step, one).get(circuit) != "live"
                       for one in bound):
                    yield reading.place, (f"{reading.kind} at {' and '.join(reading.at)} means nothing with "
                                          f"circuit '{circuit}' off; write needs: {{{circuit}: live}}")
