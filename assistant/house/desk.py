"""What the readers of house.yaml's sections share: problems found, and names that may be referred to."""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterator
from dataclasses import dataclass, field
from typing import TypeVar

from assistant.house.fields import Form, Problems, good_name, some_fields
from assistant.house.reader import Fields, Node, Text

DRAWINGS = ("line_voltage", "control", "gas_vent", "air")
"""The base drawings, by what they show."""

T = TypeVar("T")


@dataclass
class Desk:
    """`names` has, for each section, every name written there, also where its entry is wrong: one mistake
    then gives one problem and not one at each use. None: the file that has them can't be read, so any will
    do.
    """

    problems: Problems
    names: dict[str, Collection[str] | None] = field(default_factory=dict)

    def known(self, text: Text | None, section: str, what: str) -> str | None:
        """The text where it is a name of `section`; otherwise None, with a problem noted."""
        if text is None:
            return None
        names = self.names.get(section, ())
        if names is None or text.value in names:
            return text.value
        self.problems.unknown(text, what, names)
        return None

    def circuit(self, text: Text | None) -> str | None:
        return self.known(text, "circuits", "circuit")

    def one_of(self, text: Text | None, allowed: Collection[str], what: str) -> str | None:
        """The text where it is one of a few words."""
        if text is None:
            return None
        if text.value in allowed:
            return text.value
        self.problems.add(
            text.place,
            "value",
            f"'{text.value[:40]}' can't be {what}; write {' or '.join(allowed)}"
            if len(allowed) < 3
            else f"'{text.value[:40]}' can't be {what}; write one of {', '.join(allowed)}",
        )
        return None

    def each(self, section: Fields | None, what: str, dotted: bool = False) -> Iterator[tuple[str, Node]]:
        """Name and value of each entry whose name can be used."""
        if section is None:
            return
        for name, node in section.entries.items():
            if good_name(name, section.keys[name], what, self.problems, dotted):
                yield name, node

    def forms(
        self, section: Fields | None, what: str, build: Callable[[str, Form], T | None], dotted: bool = False
    ) -> dict[str, T]:
        """Build each entry of a section whose entries are fields; those that can't be built are left out."""
        built: dict[str, T] = {}
        for name, node in self.each(section, what, dotted):
            fields = some_fields(node, f"{what} '{name}'", self.problems)
            if fields is None:
                continue
            fields = Fields(fields.entries, fields.keys, section.keys[name])
            form = Form(fields, f"{what} '{name}'", self.problems)
            entry = build(name, form)
            form.close()
            if entry is not None:
                built[name] = entry
        return built


def ring(start: str, follow: Callable[[str], str | None]) -> list[str] | None:
    """The names from `start` back to itself when following leads round in a circle through it; None
    otherwise.
    """
    path, at = [start], follow(start)
    while at is not None and at not in path:
        path.append(at)
        at = follow(at)
    return [*path, start] if at == start else None
