"""A visit that can be looked at but not gone on with: why, what was done in it, and its report."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QPushButton, QWidget

from assistant.walk.ask import Ask
from assistant.window import look
from assistant.window.elsewhere import event_words, written_elsewhere
from assistant.window.line import Line
from assistant.window.margin import note
from assistant.window.page.base import Page
from assistant.window.page.report import ReportSaver
from assistant.window.session import Driver
from assistant.window.text import banner, label, rule


class ReadOnlyPage(Page):
    """Nothing on it changes the visit."""

    next_words = "&Visits"
    joins = Signal(str)
    """Carries the name of who joins what two computers wrote."""

    def __init__(self, driver: Driver, ask: Ask, parent: QWidget | None = None) -> None:
        super().__init__(driver, parent)
        self.ask = ask
        self.column.addWidget(label("To read only", look.QUESTION))
        self.column.addWidget(banner(driver.read_only or ""))
        self._fork()
        for taken in driver.visit.history:
            self.column.addWidget(label(note(driver, taken)))
        self.column.addWidget(rule())
        self.report = ReportSaver(driver)
        self.report.said.connect(self.say)
        self.column.addWidget(self.report)
        self.column.addStretch(1)
        self.set_next("&Visits")

    def enter(self) -> None:
        self.opens.emit("shelf")

    def _fork(self) -> None:
        """What another computer wrote at the same time, to be read before both sides are joined."""
        self.sides = written_elsewhere(self.driver)
        for side in self.sides:
            self.column.addWidget(label(f"Written elsewhere at the same time ({side.file}):", bold=True))
            for event in side.events:
                self.column.addWidget(label(f"– {event_words(event)}"))
        if not self.sides:
            return
        self.column.addWidget(
            label(
                "Joined, the visit goes on from the answers below; those above stay in its folder and are "
                "named in the trail. Put down again what of them still holds."
            )
        )
        self.who = Line("Who joins them")
        self.who.setPlaceholderText("your name")
        self.who.returnPressed.connect(self._join)
        self.join = QPushButton("I have read both: &join them")
        self.join.setMinimumHeight(look.TARGET)
        self.join.clicked.connect(self._join)
        self.column.addWidget(self.who)
        self.column.addWidget(self.join)
        self.column.addWidget(label("The answers of this visit:", bold=True))

    def _join(self) -> None:
        name = self.who.text().strip()
        if not name:
            self.say("Type your name: it goes into the trail.")
            self.who.setFocus()
            return
        self.joins.emit(name)
