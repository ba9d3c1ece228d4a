"""Ohms, insulation and capacitance are read with the meter's own current, and hands are on bare terminals. On
a live circuit the number is wrong, the meter may burn, and the person too. The step says needs: dead for each
circuit it touches; the walker then proves it dead first, every time.
"""

from __future__ import annotations

from assistant.tree.check.points import OHMS, circuits_at
from assistant.tree.check.rule import Faults
from assistant.tree.check.study import Study
from assistant.tree.model import Tree, readings_of
from assistant.tree.power import needs_of

MEND = "Write needs: with the circuit dead on the step."


def in_tree(study: Study, tree: Tree) -> Faults:
    """Ohms on a circuit that the step does not ask to be dead."""
    for step in tree.steps.values():
        for reading in readings_of(step):
            if reading.kind not in OHMS:
                continue
            for circuit in circuits_at(study.vocabulary, reading):
                bound = [one.circuit for one in study.instances_of(tree)]
                if any(needs_of(step, one).get(circuit) != "dead" for one in bound):
                    yield reading.place, (f"{reading.kind} at {' and '.join(reading.at)} is read on circuit "
                                          f"'{circuit}', which is not proved dead here; write needs: "
                                          f"{{{circuit}: dead}}")
