"""A value from the rating plate: what to read, where it stands on the plate, and 'not readable' as an
answer.
"""

from __future__ import annotations

from PySide6.QtWidgets import QPushButton, QWidget

from assistant.quantity.kind import show
from assistant.walk.ask import Ask
from assistant.walk.event import PlateRead
from assistant.window import look
from assistant.window.entry_line import EntryLine
from assistant.window.flow import Flow
from assistant.window.page.choices import Choices
from assistant.window.page.step import StepPage
from assistant.window.session import Driver
from assistant.window.text import label

NOT_READABLE = "not readable"


class PlatePage(StepPage):
    """Values of which only a few exist are big buttons; others have a line."""

    next_words = "Save"
    teaches = False

    def __init__(self, driver: Driver, ask: Ask, parent: QWidget | None = None) -> None:
        self.value = driver.vocabulary.plate[ask.plate]
        super().__init__(driver, ask, parent)
        self.question.setText(f"From the rating plate: {self.value.title}")
        self.words.addWidget(label(f"Where: {self.value.where}", bold=True))
        self.words.addWidget(label("The next reading is judged by it.", soft=True))
        self.choices: Choices | None = None
        self.entry: EntryLine | None = None
        self.ways = Flow()
        if self.value.choices:
            listed = [
                (show(value, self.value.unit), show(value, self.value.unit)) for value in self.value.choices
            ]
            self.choices = Choices(listed)
            self.choices.picked.connect(lambda _: self.set_next("&Next"))
            self.words.addWidget(self.choices)
            self.set_next("&Next", False)
        else:
            self.entry = EntryLine(
                self.question.text(), self.value.unit, lambda text: driver.weigh(ask.plate, text)
            )
            self.entry.entered.connect(self.enter)
            self.entry.typed.connect(self._typed)
            self.own.addWidget(self.entry)
            pad = QPushButton("&Pad")
            pad.setMinimumHeight(look.TARGET)
            pad.clicked.connect(lambda: self.toggle_pad(self.entry.line))
            self.ways.addWidget(pad)
            self.entry.write(driver.drafts.get(self.key(ask.plate), ""))
        self.close_words()
        unreadable = QPushButton("Not &readable")
        unreadable.setMinimumHeight(look.TARGET)
        unreadable.clicked.connect(lambda: self._send(NOT_READABLE))
        self.ways.addWidget(unreadable)
        self.own.addLayout(self.ways)

    def _told(self) -> None:
        """The step's own how and cautions come with the reading, not with the plate."""

    def show_essential(self, *_more: str) -> None:
        """Power plays no part here."""
        self.essential.hide()

    def points(self) -> tuple[str, ...]:
        return ()

    def first_focus(self) -> QWidget:
        return self.entry.line if self.entry is not None else self.choices.first()

    def choose(self, digit: int) -> None:
        if not self.offers.pick(digit) and self.choices is not None:
            self.choices.choose(digit)

    def enter(self) -> None:
        if self.choices is not None:
            if self.choices.chosen:
                self._send(self.choices.chosen[0])
            return
        weighed = self.entry.weigh_again()
        if weighed.blank:
            self.say("Nothing typed yet. Type the value, or press Not readable.")
        elif weighed.doubtful:
            self.offers.ask(
                weighed.message, [(c, lambda c=c: self._send(c)) for c in weighed.choices], self.entry.line
            )
        elif weighed.understood is None:
            self.say(weighed.message)
        else:
            self._send(self.entry.text)

    def _typed(self, text: str) -> None:
        self.driver.drafts[self.key(self.ask.plate)] = text
        self.offers.put_away()
        self.say("")

    def _send(self, text: str) -> None:
        if self.record(PlateRead(self.driver.now(), self.ask.plate, text)):
            self.driver.drafts.pop(self.key(self.ask.plate), None)
            self.left.emit()
