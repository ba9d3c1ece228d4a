"""A computation worked out by hand, printed on one page: what went in, the formula with the numbers, the
result, where it comes from, and its plot.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from assistant.plain import one_line
from assistant.report.drawing import ready
from assistant.report.pdf import MARGIN, RESOLUTION, TOP, with_spaces
from assistant.trade.plotted import Plot

SIZES = (11.0, 10.0, 9.0, 8.0, 7.0, 6.0)
"""Type sizes in points, the first that fits on the page is taken."""
PLOT = (150, 260)
"""Least and greatest height of the plot in points: it takes what the words leave."""


@dataclass(frozen=True)
class PrintedSheet:
    """Everything on the page, in words. `fields`: (what, as typed, what it can be); `foot`: the sentence
    below.
    """

    title: str
    fields: Sequence[tuple[str, str, str]]
    results: Sequence[tuple[str, str]]
    formula: str
    source: str
    about: str
    foot: str
    plot: Plot | None = None


def to_pdf(sheet: PrintedSheet, paper: str = "letter") -> bytes:
    """The PDF's bytes: one page. Raises CannotDrawError where QtGui can't be loaded or there is no font."""
    family = ready()
    from PySide6.QtCore import QBuffer, QIODevice, QMarginsF
    from PySide6.QtGui import QPageSize, QPainter, QPdfWriter

    buffer = QBuffer()
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    writer = QPdfWriter(buffer)
    writer.setResolution(RESOLUTION)
    writer.setPageSize(QPageSize(QPageSize.PageSizeId.A4 if paper == "a4" else QPageSize.PageSizeId.Letter))
    writer.setPageMargins(QMarginsF(0, 0, 0, 0))
    writer.setTitle(sheet.title)
    writer.setCreator("Fault Trail")
    painter = QPainter(writer)
    try:
        for size in SIZES:
            page = _Page(writer, family, size)
            if page.lay(painter, sheet, draw=False) <= page.bottom or size == SIZES[-1]:
                page.lay(painter, sheet, draw=True)
                break
    finally:
        painter.end()
    buffer.close()
    return with_spaces(bytes(buffer.data()))


class _Page:
    """Sets one sheet at one size of type; `lay` gives where it ends."""

    def __init__(self, writer, family: str, size: float) -> None:
        self.writer, self.family, self.size = writer, family, size
        self.unit = writer.resolution() / 72
        self.left = MARGIN * self.unit
        self.width = writer.width() - 2 * self.left
        self.bottom = writer.height() - 40 * self.unit

    def font(self, points: float, bold: bool = False):
        from PySide6.QtGui import QFont

        font = QFont(self.family)
        font.setPixelSize(max(1, round(points * self.unit)))
        font.setBold(bold)
        font.setFeature(QFont.Tag("liga"), 0)
        return font

    def lay(self, painter, sheet: PrintedSheet, draw: bool) -> float:
        y = TOP * self.unit
        y = self._text(painter, sheet.about, self.size - 1, y, draw)
        y = self._text(painter, sheet.title, self.size + 7, y, draw, bold=True) + 6 * self.unit
        shares = (0.34, 0.30, 0.36)
        for row in (("What", "As typed", "What it can be"), *sheet.fields):
            bold = row[0] == "What"
            ends = []
            at = self.left
            for share, text in zip(shares, row, strict=True):
                width = self.width * share - 6 * self.unit
                ends.append(self._text(painter, text, self.size, y, draw, bold, at, width))
                at += self.width * share
            y = max(ends) + 2 * self.unit
            if draw:
                self._rule(painter, y)
            y += 2 * self.unit
        y += 8 * self.unit
        for words, text in sheet.results:
            y = self._text(painter, f"{words}: {text}", self.size + 2, y, draw, bold=True)
        y = self._text(painter, sheet.formula, self.size, y + 6 * self.unit, draw)
        y = self._text(painter, f"Source: {sheet.source}", self.size, y + 4 * self.unit, draw)
        if sheet.plot is not None:
            left = (self.bottom - y) / self.unit - 46
            tall = min(max(left, PLOT[0]), PLOT[1]) * self.unit
            if draw:
                self._plot(painter, sheet.plot, y + 10 * self.unit, tall)
            y += tall + 16 * self.unit
        return self._text(painter, sheet.foot, self.size - 2, y + 6 * self.unit, draw)

    def _text(
        self,
        painter,
        text: str,
        points: float,
        y: float,
        draw: bool,
        bold: bool = False,
        left: float | None = None,
        width: float | None = None,
    ) -> float:
        """Where the text ends; drawn black, on lines of its own making."""
        from PySide6.QtCore import QRectF, Qt
        from PySide6.QtGui import QFontMetricsF

        text, font = one_line(text), self.font(points, bold)
        flags = int(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignTop | Qt.TextFlag.TextWordWrap)
        flags |= int(Qt.TextFlag.TextWrapAnywhere) if " " not in text.strip() else 0
        room = QRectF(self.left if left is None else left, y, width or self.width, 1e6)
        needed = QFontMetricsF(font, self.writer).boundingRect(room, flags, text)
        if draw:
            painter.setPen(Qt.GlobalColor.black)
            painter.setFont(font)
            painter.drawText(QRectF(room.left(), y, room.width(), needed.height() + 2), flags, text)
        return y + needed.height()

    def _rule(self, painter, y: float) -> None:
        from PySide6.QtCore import QPointF
        from PySide6.QtGui import QColor, QPen

        painter.setPen(QPen(QColor("#b8b8b8"), 0.4 * self.unit))
        painter.drawLine(QPointF(self.left, y), QPointF(self.left + self.width, y))

    def _plot(self, painter, plot: Plot, y: float, tall: float) -> None:
        from PySide6.QtCore import QRectF
        from PySide6.QtGui import QColor

        from assistant.report.plot import Pens, paint

        pens = Pens(
            QColor("black"),
            QColor("#5a5a5a"),
            QColor("#c4c4c4"),
            QColor("white"),
            QColor("black"),
            lambda bold: self.font(self.size - 1, bold),
            self.unit,
        )
        paint(painter, QRectF(self.left, y, min(self.width, 460 * self.unit), tall), plot, pens)
