"""The report as a PDF, Letter or A4: the blocks laid on pages, the fingerprint and the page number on
each."""

from __future__ import annotations

import re
from collections.abc import Iterable

from assistant.report.blocks import Block, Heading, ToSign
from assistant.report.drawing import ready
from assistant.report.outline import foot, outline
from assistant.report.story import Story

PAPERS = ("letter", "a4")
RESOLUTION = 600
MARGIN, TOP, BOTTOM = 51, 45, 54
"""In points: 18 mm at the sides, for a binder's holes."""
WITH_SIGNATURE = 0.4
"""Share of a page that goes along with lines to sign on: a signature alone on a page signs nothing."""


def to_pdf(story: Story, paper: str = "letter") -> bytes:
    """The PDF's bytes. Raises CannotDrawError where QtGui can't be loaded or there is no font."""
    family = ready()
    from PySide6.QtCore import QBuffer, QIODevice, QMarginsF
    from PySide6.QtGui import QPageSize, QPdfWriter

    from assistant.report.pdf_items import Blocks
    from assistant.report.pdf_text import Typesetter

    buffer = QBuffer()
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    writer = QPdfWriter(buffer)
    writer.setResolution(RESOLUTION)
    size = QPageSize.PageSizeId.A4 if paper == "a4" else QPageSize.PageSizeId.Letter
    writer.setPageSize(QPageSize(size))
    writer.setPageMargins(QMarginsF(0, 0, 0, 0))
    writer.setTitle(f"Heating visit of {story.began}")
    writer.setCreator("Fault Trail")
    setter = Typesetter(writer, family)
    unit = setter.unit
    width = writer.width() - 2 * MARGIN * unit
    height = writer.height() - (TOP + BOTTOM) * unit
    blocks = Blocks(setter, width, height)
    _paint(writer, _pages(_items(blocks, outline(story), height), height), setter, width, foot(story))
    buffer.close()
    return with_spaces(bytes(buffer.data()))


def with_spaces(data: bytes) -> bytes:
    """Qt tells readers that the glyph of a space is a tab; copied text and searches need a space. The
    tables that say so (ISO 32000-1, 9.10.3) are plain text, and a space is as long as a tab there."""

    def mended(table: re.Match) -> bytes:
        return re.sub(rb"\[[^\]]*\]", lambda row: row[0].replace(b"<0009>", b"<0020>"), table[0])

    return re.sub(rb"begincmap.*?endcmap", mended, data, flags=re.DOTALL)


def _items(blocks, outlined: Iterable[Block], height: float) -> list:
    """The items of all blocks in order; lines to sign on stay with what is signed."""
    groups: list[tuple[Block, list]] = []
    for number, block in enumerate(outlined):
        if isinstance(block, ToSign):
            _hold(groups, WITH_SIGNATURE * height)
        groups.append((block, list(blocks.items(block, number == 0))))
    return [item for _, items in groups for item in items]


def _hold(groups: list[tuple[Block, list]], most: float) -> None:
    """Keeps what stands last, back to its heading and no higher than `most`, with what comes next."""
    left = most
    for block, items in reversed(groups):
        for item in reversed(items):
            left -= item.height + item.gap
            if left < 0 and not isinstance(block, Heading):
                return
            item.keep = True
        if isinstance(block, Heading):
            return


def _pages(items: list, height: float) -> list[list[tuple[float, object]]]:
    """Items with their place on each page. An item that keeps the next goes with it to a new page, unless it
    begins one of its own.
    """
    pages: list[list[tuple[float, object]]] = [[]]
    y = 0.0
    for place, item in enumerate(items):
        needed = item.gap + item.height
        following = place
        while items[following].keep and following + 1 < len(items) and not items[following + 1].new_page:
            following += 1
            needed += items[following].gap + items[following].height
        if pages[-1] and (item.new_page or y + min(needed, height) > height):
            pages.append([])
            y = 0.0
            if item.head is not None:
                pages[-1].append((y, item.head))
                y += item.head.height
        y += item.gap if pages[-1] else 0.0
        pages[-1].append((y, item))
        y += item.height
    return pages


def _paint(writer, pages: list, setter, width: float, foot_words: str) -> None:
    from PySide6.QtCore import QRectF, Qt
    from PySide6.QtGui import QPainter, QPen

    from assistant.report.pdf_items import RULE, SMALL

    unit = setter.unit
    painter = QPainter(writer)
    try:
        for number, page in enumerate(pages, start=1):
            if number > 1:
                writer.newPage()
            painter.save()
            painter.translate(MARGIN * unit, TOP * unit)
            for y, item in page:
                painter.setPen(Qt.GlobalColor.black)
                item.draw(painter, y)
            painter.restore()
            painter.save()
            painter.translate(MARGIN * unit, writer.height() - (BOTTOM - 16) * unit)
            painter.setPen(QPen(RULE, 0.4 * unit))
            painter.drawLine(0, 0, int(width), 0)
            painter.setPen(Qt.GlobalColor.black)
            painter.setFont(setter.font(SMALL))
            box = QRectF(0, 4 * unit, width, 14 * unit)
            painter.drawText(box, Qt.AlignmentFlag.AlignLeft, foot_words)
            painter.drawText(box, Qt.AlignmentFlag.AlignRight, f"Page {number} of {len(pages)}")
            painter.restore()
    finally:
        painter.end()
