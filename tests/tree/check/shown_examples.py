"""Makes resources/bad_examples.yaml, which `check --explain` shows, from the bad examples of the rules:
python -m tests.tree.check.shown_examples

Of the example that is named like its rule, every step or entry that differs from the sound library is shown,
with `# <- here` at the line that is refused. A test holds the file to the examples.
"""

from __future__ import annotations

import re
from pathlib import Path

from assistant.resources import resources_folder
from assistant.tree.check import RULES

EXAMPLES = Path(__file__).parent.parent / "examples"
FILE = "bad_examples.yaml"
MARK = re.compile(r"  # refused: \d+$", re.MULTILINE)
HEAD = """\
# For each rule of the checker the steps that it refuses, out of a small library that is sound otherwise.
# Made by tests/tree/check/shown_examples.py.
"""


def blocks(text: str) -> list[str]:
    """The entries of a file, each with all its lines: what stands two spaces in begins one."""
    found: list[str] = []
    for line in text.splitlines():
        if re.match(r"(  )?[^\s#]", line) or not found:
            found.append(line)
        elif line.strip():
            found[-1] += "\n" + line
    return found


def shown(rule: str) -> str:
    """What is shown for a rule: a file's name, and its entries that are not in the sound library."""
    folder = EXAMPLES / "bad" / rule
    parts = []
    for path in sorted(folder.rglob("*.yaml")):
        name = path.relative_to(folder)
        sound = EXAMPLES / "sound" / name
        known = blocks(sound.read_text()) if sound.is_file() else []
        fresh = [block for block in blocks(path.read_text()) if block not in known]
        lines = (MARK.sub("  # <- here", block) for block in fresh)
        parts.append("\n".join([f"# {name.as_posix()}", *lines]))
    return "\n".join(parts)


def written() -> str:
    """The whole file."""
    entries = []
    for rule in sorted(RULES):
        lines = "\n".join(f"  {line}".rstrip() for line in shown(rule).splitlines())
        entries.append(f"{rule}: |\n{lines}\n")
    return HEAD + "\n" + "\n".join(entries)


if __name__ == "__main__":
    (resources_folder() / FILE).write_text(written(), encoding="utf-8")
