"""The report as one HTML file: no script, no link, nothing from elsewhere; every text is escaped here."""

from __future__ import annotations

import base64
from collections.abc import Callable

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
from assistant.report.html_style import STYLE
from assistant.report.outline import foot, outline
from assistant.report.story import Photo, Story

MARKS = {"dot": "", "done": "\u2713 ", "open": "\u2610 "}
_ENTITIES = {"&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;", "'": "&#39;"}
_ONLY_THIS_FILE = "default-src 'none'; img-src data:; style-src 'unsafe-inline'"

Shrink = Callable[[Photo], "bytes | None"]


def to_html(story: Story, shrink: Shrink | None = None) -> str:
    """`shrink` makes a small JPEG of a photo (None: leave photos out and say so)."""
    blocks = "\n".join(_block(block, shrink) for block in outline(story))
    return (
        '<!DOCTYPE html>\n<html lang="en">\n<head>\n<meta charset="utf-8">\n'
        '<meta name="viewport" content="width=device-width, initial-scale=1">\n'
        f'<meta http-equiv="Content-Security-Policy" content="{_ONLY_THIS_FILE}">\n'
        f"<title>Heating visit of {escape(story.began)}</title>\n<style>{STYLE}</style>\n</head>\n<body>\n"
        f"{blocks}\n<footer>{escape(foot(story))}</footer>\n</body>\n</html>\n"
    )


def escape(text: str) -> str:
    """The text as HTML: no mark-up of its own, on one line."""
    return "".join(_ENTITIES.get(letter, letter) for letter in one_line(text))


def _apart(text: str) -> str:
    """Escaped, and with a direction of its own that does not reach what stands beside it."""
    return f"<bdi>{escape(text)}</bdi>"


def _block(block: Block, shrink: Shrink | None) -> str:
    if isinstance(block, Heading):
        return f"<h{block.level}>{_apart(block.text)}</h{block.level}>"
    if isinstance(block, Words):
        return f'<p class="{block.weight}">{_apart(block.text)}</p>'
    if isinstance(block, Points):
        items = "".join(f"<li>{MARKS[block.mark]}{_apart(item)}</li>" for item in block.items)
        return f'<ul class="{block.mark}">{items}</ul>'
    if isinstance(block, Pairs):
        items = "".join(f"<dt>{_apart(name)}</dt><dd>{_apart(value)}</dd>" for name, value in block.items)
        return f'<dl style="grid-template-columns: {block.share}% 1fr">{items}</dl>'
    if isinstance(block, Table):
        return _table(block)
    if isinstance(block, ToSign):
        return f'<div class="sign">{"".join(f"<p>{escape(name)}</p>" for name in block.names)}</div>'
    if isinstance(block, Pictures):
        items = "".join(f"<td>{_picture(item, shrink) if item else ''}</td>" for item in block.items)
        return f'<table class="pictures"><tr>{items}</tr></table>'
    assert isinstance(block, Picture)
    return _picture(block, shrink)


def _table(table: Table) -> str:
    columns = "".join(f'<col style="width:{width}%">' for width in table.widths)
    heads = "".join(f'<th scope="col">{escape(head)}</th>' for head in table.heads)
    rows = "\n".join(_row(row) for row in table.rows)
    head = f"<colgroup>{columns}</colgroup><thead><tr>{heads}</tr></thead>"
    return f"<table>{head}\n<tbody>{rows}</tbody></table>"


def _row(cells: tuple[Cell, ...]) -> str:
    if cells[-1].empty and len(cells) > 1:
        *first, last = cells[:-1]
        ends = f'<td colspan="2">{_cell(last)}</td>'
    else:
        first, ends = list(cells), ""
    return f"<tr>{''.join(f'<td>{_cell(cell)}</td>' for cell in first)}{ends}</tr>"


def _cell(cell: Cell) -> str:
    text = _apart(cell.text) if cell.text else ""
    if cell.struck and text:
        text = f"<s>{text}</s>"
    small = "".join(f"<small>{_apart(line)}</small>" for line in cell.small)
    faint = "".join(f'<small class="faint">{_apart(line)}</small>' for line in cell.faint)
    return f"{text}{small}{faint}"


def _picture(block: Picture, shrink: Shrink | None) -> str:
    data = shrink(block.photo) if shrink and block.photo.data is not None else None
    if data is None:
        why = "" if block.photo.data is None else " (the picture is in the visit's folder)"
        return f"<p>[photo] {_apart(block.caption)}{why}</p>"
    encoded = base64.b64encode(data).decode("ascii")
    picture = f'<img alt="{escape(block.caption)}" src="data:image/jpeg;base64,{encoded}">'
    return f"<figure>{picture}<figcaption>{_apart(block.caption)}</figcaption></figure>"
