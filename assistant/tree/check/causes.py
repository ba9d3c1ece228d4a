"""A part fails for a reason, and the new one will fail for the same. A finding that condemns a part names the
cause trees to walk before it is fitted. "Worn, these ruled out" and "not found, these ruled out" are full
answers, so there is no finding for which none can be named.
"""

from __future__ import annotations

from assistant.tree.check.rule import Faults
from assistant.tree.check.study import Study
from assistant.tree.model import Finding, Tree


def in_tree(_study: Study, tree: Tree) -> Faults:
    """Condemned parts without causes."""
    for name, step in tree.steps.items():
        if isinstance(step, Finding) and step.condemns is not None and not step.causes:
            yield step.common.place, (f"'{name}' condemns a part and asks nothing about why it failed; "
                                      "write causes: with the cause trees to walk before it is fitted")
