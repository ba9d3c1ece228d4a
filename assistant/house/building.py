"""From parse events to nodes, with a stack of its own and a sentence for everything that is refused."""

from __future__ import annotations

import yaml

from assistant.house.encoding import forbidden_in_value, one_line
from assistant.house.node import Fields, Items, Node, Text
from assistant.house.place import Place, Problem

DEEPEST = 64
MOST_VALUES = 1_000_000
"""Names and values of a file; 10,000 steps have about 700,000."""
MOST_ENTRIES = 50_000
"""Of one list or one set of fields."""
LONGEST_TEXT = 20_000
"""Characters of one text."""
MOST_PROBLEMS = 200


class Enough(Exception):
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


class Building:
    """Takes events one after the other and builds the nodes."""

    def __init__(self, file: str, text: str) -> None:
        self.file = file
        self.text = text
        self.has_question_mark = "?" in text
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
            if self.has_question_mark and self.stack and self.stack[-1].waits_for_key:
                self.refuse_question_mark(event)
            if len(event.value) > LONGEST_TEXT:
                self.problem(event, f"{len(event.value):,} characters in one text; at most {LONGEST_TEXT:,}")
            if style == '"' and (character := forbidden_in_value(event.value)):
                self.problem(event, f"the text holds the character {character}; leave it out")
            place = Place(self.file, mark.line + 1, mark.column + 1)
            self.add(Text(event.value, place, bool(style), event.end_mark.line == mark.line))
        elif kind is yaml.MappingStartEvent or kind is yaml.SequenceStartEvent:
            if event.anchor is not None or event.tag is not None:
                self.refuse_tag_and_anchor(event)
            if self.stack and self.stack[-1].items is not None and event.flow_style:
                self.refuse_bare_pair(event)
            self.stack.append(_Open(self.place(event), kind is yaml.MappingStartEvent))
            if len(self.stack) > DEEPEST:
                self.problem(event, f"nested deeper than {DEEPEST} levels; a tree file needs fewer than ten")
                raise Enough
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
            raise Enough
        if event.version or event.tags:
            self.problem(event, "remove the lines that start with %; they have no meaning here")

    def add(self, node: Node) -> None:
        """Put a finished node where it belongs: the root, a list, a field's name or its value."""
        self.values += 1
        if self.values > MOST_VALUES:
            self.note(node.place, f"more than {MOST_VALUES:,} values; split the file")
            raise Enough
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
        raise Enough

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

    def refuse_question_mark(self, event: yaml.NodeEvent) -> None:
        """`? name` is another way to write a name, and the parser reads `{?name: x}` so as well."""
        at = event.start_mark.index - 1
        while at >= 0 and self.text[at] == " ":
            at -= 1
        if at >= 0 and self.text[at] == "?":
            self.problem(event, "a name can't start with '?'; leave it out, or put the name in quotes")

    def refuse_bare_pair(self, event: yaml.NodeEvent) -> None:
        """`[a: b]` is a list with one set of fields in it, which nobody sees."""
        if self.text[event.start_mark.index] not in "{[":
            self.problem(
                event, "'name: value' inside [ ] needs braces, {name: value}, or quotes if it is a text"
            )

    def problem(self, event: yaml.Event, message: str) -> None:
        self.note(self.place(event), message)

    def note(self, place: Place, message: str) -> None:
        self.problems.append(Problem.at(place, "yaml", one_line(message)))
        if len(self.problems) >= MOST_PROBLEMS:
            raise Enough

    def place(self, event: yaml.Event) -> Place:
        mark = event.start_mark
        return Place(self.file, mark.line + 1, mark.column + 1)
