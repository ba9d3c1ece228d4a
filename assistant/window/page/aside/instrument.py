"""Which of the shop's meters the next readings are taken with: its accuracy counts, the trail names it."""

from __future__ import annotations

from PySide6.QtWidgets import QWidget

from assistant.quantity.kind import KINDS
from assistant.walk.event import InstrumentUsed
from assistant.window.page.aside.base import AsidePage
from assistant.window.page.choices import Choices
from assistant.window.session import Driver
from assistant.window.text import label

NONE = (
    "No instrument is known. The shop lists them in shop.yaml beside the folder of visits; what it says "
    "when a visit opens counts for that visit."
)


class InstrumentPage(AsidePage):
    """A digit chooses, Enter takes it up."""

    title = "Instrument"

    def __init__(self, driver: Driver, parent: QWidget | None = None) -> None:
        super().__init__(driver, parent)
        listed = [
            (name, f"{name}\nreads {', '.join(KINDS[kind].title for kind in known.covers)}")
            for name, known in driver.visit.shop.instruments.items()
        ]
        self.column.addWidget(label("It counts from the next reading on." if listed else NONE, soft=True))
        self.choices = Choices(listed)
        if driver.visit.instrument in self.choices.buttons:
            self.choices.buttons[driver.visit.instrument].setChecked(True)
        self.choices.picked.connect(lambda _: self.set_next("&Take it"))
        self.column.addWidget(self.choices)
        self.column.addStretch(1)

    def first_focus(self) -> QWidget:
        return self.choices.first() if self.choices.buttons else self.next_button

    def choose(self, digit: int) -> None:
        self.choices.choose(digit)

    def enter(self) -> None:
        chosen = self.choices.chosen
        known = not chosen or chosen[0] == self.driver.visit.instrument
        if known or self.record(InstrumentUsed(self.driver.now(), chosen[0])):
            self.left.emit()
