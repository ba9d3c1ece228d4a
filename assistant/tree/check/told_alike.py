"""The same thing is found under several complaints: a blown fuse takes the heat or the fan, whichever the
customer noticed first. It failed for the same reasons either way. So findings with the same words in two
trees name the same part and ask about the same causes; otherwise the reason is looked for in one visit and
stays in the house in the next, and the new part goes the way of the old one.
"""

from __future__ import annotations

from collections import defaultdict

from assistant.tree.check.rule import Faults
from assistant.tree.check.study import Study
from assistant.tree.model import Finding, Tree

MEND = ("Ask about the same causes and name the same part as the tree that finds the same, or say in the "
        "finding what is different.")


def in_tree(study: Study, tree: Tree) -> Faults:
    """Findings that another tree has in the same words, with another part or with causes that are not asked
    here."""
    alike = study.keep("told alike", lambda: _alike(study))
    for name, step in tree.steps.items():
        for other, twin in alike[step.title] if isinstance(step, Finding) and step.fault else ():
            if other == tree.name:
                continue
            left = [cause for cause in twin.causes if cause not in step.causes] if step.causes else []
            if left:
                yield step.common.place, (f"'{name}' says '{step.title}' as '{other}' does, which also asks "
                                          f"about {' and '.join(left)}; add {', '.join(left)} to causes:")
            if step.condemns != twin.condemns:
                yield step.common.place, (f"'{name}' says '{step.title}' as '{other}' does, and names "
                                          f"{step.condemns or 'no part'} where that names "
                                          f"{twin.condemns or 'none'}; write the same under condemns:")


def _alike(study: Study) -> dict[str, list[tuple[str, Finding]]]:
    """What is found, in its words -> the trees that find it."""
    alike: dict[str, list[tuple[str, Finding]]] = defaultdict(list)
    for tree in study.trees.values():
        for step in tree.steps.values():
            if isinstance(step, Finding) and step.fault:
                alike[step.title].append((tree.name, step))
    return alike
