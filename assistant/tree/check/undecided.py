"""A way that nothing decided - too close to call, no access, no meter - must not buy a part, nor prove a
repair. Between it and a condemned part, a cause that is mended with a part, or "proved", something was
decided; otherwise "can't be taken" is an answer. For a condemned part that is a reading; a cause or a proof
may also rest on what was seen.
"""

from __future__ import annotations

from assistant.house.model import Vocabulary
from assistant.tree.check.graph import Edge
from assistant.tree.check.rule import Faults, steps_on
from assistant.tree.check.study import Study
from assistant.tree.model import Call, Finding, Look, Return, Step, Tree, Watch

MEND = "Lead close: and cannot: to another reading that decides, or to an end that claims nothing."


def in_tree(study: Study, tree: Tree) -> Faults:
    """Ways that nothing decided and that can end as if something had been."""
    graph = study.graphs[tree.name]
    claims = {name: _end(study.vocabulary, tree, tree.steps[name]) for name in graph.order}
    ends = {name: what for name, what in claims.items() if what}
    # step -> the next one on a way to such an end with nothing decided; a further undecided way on it is
    # reported by itself
    onward: dict[str, str | None] = dict.fromkeys(ends)
    queue = list(ends)
    for name in queue:
        for edge in graph.into[name]:
            if edge.sure and not _decides(study, tree, edge) and edge.start not in onward:
                onward[edge.start] = name
                queue.append(edge.start)
    for name in graph.order:
        for edge in graph.out[name]:
            if not edge.sure and edge.to in onward:
                path = [edge.to]
                while (after := onward[path[-1]]) is not None:
                    path.append(after)
                path = [*graph.path(name)[:-1], f"{name} ({edge.words})", *path]
                yield edge.way.place, (f"'{edge.words}' leads to {ends[path[-1]]} with nothing decided on "
                                       f"the way: {steps_on(path)}; lead it to another reading, or "
                                       "to an end that claims nothing"), path


def _end(vocabulary: Vocabulary, tree: Tree, step: Step) -> str | None:
    """What an end claims that must not rest on nothing."""
    if isinstance(step, Finding) and step.condemns:
        return "a condemned part"
    if not isinstance(step, Return):
        return None
    if tree.purpose == "proof" and step.outcome == "proved":
        return "a proved repair"
    acts = [vocabulary.acts[act] for act in step.repair if act in vocabulary.acts]
    parts = [vocabulary.parts.get(act.fits or "") for act in acts]
    if tree.purpose == "cause" and step.outcome == "found" and any(part and part.costs for part in parts):
        return "a cause that is mended with a part"
    return None


def _decides(study: Study, tree: Tree, edge: Edge) -> bool:
    """Whether something was decided on a way: a reading, or outside a complaint's tree what was seen, or what
    a called cause or proof came back with."""
    step = tree.steps[edge.start]
    if edge.decides or tree.purpose == "complaint":
        return bool(edge.decides)
    called = study.trees.get(step.tree) if isinstance(step, Call) else None
    return isinstance(step, (Look, Watch)) or (called is not None and called.purpose in ("cause", "proof"))
