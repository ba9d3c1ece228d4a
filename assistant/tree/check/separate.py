"""Two findings that show the same readings and ask for the same repair are one finding written twice; if they
are really two, there is a reading that tells them apart, and it belongs among what is shown.
"""

from __future__ import annotations

from assistant.tree.check.rule import Faults
from assistant.tree.check.study import Study
from assistant.tree.model import Finding, Tree

MEND = "Show the reading that tells the two findings apart, or lead both ways to one of them."


def in_tree(_study: Study, tree: Tree) -> Faults:
    """Findings that nothing tells apart."""
    first: dict[tuple, str] = {}
    for name, step in tree.steps.items():
        if not isinstance(step, Finding):
            continue
        key = (frozenset(step.shows), step.condemns, frozenset(step.repair), step.fault)
        other = first.setdefault(key, name)
        if other != name:
            yield step.common.place, (f"'{name}' shows the same readings as '{other}' and asks for the same "
                                      "repair; show the reading that tells them apart, or lead both ways "
                                      "to one finding")
