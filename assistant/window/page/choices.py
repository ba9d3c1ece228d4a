"""A set of big buttons of which one is chosen: by its digit, by a tap, or with the arrow keys and Enter."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QButtonGroup, QGridLayout, QWidget

from assistant.window.big import BigButton


class Choices(QWidget):
    """`picked` carries the value chosen. `columns` is how many stand beside each other where there is
    room.
    """

    picked = Signal(str)

    def __init__(
        self,
        choices: Sequence[tuple[str, str]],
        columns: int = 1,
        several: bool = False,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self.several = several
        self.grid = QGridLayout(self)
        self.grid.setContentsMargins(0, 0, 0, 0)
        self.grid.setSpacing(8)
        self.group = QButtonGroup(self)
        self.group.setExclusive(not several)
        self.buttons: dict[str, BigButton] = {}
        for number, (value, words) in enumerate(choices, 1):
            head, _, small = words.partition("\n")
            button = BigButton(head, str(number) if number < 10 else "", small)
            button.setCheckable(True)
            button.toggled.connect(lambda on, value=value: self.picked.emit(value) if on or several else None)
            self.group.addButton(button)
            self.buttons[value] = button
        self.lay(columns)

    def lay(self, columns: int) -> None:
        """Stand the buttons in this many columns, read down each."""
        rows = -(-len(self.buttons) // columns) if self.buttons else 0
        for place, button in enumerate(self.buttons.values()):
            self.grid.addWidget(button, place % rows, place // rows)

    @property
    def chosen(self) -> list[str]:
        """The values chosen, in the order of the page."""
        return [value for value, button in self.buttons.items() if button.isChecked()]

    def choose(self, digit: int) -> bool:
        """The digit's button, pressed; False where there is none."""
        buttons = list(self.buttons.values())
        if not 1 <= digit <= len(buttons):
            return False
        buttons[digit - 1].setFocus()
        buttons[digit - 1].click()
        return True

    def focused(self) -> str | None:
        """The value of the button that has the focus."""
        return next((value for value, button in self.buttons.items() if button.hasFocus()), None)

    def first(self) -> QWidget:
        """Where the focus goes: the chosen one, or the first."""
        picked = self.chosen
        return self.buttons[picked[0]] if picked else next(iter(self.buttons.values()))
