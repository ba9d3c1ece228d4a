"""Our own earlier visits here: what we touched, left open and doubted, the latest first."""

from __future__ import annotations

from PySide6.QtWidgets import QWidget

from assistant.report.beside import twice
from assistant.walk.past import fitted_before
from assistant.walk.state import Visit
from assistant.window import look
from assistant.window.page.aside.base import AsidePage
from assistant.window.session import Driver
from assistant.window.text import banner, label, rule
from assistant.window.words import day

PARTS = (
    ("Left open", "left"),
    ("In doubt", "doubted"),
    ("Touched", "touched"),
    ("Found", "found"),
)


class EarlierPage(AsidePage):
    """Only read: the readings stand beside today's on each step."""

    title = "Our earlier visits here"

    def __init__(self, driver: Driver, parent: QWidget | None = None) -> None:
        super().__init__(driver, parent)
        if not driver.visit.past:
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


def again(visit: Visit, part: str | None) -> str:
    """A sentence where this part was fitted here before; empty where it was not."""
    if part is None:
        return ""
    times = ", ".join(day(at) for _, at in fitted_before(visit, part))
    if not times:
        return ""
    title = visit.vocabulary.parts[part].title if part in visit.vocabulary.parts else part
    return f"We fitted this part here before: {title}, {times}. Look for what made that one fail."
