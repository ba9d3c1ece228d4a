"""A look is a question, and a question has at least two answers. Where only one is offered, the person who
sees something else taps it all the same or stands there with no way on, and the trail then says that it was
seen. What needs no answer is something to do, or goes under how: of the step before.
"""

from __future__ import annotations

from assistant.tree.check.rule import Faults
from assistant.tree.check.study import Study
from assistant.tree.model import Look, Tree

MEND = "Offer the thing's other words under choices: too, each with its way on, or make it a do step."


def in_tree(study: Study, tree: Tree) -> Faults:
    """Looks that offer one answer only."""
    for name, step in tree.steps.items():
        if not isinstance(step, Look) or len(step.choices) > 1:
            continue
        thing = study.vocabulary.seen.get(step.sees)
        others = [value for value in thing.values if value not in step.choices] if thing else []
        yield step.common.place, (f"'{name}' can only be answered by '{next(iter(step.choices), '')}'; offer "
                                  f"{' or '.join(repr(value) for value in others) or 'another answer'} too")
