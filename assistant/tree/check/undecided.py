"""A way that nothing decided - too close to call, no access, no meter - must not end in a condemned part.
Between it and such a finding there is at least one reading that was decided: otherwise "can't be taken" buys
a part.
"""

from __future__ import annotations

from assistant.tree.check.rule import Faults, steps_on
from assistant.tree.check.study import Study
from assistant.tree.model import Finding, Tree


def in_tree(study: Study, tree: Tree) -> Faults:
    """Ways that nothing decided and that can end in a condemned part."""
    graph = study.graphs[tree.name]
    # step -> the next one on a way to a condemned part with nothing decided; a further undecided way on it
    # is reported by itself
    onward: dict[str, str | None] = {}
    queue = [name for name in graph.order if isinstance(step := tree.steps[name], Finding) and step.condemns]
    onward.update(dict.fromkeys(queue))
    for name in queue:
        for edge in graph.into[name]:
            if edge.sure and not edge.decides and edge.start not in onward:
                onward[edge.start] = name
                queue.append(edge.start)
    for name in graph.order:
        for edge in graph.out[name]:
            if not edge.sure and edge.to in onward:
                path = [edge.to]
                while (after := onward[path[-1]]) is not None:
                    path.append(after)
                yield edge.way.place, (f"'{edge.words}' leads to a condemned part with nothing decided on "
                                       f"the way: {steps_on([name, *path])}; lead it to another reading, a "
                                       "stop or a hand_over")
