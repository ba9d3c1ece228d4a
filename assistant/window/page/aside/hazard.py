"""Danger now: one tap or one digit, and the stop page stands. Nothing to type, nothing to confirm."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QWidget

from assistant.house.model import Vocabulary
from assistant.walk.event import Hazard
from assistant.window.page.aside.base import AsidePage
from assistant.window.page.choices import Choices
from assistant.window.session import Driver
from assistant.window.text import label
from assistant.window.words import plain


class HazardPage(AsidePage):
    """One press opens the stop page. Before there is a visit, `shown` asks for that page without a record."""

    shown = Signal(str)

    title = "What is it?"

    def __init__(self, driver: Driver | None, vocabulary: Vocabulary, parent: QWidget | None = None) -> None:
        super().__init__(driver, parent)
        self.vocabulary = vocabulary
        stops = vocabulary.stops
        listed = []
        for name, page in vocabulary.hazards.items():
            told = stops.get(page)
            listed.append((name, f"{plain(name).capitalize()}\n{told.title if told else ''}".rstrip()))
        self.choices = Choices(listed, 2)
        self.choices.picked.connect(self.stop)
        self.column.addWidget(self.choices)
        self.column.addWidget(label("In doubt, leave the house first. This page waits.", soft=True))
        self.column.addStretch(1)
        self.set_next("Nothing, &back")

    def first_focus(self) -> QWidget:
        return self.choices.first() if self.choices.buttons else self.next_button

    def choose(self, digit: int) -> None:
        self.choices.choose(digit)

    def stop(self, name: str) -> None:
        if self.driver is None:
            self.shown.emit(self.vocabulary.hazards[name])
        elif self.record(Hazard(self.driver.now(), name)):
            self.left.emit()
