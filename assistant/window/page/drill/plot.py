"""An apprentice's drills over time: right first time, looks and readings beyond the best, unsafe acts.

Three rows over one another, one column a drill, the earliest at the left. A filled square is yes, an empty
one no; numbers are written as numbers above their bars. Nothing is added up.
"""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QFont, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from assistant.drill.practice.record import Done
from assistant.window import look
from assistant.window.look import Inks

ROWS = ("Right first time", "Looks and readings beyond the best", "Unsafe acts")
MOST = 40
"""The latest drills that are drawn; the table has all."""


def draw(
    paint: QPainter, room: QRectF, done: Sequence[Done], ink: Inks, font: QFont, line: float = 1.0
) -> None:
    """All of it, inside `room`."""
    shown = list(done)[-MOST:]
    paint.setFont(font)
    tall = room.height() / len(ROWS)
    for row, title in enumerate(ROWS):
        box = QRectF(room.left(), room.top() + row * tall, room.width(), tall)
        _row(paint, box, title, row, shown, ink, line)


def _row(
    paint: QPainter, box: QRectF, title: str, row: int, shown: Sequence[Done], ink: Inks, line: float
) -> None:
    metrics = paint.fontMetrics()
    high = metrics.height() * 1.2
    paint.setPen(ink.text)
    paint.drawText(QRectF(box.left(), box.top(), box.width(), high), Qt.AlignmentFlag.AlignLeft, title)
    base = box.bottom() - high * 0.9
    paint.setPen(QPen(ink.edge, line))
    paint.drawLine(QPointF(box.left(), base), QPointF(box.right(), base))
    if not shown:
        return
    step = box.width() / max(len(shown), 8)
    side = min(step * 0.6, high)
    room = base - box.top() - 2.1 * high
    values = [_value(one, row) for one in shown]
    top = max([value for value in values if value is not None] or [1]) or 1
    for place, (one, value) in enumerate(zip(shown, values, strict=True)):
        x = box.left() + step * (place + 0.5)
        if row == 0:
            square = QRectF(x - side / 2, base - side - 2 * line, side, side)
            paint.setPen(QPen(ink.accent, 2 * line))
            paint.setBrush(ink.accent if one.right_first else Qt.BrushStyle.NoBrush)
            paint.drawRect(square)
        elif value is not None:
            bar = max(room * value / top, 0.0)
            paint.setPen(Qt.PenStyle.NoPen)
            paint.setBrush(ink.accent)
            paint.drawRect(QRectF(x - side / 2, base - bar, side, bar))
            paint.setPen(ink.text)
            words = QRectF(x - step / 2, base - bar - high, step, high)
            paint.drawText(words, Qt.AlignmentFlag.AlignCenter, str(value))
        paint.setPen(ink.soft)
        paint.setBrush(Qt.BrushStyle.NoBrush)
        if row == len(ROWS) - 1 and (len(shown) <= 14 or place % 5 == 0):
            paint.drawText(
                QRectF(x - step / 2, base, step, high), Qt.AlignmentFlag.AlignCenter, one.began[5:10]
            )


def _value(one: Done, row: int) -> int | None:
    return {0: int(one.right_first), 1: one.beyond, 2: one.unsafe}[row]


def in_words(done: Sequence[Done]) -> str:
    """The same for a screen reader."""
    if not done:
        return "No drill was ended yet."
    lines = [
        f"{one.began[:10]}: {'right' if one.right_first else 'not right'} first time, "
        f"{'' if one.beyond is None else f'{one.beyond} beyond the best, '}{one.unsafe} unsafe"
        for one in done[-MOST:]
    ]
    return f"{len(done)} drills. " + "; ".join(lines)


class Plot(QWidget):
    """The plot of one apprentice."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.done: Sequence[Done] = ()
        self.setMinimumHeight(190)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.show_done(())

    def show_done(self, done: Sequence[Done]) -> None:
        """These drills, the earliest first."""
        self.done = done
        self.setAccessibleName(f"Plot. {in_words(done)}")
        self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:
        paint = QPainter(self)
        paint.setRenderHint(QPainter.RenderHint.Antialiasing)
        draw(paint, QRectF(self.rect()), self.done, look.inks(self.palette()), look.font(look.SMALL))
