"""Back in after everybody had to leave: who said so. Nothing here is answered by one key."""

from __future__ import annotations

from PySide6.QtWidgets import QWidget

from assistant.walk.cleared import who_clears
from assistant.walk.event import GoOn
from assistant.window import look
from assistant.window.line import Line
from assistant.window.page.aside.base import AsidePage
from assistant.window.page.choices import Choices
from assistant.window.session import Driver
from assistant.window.text import label

ASKED = "Name or number of whoever said it, and when"


class ClearedPage(AsidePage):
    """A choice and a line; then the room is read again before anything else."""

    title = "Who says that people may go back in?"

    def __init__(self, driver: Driver, parent: QWidget | None = None) -> None:
        super().__init__(driver, parent)
        self.ask = driver.ask()
        self.column.addWidget(
            label("Only they can say it. A smell that is gone, or an alarm that is quiet, clears nothing.")
        )
        self.choices = Choices([(who, who[:1].upper() + who[1:]) for who in self._who()], 2)
        self.choices.picked.connect(lambda _: self._state())
        self.column.addWidget(self.choices)
        heading = label(ASKED)
        self.line = Line(ASKED)
        self.line.textChanged.connect(lambda _: self._state())
        self.line.returnPressed.connect(self.enter)
        heading.setBuddy(self.line)
        self.column.addWidget(heading)
        self.column.addWidget(self.line)
        self.column.addWidget(
            label(
                "What was read before it does not count any more, and every circuit counts as not known. "
                "The room is read again at the door.",
                look.BODY,
                soft=True,
            )
        )
        self.column.addStretch(1)
        self._state()

    def _who(self) -> tuple[str, ...]:
        return who_clears(self.driver.vocabulary, self.driver.visit.out)

    def first_focus(self) -> QWidget:
        return self.choices.first() if self.choices.buttons else self.next_button

    def choose(self, digit: int) -> None:
        self.choices.choose(digit)

    def enter(self) -> None:
        if not (self.choices.chosen or self.line.text().strip()):
            self.left.emit()
        elif not self.choices.chosen:
            self.say("Choose who it was.")
        elif not self.line.text().strip():
            self.say("Write down the name or number of whoever said it, and when.")
            self.line.setFocus()
        else:
            said = f"{self.choices.chosen[0]}: {self.line.text().strip()}"
            if self.record(GoOn(self.driver.now(), self.ask.step, said)):
                self.opens.emit("before")

    def _state(self) -> None:
        anything = bool(self.choices.chosen or self.line.text().strip())
        self.set_next("&Take it up again" if anything else "&Back to it")
