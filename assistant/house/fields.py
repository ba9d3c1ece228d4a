"""Reading the fields of a file one by one: each value with its type, each mistake noted with its place.

A `Form` stands on one set of fields. Asking for a field makes it known; `close` then reports every field that
nobody asked for, with the nearest known name. Nothing here raises: what can't be used is None or empty, with
a problem noted, so that one reading of a file finds all its mistakes.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator

from assistant.house.encoding import one_line
from assistant.house.nearest import suggestion
from assistant.house.place import Place, Problem
from assistant.house.reader import Fields, Items, Node, Text

MOST_PROBLEMS = 500
NAME = re.compile(r"[a-z][a-z0-9_]*")
DOTTED_NAME = re.compile(r"[a-z][a-z0-9_]*(\.[a-z0-9_]+)*")
LONGEST_NAME = 60


class Problems:
    """The problems of one file as they are found; after `MOST_PROBLEMS` the rest is counted, not kept."""

    def __init__(self) -> None:
        self.found: list[Problem] = []
        self.left_out = 0

    @property
    def full(self) -> bool:
        return len(self.found) >= MOST_PROBLEMS

    def add(self, place: Place, rule: str, message: str) -> None:
        self.take(Problem.at(place, rule, one_line(message)))

    def take(self, problem: Problem) -> None:
        if self.full:
            self.left_out += 1
        else:
            self.found.append(problem)

    def unknown(self, text: Text, what: str, names: Iterable[str], rule: str = "name") -> None:
        """`text` is none of `names`: say so, with the nearest one."""
        if self.full:
            self.left_out += 1
            return
        known = names if isinstance(names, (dict, set, frozenset)) else dict.fromkeys(names)
        self.add(text.place, rule, f"'{text.value[:60]}' is no {what}{suggestion(text.value, known)}")

    def sorted(self) -> list[Problem]:
        """All that was kept, in the order of the file, and a last one that says how many were not."""
        found = sorted(set(self.found))
        if self.left_out:
            last = found[-1]
            found.append(
                Problem(
                    last.file,
                    last.line,
                    last.column,
                    "more",
                    f"and {self.left_out} more problems; mend these first",
                )
            )
        return found


class Form:
    """One set of fields, being read. `what` names it in sentences: "step 'volts'"."""

    def __init__(self, node: Fields, what: str, problems: Problems) -> None:
        self.node = node
        self.what = what
        self.problems = problems
        self.known: dict[str, None] = {}

    def has(self, name: str) -> bool:
        return name in self.node.entries

    def place(self, name: str | None = None) -> Place:
        """The place of a field's name; of the whole set where it has none."""
        return self.node.keys.get(name, self.node.place) if name else self.node.place

    def get(self, name: str, need: bool = False) -> Node | None:
        """The field as it stands, or None; noted as missing when it is needed."""
        self.known[name] = None
        node = self.node.entries.get(name)
        if node is None and need:
            self.problems.add(self.node.place, "missing", f"{self.what} needs the field '{name}'")
        return node

    def text(self, name: str, need: bool = False) -> Text | None:
        """A text that is not empty."""
        node = self.get(name, need)
        return None if node is None else one_text(node, f"'{name}'", self.problems)

    def words(self, name: str, need: bool = False) -> str | None:
        text = self.text(name, need)
        return text.value if text else None

    def texts(self, name: str, need: bool = False, single: bool = False) -> tuple[Text, ...]:
        """A list of texts; with `single` one text may stand without its brackets."""
        node = self.get(name, need)
        if node is None:
            return ()
        if isinstance(node, Text) and single:
            text = one_text(node, f"'{name}'", self.problems)
            return (text,) if text else ()
        return tuple(text_items(node, f"'{name}'", self.problems))

    def yes(self, name: str, default: bool = False) -> bool:
        """yes or no."""
        text = self.text(name)
        if text is None:
            return default
        if text.value not in ("yes", "no"):
            self.problems.add(text.place, "type", f"'{name}' is yes or no, not '{text.value[:40]}'")
        return text.value == "yes"

    def fields(self, name: str, need: bool = False) -> Fields | None:
        """Names with values."""
        node = self.get(name, need)
        return None if node is None else some_fields(node, f"'{name}'", self.problems)

    def form(self, name: str, need: bool = False) -> Form | None:
        node = self.fields(name, need)
        return None if node is None else Form(node, f"'{name}' of {self.what}", self.problems)

    def may_have(self, names: Iterable[str]) -> None:
        """Fields that are allowed and read by `has` and `get` only where they are there."""
        self.known.update(dict.fromkeys(names))

    def close(self) -> None:
        """Report the fields that nobody asked for."""
        for name, place in self.node.keys.items():
            if name not in self.known and not self.problems.full:
                self.problems.add(
                    place, "field", f"{self.what} has no field '{name[:60]}'{suggestion(name, self.known)}"
                )


def one_text(node: Node, what: str, problems: Problems) -> Text | None:
    """The node as a text that is not empty; anything else is noted."""
    if not isinstance(node, Text):
        problems.add(node.place, "type", f"{what} must be one text, not {kind_of(node)}")
    elif not node.value.strip():
        problems.add(node.place, "missing", f"{what} is empty; write its text")
    else:
        return node
    return None


def text_items(node: Node, what: str, problems: Problems) -> Iterator[Text]:
    """The texts of a list; anything else is noted."""
    if not isinstance(node, Items):
        problems.add(node.place, "type", f"{what} must be a list such as [one, two], not {kind_of(node)}")
        return
    for item in node.items:
        text = one_text(item, f"each item of {what}", problems)
        if text:
            yield text


def some_fields(node: Node, what: str, problems: Problems) -> Fields | None:
    """The node as fields; an empty value counts as none given."""
    if isinstance(node, Fields):
        return node
    if isinstance(node, Text) and not node.value and not node.quoted:
        return Fields({}, {}, node.place)
    problems.add(node.place, "type", f"{what} must be fields (name: value), not {kind_of(node)}")
    return None


def good_name(name: str, place: Place, what: str, problems: Problems, dotted: bool = False) -> bool:
    """Whether `name` is small letters, digits and _, beginning with a letter; noted when not."""
    if (DOTTED_NAME if dotted else NAME).fullmatch(name) and len(name) <= LONGEST_NAME:
        return True
    plain = re.sub(r"[^a-z0-9_.]+" if dotted else r"[^a-z0-9_]+", "_", name.lower()).strip("_.")[
        :LONGEST_NAME
    ]
    better = (
        f"; write '{plain}'" if (DOTTED_NAME if dotted else NAME).fullmatch(plain) and plain != name else ""
    )
    points = ", dots between parts" if dotted else ""
    problems.add(
        place,
        "name",
        f"'{name[:60]}' can't be the name of {what}: small letters, digits and _{points}, "
        f"a letter first, at most {LONGEST_NAME}{better}",
    )
    return False


def kind_of(node: Node) -> str:
    """What a node is, for a sentence."""
    return {Text: "a text", Items: "a list", Fields: "fields"}[type(node)]


def spoken(name: str) -> str:
    """A name as words, where no title is given: "blower_motor" is "blower motor"."""
    return name.replace("_", " ").replace(".", " ")
