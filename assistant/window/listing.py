"""A list in which digits and Enter mean what they mean on the page: the list searches for nothing by
itself.
"""

from __future__ import annotations

from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QListWidget

from assistant.window import look

_ARROWS = (
    Qt.Key.Key_Up,
    Qt.Key.Key_Down,
    Qt.Key.Key_Home,
    Qt.Key.Key_End,
    Qt.Key.Key_PageUp,
    Qt.Key.Key_PageDown,
)


class Listing(QListWidget):
    """Moved through with the arrows; every other key goes to the page."""

    def __init__(self, name: str, least: int = 100) -> None:
        super().__init__()
        self.setAccessibleName(name)
        self.setFont(look.font(look.BODY))
        self.setWordWrap(True)
        self.setResizeMode(QListWidget.ResizeMode.Adjust)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setMinimumHeight(least)

    def in_one_line(self) -> None:
        """Each row in one line, cut where there is no more room; the whole text is its tip."""
        self.setWordWrap(False)
        self.setTextElideMode(Qt.TextElideMode.ElideRight)
        for row in range(self.count()):
            item = self.item(row)
            item.setToolTip(item.text())
            item.setSizeHint(QSize(40, look.TARGET + 1))

    def step_down(self) -> None:
        """Down from the field above: the focus comes here, and the selection moves at once."""
        self.setFocus()
        self.setCurrentRow(min(self.currentRow() + 1, self.count() - 1))

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() in _ARROWS:
            super().keyPressEvent(event)
        else:
            event.ignore()
