"""Some things can only be looked at in one power state: a wheel with a hand in it, with the power proved
dead; a flame or a running blower, with the power on. The house says so once, and every step that looks at the
thing asks for that state. Otherwise a hand goes in under power, or "stands still" is said of a furnace that
is off.
"""

from __future__ import annotations

from assistant.tree.check.rule import Faults
from assistant.tree.check.study import Study
from assistant.tree.model import Look, Tree
from assistant.tree.power import needs_of

MEND = "Write needs: with the state that house.yaml gives to the thing; dead also does where off is asked."


def in_tree(study: Study, tree: Tree) -> Faults:
    """Looks at something that do not ask for the power state that it can only be seen in."""
    for name, step in tree.steps.items():
        thing = study.vocabulary.seen.get(step.sees) if isinstance(step, Look) else None
        for circuit, wanted in thing.needs.items() if thing is not None else ():
            enough = ("off", "dead") if wanted == "off" else (wanted,)
            bound = [one.circuit for one in study.instances_of(tree)]
            if any(needs_of(step, one).get(circuit) not in enough for one in bound):
                yield step.common.place, (f"'{name}' looks at {thing.title}, which asks for circuit "
                                          f"'{circuit}' {wanted}; write needs: {{{circuit}: {wanted}}}")
