"""The strict YAML reader: bytes of a file in, nodes with their places out, or `Unreadable` with sentences.

It stands on PyYAML's parse events and keeps its own stack. Events carry no meaning: every scalar stays the
text that was written, so that `off`, `no`, `12:30`, `1_000` and `017` are what the author sees. Composing
nodes is not used, because deep nesting can be made to crash the interpreter there.

Refused, each with a sentence: more than `LARGEST` bytes, nesting deeper than `DEEPEST`, more than
`MOST_VALUES` values, anchors, aliases, tags, `%` lines, a second document, merge keys, repeated, empty or
non-text names.
"""

from __future__ import annotations

import gc
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from typing import Union

import yaml

from assistant.house.encoding import LARGEST, decode, forbidden_in_value
from assistant.house.parse_error import sentence
from assistant.house.place import Place, Problem

__all__ = [
    "DEEPEST",
    "LARGEST",
    "MOST_VALUES",
    "Fields",
    "Items",
    "Node",
    "Text",
    "Unreadable",
    "collector_resting",
    "read",
]

DEEPEST = 64
MOST_VALUES = 1_000_000
"""Names and values of a file; 10,000 steps have about 700,000."""
MOST_ENTRIES = 50_000
"""Of one list or one set of fields."""
MOST_PROBLEMS = 200

_LOADER = getattr(yaml, "CSafeLoader", yaml.SafeLoader)


@dataclass(slots=True)
class Text:
    """A scalar, as text. `quoted` is True for quotes and block texts: an empty one was then meant."""

    value: str
    place: Place
    quoted: bool


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


def read(data: bytes, file: str) -> Node:
    """Read the one document in `data`. `file` is the name used in places.

    Raises Unreadable, and nothing else, whatever the bytes.
    """
    text, problem = decode(data, file)
    if problem is not None:
        raise Unreadable([problem])
    building = _Building(file)
    with collector_resting():
        try:
            for event in yaml.parse(text, Loader=_LOADER):
                building.take(event)
        except _Enough:
            pass
        except (yaml.YAMLError, ValueError, OverflowError) as error:
            # The parser in plain Python lets ValueError and OverflowError through on impossible escapes.
            building.problems.append(sentence(error, text, file))
    if not building.problems and building.root is None:
        building.problems.append(Problem(file, 1, 1, "yaml", "the file is empty; write its fields"))
    if building.problems:
        raise Unreadable(sorted(set(building.problems)))
    return building.root


class _Enough(Exception):
    """Reading further would cost more than it tells."""


class _Open:
    """A list or a set of fields that is not closed yet."""

    __slots__ = ("entries", "items", "key", "keys", "place", "waits_for_key")

    def __init__(self, place: Place, fields: bool) -> None:
        self.place = place
        self.items: list[Node] | None = None if fields else []
        self.entries: dict[str, Node] = {}
        self.keys: dict[str, Place] = {}
        self.key: str | None = None
        self.waits_for_key = fields

    def closed(self) -> Node:
        if self.items is not None:
            return Items(tuple(self.items), self.place)
        return Fields(self.entries, self.keys, self.place)


class _Building:
    """Takes events one after the other and builds the nodes."""

    def __init__(self, file: str) -> None:
        self.file = file
        self.problems: list[Problem] = []
        self.root: Node | None = None
        self.stack: list[_Open] = []
        self.values = 0
        self.documents = 0

    def take(self, event: yaml.Event) -> None:
        kind = type(event)
        if kind is yaml.ScalarEvent:
            mark = event.start_mark
            style = event.style
            if event.anchor is not None or event.tag is not None:
                self.refuse_tag_and_anchor(event)
            if style == '"' and (character := forbidden_in_value(event.value)):
                self.problem(event, f"the text holds the character {character}; leave it out")
            self.add(Text(event.value, Place(self.file, mark.line + 1, mark.column + 1), bool(style)))
        elif kind is yaml.MappingStartEvent or kind is yaml.SequenceStartEvent:
            if event.anchor is not None or event.tag is not None:
                self.refuse_tag_and_anchor(event)
            self.stack.append(_Open(self.place(event), kind is yaml.MappingStartEvent))
            if len(self.stack) > DEEPEST:
                self.problem(event, f"nested deeper than {DEEPEST} levels; a tree file needs fewer than ten")
                raise _Enough
        elif kind is yaml.MappingEndEvent or kind is yaml.SequenceEndEvent:
            self.add(self.stack.pop().closed())
        elif kind is yaml.AliasEvent:
            self.problem(event, f"an alias (*{event.anchor}) can't be used; write the value out")
            self.add(Text("", self.place(event), True))
        elif kind is yaml.DocumentStartEvent:
            self.begin_document(event)

    def begin_document(self, event: yaml.DocumentStartEvent) -> None:
        self.documents += 1
        if self.documents > 1:
            self.problem(event, "a second document starts here; a file holds one, so remove the line '---'")
            raise _Enough
        if event.version or event.tags:
            self.problem(event, "remove the lines that start with %; they have no meaning here")

    def add(self, node: Node) -> None:
        """Put a finished node where it belongs: the root, a list, a field's name or its value."""
        self.values += 1
        if self.values > MOST_VALUES:
            self.note(node.place, f"more than {MOST_VALUES:,} values; split the file")
            raise _Enough
        if not self.stack:
            self.root = node
            return
        top = self.stack[-1]
        if top.items is not None:
            top.items.append(node)
            if len(top.items) > MOST_ENTRIES:
                self.too_many(node)
        elif top.waits_for_key:
            top.key = self.name(node, top)
            top.waits_for_key = False
        else:
            if top.key is not None:
                top.entries[top.key] = node
                if len(top.entries) > MOST_ENTRIES:
                    self.too_many(node)
            top.waits_for_key = True

    def too_many(self, node: Node) -> None:
        self.note(node.place, f"more than {MOST_ENTRIES:,} entries in one list or set of fields; split it")
        raise _Enough

    def name(self, node: Node, top: _Open) -> str | None:
        """A field's name, or None with a problem noted: its value is then read and dropped."""
        if type(node) is not Text:
            self.note(
                node.place,
                "a name must be text, not a list or fields; text that starts with [ or { goes in quotes",
            )
            return None
        name = node.value
        if name in top.keys:
            first = top.keys[name].line
            self.note(
                node.place,
                f"'{name[:80]}' is written twice, on line {first} and on line {node.place.line}; keep one",
            )
        elif not name or name.isspace():
            self.note(node.place, "a name is missing before the colon")
        elif name == "<<" and not node.quoted:
            self.note(node.place, "fields can't be merged with <<; write them out")
        else:
            top.keys[name] = node.place
            return name
        return None

    def refuse_tag_and_anchor(self, event: yaml.NodeEvent) -> None:
        if event.anchor is not None:
            self.problem(
                event, f"an anchor (&{event.anchor}) can't be used; write the value out where it is needed"
            )
        if event.tag is not None:
            self.problem(event, f"a tag ({event.tag}) can't be used; remove it, or put the text in quotes")

    def problem(self, event: yaml.Event, message: str) -> None:
        self.note(self.place(event), message)

    def note(self, place: Place, message: str) -> None:
        self.problems.append(Problem.at(place, "yaml", message))
        if len(self.problems) >= MOST_PROBLEMS:
            raise _Enough

    def place(self, event: yaml.Event) -> Place:
        mark = event.start_mark
        return Place(self.file, mark.line + 1, mark.column + 1)


@contextmanager
def collector_resting() -> Iterator[None]:
    """Nodes and trees form no cycles; looking for some while they are made takes most of the time."""
    was_on = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if was_on:
            gc.enable()
