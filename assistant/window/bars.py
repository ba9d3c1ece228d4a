"""Counts as bars: a line of words, and under it a bar whose parts are told apart by filling, not by colour.

Every number also stands in words beside its bar, so that the picture adds nothing that can't be read.
"""

from __future__ import annotations

from dataclasses import dataclass

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QBrush, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QVBoxLayout, QWidget

from assistant.window import look
from assistant.window.text import label

FILLS = (
    Qt.BrushStyle.SolidPattern,
    Qt.BrushStyle.BDiagPattern,
    Qt.BrushStyle.Dense6Pattern,
    Qt.BrushStyle.NoBrush,
)
"""One for each part of a bar, in order: full, hatched, dotted, empty."""
HEIGHT = 14


@dataclass(frozen=True)
class Bar:
    """`parts` are drawn one after the other; `words` is the line above, `numbers` the one after it."""

    words: str
    numbers: str
    parts: tuple[float, ...]


class Bars(QWidget):
    """Bars on one scale, the longest as wide as the page."""

    def __init__(self, bars: list[Bar], parent: QWidget | None = None) -> None:
        super().__init__(parent)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(4)
        longest = max((sum(bar.parts) for bar in bars), default=0.0) or 1.0
        for bar in bars:
            column.addWidget(label(f"{bar.words} – {bar.numbers}"))
            column.addWidget(_Strip(bar, longest))
            column.addSpacing(6)


class _Strip(QWidget):
    def __init__(self, bar: Bar, longest: float) -> None:
        super().__init__()
        self.bar, self.longest = bar, longest
        self.setFixedHeight(HEIGHT)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setAccessibleName(f"{bar.words}, as a bar: {bar.numbers}")

    def paintEvent(self, _event: QPaintEvent) -> None:
        inks = look.inks(self.palette())
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing, False)
        left = 0.0
        for part, fill in zip(self.bar.parts, FILLS, strict=False):
            wide = part / self.longest * (self.width() - 1)
            if wide > 0:
                painter.setPen(QPen(inks.text, 1))
                painter.setBrush(QBrush(inks.accent, fill))
                painter.drawRect(QRectF(left, 0, wide, HEIGHT - 1))
            left += wide
        painter.end()
