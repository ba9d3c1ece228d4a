"""A safety message with its signal word, in full once per power state and short after that.

The words danger, warning, caution and notice are used as ANSI Z535.6 and ISO 3864 define them; the signs are
drawn here. Weight of line and filling tell them apart, so that they hold on a monochrome screen.
"""

from __future__ import annotations

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent, QPen, QPolygonF
from PySide6.QtWidgets import QFrame, QHBoxLayout, QLabel, QSizePolicy, QVBoxLayout, QWidget

from assistant.house.model import Caution
from assistant.window import look

_LINE = {"danger": 4, "warning": 3, "caution": 2, "notice": 1}


class Sign(QWidget):
    """A triangle with a stroke for danger, warning and caution (filled for danger); a square for notice."""

    def __init__(self, word: str, side: int, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.word, self.side = word, side
        self.setFixedSize(QSize(side, side))

    def paintEvent(self, _event: QPaintEvent) -> None:
        ink = look.inks(self.palette())
        paint = QPainter(self)
        paint.setRenderHint(QPainter.RenderHint.Antialiasing)
        size = float(self.side)
        full = self.word == "danger"
        paint.setPen(
            QPen(ink.text, 2.2, Qt.PenStyle.SolidLine, Qt.PenCapStyle.RoundCap, Qt.PenJoinStyle.RoundJoin)
        )
        paint.setBrush(ink.text if full else Qt.BrushStyle.NoBrush)
        if self.word == "notice":
            paint.drawRect(QRectF(4, 4, size - 8, size - 8))
        else:
            paint.drawPolygon(
                QPolygonF([QPointF(size / 2, 3), QPointF(size - 3, size - 5), QPointF(3, size - 5)])
            )
        stroke = QPen(
            ink.paper if full else ink.text,
            max(2.4, size / 11),
            Qt.PenStyle.SolidLine,
            Qt.PenCapStyle.RoundCap,
        )
        paint.setPen(stroke)
        paint.drawLine(QPointF(size / 2, size * 0.38), QPointF(size / 2, size * 0.62))
        paint.drawPoint(QPointF(size / 2, size * 0.77))


class CautionSign(QFrame):
    """One caution: `full` gives the whole message in a frame, otherwise one line."""

    def __init__(self, caution: Caution, full: bool, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.caution, self.full = caution, full
        self.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Preferred)
        word = caution.word.upper()
        said = caution.full if full else caution.short
        self.setAccessibleName(f"{word}: {said}")
        row = QHBoxLayout(self)
        row.setContentsMargins(10, 6, 10, 6) if full else row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(10)
        sign = Sign(caution.word, 36 if full else 24)
        row.addWidget(sign, 0, Qt.AlignmentFlag.AlignTop if full else Qt.AlignmentFlag.AlignVCenter)
        text = QLabel(said)
        text.setWordWrap(True)
        text.setTextFormat(Qt.TextFormat.PlainText)
        text.setFont(look.font(look.BODY))
        title = QLabel(word)
        title.setFont(look.font(look.LEAD if full else look.BODY, bold=True))
        if full:
            column = QVBoxLayout()
            column.setSpacing(2)
            column.addWidget(title)
            column.addWidget(text)
            row.addLayout(column, 1)
        else:
            row.addWidget(title)
            row.addWidget(text, 1)

    def paintEvent(self, _event: QPaintEvent) -> None:
        if not self.full:
            return
        ink = look.inks(self.palette())
        paint = QPainter(self)
        width = _LINE.get(self.caution.word, 2)
        half = width / 2
        paint.setPen(QPen(ink.text, width))
        paint.drawRect(QRectF(self.rect()).adjusted(half, half, -half, -half))
