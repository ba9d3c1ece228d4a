"""Back to any step taken. The position goes back; the house stays as it is, and nothing is erased."""

from __future__ import annotations

from PySide6.QtWidgets import QListWidgetItem, QWidget

from assistant.walk.event import Back
from assistant.window import words
from assistant.window.listing import Listing
from assistant.window.page.aside.base import AsidePage
from assistant.window.page.base import TINY
from assistant.window.page.choices import Choices
from assistant.window.session import Driver
from assistant.window.text import label

WHY = (
    ("slip", "A slip of the key\ntyped or tapped wrongly"),
    ("changed", "I changed my mind\nmeant, and seen differently now"),
    ("look", "To look again\nnothing was wrong"),
)


class BackPage(AsidePage):
    """Pick the step, Enter. Why is to look again unless another reason is picked."""

    title = "Go back"

    def __init__(self, driver: Driver, step: str | None = None, parent: QWidget | None = None) -> None:
        super().__init__(driver, parent)
        self.column.addWidget(
            label(
                "The question is asked again. What you switched, opened or fitted stays as it is: "
                "where the step needs it otherwise, that is asked first.",
                soft=True,
            )
        )
        self.steps = Listing("Steps taken, the latest first", 100)
        for taken in reversed(driver.visit.path):
            asked = words.question_at(driver.library, taken.step)
            item = QListWidgetItem(f"{taken.number}. {asked} – {words.plain_answer(taken.answer)}")
            item.setData(0x0100, taken.step)
            self.steps.addItem(item)
            if taken.step == step and self.steps.currentRow() < 0:
                self.steps.setCurrentItem(item)
        if self.steps.currentRow() < 0:
            self.steps.setCurrentRow(0)
        self.steps.in_one_line()
        self.column.addWidget(self.steps, 1)
        self.why = Choices(WHY)
        self.why.buttons["look"].setChecked(True)
        self.fold(self.mode)
        if not driver.visit.path:
            self.say("No step was taken yet")
        else:
            self.set_next("&Go back there")

    def fold(self, mode: str) -> None:
        """The reasons stand beside the big button, so that the list has the page; in a tiny window below."""
        super().fold(mode)
        if hasattr(self, "why"):
            self.why.setParent(None)
            self.why.lay(1 if mode == TINY else len(WHY))
            (self.column if mode == TINY else self.own).addWidget(self.why)
            self.why.show()

    def first_focus(self) -> QWidget:
        return self.steps if self.steps.count() else self.next_button

    def choose(self, digit: int) -> None:
        self.why.choose(digit)

    def enter(self) -> None:
        item = self.steps.currentItem()
        if item is None or (
            self.why.chosen and self.record(Back(self.driver.now(), item.data(0x0100), self.why.chosen[0]))
        ):
            self.left.emit()
