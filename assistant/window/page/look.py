"""Something seen, heard or smelled: one of a few words, as big buttons with digits."""

from __future__ import annotations

from PySide6.QtWidgets import QWidget

from assistant.walk.ask import Ask
from assistant.walk.event import Saw
from assistant.walk.past import look_before
from assistant.window.page.base import TINY
from assistant.window.page.choices import Choices
from assistant.window.page.step import StepPage
from assistant.window.session import Driver
from assistant.window.text import label, row_of
from assistant.window.words import day, plain

_SHORT = 26
"""Choices with at most this many letters stand in two columns even beside a drawing."""


class LookPage(StepPage):
    """A digit or a tap chooses, Enter saves and goes on."""

    next_words = "&Next"

    def __init__(self, driver: Driver, ask: Ask, parent: QWidget | None = None) -> None:
        super().__init__(driver, ask, parent)
        self.choices = Choices([(value, plain(value)) for value in ask.choices], self._columns())
        self.choices.picked.connect(self._picked)
        self.words.addWidget(self.choices)
        if said := self._before():
            self.words.addWidget(label(said))
        self.close_words()
        self.own.addWidget(row_of(self.cannot_button("&Can't tell")))
        self.set_next("&Next", False)

    def first_focus(self) -> QWidget:
        return self.choices.first()

    def choose(self, digit: int) -> None:
        if not self.offers.pick(digit):
            self.choices.choose(digit)

    def enter(self) -> None:
        picked = self.choices.chosen
        if picked:
            self.seen()
            if self.record(Saw(self.driver.now(), self.ask.step, picked[0])):
                self.left.emit()

    def fold(self, mode: str) -> None:
        super().fold(mode)
        if hasattr(self, "choices"):
            self.choices.lay(1 if mode == TINY else self._columns())

    def _before(self) -> str:
        """What was seen here on an earlier visit of ours."""
        found = look_before(self.driver.visit, getattr(self.ask.body, "sees", ""), self.ask.step)
        if found is None:
            return ""
        past, look = found
        return f"Earlier here: {plain(look.value)}, {day(look.at or past.began)}"

    def _columns(self) -> int:
        longest = max(len(plain(value)) for value in self.ask.choices)
        return 2 if len(self.ask.choices) > 4 and (self.picture is None or longest < _SHORT) else 1

    def _picked(self, value: str) -> None:
        self.say(f"You see: {plain(value)}")
        self.set_next("&Next")
