"""A call goes on by what the called tree comes back with. A return that the call does not expect would leave
the technician nowhere; one that never comes is a branch that nobody can walk, and hides a mistake in one of
the two files.
"""

from __future__ import annotations

from assistant.tree.check.rule import Faults
from assistant.tree.check.study import Study
from assistant.tree.model import Call, Return, Tree

MEND = "Give the call's then: a way for each return of the called tree, and none besides."


def in_tree(study: Study, tree: Tree) -> Faults:
    """Calls that do not fit what the called tree comes back with."""
    for step in tree.steps.values():
        if not isinstance(step, Call) or step.tree not in study.trees:
            continue
        given = returns_of(study.trees[step.tree])
        missing = [outcome for outcome in given if outcome not in step.then]
        if missing:
            yield step.common.place, (f"'{step.tree}' can also come back with {_list(missing)}; say under "
                                      "then: where that leads")
        for outcome, way in step.then.items():
            if outcome not in given:
                instead = f"it comes back with {_list(given)}" if given else "it never comes back"
                yield way.place, f"'{step.tree}' does not come back with '{outcome}'; {instead}"


def returns_of(tree: Tree) -> list[str]:
    """The names a tree comes back with, in the order of the file, each once."""
    return list(dict.fromkeys(step.outcome for step in tree.steps.values() if isinstance(step, Return)))


def _list(names: list[str]) -> str:
    return " and ".join(f"'{name}'" for name in names)
