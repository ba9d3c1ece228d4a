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

import yaml

from assistant.house.building import DEEPEST, MOST_VALUES, Building, Enough
from assistant.house.encoding import LARGEST, decode
from assistant.house.node import Fields, Items, Node, Text, Unreadable
from assistant.house.parse_error import sentence
from assistant.house.place import Problem

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

_LOADER = getattr(yaml, "CSafeLoader", yaml.SafeLoader)


def read(data: bytes, file: str) -> Node:
    """Read the one document in `data`. `file` is the name used in places.

    Raises Unreadable, and nothing else, whatever the bytes.
    """
    text, problem = decode(data, file)
    if problem is not None:
        raise Unreadable([problem])
    building = Building(file, text)
    with collector_resting():
        try:
            for event in yaml.parse(text, Loader=_LOADER):
                building.take(event)
        except Enough:
            pass
        except (yaml.YAMLError, ValueError, OverflowError) as error:
            # The parser in plain Python lets ValueError and OverflowError through on impossible escapes.
            building.problems.append(sentence(error, text, file))
    if not building.problems and building.root is None:
        building.problems.append(Problem(file, 1, 1, "yaml", "the file is empty; write its fields"))
    if building.problems:
        raise Unreadable(sorted(set(building.problems)))
    return building.root


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
