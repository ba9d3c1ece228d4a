"""Everything that can be done besides answering, as big buttons with their keys."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QObject, Qt
from PySide6.QtWidgets import QGridLayout, QWidget

from assistant.window import look
from assistant.window.big import BigButton
from assistant.window.keys import ACTIONS, AT_START, CLOSE, DRILLS
from assistant.window.page.aside.base import AsidePage
from assistant.window.page.base import TINY
from assistant.window.session import Driver

NOT_HERE = ("more", DRILLS)
"""This page itself, and what is not begun while a visit is open."""
ACROSS = 4
"""Buttons side by side, so that all of them are in sight in a window of 1024 by 600."""


class MorePage(AsidePage):
    """One button an action; a digit presses it, the arrows go from one to the next."""

    title = "What else?"

    def __init__(self, driver: Driver, parent: QWidget | None = None) -> None:
        super().__init__(driver, parent)
        self.grid = QGridLayout()
        self.grid.setSpacing(4)
        self.rows = 1
        self.buttons: list[BigButton] = []
        for action in (action for action in (*ACTIONS, *AT_START, CLOSE) if action.name not in NOT_HERE):
            digit = str(len(self.buttons) + 1) if len(self.buttons) < 9 else ""
            button = BigButton(f"{action.words} ({action.key})", digit, action.says)
            button.clicked.connect(lambda _=False, name=action.name: self.opens.emit(name))
            button.setFont(look.font(look.BODY, bold=True))
            button.installEventFilter(self)
            self.buttons.append(button)
        self.column.addLayout(self.grid)
        self.column.addStretch(1)
        self._lay(ACROSS)

    def first_focus(self) -> QWidget:
        return self.buttons[0]

    def choose(self, digit: int) -> None:
        if digit <= len(self.buttons):
            self.buttons[digit - 1].click()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Up and Down along a column, Left and Right across."""
        steps = {
            Qt.Key.Key_Up: -1,
            Qt.Key.Key_Down: 1,
            Qt.Key.Key_Left: -self.rows,
            Qt.Key.Key_Right: self.rows,
        }
        if event.type() != QEvent.Type.KeyPress or event.key() not in steps:
            return super().eventFilter(watched, event)
        place = self.buttons.index(watched) + steps[event.key()]
        if 0 <= place < len(self.buttons):
            self.buttons[place].setFocus(Qt.FocusReason.TabFocusReason)
            self.scroll.ensureWidgetVisible(self.buttons[place], 0, 10)
        return True

    def fold(self, mode: str) -> None:
        super().fold(mode)
        if hasattr(self, "grid"):
            self._lay(1 if mode == TINY else ACROSS)

    def _lay(self, columns: int) -> None:
        self.rows = rows = -(-len(self.buttons) // columns)
        for place, button in enumerate(self.buttons):
            self.grid.addWidget(button, place % rows, place // rows)
