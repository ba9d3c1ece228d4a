"""A visit that can be looked at but not gone on with: why, what was done in it, and its report."""

from __future__ import annotations

from PySide6.QtWidgets import QWidget

from assistant.walk.ask import Ask
from assistant.window import look
from assistant.window.margin import note
from assistant.window.page.base import Page
from assistant.window.page.report import ReportSaver
from assistant.window.session import Driver
from assistant.window.text import banner, label, rule


class ReadOnlyPage(Page):
    """Nothing on it changes the visit."""

    next_words = "&Visits"

    def __init__(self, driver: Driver, ask: Ask, parent: QWidget | None = None) -> None:
        super().__init__(driver, parent)
        self.ask = ask
        self.column.addWidget(label("To read only", look.QUESTION))
        self.column.addWidget(banner(driver.read_only or ""))
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
