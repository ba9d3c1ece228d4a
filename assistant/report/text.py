"""The report as plain text, 80 columns: for a screen without anything else, and for a search."""

from __future__ import annotations

import textwrap

from assistant.plain import one_line
from assistant.report.blocks import (
    Block,
    Cell,
    Heading,
    Pairs,
    Picture,
    Pictures,
    Points,
    Table,
    ToSign,
    Words,
)
from assistant.report.outline import foot, outline
from assistant.report.story import Story

WIDTH = 80
MARKS = {"dot": "- ", "done": "[x] ", "open": "[ ] "}


def to_text(story: Story) -> str:
    """Ends every line with a line feed; no control character but that one, whatever was typed."""
    lines: list[str] = []
    for block in outline(story):
        lines += _block(block)
    if story.trees:
        lines += ["", "The tree texts and their SHA-256:"]
        lines += [line for file, digest in story.trees for line in _wrapped(f"{file} {digest}", "  ", "    ")]
    lines += ["", "-" * WIDTH, foot(story)]
    return "\n".join(lines).strip("\n") + "\n"


def _block(block: Block) -> list[str]:
    if isinstance(block, Heading):
        return _heading(block)
    if isinstance(block, Words):
        indent = "  | " if block.weight == "notice" else ""
        return ["", *_wrapped(block.text, indent, indent)]
    if isinstance(block, Points):
        mark = MARKS[block.mark]
        return ["", *(line for item in block.items for line in _wrapped(item, mark, " " * len(mark)))]
    if isinstance(block, Pairs):
        return ["", *(line for name, value in block.items for line in _pair(name, value))]
    if isinstance(block, Table):
        return ["", *(line for row in block.rows for line in _row(block.heads, row))]
    if isinstance(block, ToSign):
        return ["", "", *(line for name in block.names for line in ("", f"{name}: ".ljust(60, "_")))]
    if isinstance(block, Pictures):
        return [line for item in block.items if item is not None for line in _block(item)]
    assert isinstance(block, Picture)
    return [] if block.drawn else ["", *_wrapped(f"[photo] {block.caption}", "", "  ")]


def _heading(block: Heading) -> list[str]:
    text = one_line(block.text)
    if block.level == 1:
        return ["", "", "=" * WIDTH, *_wrapped(text.upper(), "", ""), "=" * WIDTH]
    return ["", "", *_wrapped(text, "", ""), ("-" if block.level == 2 else ".") * min(len(text), WIDTH)]


def _pair(name: str, value: str) -> list[str]:
    return _wrapped(f"{name}: {value}" if value else name, "  ", "      ")


def _row(heads: tuple[str, ...], row: tuple[Cell, ...]) -> list[str]:
    """A table row as lines: the first cell begins it, the others follow under their heads. A row without
    its first cell belongs to the one above."""
    out: list[str] = []
    for place, (head, cell) in enumerate(zip(heads, row, strict=True)):
        said = [part for part in (cell.text, *cell.small, *cell.faint) if part]
        if not said:
            continue
        text = f"({'; '.join(said)})" if cell.struck else "; ".join(said)
        if place == 0:
            out += _wrapped(text, "* ", "  ")
        elif place == 1 and not row[0].text:
            out += _wrapped(text, "    - ", "      ")
        else:
            inset = 4 if row[0].text else 6
            out += _wrapped(text, f"{' ' * inset}{head}: ", " " * (inset + 2))
    return out


def _wrapped(text: str, first: str, rest: str) -> list[str]:
    return textwrap.wrap(
        one_line(text), WIDTH, initial_indent=first, subsequent_indent=rest, break_on_hyphens=False
    ) or [first.rstrip()]
