"""A safety that has opened has usually done its work. It is condemned only where the condition it guards was
shown normal: the limit with the air measured, the pressure switch with the vent drawing as it should.
Otherwise the new one opens tomorrow, or somebody bridges it.
"""

from __future__ import annotations

from assistant.tree.check.circuits import Instance
from assistant.tree.check.graph import Edge
from assistant.tree.check.rule import Faults, steps_on
from assistant.tree.check.search import Search
from assistant.tree.check.study import Study
from assistant.tree.model import Finding, Step, Tree

MEND = "Decide one of the condition's readings in a band marked normal: yes before the safety is condemned."


def in_tree(study: Study, tree: Tree) -> Faults:
    """Condemned safeties whose guarded condition was not shown normal on some path."""
    for name, step in tree.steps.items():
        if not isinstance(step, Finding) or step.condemns is None:
            continue
        part = study.vocabulary.parts.get(step.condemns)
        if part is None or part.guards is None:
            continue
        names = study.vocabulary.conditions.get(part.guards, ())
        path = _path_without(study, tree, names, name)
        if path:
            yield step.common.place, (f"the {part.title} guards '{part.guards}', which nothing shows normal "
                                      f"on the path {steps_on(path)}; decide one of "
                                      f"{', '.join(names) or 'its readings'} in a band marked normal: yes "
                                      "first"), path


def _path_without(study: Study, tree: Tree, names: tuple[str, ...], to: str) -> list[str]:
    """A shortest path to a step on which none of `names` is decided normal; empty where there is none."""

    def cross(_tree: Tree, _step: Step, edge: Edge, shown: bool) -> bool:
        return shown or any(one.name in names and one.normal for one in edge.decides)

    search = study.keep(f"normal {names}", lambda: Search(study, cross))
    walked = study.keep(f"normal {names} in {tree.name}",
                        lambda: search.walk(Instance(tree.name, None), [False]))
    return walked.path(to, False) if (to, False, True) in walked.came else []
