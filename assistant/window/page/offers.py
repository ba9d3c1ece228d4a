"""A few big buttons in the foot for one question back: "did you mean 118.4 V?", "why can't it be taken?"."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QGridLayout, QVBoxLayout, QWidget

from assistant.window import look
from assistant.window.big import BigButton
from assistant.window.text import label


class Offers(QWidget):
    """Hidden until `ask`ed something; a digit, a tap or Enter picks, Esc puts it away."""

    toggled = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 6)
        self._column.setSpacing(6)
        self.buttons: list[BigButton] = []
        self._inside: QWidget | None = None
        self.back_to: QWidget | None = None
        self.hide()

    def ask(
        self, words: str, offered: Sequence[tuple[str, Callable[[], None]]], back_to: QWidget | None
    ) -> None:
        """Show the question and its answers; the first has the focus. Esc gives the focus to `back_to`."""
        self.put_away()
        self.back_to = back_to
        self._inside = QWidget()
        inner = QVBoxLayout(self._inside)
        inner.setContentsMargins(0, 0, 0, 0)
        inner.setSpacing(6)
        inner.addWidget(label(words, look.LEAD, bold=True))
        grid = QGridLayout()
        grid.setSpacing(8)
        columns = 1 if self.window().width() < look.TINY[0] else 2
        for place, (text, act) in enumerate(offered):
            button = BigButton(text, str(place + 1))
            button.clicked.connect(lambda _=False, act=act: self._picked(act))
            grid.addWidget(button, place // columns, place % columns)
            self.buttons.append(button)
        inner.addLayout(grid)
        self._column.addWidget(self._inside)
        self.show()
        self.toggled.emit()
        if self.buttons:
            self.buttons[0].setFocus(Qt.FocusReason.OtherFocusReason)

    def put_away(self) -> None:
        """Close without picking anything."""
        self.buttons = []
        if self._inside is not None:
            self._inside.hide()
            self._column.removeWidget(self._inside)
            self._inside.deleteLater()
            self._inside = None
        self.hide()
        self.toggled.emit()

    def pick(self, digit: int) -> bool:
        """The digit's button, pressed; False where there is none."""
        if 1 <= digit <= len(self.buttons):
            self.buttons[digit - 1].click()
            return True
        return False

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() == Qt.Key.Key_Escape:
            back = self.back_to
            self.put_away()
            if back is not None:
                back.setFocus(Qt.FocusReason.OtherFocusReason)
        else:
            super().keyPressEvent(event)

    def _picked(self, act: Callable[[], None]) -> None:
        back = self.back_to
        self.put_away()
        if back is not None:
            back.setFocus(Qt.FocusReason.OtherFocusReason)
        act()
