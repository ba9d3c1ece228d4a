"""Paints a sheet of a diagram with Qt's painter: for the PDF, and for the window."""

from __future__ import annotations

from collections.abc import Mapping
from functools import lru_cache

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QBrush, QColor, QFont, QPainter, QPen, QPolygonF

from assistant.report.chart_svg import arrow_head
from assistant.tree.chart.marks import Box, Line, Sheet, Words

UNIT = 8
"""Letters are set at this many times their size and scaled down, so that their widths do not jump."""


def paint(painter: QPainter, sheet: Sheet, family: str, inks: Mapping[str, QColor]) -> None:
    """Paints every mark of a sheet; the painter's unit is the point. `inks` gives the four inks."""
    for mark in sheet.marks:
        if isinstance(mark, Box):
            _box(painter, mark, inks)
        elif isinstance(mark, Line):
            _line(painter, mark, inks)
        else:
            _words(painter, mark, family, inks)


def _box(painter: QPainter, box: Box, inks: Mapping[str, QColor]) -> None:
    pen = QPen(Qt.PenStyle.NoPen)
    if box.weight:
        pen = QPen(inks["ink"], box.weight)
        if box.dashed:
            pen.setDashPattern([4 / box.weight, 3 / box.weight])
    painter.setPen(pen)
    painter.setBrush(QBrush(inks[box.fill]) if box.fill else Qt.BrushStyle.NoBrush)
    rectangle = QRectF(box.x, box.y, box.width, box.height)
    if box.round:
        painter.drawRoundedRect(rectangle, box.round, box.round)
    else:
        painter.drawRect(rectangle)


def _line(painter: QPainter, line: Line, inks: Mapping[str, QColor]) -> None:
    pen = QPen(inks[line.ink], line.weight)
    pen.setCapStyle(Qt.PenCapStyle.FlatCap)
    painter.setPen(pen)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.drawPolyline(QPolygonF([QPointF(*point) for point in line.points]))
    if line.arrow:
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(QBrush(inks[line.ink]))
        painter.drawPolygon(QPolygonF([QPointF(*point) for point in arrow_head(line)]))


def _words(painter: QPainter, words: Words, family: str, inks: Mapping[str, QColor]) -> None:
    font = _font(family, words.size, words.bold)
    painter.setFont(font)
    painter.setPen(inks[words.ink])
    painter.save()
    painter.translate(words.x, words.y)
    painter.scale(1 / UNIT, 1 / UNIT)
    back = 0.0
    if words.anchor != "start":
        wide = painter.fontMetrics().horizontalAdvance(words.text)
        back = wide if words.anchor == "end" else wide / 2
    painter.drawText(QPointF(-back, 0), words.text)
    painter.restore()


@lru_cache(maxsize=64)
def _font(family: str, size: float, bold: bool) -> QFont:
    font = QFont(family)
    font.setPixelSize(max(1, round(size * UNIT)))
    font.setBold(bold)
    font.setHintingPreference(QFont.HintingPreference.PreferNoHinting)
    return font
