"""A part fails for a reason, and the new one will fail for the same; a setting was changed by somebody, and
will be again. A finding that something is wrong names the cause trees to walk before it is mended. "Worn,
these ruled out" and "not found, these ruled out" are full answers, so there is no finding for which none can
be named. Some parts die of the same few things everywhere, and the house names those: whoever condemns a
board asks about water.
"""

from __future__ import annotations

from assistant.tree.check.rule import Faults
from assistant.tree.check.study import Study
from assistant.tree.model import Finding, Tree

MEND = "Write causes: with one or more cause trees. Small ones may be shared by many findings."


def in_tree(study: Study, tree: Tree) -> Faults:
    """Findings of a fault without causes, or without those that their part is known to die of."""
    for name, step in tree.steps.items():
        if not isinstance(step, Finding) or not step.fault:
            continue
        part = study.vocabulary.parts.get(step.condemns or "")
        left = [cause for cause in part.dies_of if cause not in step.causes] if part and step.causes else []
        if left:
            yield step.common.place, (f"'{name}' condemns the {part.title}, which is known to die of "
                                      f"{' or '.join(left)}, and does not ask; add {', '.join(left)} to "
                                      "causes:")
        if not step.causes:
            yield step.common.place, (f"'{name}' says what failed and asks nothing about why; write causes: "
                                      "with the cause trees to walk before anything is mended")
