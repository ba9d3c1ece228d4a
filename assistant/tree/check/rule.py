"""What a rule is: a name, the reason for it, and what finds the places that break it."""

from __future__ import annotations

import inspect
import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from types import ModuleType

from assistant.house.place import Place, Problem
from assistant.tree.check.study import Study
from assistant.tree.model import Tree, question_of

Faults = Iterator["tuple[Place, str] | tuple[Place, str, list[str]]"]
"""Where a rule is broken, the sentence that says how and what to write instead, and the steps of the shortest
path on which it happens where there is one."""

_NOTED = re.compile(r" \((.*)\)$")
"""What a path says of a step that it leaves undecided."""


@dataclass(frozen=True)
class Rule:
    """`reason` is a paragraph: why the rule is there; `mend` says what to do about it. `in_tree` looks at one
    tree, `in_house` at what trees share.
    """

    name: str
    reason: str
    mend: str
    in_tree: Callable[[Study, Tree], Faults] | None
    in_house: Callable[[Study], Faults] | None

    @staticmethod
    def of(module: ModuleType) -> Rule:
        """The rule that a module of this folder states: its docstring, its `MEND` and its functions
        `in_tree`, `in_house`."""
        name = module.__name__.rpartition(".")[2]
        return Rule(name, inspect.cleandoc(module.__doc__ or ""), module.MEND,
                    getattr(module, "in_tree", None), getattr(module, "in_house", None))

    @property
    def in_short(self) -> str:
        """The first line of what `in_tree` or `in_house` finds."""
        return inspect.getdoc(self.in_tree or self.in_house or Rule).splitlines()[0].rstrip(".")

    def problems(self, study: Study) -> Iterator[Problem]:
        """Everything in the study that breaks this rule, once each."""
        found: dict[Problem, None] = {}
        for tree in study.trees.values() if self.in_tree else ():
            for place, message, *path in self.in_tree(study, tree):
                asked = questions(study, tree, path[0]) if path else ()
                found[Problem.at(place, self.name, message, asked)] = None
        for place, message, *_ in self.in_house(study) if self.in_house else ():
            found[Problem.at(place, self.name, message)] = None
        yield from found


def questions(study: Study, tree: Tree, path: list[str]) -> tuple[str, ...]:
    """A path as the technician meets it: "volts: Voltage at the plug? low supply", a line a step. A step of
    another tree stands there as `tree.step`."""
    lines = []
    names = [_NOTED.sub("", step) for step in path]
    for place, (written, whole) in enumerate(zip(path, names, strict=True)):
        noted = _NOTED.search(written)
        other, _, name = whole.rpartition(".")
        here = study.trees.get(other or tree.name)
        after = names[place + 1].removeprefix(f"{other}.") if place + 1 < len(names) else None
        edges = study.graphs[here.name].out.get(name, ()) if here is not None else ()
        answers = [edge.words for edge in edges if edge.to == after]
        answer = noted.group(1) if noted else answers[0] if answers else ""
        asked = question_of(here.steps[name]) if here is not None and name in here.steps else ""
        lines.append(f"{whole}: {asked}" + (f" -> {answer}" if answer and answer != "then" else ""))
    return tuple(lines)


def steps_on(path: list[str], most: int = 8) -> str:
    """A path as words: "start > volts > fuse"; the middle of a long one is left out."""
    if len(path) > most:
        path = [*path[:2], f"... ({len(path) - most} more)", *path[2 - most:]]
    return " > ".join(path)
