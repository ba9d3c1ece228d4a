"""A line to write on. Plain text always: a box that knows limits drops digits without a word."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QLineEdit

from assistant.window import look


class Line(QLineEdit):
    """Enter is `returnPressed` and nothing more (a plain line would pass it on to the page as a second one);
    Up and Down go to the neighbouring field; the wheel does nothing.
    """

    up = Signal()
    down = Signal()

    def __init__(self, name: str, text: str = "", points: float = look.LEAD, most: int = 400) -> None:
        super().__init__()
        self.setMaxLength(most)
        self.setText(text)
        self.setAccessibleName(name)
        self.setFont(look.font(points))
        self.setMinimumHeight(look.TARGET)
        self.setMinimumWidth(110)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        key = event.key()
        if key == Qt.Key.Key_Up:
            self.up.emit()
        elif key == Qt.Key.Key_Down:
            self.down.emit()
        else:
            super().keyPressEvent(event)
            if key in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
                event.accept()
