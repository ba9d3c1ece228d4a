"""What to do now: three lines that can be read from two metres, and nothing to type."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QWidget

from assistant.house.model import StopPage as Told
from assistant.house.model import Vocabulary
from assistant.walk.ask import Ask
from assistant.walk.event import GoOn
from assistant.window import look
from assistant.window.caution import Sign
from assistant.window.page.base import TINY, Page
from assistant.window.page.visit.tonight import show_plan
from assistant.window.session import Driver
from assistant.window.text import label, rule

LEAVE = ("gas_smell", "carbon_monoxide", "unwell_people")
"""The hazards from which everybody leaves."""
TAKE_ALONG = "The work stops here. Take this machine out with you; do not plug or unplug it."


class StopPage(Page):
    """Without a visit (`driver` None) it only shows what to do. What to write up waits for the van."""

    def __init__(
        self, driver: Driver | None, ask: Ask, vocabulary: Vocabulary, parent: QWidget | None = None
    ) -> None:
        super().__init__(driver, parent)
        self.ask = ask
        told: Told | None = vocabulary.stops.get(ask.page or "")
        row = QHBoxLayout()
        row.setSpacing(14)
        row.addWidget(Sign("danger", 54), 0, Qt.AlignmentFlag.AlignTop)
        title = label(f"STOP: {told.title}" if told else "STOP: leave it off", look.LEAD + 6, bold=True)
        row.addWidget(title, 1)
        self.column.addLayout(row)
        self.lines = [
            label(line, look.FAR, bold=True) for line in (told.lines if told else ("Leave it off.",))
        ]
        for line in self.lines:
            self.column.addWidget(line)
        if ask.finding is not None and getattr(ask.finding.finding, "finding", None):
            self.column.addWidget(rule())
            self.column.addWidget(label(f"Found: {ask.finding.finding.finding}", look.LEAD))
        if told and told.also:
            self.column.addWidget(rule())
            self.column.addWidget(label("Afterwards, from the van", bold=True))
            for line in told.also:
                self.column.addWidget(label(line))
        if told and told.no_heat and vocabulary.tonight is not None:
            self.column.addWidget(rule())
            self.column.addWidget(label(vocabulary.tonight.title, look.LEAD, bold=True))
            show_plan(self.column, vocabulary)
        self.column.addStretch(1)
        leave = {vocabulary.hazards.get(name) for name in LEAVE}
        self.say(TAKE_ALONG if ask.page in leave else "The work stops here.")
        self.set_next("It is &done")

    def fold(self, mode: str) -> None:
        super().fold(mode)
        for line in getattr(self, "lines", ()):
            line.setFont(look.font(look.QUESTION if mode == TINY else look.FAR, bold=True))

    def enter(self) -> None:
        if self.driver is None or self.record(GoOn(self.driver.now(), self.ask.step)):
            self.left.emit()
