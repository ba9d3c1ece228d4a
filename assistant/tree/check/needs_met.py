"""Where a step's needs are not met, the walker puts the circuit's procedure in front of it. That must be
possible on every path: there is such a procedure, it is not the one that is just under way, and meeting one
need does not undo another. Otherwise the walk would stop in the middle with the tools in hand.
"""

from __future__ import annotations

from assistant.tree.check.rule import Faults
from assistant.tree.check.study import Study
from assistant.tree.check.witness import witness
from assistant.tree.model import Tree
from assistant.tree.power import MEETS, proves_dead

MEND = ("Change the step's needs, or switch before it with a step of its own, so that no procedure "
        "is asked for inside itself.")


def in_tree(study: Study, tree: Tree) -> Faults:
    """Needs that no procedure can meet on some path."""
    for instance in study.instances_of(tree):
        for unmet in study.trace(instance).unmet:
            step = tree.steps[unmet.step]
            if unmet.circuit in proves_dead(step, instance.circuit):
                continue  # a proof is never put in front of itself: switched_off has its own words for that
            others = {"live", "off", "dead", "unknown"} - set(MEETS[unmet.wanted])
            path = witness(study, instance, unmet.step, unmet.circuit, others, ready=False)
            words = {"live": "switched on", "off": "switched off", "dead": "proved dead"}[unmet.wanted]
            yield step.common.place, (f"'{unmet.step}' needs circuit '{unmet.circuit}' {words}, and on some "
                                      f"path it is not: {unmet.why}. Change the need, or the steps "
                                      "before it"), path
