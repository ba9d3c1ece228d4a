"""A part fails for a reason, and the new one will fail for the same; a setting was changed by somebody, and
will be again. A finding that something is wrong names the cause trees to walk before it is mended. "Worn,
these ruled out" and "not found, these ruled out" are full answers, so there is no finding for which none can
be named.
"""

from __future__ import annotations

from assistant.tree.check.rule import Faults
from assistant.tree.check.study import Study
from assistant.tree.model import Finding, Tree

MEND = "Write causes: with one or more cause trees. Small ones may be shared by many findings."


def in_tree(_study: Study, tree: Tree) -> Faults:
    """Findings of a fault without causes."""
    for name, step in tree.steps.items():
        if isinstance(step, Finding) and step.fault and not step.causes:
            yield step.common.place, (f"'{name}' says what failed and asks nothing about why; write causes: "
                                      "with the cause trees to walk before anything is mended")
