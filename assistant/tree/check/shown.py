"""What led to a finding is what it shows. The reading whose band points at it is the one that the customer
pays on, the one that a second technician repeats, and the one that the report puts beside its limit. A
finding that leaves it out rests on something that nobody sees.
"""

from __future__ import annotations

from assistant.tree.check.rule import Faults
from assistant.tree.check.study import Study
from assistant.tree.model import Finding, Stop, Tree

MEND = "Add the name of the reading to shows: of the finding, or point its band at another step."


def in_tree(study: Study, tree: Tree) -> Faults:
    """Findings that do not show the reading which points at them."""
    graph = study.graphs[tree.name]
    for name in graph.order:
        step = tree.steps[name]
        if not isinstance(step, Finding) and not (isinstance(step, Stop) and step.finding):
            continue
        for edge in graph.into[name] if step.shows else ():
            facts = [one.name for one in edge.decides if one.a_fact] if edge.sure else []
            if facts and facts[-1] not in step.shows:
                yield step.common.place, (f"'{name}' is reached from '{edge.start}' by '{edge.words}' and "
                                          f"does not show '{facts[-1]}'; add it to shows:")
