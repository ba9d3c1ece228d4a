"""Trees do not call each other in a circle: a walk inside a walk inside the first one never ends. A procedure
that is put in front of a step counts as called by it, because that is what the walker does.
"""

from __future__ import annotations

from assistant.tree.check.rule import Faults
from assistant.tree.check.study import Study
from assistant.tree.model import Call, Tree

MEND = "Let one of the trees come back, and let its caller go on from there."


def in_tree(study: Study, tree: Tree) -> Faults:
    """The first tree of each circle of calls."""
    calls = study.keep("calls", lambda: {name: _called(study, one) for name, one in study.trees.items()})
    circle = _circle(calls, tree.name)
    if circle and tree.name == min(circle):
        step = calls[tree.name][circle[1]]
        yield tree.steps[step].common.place, (f"trees call each other in a circle: {' > '.join(circle)}; "
                                              "let one of them come back and its caller go on")


def _called(study: Study, tree: Tree) -> dict[str, str]:
    """Tree that is called or put in front -> the first step that does it."""
    called: dict[str, str] = {}
    for name, step in tree.steps.items():
        if isinstance(step, Call) and step.tree in study.trees:
            called.setdefault(step.tree, name)
        for instance in study.instances_of(tree):
            for procedure, _ in study.put_in(instance, name):
                called.setdefault(procedure.tree, name)
    return called


def _circle(calls: dict[str, dict[str, str]], start: str) -> list[str]:
    """A shortest circle of calls through `start`, `start` at both ends; empty where there is none."""
    came: dict[str, str] = {}
    queue = [start]
    for name in queue:
        for called in calls[name]:
            if called == start:
                path = [name]
                while path[-1] != start:
                    path.append(came[path[-1]])
                return [*path[::-1], start]
            if called not in came:
                came[called] = name
                queue.append(called)
    return []
