"""A step that no way leads to is never asked. It is either left over or, worse, the one that somebody meant
to reach and a way goes past it.
"""

from __future__ import annotations

from assistant.tree.check.rule import Faults
from assistant.tree.check.study import Study
from assistant.tree.model import Tree

MEND = "Lead a way to the step, or take it out."


def in_tree(study: Study, tree: Tree) -> Faults:
    """Steps that no way leads to; of a lost branch its first step."""
    graph = study.graphs[tree.name]
    lost = [name for name in tree.steps if name not in graph.from_start]
    heads = [name for name in lost if not any(edge.start in lost for edge in graph.into[name])] or lost
    for name in heads:
        yield tree.steps[name].common.place, (f"nothing leads to '{name}' from the start, '{tree.start}'; "
                                              "lead a way here or take the step out")
