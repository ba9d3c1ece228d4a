"""The example of what a rule refuses, from resources/bad_examples.yaml."""

from __future__ import annotations

from assistant.house.node import Fields, Text
from assistant.house.reader import read
from assistant.resources import resources_folder

FILE = "bad_examples.yaml"


def example_of(rule: str) -> str:
    """The lines that a rule refuses, with a mark where; empty for a rule without an example. Raises
    UserError when the installation lacks the file's folder, OSError when it can't be read."""
    root = read((resources_folder() / FILE).read_bytes(), FILE)
    entry = root.entries.get(rule) if isinstance(root, Fields) else None
    return entry.value if isinstance(entry, Text) else ""
