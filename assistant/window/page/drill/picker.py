"""A list that a word or two narrows down: for points, things, acts, findings and causes alike."""

from __future__ import annotations

from collections.abc import Mapping

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QListWidgetItem, QPushButton, QVBoxLayout, QWidget

from assistant.drill.practice.sitting import answers
from assistant.window import look
from assistant.window.line import Line
from assistant.window.listing import Listing
from assistant.window.text import label

NAME = Qt.ItemDataRole.UserRole


class Picker(QWidget):
    """`picked` carries the name of what was chosen: by Enter in the search line or on the list, or by a tap.
    `moved` follows the selection.
    """

    picked = Signal(str)
    moved = Signal(str)
    several = Signal(int)
    twice = False
    """Whether a tap only selects, and a second one on the same row takes it."""
    selects = True
    """Whether what is typed selects the first row that fits; else Enter takes the words as they are."""
    careful = False
    """Whether Enter in the search line takes the only match alone: of several one is picked on the list."""

    def __init__(
        self, title: str, heading: bool = True, least: int = 96, parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self.items: dict[str, str] = {}
        self.tapped = ""
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(4)
        self.heading = label(title, bold=True)
        self.find = Line(f"Search: {title}")
        self.find.setPlaceholderText("search")
        self.find.textChanged.connect(lambda _: self._show())
        self.list = Listing(title, least)
        self.find.down.connect(self.list.step_down)
        self.find.returnPressed.connect(self._entered)
        self.list.itemClicked.connect(lambda item: self._tap(item.data(NAME)))
        self.list.currentItemChanged.connect(lambda now, _: self.moved.emit(now.data(NAME) if now else ""))
        column.addWidget(self.heading)
        column.addWidget(self.find)
        column.addWidget(self.list, 1)
        if not heading:
            self.heading.hide()

    def show_items(self, title: str, items: Mapping[str, str], chosen: str = "") -> None:
        """Another list. What was searched for is forgotten."""
        self.items, self.tapped = dict(items), ""
        self.heading.setText(title)
        self.find.setAccessibleName(f"Search: {title}")
        self.list.setAccessibleName(title)
        self.find.blockSignals(True)
        self.find.clear()
        self.find.blockSignals(False)
        self._show(chosen)

    @property
    def chosen(self) -> str:
        """The name of the row that is selected, or nothing."""
        item = self.list.currentItem()
        return item.data(NAME) if item is not None else ""

    def choose(self, name: str) -> None:
        """Select a row by its name."""
        for row in range(self.list.count()):
            if self.list.item(row).data(NAME) == name:
                self.list.setCurrentRow(row)

    def _show(self, chosen: str = "") -> None:
        self.list.blockSignals(True)
        self.list.clear()
        for name, words in answers(self.items, self.find.text()).items():
            item = QListWidgetItem(words)
            item.setData(NAME, name)
            self.list.addItem(item)
        self.list.blockSignals(False)
        if chosen:
            self.choose(chosen)
        elif self.selects and self.list.count() and self.find.text():
            self.list.setCurrentRow(0)
        self.moved.emit(self.chosen)

    def _tap(self, name: str) -> None:
        if self.twice and name != self.tapped:
            self.tapped = name
            return
        self.tapped = ""
        self.picked.emit(name)

    def _entered(self) -> None:
        if self.twice and not self.chosen and not self.find.text().strip():
            self.list.step_down()
            return
        if self.careful and self.list.count() > 1:
            self.list.setFocus()
            self.several.emit(self.list.count())
            return
        if self.selects and not self.chosen and self.list.count():
            self.list.setCurrentRow(0)
        if self.chosen or not self.selects:
            self.picked.emit(self.chosen)


def toggle(words: str) -> QPushButton:
    """A button that stays pressed while it counts."""
    button = QPushButton(words)
    button.setCheckable(True)
    button.setMinimumHeight(look.TARGET)
    button.setFont(look.font(look.BODY))
    button.setAutoDefault(False)
    return button
