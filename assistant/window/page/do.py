"""Something to do with the hands, with its waiting time running by itself and nothing that blinks or
beeps.
"""

from __future__ import annotations

import time
from collections.abc import Callable

from PySide6.QtCore import QTimer
from PySide6.QtGui import QHideEvent, QShowEvent
from PySide6.QtWidgets import QApplication, QPushButton, QWidget

from assistant.tree.model import Do
from assistant.walk.answer import not_good_before
from assistant.walk.ask import Ask
from assistant.walk.event import Did, Note
from assistant.walk.past import part_of
from assistant.window import look, words
from assistant.window.line import Line
from assistant.window.page.choices import Choices
from assistant.window.page.step import StepPage
from assistant.window.page.visit.earlier import again
from assistant.window.page.visit.fitting import Fitting, as_found
from assistant.window.session import Driver
from assistant.window.text import banner, label, row_of

AGAIN = (
    "It was not good the last time. Put it right first, gas shut and power off meanwhile as for any work on "
    "it; then do this again."
)
MEANWHILE = (
    "Meanwhile, without touching what you switched: look at the filter, at the vent outside, or take a photo "
    "of the rating plate (F5)."
)
NOTES = "notes"
"""Under this name the line of a step that is written down keeps its draft."""


class DoPage(StepPage):
    """`clock` counts seconds from anywhere; tests put their own in."""

    next_words = "&Done"

    def __init__(
        self,
        driver: Driver,
        ask: Ask,
        parent: QWidget | None = None,
        clock: Callable[[], float] = time.monotonic,
    ) -> None:
        super().__init__(driver, ask, parent)
        self.clock = clock
        self.wait = ask.body.wait if isinstance(ask.body, Do) else None
        self.begun: float | None = None
        self.warned = False
        """Whether somebody was told that the wait is not over: the same key pressed twice means it."""
        self.notes = self._note_line(ask)
        self.own.addWidget(row_of(self.cannot_button("&Can't do it")))
        self.timer = QTimer(self)
        self.timer.setInterval(500)
        self.timer.timeout.connect(self.tick)
        self.act = driver.vocabulary.acts.get(ask.act or "")
        self.fitting: Fitting | None = None
        self.results: Choices | None = None
        self._told_of_act()
        if ask.step.startswith("act."):
            said = again(driver.visit, part_of(driver.visit, ask.step.removeprefix("act.")))
            if said:
                self.words.addWidget(banner(said))
        if self.wait is not None:
            self.left_to_wait = label("", look.QUESTION)
            self.words.addWidget(self.left_to_wait)
            self.words.addWidget(label(MEANWHILE, soft=True))
        self.close_words()
        self.set_next("&Done")

    def _note_line(self, ask: Ask) -> Line | None:
        """A line for what is written down meanwhile, where the step asks for that."""
        asked = ask.body.notes if isinstance(ask.body, Do) else ""
        if not asked:
            return None
        line = Line(f"Write down: {asked}", self.driver.drafts.get((ask.step, NOTES), ""), most=4000)
        line.setPlaceholderText(f"{asked} (F5: a photo)")
        line.setToolTip(f"Write down: {asked}")
        line.textChanged.connect(self._noted)
        line.returnPressed.connect(self.enter)
        self.own.addWidget(line)
        return line

    def _noted(self, text: str) -> None:
        self.driver.drafts[self.ask.step, NOTES] = text

    def _told_of_act(self) -> None:
        """The part that goes in, the settings that are put back, and what it shows when it is done."""
        if self.act is None:
            return
        for said in as_found(self.driver, self.act):
            self.words.addWidget(label(said, look.LEAD))
        part = self.driver.vocabulary.parts.get(self.act.fits or "")
        if part is not None and part.costs and self.ask.step.startswith("act."):
            self.fitting = Fitting(self.driver, part.name, self.ask.step)
            self.fitting.entered.connect(self.enter)
            self.words.addWidget(self.fitting)
        if not self.ask.choices:
            return
        if not_good_before(self.driver.visit, self.ask.step):
            self.column.insertWidget(self.column.indexOf(self.question), banner(AGAIN))
            stop = QPushButton("Not good again: &stop here")
            stop.setMinimumHeight(look.TARGET)
            stop.clicked.connect(lambda: self.cannot("not good again"))
            self.own.addWidget(row_of(stop))
        self.words.addWidget(label("What did it show?", look.LEAD, bold=True))
        self.results = Choices([(value, words.plain(value).capitalize()) for value in self.ask.choices], 2)
        self.results.picked.connect(lambda _: self.say(""))
        self.words.addWidget(self.results)

    def first_focus(self) -> QWidget:
        if self.notes is not None:
            return self.notes
        if self.results is not None:
            return self.results.first()
        return self.fitting.line if self.fitting is not None else super().first_focus()

    def choose(self, digit: int) -> None:
        if not self.offers.pick(digit) and self.results is not None:
            self.results.choose(digit)

    def waited(self) -> float | None:
        """Seconds since the page was shown; None where nothing is to be waited for."""
        return None if self.wait is None or self.begun is None else max(0.0, self.clock() - self.begun)

    def tick(self) -> None:
        """The time left, in words."""
        waited = self.waited()
        if waited is None:
            return
        rest = self.wait - waited
        if rest > 0:
            self.left_to_wait.setText(f"Wait {words.lasting(rest)} more")
            self.set_next(f"&Done, after {words.lasting(waited)}")
            return
        if self.timer.isActive():
            self.timer.stop()
            QApplication.alert(self)
        self.left_to_wait.setText(f"{words.lasting(self.wait)} are over")
        self.set_next("&Done")

    def enter(self) -> None:
        waited = self.waited()
        if waited is not None and waited < self.wait and not self.warned:
            self.warned = True
            rest = words.lasting(self.wait - waited)
            self.say(f"{rest} more to wait. Once more goes on without, and the trail says so.")
            return
        if self.results is not None and not self.results.chosen:
            self.say("Say first what it showed.")
            self.results.first().setFocus()
            return
        self.seen()
        text = self.notes.text().strip() if self.notes is not None else ""
        if text:
            if not self.record(Note(self.driver.now(), text, self.ask.step)):
                return
            self.notes.clear()  # in the trail: it is not written there twice
        self.driver.drafts.pop((self.ask.step, NOTES), None)
        spent = None if waited is None else round(waited, 1)
        saw = self.results.chosen[0] if self.results is not None else ""
        number = self.fitting.text() if self.fitting is not None else ""
        if self.record(Did(self.driver.now(), self.ask.step, spent, saw, number)):
            if self.fitting is not None:
                self.fitting.done()
            self.left.emit()

    def showEvent(self, event: QShowEvent) -> None:
        super().showEvent(event)
        if self.wait is not None and self.begun is None:
            self.begun = self.clock()
            self.timer.start()
            self.tick()

    def hideEvent(self, event: QHideEvent) -> None:
        super().hideEvent(event)
        if self.window().isHidden():
            self.timer.stop()
