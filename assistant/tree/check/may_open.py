"""What a shop's people may open is not the same everywhere: a breaker panel's cover, the gas valve's ports,
the vent. A step that opens one says so, and has a way on for the shop that may not; an act that opens one is
only reached behind such a step. Otherwise a walk ends in front of a cover that nobody there may take off.
"""

from __future__ import annotations

from assistant.tree.check.circuits import Instance
from assistant.tree.check.graph import Edge
from assistant.tree.check.rule import Faults, steps_on
from assistant.tree.check.search import Search, Walked, path_through
from assistant.tree.check.study import Study
from assistant.tree.model import Do, Finding, Step, Tree, readings_of

MEND = ("Write opens: with the opening, and cannot: with the way on for a shop that may not, on the step or "
        "on a look, do or call before it on every path.")

State = frozenset


def in_tree(study: Study, tree: Tree) -> Faults:
    """Steps that open something without a way on for the shop that may not, and acts that open unasked."""
    for name, step in tree.steps.items():
        if step.common.opens and getattr(step, "cannot", None) is None:
            yield step.common.place, (f"'{name}' opens {' and '.join(step.common.opens)} and has no way on "
                                      "for a shop whose people may not; write cannot: and a step")
        for reading in readings_of(step):
            known = (study.vocabulary.points.get(point) for point in reading.at)
            for point in filter(None, known):
                if point.opens and point.opens not in step.common.opens:
                    yield reading.place, (f"'{name}' reads at '{point.name}', which opens {point.opens}; "
                                          f"write opens: {point.opens} and cannot:")
    if not any(act.opens for act in study.vocabulary.acts.values()):
        return
    everywhere = study.keep("may open", lambda: _everywhere(study))
    for instance in study.instances_of(tree):
        walked = everywhere.get(instance)
        for name, asked in walked.ready() if walked else ():
            step = tree.steps[name]
            act = study.vocabulary.acts.get(step.act or "") if isinstance(step, Do) else None
            if act is not None and act.opens and act.opens not in asked | set(step.common.opens):
                path = path_through(everywhere, instance, name, asked)
                yield step.common.place, (f"'{act.name}' opens {act.opens} on the path {steps_on(path)}, "
                                          "where nothing asked whether the shop may; write opens: "
                                          f"{act.opens} and cannot:"), path


def _everywhere(study: Study) -> dict[Instance, Walked]:
    def cross(_tree: Tree, step: Step, edge: Edge, asked: State) -> State:
        return asked | set(step.common.opens) if edge.sure else asked

    def follow(finding: Finding, asked: State):
        names = [*finding.causes, *([finding.proof] if finding.proof else [])]
        return [(name, asked) for name in names]

    search = Search(study, cross, lambda step, asked: asked | set(step.common.opens))
    begun = {instance: {frozenset()} for instance in study.instances
             if study.trees[instance.tree].purpose == "complaint"}
    return search.everywhere(begun, follow)
