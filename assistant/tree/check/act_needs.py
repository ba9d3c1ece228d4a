"""Some acts are safe only with a circuit off or proved dead: a capacitor is bled with the line off, a motor
is fitted with it dead. The house says so once, and every step that does the act is reached with the circuit
in that state.
"""

from __future__ import annotations

from assistant.tree.check.rule import Faults
from assistant.tree.check.study import Study
from assistant.tree.check.witness import witness
from assistant.tree.model import Do, Tree
from assistant.tree.power import MEETS

MEND = ("Write the act's needs on every step that does it; give an act that fits a part needs: in "
        "house.yaml.")


def in_house(study: Study) -> Faults:
    """Acts that fit a part and say nothing about the power."""
    for act in study.vocabulary.acts.values():
        if act.fits and not act.needs:
            yield act.place, (f"'{act.name}' fits a part and does not say with which power state; write "
                              "needs: with the circuit off or dead")


def in_tree(study: Study, tree: Tree) -> Faults:
    """Acts done on a path where a circuit is not as they need it."""
    for instance in study.instances_of(tree):
        for name, houses in study.trace(instance).ready.items():
            step = tree.steps[name]
            act = study.vocabulary.acts.get(step.act or "") if isinstance(step, Do) else None
            for circuit, wanted in act.needs.items() if act else ():
                states = {chain[0] for chain in houses.get(circuit, ())} - MEETS[wanted]
                if states:
                    yield step.common.place, (f"'{act.name}' is done with circuit '{circuit}' {wanted}, and "
                                              f"on some path it is {' or '.join(sorted(states))}; write "
                                              f"needs: {{{circuit}: {wanted}}}"), witness(
                                                  study, instance, name, circuit, states)
