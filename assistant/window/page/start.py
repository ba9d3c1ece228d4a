"""The list of visits: find one and go on where it stopped, or begin a new one."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, QTimer, Signal
from PySide6.QtWidgets import QListWidgetItem, QPushButton, QWidget

from assistant.past.search import MOST
from assistant.trail.shelf import Shelved
from assistant.window import look
from assistant.window.flow import Flow
from assistant.window.keys import AT_START
from assistant.window.line import Line
from assistant.window.listing import Listing
from assistant.window.page.base import Page
from assistant.window.page.offers import Offers
from assistant.window.refused import Refused
from assistant.window.text import label
from assistant.window.words import QUALIFIED, day, plain

if TYPE_CHECKING:
    from assistant.window.desk import Desk

AT_ONCE, A_BIT = 0.2, 0.03
"""Seconds that the visits are read for before the list shows, and then again and again while it does."""
STATES = {
    "open": "open",
    "paused": "paused",
    "signed": "signed",
    "broken": "can't be followed",
    "practice": "practice, no visit",
}


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
    call = Signal(object)
    """The folder of a telephone call that was interrupted."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(None, parent)
        self.desk = desk
        self.listed: list[Shelved] = []
        self.offers = Offers()
        self.foot_column.insertWidget(0, self.offers)
        self.heading = label("Visits", look.QUESTION)
        self.column.addWidget(self.heading)
        for button in self._interrupted():
            self.column.addWidget(button)
        self.find = Line("Find a visit")
        self.find.setPlaceholderText("find: a name, an address, a part, a finding, a reading, a note, a date")
        self.find.textChanged.connect(lambda _: self._list())
        self.find.returnPressed.connect(self.enter)
        self.column.addWidget(self.find)
        self.visits = Listing("Visits, the latest first", 110)
        self.visits.currentRowChanged.connect(lambda _: self._state())
        self.visits.itemDoubleClicked.connect(lambda _: self.enter())
        self.find.down.connect(self.visits.setFocus)
        self.column.addWidget(self.visits, 1)
        self.none = label("No visit yet. Begin one: it asks only what the customer says.", look.LEAD)
        self.column.addWidget(self.none)
        self.column.addLayout(self._beside())
        self.column.addWidget(label(QUALIFIED, look.SMALL, soft=True))
        self.new = QPushButton("New &visit")
        self.new.setFont(look.font(look.LEAD, bold=True))
        self.new.setMinimumHeight(56)
        self.new.clicked.connect(lambda: self.opens.emit("new"))
        self.own.addWidget(self.new)
        if desk.shop[1]:
            self.column.addWidget(label(desk.shop[1][0], look.SMALL))
        self.reading = QTimer(self)
        self.reading.setInterval(0)
        self.reading.timeout.connect(self._read_on)
        self.trouble = ""
        self._looked = False
        if self._read(AT_ONCE, anew=True):
            self.reading.start()
        self._list()
        self._looked = True

    def _interrupted(self) -> list[QWidget]:
        """Calls that were left, or cut off with the program, before they became a visit."""
        calls = self.desk.interrupted()
        if not calls:
            return []
        from assistant.window.page.visit.telephone import again_buttons

        return again_buttons(calls, self.call.emit)

    def _beside(self) -> Flow:
        """What the shop does besides visits."""
        row = Flow()
        for action in AT_START:
            button = QPushButton(action.words)
            button.setFont(look.font(look.BODY))
            button.setMinimumHeight(look.TARGET)
            button.setAccessibleName(action.words)
            button.setToolTip(f"{action.says} ({action.key})")
            button.clicked.connect(lambda _=False, name=action.name: self.opens.emit(name))
            row.addWidget(button)
        return row

    def _read(self, seconds: float, anew: bool = False) -> bool:
        """Whether there is more to read of the visits on disk."""
        try:
            return self.desk.read_visits(seconds, anew)
        except Refused as problem:
            self.trouble = str(problem)
            return False

    def changeEvent(self, event: QEvent) -> None:
        """Somebody comes back to this window: meanwhile a visit may have been erased or gone on elsewhere."""
        super().changeEvent(event)
        if event.type() == QEvent.Type.ActivationChange and self.isActiveWindow() and self._looked:
            self._look_again()

    def _look_again(self) -> None:
        if not self.reading.isActive():
            if self._read(A_BIT, anew=True):
                self.reading.start()
            self._list()

    def _read_on(self) -> None:
        """A bit more of the visits, while somebody looks at the list already."""
        memory = self.desk.memory
        if not self._read(A_BIT):
            self.reading.stop()
        if not self.reading.isActive() or memory.done % 50 == 0:
            self._list()
        self.heading.setText(
            f"Visits: reading {memory.done:,} of {memory.to_do:,}" if self.reading.isActive() else "Visits"
        )

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
        return self.visits if self.known else self.next_button

    def enter(self) -> None:
        row = self.visits.currentRow()
        if 0 <= row < len(self.listed):
            self.picked.emit(self.listed[row].folder)
        else:
            self.opens.emit("new")

    def _list(self) -> None:
        """The visits that hold the words; the one that was chosen stays chosen."""
        row = self.visits.currentRow()
        chosen = self.listed[row].folder if 0 <= row < len(self.listed) else None
        self.listed = self.desk.memory.find(self.find.text())
        self.known = self.desk.memory.count()
        self.visits.clear()
        for shelved in self.listed:
            self.visits.addItem(QListWidgetItem(_line(shelved)))
        if self.listed:
            folders = [shelved.folder for shelved in self.listed]
            self.visits.setCurrentRow(folders.index(chosen) if chosen in folders else 0)
        self.visits.setVisible(self.known > 0)
        self.find.setVisible(self.known > 0)
        self.none.setVisible(self.known == 0)
        self._state()

    def _state(self) -> None:
        row = self.visits.currentRow()
        chosen = 0 <= row < len(self.listed)
        self.new.setVisible(chosen)  # where nothing is chosen, the big button says it already
        if chosen:
            self.set_next("&Open it")
            self.say(self.trouble or self.listed[row].trouble or self._cut_off())
        else:
            self.set_next("&New visit")
            self.say(self.trouble or ("No visit has these words." if self.known else ""))

    def _cut_off(self) -> str:
        """Where the list is longer than what is shown of it."""
        if len(self.listed) < MOST:
            return ""
        return f"The latest {MOST} are shown, of {self.known:,} visits: type a word more to find another."


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
