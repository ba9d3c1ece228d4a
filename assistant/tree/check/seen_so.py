"""Some things can only be looked at in one power state: a wheel with a hand in it, with the power proved
dead; a flame or a running blower, with the power on. The house says so once, and every step that looks at the
thing asks for that state, and every step that watches an event for the state in which it can happen.
Otherwise a hand goes in under power, or "stands still" is said of a furnace that is off.
"""

from __future__ import annotations

from assistant.tree.check.asked import lacks
from assistant.tree.check.rule import Faults
from assistant.tree.check.study import Study
from assistant.tree.model import Look, Step, Tree, Watch

MEND = ("Write needs: with the state that house.yaml gives to the thing or event; dead also does where "
        "off is asked.")


def in_tree(study: Study, tree: Tree) -> Faults:
    """Looks at something that do not ask for the power state that it can only be seen in."""
    for name, step in tree.steps.items():
        for (circuit, wanted), what in _asked(study, step).items():
            if lacks(study, tree, step, circuit, wanted):
                yield step.common.place, (f"'{name}' {what}, which asks for circuit '{circuit}' {wanted}; "
                                          f"write needs: {{{circuit}: {wanted}}}")


def _asked(study: Study, step: Step) -> dict[tuple[str, str], str]:
    """What the thing or the events of a step ask of the circuits, each with what asks it first."""
    asked: dict[tuple[str, str], str] = {}
    if isinstance(step, Look) and step.sees in study.vocabulary.seen:
        thing = study.vocabulary.seen[step.sees]
        asked.update(dict.fromkeys(thing.needs.items(), f"looks at {thing.title}"))
    for event in step.events if isinstance(step, Watch) else ():
        around = study.vocabulary.watched.get(event)
        for need in around.needs.items() if around else ():
            asked.setdefault(need, f"watches {event}")
    return asked
