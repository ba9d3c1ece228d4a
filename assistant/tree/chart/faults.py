"""What the checker finds wrong with a tree, sorted to the steps where it is."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Iterable

from assistant.house.place import Problem
from assistant.tree.check import check
from assistant.tree.library import Library
from assistant.tree.model import Tree


def faults_at(library: Library, tree: Tree) -> dict[str, list[str]]:
    """Step -> "rule: what is wrong" for each problem that the checker finds in the tree's file."""
    return sorted_to_steps(check(library), tree)


def sorted_to_steps(problems: Iterable[Problem], tree: Tree) -> dict[str, list[str]]:
    """Step -> "rule: what is wrong" for those of `problems` that lie in the tree's file. What stands above
    all steps is said at the first one."""
    starts = sorted((step.common.place.line, name) for name, step in tree.steps.items())
    lines = [line for line, _ in starts]
    found: dict[str, list[str]] = {}
    for problem in problems if starts else ():
        if problem.file == tree.file:
            place = max(bisect_right(lines, problem.line) - 1, 0)
            found.setdefault(starts[place][1], []).append(f"{problem.rule}: {problem.message}")
    return found
