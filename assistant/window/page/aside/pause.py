"""Pause the visit: waiting for a part, or for another day. What is open is listed before you go."""

from __future__ import annotations

from PySide6.QtWidgets import QPushButton, QWidget

from assistant.walk.event import Paused
from assistant.walk.points import open_points
from assistant.walk.waiting import wanted
from assistant.window import look
from assistant.window.line import Line
from assistant.window.page.aside.base import AsidePage
from assistant.window.page.choices import Choices
from assistant.window.page.visit.held import HELD, Held
from assistant.window.session import Driver
from assistant.window.text import label, row_of, rule

WHY = ("Waiting for a part", "Another day", "Waiting for somebody else", "Called away")


class PausePage(AsidePage):
    """A reason as a big button, a few words of your own if they help."""

    title = "Pause"

    def __init__(self, driver: Driver, parent: QWidget | None = None) -> None:
        super().__init__(driver, parent)
        points = [point for point in open_points(driver.visit) if point.kind not in HELD]
        self.held = Held(driver)
        self.held.typed.connect(self._state)
        self.held.entered.connect(self.enter)
        self.choices = Choices([(why, why) for why in WHY], 2)
        self.choices.picked.connect(lambda _: self._state())
        self.column.addWidget(self.choices)
        self.column.addWidget(self.held)
        note = label("In your own words, if you like")
        self.column.addWidget(note)
        self.words_line = Line("In your own words, if you like", driver.drafts.get(("pause", "words"), ""))
        note.setBuddy(self.words_line)
        self.words_line.returnPressed.connect(self.enter)
        self.words_line.textChanged.connect(self._typed)
        self.column.addWidget(self.words_line)
        if points:
            self.column.addWidget(rule())
            self.column.addWidget(label("Open now", bold=True))
            for point in points:
                self.column.addWidget(label(f"– {point.words}"))
        if driver.vocabulary.tonight is not None:
            night = QPushButton("No heat toni&ght")
            night.setMinimumHeight(look.TARGET)
            night.clicked.connect(lambda: self.opens.emit("tonight"))
            self.own.addWidget(row_of(night))
        self.column.addStretch(1)
        self._state()

    def first_focus(self) -> QWidget:
        return self.choices.first()

    def choose(self, digit: int) -> None:
        self.choices.choose(digit)

    def enter(self) -> None:
        waits = WHY[0] in self.choices.chosen and wanted(self.driver.visit)
        if waits and "order" in self.driver.vocabulary.sheets and not self.words_line.text().strip():
            self.opens.emit("waiting")
            return
        why = ": ".join(part for part in (*self.choices.chosen, self.words_line.text().strip()) if part)
        if not why:
            return
        if trouble := self.held.missing():
            self.say(trouble)
            self.held.ask(self.scroll)
        elif self.record(Paused(self.driver.now(), f"{why}{self.held.words()}")):
            self.driver.drafts.pop(("pause", "words"), None)
            self.held.done()
            self.left.emit()

    def _typed(self, text: str) -> None:
        self.driver.drafts["pause", "words"] = text
        self._state()

    def _state(self) -> None:
        said = bool(self.words_line.text().strip() or self.choices.chosen)
        self.set_next(
            "&Pause all the same" if said and self.held.missing() == "" and self.held.points else "&Pause",
            said,
        )
