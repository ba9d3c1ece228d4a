"""Why it failed, where no cause was found: 'worn' and 'not found' are full answers, with what was ruled
out.
"""

from __future__ import annotations

from PySide6.QtWidgets import QWidget

from assistant.walk.ask import Ask
from assistant.walk.event import Concluded
from assistant.window.page.choices import Choices
from assistant.window.page.step import StepPage
from assistant.window.session import Driver
from assistant.window.text import label

SAYS = {
    "worn": "Worn\nits age is the cause; what is listed above was ruled out",
    "not found": "Not found\nno cause was found; what is listed above was ruled out",
}


class ConcludePage(StepPage):
    """One of two answers, then Enter."""

    def __init__(self, driver: Driver, ask: Ask, parent: QWidget | None = None) -> None:
        super().__init__(driver, ask, parent)
        ruled = [cause.title for cause in ask.finding.causes if cause.outcome == "ruled_out"]
        if ruled:
            self.words.addWidget(label("Ruled out", bold=True))
            for title in ruled:
                self.words.addWidget(label(f"✓ {title}"))
        self.choices = Choices([(answer, SAYS.get(answer, answer)) for answer in ask.choices])
        self.choices.picked.connect(
            lambda answer: (self.say(f"You conclude: {answer}"), self.set_next("&Next"))
        )
        self.words.addWidget(self.choices)
        self.close_words()
        self.set_next("&Next", False)

    def first_focus(self) -> QWidget:
        return self.choices.first()

    def choose(self, digit: int) -> None:
        self.choices.choose(digit)

    def enter(self) -> None:
        if self.choices.chosen and self.record(
            Concluded(self.driver.now(), self.ask.step, self.choices.chosen[0])
        ):
            self.left.emit()
