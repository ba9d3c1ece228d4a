"""A big button whose words may wrap, with the key that chooses it drawn in a ring at its left.

A finger in a glove needs the whole row, a keyboard needs the digit, a screen reader needs the words: one
widget gives all three. Chosen is shown by a filled ring, a tick and the word itself, never by colour alone.
"""

from __future__ import annotations

from PySide6.QtCore import QPointF, QRect, QRectF, QSize, Qt
from PySide6.QtGui import QFontMetrics, QKeyEvent, QPainter, QPaintEvent, QPen, QResizeEvent
from PySide6.QtWidgets import QAbstractButton, QSizePolicy, QWidget

from assistant.window import look

_RING = 28
_WRAP = int(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter | Qt.TextFlag.TextWordWrap)


class BigButton(QAbstractButton):
    """`words` in large type, `small` beneath it; `key` is the digit or letter that presses it."""

    def __init__(self, words: str, key: str = "", small: str = "", parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setText(words)
        self.key, self.small = key, small
        self.setFont(look.font(look.LEAD))
        spoken = f"{words}. {small}" if small else words
        self.setAccessibleName(spoken)
        self.setAccessibleDescription(f"Key {key}" if key else "")
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        policy = QSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)

    def hasHeightForWidth(self) -> bool:
        return True

    def heightForWidth(self, width: int) -> int:
        room = QRect(0, 0, max(60, width - self._left() - 14), 10_000)
        tall = QFontMetrics(self.font()).boundingRect(room, _WRAP, self.text()).height()
        if self.small:
            tall += QFontMetrics(self._small_font()).boundingRect(room, _WRAP, self.small).height() + 2
        return max(look.TARGET + 6, tall + 18)

    def sizeHint(self) -> QSize:
        return QSize(240, self.heightForWidth(max(240, self.width())))

    def minimumSizeHint(self) -> QSize:
        return QSize(120, look.TARGET + 6)

    def resizeEvent(self, event: QResizeEvent) -> None:
        self.updateGeometry()
        super().resizeEvent(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter) and not self.isCheckable():
            self.click()
        elif event.key() == Qt.Key.Key_Space and self._hasty():
            event.accept()
        else:
            super().keyPressEvent(event)

    def _hasty(self) -> bool:
        """Whether the page takes this key for one that was meant for somewhere else."""
        above = self.parentWidget()
        while above is not None and not hasattr(above, "hasty"):
            above = above.parentWidget()
        return above is not None and above.hasty()

    def paintEvent(self, _event: QPaintEvent) -> None:
        ink = look.inks(self.palette())
        paint = QPainter(self)
        paint.setRenderHint(QPainter.RenderHint.Antialiasing)
        chosen, on = self.isChecked(), self.isEnabled()
        frame = QRectF(self.rect()).adjusted(1.5, 1.5, -1.5, -1.5)
        paint.setBrush(ink.wash if chosen or self.isDown() else ink.paper)
        width = 3.0 if self.hasFocus() else 2.0 if chosen else 1.0
        paint.setPen(
            QPen(
                ink.accent if self.hasFocus() or chosen else ink.edge,
                width,
                Qt.PenStyle.SolidLine if on else Qt.PenStyle.DashLine,
            )
        )
        paint.drawRoundedRect(frame, 4, 4)
        if self.key or self.isCheckable():
            self._draw_ring(paint, ink, chosen)
        paint.setPen(ink.text if on else ink.soft)
        paint.setFont(self.font())
        room = self.rect().adjusted(self._left(), 4, -10, -4)
        if not self.small:
            paint.drawText(room, _WRAP, self.text())
            return
        tall = QFontMetrics(self.font()).boundingRect(room, _WRAP, self.text()).height()
        below = QFontMetrics(self._small_font()).boundingRect(room, _WRAP, self.small).height()
        top = room.top() + (room.height() - tall - below - 2) // 2
        paint.drawText(QRect(room.left(), top, room.width(), tall), _WRAP, self.text())
        paint.setFont(self._small_font())
        paint.setPen(ink.soft)
        paint.drawText(QRect(room.left(), top + tall + 2, room.width(), below), _WRAP, self.small)

    def _draw_ring(self, paint: QPainter, ink: look.Inks, chosen: bool) -> None:
        ring = QRectF(12, (self.height() - _RING) / 2, _RING, _RING)
        paint.setPen(QPen(ink.accent if chosen else ink.edge, 1.5))
        paint.setBrush(ink.accent if chosen else Qt.BrushStyle.NoBrush)
        paint.drawEllipse(ring)
        if chosen:
            paint.setPen(QPen(ink.on_accent, 3, Qt.PenStyle.SolidLine, Qt.PenCapStyle.RoundCap))
            middle = ring.center()
            paint.drawPolyline([middle + QPointF(-7, 0), middle + QPointF(-2, 6), middle + QPointF(7, -6)])
        elif self.key:
            paint.setPen(ink.accent)
            paint.setFont(look.font(look.BODY, bold=True))
            paint.drawText(ring, int(Qt.AlignmentFlag.AlignCenter), self.key)

    def _left(self) -> int:
        return 12 + _RING + 14 if self.key or self.isCheckable() else 16

    @staticmethod
    def _small_font():
        return look.font(look.SMALL)
