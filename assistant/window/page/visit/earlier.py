"""Our own earlier visits here: what we touched, left open and doubted, the latest first."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtWidgets import QWidget

from assistant.report.beside import twice
from assistant.walk.event import Recalled
from assistant.walk.past import fitted_before
from assistant.walk.state import Visit
from assistant.window import look
from assistant.window.page.aside.base import AsidePage
from assistant.window.page.choices import Choices
from assistant.window.session import Driver
from assistant.window.text import banner, label, rule
from assistant.window.words import day

if TYPE_CHECKING:
    from assistant.window.desk import Desk

PARTS = (
    ("Left open", "left"),
    ("In doubt", "doubted"),
    ("Touched", "touched"),
    ("Found", "found"),
)


class EarlierPage(AsidePage):
    """Readings stand beside today's on each step. Visits that may have been here too are offered; nothing of
    them counts before somebody says that it was here.
    """

    title = "Our earlier visits here"

    def __init__(self, driver: Driver, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(driver, parent)
        self.desk = desk
        self.offered: Choices | None = None
        if driver.perhaps:
            self._offer()
        if not driver.visit.past and not driver.perhaps:
            self.column.addWidget(
                label("None that we know of. They are found by address or serial number, once that is known.")
            )
        for said in twice(driver.visit):
            self.column.addWidget(banner(said))
        for place, past in enumerate(driver.visit.past):
            if place:
                self.column.addWidget(rule())
            head = f"{day(past.began)}: {', '.join(past.complaints) or 'no complaint'}"
            self.column.addWidget(label(head, look.LEAD, bold=True))
            if past.healthy:
                self.column.addWidget(
                    label("A visit to the healthy unit: its numbers are what we expect today.")
                )
            for words, field in PARTS:
                lines = getattr(past, field)
                if lines:
                    self.column.addWidget(label(words, bold=True))
                    for line in lines:
                        self.column.addWidget(label(f"– {line}"))
        self.column.addStretch(1)


    def _offer(self) -> None:
        self.column.addWidget(label("Were these here, too? Choose those that were.", look.LEAD, bold=True))
        listed = [(str(place), words) for place, (_, words) in enumerate(self.driver.perhaps)]
        self.offered = Choices(listed, several=True)
        self.offered.picked.connect(lambda _: self._state())
        self.column.addWidget(self.offered)
        self.column.addWidget(rule())

    def first_focus(self) -> QWidget:
        return self.offered.first() if self.offered is not None else super().first_focus()

    def choose(self, digit: int) -> None:
        if self.offered is not None:
            self.offered.choose(digit)

    def enter(self) -> None:
        """Those that were chosen belong here from now on; the others stay what they were: somebody else's."""
        chosen = [self.driver.perhaps[int(place)][0] for place in self.offered.chosen] if self.offered else []
        found = tuple(past for folder in chosen if (past := self.desk.recalled(folder)) is not None)
        if found:
            every = sorted((*found, *self.driver.visit.past), key=lambda past: past.began, reverse=True)
            if not self.record(Recalled(self.driver.now(), tuple(every))):
                return
        if chosen:
            self.driver.perhaps = [pair for pair in self.driver.perhaps if pair[0] not in chosen]
            self.opens.emit("earlier")
            return
        self.left.emit()

    def _state(self) -> None:
        chosen = self.offered is not None and bool(self.offered.chosen)
        self.set_next("&They were here" if chosen else "&Back to it")


def again(visit: Visit, part: str | None) -> str:
    """A sentence where this part was fitted here before; empty where it was not."""
    if part is None:
        return ""
    times = ", ".join(day(at) for _, at in fitted_before(visit, part))
    if not times:
        return ""
    title = visit.vocabulary.parts[part].title if part in visit.vocabulary.parts else part
    return f"We fitted this part here before: {title}, {times}. Look for what made that one fail."
