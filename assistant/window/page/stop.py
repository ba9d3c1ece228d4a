"""What to do now: three lines that can be read from two metres, and nothing to type."""

from __future__ import annotations

from PySide6.QtCore import QRect, Qt
from PySide6.QtGui import QFontMetrics, QResizeEvent
from PySide6.QtWidgets import QHBoxLayout, QPushButton, QWidget

from assistant.house.model import StopPage as Told
from assistant.house.model import Vocabulary
from assistant.walk.ask import Ask
from assistant.walk.cleared import who_clears
from assistant.walk.event import GoOn
from assistant.window import look
from assistant.window.caution import Sign
from assistant.window.page.base import TINY, Page
from assistant.window.page.visit.tonight import show_plan
from assistant.window.session import Driver
from assistant.window.text import label, row_of, rule

NEAREST = 27.0
"""Points below which capitals of this font can't be read from two metres: a three-hundredth of the distance
(ISO 3864-1, distance factor, from memory) at 96 dots an inch."""
TAKE_ALONG = "The work stops here. Take this machine out with you; do not plug or unplug it."


class StopPage(Page):
    """Without a visit (`driver` None) it only shows what to do. What to write up waits for the van. Where
    everybody left, the visit stays stopped until somebody says who cleared the house.
    """

    def __init__(
        self, driver: Driver | None, ask: Ask, vocabulary: Vocabulary, parent: QWidget | None = None
    ) -> None:
        super().__init__(driver, parent)
        self.ask = ask
        told: Told | None = vocabulary.stops.get(ask.page or "")
        self.title_row = row = QHBoxLayout()
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
        self.waits_for = who_clears(vocabulary, driver.visit.out if driver is not None else ask.page)
        self.say(TAKE_ALONG if self.waits_for else "The work stops here.")
        self.held = driver is not None and driver.practice is None and bool(self.waits_for)
        """Whether somebody has to clear the house before this page is left."""
        if self.held:
            clear = QPushButton("It was cl&eared")
            clear.setMinimumHeight(look.TARGET)
            clear.clicked.connect(lambda: self.opens.emit("cleared"))
            self.own.addWidget(row_of(clear))
        self.set_next("&Close it for now" if self.held else "It is &done")

    def fold(self, mode: str) -> None:
        super().fold(mode)
        self._fit()

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._fit()

    def _fit(self) -> None:
        """As large as all of the three lines have room for without scrolling, and never smaller than what can
        be read from two metres; in a tiny window the page scrolls.
        """
        if not hasattr(self, "lines"):
            return
        room = self.scroll.viewport().size()
        across = room.width() - self.column.contentsMargins().left() - self.column.contentsMargins().right()
        tall = room.height() - self.title_row.sizeHint().height() - 4 * self.column.spacing() - 24
        size = look.QUESTION if self.mode == TINY else look.FAR
        while self.mode != TINY and size > NEAREST:
            box = QRect(0, 0, across, 10_000)
            measure = QFontMetrics(look.font(size, bold=True))
            flags = int(Qt.TextFlag.TextWordWrap)
            need = sum(measure.boundingRect(box, flags, line.text()).height() + 10 for line in self.lines)
            if need <= tall:
                break
            size -= 1
        for line in self.lines:
            line.setFont(look.font(size, bold=True))

    def enter(self) -> None:
        if self.held:
            self.opens.emit("shelf")
        elif self.driver is None or self.record(GoOn(self.driver.now(), self.ask.step)):
            self.left.emit()
