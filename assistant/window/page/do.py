"""Something to do with the hands, with its waiting time running by itself and nothing that blinks or
beeps.
"""

from __future__ import annotations

import time
from collections.abc import Callable

from PySide6.QtCore import QTimer
from PySide6.QtGui import QHideEvent, QShowEvent
from PySide6.QtWidgets import QApplication, QWidget

from assistant.tree.model import Do
from assistant.walk.ask import Ask
from assistant.walk.event import Did
from assistant.walk.past import part_of
from assistant.window import look, words
from assistant.window.page.step import StepPage
from assistant.window.page.visit.earlier import again
from assistant.window.session import Driver
from assistant.window.text import banner, label, row_of

MEANWHILE = (
    "Meanwhile, without touching what you switched: look at the filter, at the vent outside, or take a photo "
    "of the rating plate (F5)."
)


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
        self.own.addWidget(row_of(self.cannot_button("&Can't do it")))
        self.timer = QTimer(self)
        self.timer.setInterval(500)
        self.timer.timeout.connect(self.tick)
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
        self.seen()
        if self.record(Did(self.driver.now(), self.ask.step, None if waited is None else round(waited, 1))):
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
