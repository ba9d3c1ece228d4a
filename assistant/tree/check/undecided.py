"""A way that nothing decided - too close to call, no access, no meter - must not buy a part, nor prove a
repair. Between it and a condemned part, a cause that is mended with a part, or "proved", something was
decided; otherwise "can't be taken" is an answer. For a condemned part that is a reading; a cause or a proof
may also rest on what was seen, and so may a finding without a part: what could not be taken finds nothing.
A procedure that comes back undecided is such a way too.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable

from assistant.house.model import Vocabulary
from assistant.tree.check.graph import Edge
from assistant.tree.check.rule import Faults, steps_on
from assistant.tree.check.study import Study
from assistant.tree.model import Call, Finding, Look, Return, Step, Tree, Watch

NOT_TAKEN = "can't be taken"
Decides = Callable[[Study, Tree, Edge], bool]
MEND = "Lead close: and cannot: to another reading that decides, or to an end that claims nothing."


def in_tree(study: Study, tree: Tree) -> Faults:
    """Ways that nothing decided and that can end as if something had been."""
    graph = study.graphs[tree.name]
    steps = {name: tree.steps[name] for name in graph.order}
    claims = {name: what for name, step in steps.items() if (what := _end(study.vocabulary, tree, step))}
    yield from _open_ways(study, tree, claims, _decides, lambda _edge: True)
    faults = {name: "a finding" for name, step in steps.items()
              if isinstance(step, Finding) and step.fault and name not in claims}
    yield from _open_ways(study, tree, faults, _decides_or_seen, lambda edge: edge.words == NOT_TAKEN)


def _open_ways(study: Study, tree: Tree, ends: dict[str, str], decides: Decides,
               meant: Callable[[Edge], bool]) -> Faults:
    """Ways that nothing decided and that come to one of some ends with nothing decided after either."""
    graph = study.graphs[tree.name]
    onward = _undecided_before(study, tree, ends, decides)
    for name in graph.order:
        for edge in graph.out[name]:
            if edge.to not in onward or not meant(edge) or (edge.sure and not _left_open(study, tree, edge)):
                continue
            path = [edge.to]
            while (after := onward[path[-1]]) is not None:
                path.append(after)
            path = [*graph.path(name)[:-1], f"{name} ({edge.words})", *path]
            yield edge.way.place, (f"'{edge.words}' leads to {ends[path[-1]]} with nothing decided on the "
                                   f"way: {steps_on(path)}; lead it to another reading, or to an end that "
                                   "claims nothing"), path


def _undecided_before(study: Study, tree: Tree, ends: Iterable[str],
                      decides: Decides) -> dict[str, str | None]:
    """Steps from which one of some ends is reached with nothing decided, each with the next step on the way;
    a further undecided way on it is reported by itself."""
    graph = study.graphs[tree.name]
    onward: dict[str, str | None] = dict.fromkeys(ends)
    queue = list(onward)
    for name in queue:
        for edge in graph.into[name]:
            if edge.sure and not decides(study, tree, edge) and edge.start not in onward:
                onward[edge.start] = name
                queue.append(edge.start)
    return onward


def _left_open(study: Study, tree: Tree, edge: Edge) -> bool:
    """Whether a way is a procedure's coming back by what nothing in it decided."""
    step = tree.steps[edge.start]
    called = study.trees.get(step.tree) if isinstance(step, Call) else None
    if called is None or called.purpose != "procedure" or not edge.sure:
        return False
    graph = study.graphs[called.name]
    returns = [name for name in graph.order if isinstance(called.steps[name], Return)]

    def left_open() -> frozenset[str]:
        open_ends = set()
        for end in returns:
            before = _undecided_before(study, called, [end], _decides)
            if any(not way.sure and way.to in before for name in graph.order for way in graph.out[name]):
                open_ends.add(called.steps[end].outcome)
        return frozenset(open_ends)

    return edge.outcome in study.keep(f"left open by {called.name}", left_open)


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


def _decides_or_seen(study: Study, tree: Tree, edge: Edge) -> bool:
    """Whether something was decided on a way, by a reading or by what was seen."""
    return _decides(study, tree, edge) or isinstance(tree.steps[edge.start], (Look, Watch))
