"""Text set in lines for a PDF page: a column of paragraphs that can be cut between any two lines."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field

from PySide6.QtCore import QPointF, Qt
from PySide6.QtGui import (
    QColor,
    QFont,
    QPainter,
    QPdfWriter,
    QTextLayout,
    QTextLine,
    QTextOption,
)

from assistant.plain import one_line

GREY = QColor("#6a6a6a")
LEADING = 1.12
LONGEST = 20_000
"""Characters of one text that are set; a longer one ends with a word about it. Nobody reads a page of one
cell."""


@dataclass(frozen=True)
class Style:
    """A way to set text: `size` in points."""

    size: float
    bold: bool = False
    struck: bool = False
    grey: bool = False


@dataclass
class Set:
    """Lines of text, set in one column. `height` in device units."""

    lines: list[tuple[QTextLine, float, float]] = field(default_factory=list)
    """(line, its place from the top, its height)"""
    height: float = 0.0
    keep: list[QTextLayout] = field(default_factory=list)
    grey: set[int] = field(default_factory=set)
    """Numbers of the lines that are drawn in grey."""

    def draw(
        self, painter: QPainter, x: float, y: float, start: float = 0.0, end: float = float("inf")
    ) -> None:
        """Draws the lines that begin from `start` up to `end`, the first of them at `y`."""
        for number, (line, top, _) in enumerate(self.lines):
            if start <= top < end:
                painter.setPen(GREY if number in self.grey else Qt.GlobalColor.black)
                line.draw(painter, QPointF(x, y + top - start - line.y()))

    def cut(self, most: float) -> list[tuple[float, float]]:
        """The column in pieces of at most `most` height, cut between lines: (start, end) of each."""
        pieces, start = [], 0.0
        for _, top, height in self.lines:
            if top + height - start > most and top > start:
                pieces.append((start, top))
                start = top
        return [*pieces, (start, self.height)]


class Typesetter:
    """Sets texts for one PDF device; lengths are device units, `unit` of them a point."""

    def __init__(self, writer: QPdfWriter, family: str) -> None:
        self.writer, self.family = writer, family
        self.unit = writer.resolution() / 72

    def column(self, paragraphs: Sequence[tuple[str, Style]], width: float) -> Set:
        out = Set()
        for text, style in paragraphs:
            self._paragraph(out, text, style, width)
        return out

    def font(self, style: Style) -> QFont:
        font = QFont(self.family)
        font.setPixelSize(max(1, round(style.size * self.unit)))
        font.setBold(style.bold)
        font.setStrikeOut(style.struck)
        font.setStyleHint(QFont.StyleHint.SansSerif)
        font.setFeature(QFont.Tag("liga"), 0)  # who searches the PDF for "filter" must find it
        return font

    def _paragraph(self, out: Set, text: str, style: Style, width: float) -> None:
        words = one_line(text)
        if len(words) > LONGEST:
            words = f"{words[:LONGEST]} \u2026 (the rest of {len(words)} characters stands in the trail)"
        layout = QTextLayout(words, self.font(style), self.writer)
        option = QTextOption()
        option.setWrapMode(QTextOption.WrapMode.WrapAtWordBoundaryOrAnywhere)
        layout.setTextOption(option)
        layout.beginLayout()
        while (line := layout.createLine()).isValid():
            line.setLineWidth(width)
            height = line.height() * LEADING
            if style.grey:
                out.grey.add(len(out.lines))
            out.lines.append((line, out.height, height))
            out.height += height
        layout.endLayout()
        out.keep.append(layout)
