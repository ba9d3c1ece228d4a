"""A row of buttons that wraps onto the next line where the window is narrow."""

from __future__ import annotations

from PySide6.QtCore import QMargins, QPoint, QRect, QSize, Qt
from PySide6.QtWidgets import QLayout, QLayoutItem, QWidget


class Flow(QLayout):
    """Left to right, top to bottom; each thing keeps the size it asks for."""

    def __init__(self, gap: int = 8) -> None:
        super().__init__()
        self._items: list[QLayoutItem] = []
        self._gap = gap
        self.setContentsMargins(QMargins(0, 0, 0, 0))

    def addItem(self, item: QLayoutItem) -> None:
        self._items.append(item)

    def count(self) -> int:
        return len(self._items)

    def itemAt(self, index: int) -> QLayoutItem | None:
        return self._items[index] if 0 <= index < len(self._items) else None

    def takeAt(self, index: int) -> QLayoutItem | None:
        return self._items.pop(index) if 0 <= index < len(self._items) else None

    def expandingDirections(self) -> Qt.Orientation:
        return Qt.Orientation(0)

    def hasHeightForWidth(self) -> bool:
        return True

    def heightForWidth(self, width: int) -> int:
        return self._place(QRect(0, 0, width, 0), False)

    def setGeometry(self, rect: QRect) -> None:
        super().setGeometry(rect)
        self._place(rect, True)

    def sizeHint(self) -> QSize:
        """All on one line."""
        hints = [item.sizeHint() for item in self._shown()]
        return QSize(
            sum(hint.width() + self._gap for hint in hints) - (self._gap if hints else 0),
            max((hint.height() for hint in hints), default=0),
        )

    def minimumSize(self) -> QSize:
        size = QSize()
        for item in self._shown():
            size = size.expandedTo(item.minimumSize())
        return size

    def _shown(self) -> list[QLayoutItem]:
        return [
            item
            for item in self._items
            if not (isinstance(item.widget(), QWidget) and item.widget().isHidden())
        ]

    def _place(self, rect: QRect, move: bool) -> int:
        x, y, tall = rect.x(), rect.y(), 0
        for item in self._shown():
            hint = item.sizeHint().expandedTo(item.minimumSize())
            if x > rect.x() and x + hint.width() > rect.right() + 1:
                x, y, tall = rect.x(), y + tall + self._gap, 0
            if move:
                item.setGeometry(QRect(QPoint(x, y), QSize(min(hint.width(), rect.width()), hint.height())))
            x += hint.width() + self._gap
            tall = max(tall, hint.height())
        return y + tall - rect.y()
