"""The list of visits: find one and go on where it stopped, or begin a new one."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QListWidgetItem, QPushButton, QWidget

from assistant.trail.shelf import Shelved, find
from assistant.window import look
from assistant.window.line import Line
from assistant.window.listing import Listing
from assistant.window.page.base import Page
from assistant.window.page.offers import Offers
from assistant.window.refused import Refused
from assistant.window.text import label
from assistant.window.words import QUALIFIED, day, plain

if TYPE_CHECKING:
    from assistant.window.desk import Desk

STATES = {"open": "open", "paused": "paused", "signed": "signed", "broken": "can't be followed"}


class NoticePage(Page):
    """Shown at the very first start: two sentences, and on."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(None, parent)
        self.column.addStretch(1)
        self.column.addWidget(label("Fault Trail", look.QUESTION, bold=True))
        self.column.addWidget(label(QUALIFIED, look.LEAD + 4))
        self.column.addStretch(2)
        self.set_next("&Understood")


class StartPage(Page):
    """`picked` carries a visit's folder; `opens` asks for a new visit."""

    picked = Signal(object)

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(None, parent)
        self.listed: list[Shelved] = []
        self.offers = Offers()
        self.foot_column.insertWidget(0, self.offers)
        self.column.addWidget(label("Visits", look.QUESTION))
        self.find = Line("Find a visit")
        self.find.setPlaceholderText("find: a name, an address, a word of the complaint, a date")
        self.find.textChanged.connect(self._list)
        self.find.returnPressed.connect(self.enter)
        self.column.addWidget(self.find)
        self.visits = Listing("Visits, the latest first", 110)
        self.visits.currentRowChanged.connect(lambda _: self._state())
        self.visits.itemDoubleClicked.connect(lambda _: self.enter())
        self.find.down.connect(self.visits.setFocus)
        self.column.addWidget(self.visits, 1)
        self.none = label("No visit yet. Begin one: it asks only what the customer says.", look.LEAD)
        self.column.addWidget(self.none)
        self.column.addWidget(label(QUALIFIED, look.SMALL, soft=True))
        self.new = QPushButton("New &visit")
        self.new.setFont(look.font(look.LEAD, bold=True))
        self.new.setMinimumHeight(56)
        self.new.clicked.connect(lambda: self.opens.emit("new"))
        self.own.addWidget(self.new)
        try:
            self.all = desk.visits()
        except Refused as problem:
            self.all = []
            self.say(str(problem))
        if desk.shop[1]:
            self.column.addWidget(label(desk.shop[1][0], look.SMALL))
        self._list("")

    def offer_to_take_over(self, said: str, take_over: Callable[[], None]) -> None:
        """It is open elsewhere: leave it, or open it here all the same (each writer has a file of its
        own).
        """
        self.offers.ask(
            said,
            [("Leave it", self.visits.setFocus), ("Nobody has it open: open it here", take_over)],
            self.visits,
        )

    def choose(self, digit: int) -> None:
        self.offers.pick(digit)

    def first_focus(self) -> QWidget:
        return self.visits if self.all else self.new

    def enter(self) -> None:
        row = self.visits.currentRow()
        if 0 <= row < len(self.listed):
            self.picked.emit(self.listed[row].folder)
        else:
            self.opens.emit("new")

    def _list(self, text: str) -> None:
        self.listed = find(self.all, text)
        self.visits.clear()
        for shelved in self.listed:
            self.visits.addItem(QListWidgetItem(_line(shelved)))
        if self.listed:
            self.visits.setCurrentRow(0)
        self.visits.setVisible(bool(self.all))
        self.find.setVisible(bool(self.all))
        self.none.setVisible(not self.all)
        self._state()

    def _state(self) -> None:
        row = self.visits.currentRow()
        if 0 <= row < len(self.listed):
            self.set_next("&Open it")
            self.say(self.listed[row].trouble)
        else:
            self.set_next("&New visit")
            self.say("No visit has these words." if self.all and self.find.text() else "")


def _line(shelved: Shelved) -> str:
    """One visit in the list: when, for whom, what the customer says, how it stands."""
    person = dict(shelved.person)
    who = ", ".join(part for part in (person.get("name", ""), person.get("address", "")) if part)
    said = "; ".join(words or plain(name) for name, words in shelved.complaints)
    state = STATES.get(shelved.state, shelved.state)
    if shelved.why_paused:
        state = f"{state}: {shelved.why_paused}"
    head = " – ".join(
        part for part in (day(shelved.began) if shelved.began else shelved.folder.name, who) if part
    )
    return f"{head}\n{said} ({state})" if said else f"{head} ({state})"
