"""Steps never lead back to a step before them. A walk then always ends, "try again" is a new walk with its
own answers, and a retest is a new answer to the same step: nobody goes round three times without noticing.
"""

from __future__ import annotations

from assistant.tree.check.rule import Faults, steps_on
from assistant.tree.check.study import Study
from assistant.tree.model import Tree

MEND = ("Lead the way to a finding, a stop or a later step. For a second look at the same thing "
        "write a second step.")


def in_tree(study: Study, tree: Tree) -> Faults:
    """One circle of each tree."""
    graph = study.graphs[tree.name]
    back = graph.back
    if back is not None:
        path = graph.path(back.start, graph.onward(back.to))
        yield back.way.place, (f"this way leads back to '{back.to}', and so in a circle: "
                               f"{steps_on([*path, back.to])}; lead it to a finding, a stop or another "
                               "step"), [*path, back.to]
