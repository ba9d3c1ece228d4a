"""Pause the visit: waiting for a part, or for another day. What is open is listed before you go."""

from __future__ import annotations

from PySide6.QtWidgets import QWidget

from assistant.walk.event import Paused
from assistant.walk.points import open_points
from assistant.walk.waiting import wanted
from assistant.window.line import Line
from assistant.window.page.aside.base import AsidePage
from assistant.window.page.choices import Choices
from assistant.window.session import Driver
from assistant.window.text import label, rule

WHY = ("Waiting for a part", "Another day", "Waiting for somebody else", "Called away")


class PausePage(AsidePage):
    """A reason as a big button, a few words of your own if they help."""

    title = "Pause"

    def __init__(self, driver: Driver, parent: QWidget | None = None) -> None:
        super().__init__(driver, parent)
        points = open_points(driver.visit)
        if points:
            self.column.addWidget(label("Open now", bold=True))
            for point in points:
                self.column.addWidget(label(f"– {point.words}"))
            self.column.addWidget(rule())
        self.choices = Choices([(why, why) for why in WHY], 2)
        self.choices.picked.connect(lambda _: self.set_next("&Pause"))
        self.column.addWidget(self.choices)
        note = label("In your own words, if you like")
        self.column.addWidget(note)
        self.words_line = Line("In your own words, if you like")
        note.setBuddy(self.words_line)
        self.words_line.returnPressed.connect(self.enter)
        self.words_line.textChanged.connect(
            lambda text: self.set_next("&Pause", bool(text.strip() or self.choices.chosen))
        )
        self.column.addWidget(self.words_line)
        self.column.addStretch(1)
        self.set_next("&Pause", False)

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
        if why and self.record(Paused(self.driver.now(), why)):
            self.left.emit()
