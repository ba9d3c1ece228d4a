"""Everything that can be done besides answering, as big buttons with their keys."""

from __future__ import annotations

from PySide6.QtWidgets import QGridLayout, QWidget

from assistant.window.big import BigButton
from assistant.window.keys import ACTIONS
from assistant.window.page.aside.base import AsidePage
from assistant.window.page.base import TINY
from assistant.window.session import Driver


class MorePage(AsidePage):
    """One button an action; a digit presses it."""

    title = "What else?"

    def __init__(self, driver: Driver, parent: QWidget | None = None) -> None:
        super().__init__(driver, parent)
        self.grid = QGridLayout()
        self.grid.setSpacing(8)
        self.buttons: list[BigButton] = []
        for action in (action for action in ACTIONS if action.name != "more"):
            digit = str(len(self.buttons) + 1) if len(self.buttons) < 9 else ""
            button = BigButton(f"{action.words} ({action.key})", digit, action.says)
            button.clicked.connect(lambda _=False, name=action.name: self.opens.emit(name))
            self.buttons.append(button)
        shelf = BigButton("Close this visit", "", "it stays open in the list")
        shelf.clicked.connect(lambda: self.opens.emit("shelf"))
        self.buttons.append(shelf)
        self.column.addLayout(self.grid)
        self.column.addStretch(1)
        self._lay(3)

    def first_focus(self) -> QWidget:
        return self.buttons[0]

    def choose(self, digit: int) -> None:
        if digit <= len(self.buttons):
            self.buttons[digit - 1].click()

    def fold(self, mode: str) -> None:
        super().fold(mode)
        if hasattr(self, "grid"):
            self._lay(1 if mode == TINY else 3)

    def _lay(self, columns: int) -> None:
        rows = -(-len(self.buttons) // columns)
        for place, button in enumerate(self.buttons):
            self.grid.addWidget(button, place % rows, place // rows)
