"""What a rule is: a name, the reason for it, and what finds the places that break it."""

from __future__ import annotations

import inspect
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from types import ModuleType

from assistant.house.place import Place, Problem
from assistant.tree.check.study import Study
from assistant.tree.model import Tree

Faults = Iterator[tuple[Place, str]]
"""Where a rule is broken, and the sentence that says how and what to write instead."""


@dataclass(frozen=True)
class Rule:
    """`reason` is a paragraph: why the rule is there. `in_tree` looks at one tree, `in_house` at what trees
    share.
    """

    name: str
    reason: str
    in_tree: Callable[[Study, Tree], Faults] | None
    in_house: Callable[[Study], Faults] | None

    @staticmethod
    def of(module: ModuleType) -> Rule:
        """The rule that a module of this folder states: its docstring and its functions `in_tree`,
        `in_house`."""
        name = module.__name__.rpartition(".")[2]
        return Rule(name, inspect.cleandoc(module.__doc__ or ""), getattr(module, "in_tree", None),
                    getattr(module, "in_house", None))

    def problems(self, study: Study) -> Iterator[Problem]:
        """Everything in the study that breaks this rule, once each."""
        found: dict[Problem, None] = {}
        for tree in study.trees.values() if self.in_tree else ():
            for place, message in self.in_tree(study, tree):
                found[Problem.at(place, self.name, message)] = None
        for place, message in self.in_house(study) if self.in_house else ():
            found[Problem.at(place, self.name, message)] = None
        yield from found


def steps_on(path: list[str], most: int = 8) -> str:
    """A path as words: "start > volts > fuse"; the middle of a long one is left out."""
    if len(path) > most:
        path = [*path[:2], f"... ({len(path) - most} more)", *path[2 - most:]]
    return " > ".join(path)
