"""Lines and paragraphs of plain text, and the few things that stand among them."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QFrame, QHBoxLayout, QLabel, QSizePolicy, QVBoxLayout, QWidget

from assistant.window import look


def label(words: str, points: float = look.BODY, bold: bool = False, soft: bool = False) -> QLabel:
    """A line or paragraph of plain text that wraps."""
    made = QLabel(words)
    made.setTextFormat(Qt.TextFormat.PlainText)
    made.setWordWrap(True)
    made.setFont(look.font(points, bold))
    if soft:
        made.setProperty("soft", True)
    made.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Preferred)
    return made


def rule() -> QFrame:
    """A thin line across the column."""
    line = QFrame()
    line.setObjectName("line")
    return line


def banner(words: str) -> QFrame:
    """A sentence that is different from what is usual on this page, marked by a bar at its left."""
    frame = QFrame()
    frame.setObjectName("banner")
    row = QVBoxLayout(frame)
    row.setContentsMargins(12, 6, 8, 6)
    row.addWidget(label(words))
    return frame


def row_of(*things: QWidget) -> QWidget:
    """A row that keeps its things as small as they like to be."""
    row = QWidget()
    across = QHBoxLayout(row)
    across.setContentsMargins(0, 0, 0, 0)
    for thing in things:
        across.addWidget(thing)
    across.addStretch(1)
    return row
