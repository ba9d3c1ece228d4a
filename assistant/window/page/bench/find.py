"""The workbench's list: type a word of what is wanted, choose, and its page opens."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtWidgets import QListWidgetItem, QWidget

from assistant.trade.entry import Entry
from assistant.trade.search import find
from assistant.window import look
from assistant.window.line import Line
from assistant.window.listing import Listing
from assistant.window.page.aside.base import AsidePage
from assistant.window.text import label

if TYPE_CHECKING:
    from assistant.window.desk import Desk
    from assistant.window.session import Driver

LONGEST = 110
"""Letters of a formula in the list; its page shows the whole."""


class BenchPage(AsidePage):
    """Enter opens what is chosen; an empty line lists everything."""

    title = "Workbench"
    next_words = "&Open it"

    def __init__(self, desk: Desk, driver: Driver | None = None, parent: QWidget | None = None) -> None:
        super().__init__(driver, parent)
        self.desk = desk
        self.entries: list[Entry] = []
        self.find = Line("Find a computation")
        self.find.setPlaceholderText("any word: amps, capacitor, static, btu, wire, breaker ...")
        self.find.setText(desk.sheets.get("find", ""))
        self.find.textChanged.connect(lambda _: self._list())
        self.find.returnPressed.connect(self.enter)
        self.column.addWidget(self.find)
        self.listed = Listing("Computations", 110)
        self.listed.itemDoubleClicked.connect(lambda _: self.enter())
        self.find.down.connect(self._down)
        self.column.addWidget(self.listed, 1)
        back = "the question" if driver is not None else "the list of visits"
        self.own.addWidget(label(f"Esc leads back to {back}.", look.SMALL, soft=True))
        self._list()

    def first_focus(self) -> QWidget:
        return self.find

    def enter(self) -> None:
        row = self.listed.currentRow()
        if 0 <= row < len(self.entries):
            self.opens.emit(f"sheet:{self.entries[row].name}")
        else:
            self.left.emit()

    def _down(self) -> None:
        if self.listed.count():
            self.listed.step_down()

    def _list(self) -> None:
        words = self.desk.sheets["find"] = self.find.text()
        self.entries = find(words)
        self.listed.clear()
        for entry in self.entries:
            formula = entry.formula
            shown = formula if len(formula) <= LONGEST else formula[: LONGEST - 4] + " ..."
            self.listed.addItem(QListWidgetItem(f"{entry.title}\n{shown}"))
        names = [entry.name for entry in self.entries]
        opened = self.desk.sheets.get("opened")
        self.listed.setCurrentRow(names.index(opened) if opened in names else 0 if names else -1)
        self.set_next("&Open it" if self.entries else "&Back")
        if self.entries:
            many = len(self.entries)
            self.say(f"{many} computation{'s' if many > 1 else ''}", sure=False)
        else:
            self.say("No computation has any of these words. Take some away, or try another word.")
