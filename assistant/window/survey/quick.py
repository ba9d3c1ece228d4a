"""The words that a cell can be, each a button, and the ways that stand behind them."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtWidgets import QPushButton, QWidget

from assistant.window import look
from assistant.window.flow import Flow


class Quick(Flow):
    """`puts` is called with the word of the button that was pressed; `behind` stand after the words."""

    def __init__(self, puts: Callable[[str], None], behind: tuple[QWidget, ...]) -> None:
        super().__init__()
        self.puts, self.behind = puts, behind
        self.ways: list[QPushButton] = []
        self.words: tuple[str, ...] = ()

    def offer(self, words: tuple[str, ...]) -> None:
        """These words; nothing is made anew where they are there already."""
        if words == self.words:
            return
        for each in self.ways:
            self.removeWidget(each)
            each.hide()
            each.deleteLater()
        for each in self.behind:
            self.removeWidget(each)
        self.words = words
        self.ways = [
            button(word[:1].upper() + word[1:], lambda _=False, word=word: self.puts(word)) for word in words
        ]
        for each in (*self.ways, *self.behind):
            self.addWidget(each)
        for each in self.ways:
            each.show()


def button(text: str, does: Callable) -> QPushButton:
    """A button of the survey's page."""
    made = QPushButton(text)
    made.setMinimumHeight(look.TARGET)
    made.setFont(look.font(look.BODY))
    made.clicked.connect(does)
    return made
