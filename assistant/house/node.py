"""What a file is read into: texts, lists and fields, each with its place."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Union

from assistant.house.place import Place, Problem


@dataclass(slots=True)
class Text:
    """A scalar, as text. `quoted` is True for quotes and block texts: an empty one was then meant."""

    value: str
    place: Place
    quoted: bool
    one_line: bool = True
    """Whether it is written on one line, so that a place inside it can be counted."""


@dataclass(slots=True)
class Items:
    """A list."""

    items: tuple[Node, ...]
    place: Place


@dataclass(slots=True)
class Fields:
    """Names with values, in the order written. `keys` has the place of each name."""

    entries: dict[str, Node]
    keys: dict[str, Place]
    place: Place


Node = Union[Text, Items, Fields]


class Unreadable(Exception):
    """The file can't be read as it stands; `problems` says where and what to write instead."""

    def __init__(self, problems: list[Problem]) -> None:
        super().__init__("\n".join(str(problem) for problem in problems))
        self.problems = problems
