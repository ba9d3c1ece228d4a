"""A drill along the tree: the pages of a visit, with a line above them that takes each reading from the
house.
"""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QHBoxLayout, QPushButton, QVBoxLayout, QWidget

from assistant.drill.hand import Stuck
from assistant.drill.practice.along import NOT_HERE, Along
from assistant.drill.practice.sitting import CantDo
from assistant.walk.event import Cannot, Did, Event, PlateRead, Read, Saw, Watched
from assistant.walk.survey_sheet import from_cells
from assistant.window import look
from assistant.window.line import Line
from assistant.window.page.base import Page
from assistant.window.page.do import DoPage
from assistant.window.page.drill.can_do import said_minutes
from assistant.window.page.drill.free import SAY_FIRST
from assistant.window.page.group import GroupPage
from assistant.window.page.look import LookPage
from assistant.window.page.measure import MeasurePage
from assistant.window.page.plate import PlatePage
from assistant.window.page.survey import SurveyPage
from assistant.window.page.watch import WatchPage
from assistant.window.refused import Refused
from assistant.window.session import Driver
from assistant.window.text import label

EXPECT = "What do you expect?"
READS = ("look", "measure", "watch")
ALLOWED = ("unproved", "back", "hazard", "help", "drawing", "more", "shelf", "tree")
"""What is open beside the walk in a drill; a person's name, a signature and a report are a visit's."""


class DrillDriver(Driver):
    """A visit's driver whose readings have to come from the simulated house."""

    def __init__(self, along: Along, **more) -> None:
        super().__init__(along.live, **more)
        self.along = along

    def send(self, event: Event) -> None:
        """Raises Refused for a reading that was not taken from the house."""
        if refused := self.along.refuses(event):
            raise Refused(refused)
        try:
            self.along.before(event)
        except (CantDo, Stuck) as problem:
            raise Refused(str(problem)) from problem
        super().send(event)


class TakeBar(QWidget):
    """Above the page: that it is practice, what is expected, "Take it", and the end of the drill."""

    def __init__(self, driver: DrillDriver, page: Page, predict: bool, finish: Callable[[], None]) -> None:
        super().__init__()
        self.driver, self.page = driver, page
        self.along = driver.along
        ask = self.along.ask()
        self.predict = predict and ask.kind in READS
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(2)
        minutes = f"{said_minutes(self.along.minutes)} in the house"
        words = f"PRACTICE on a simulated house \u00b7 {minutes}"
        if not self.along.visit.path:
            words += (
                f" \u00b7 The customer says: \u201c{self.along.drill.words}\u201d {self.along.drill.senses}"
            )
        column.addWidget(label(words, look.SMALL, bold=True))
        row = QHBoxLayout()
        row.setSpacing(8)
        self.line = Line(EXPECT)
        self.line.setPlaceholderText("what do you expect?")
        self.line.setMinimumWidth(170)
        self.line.returnPressed.connect(self.take)
        self.takes = QPushButton("Do i&t" if ask.kind == "do" else "&Take it")
        self.takes.setMinimumHeight(look.TARGET)
        self.takes.clicked.connect(self.take)
        self.ends = QPushButton("&End the drill")
        self.ends.setMinimumHeight(look.TARGET)
        self.ends.clicked.connect(finish)
        row.addWidget(self.line, 1)
        row.addWidget(self.takes)
        if not self.predict:
            row.addStretch(1)
        row.addWidget(self.ends)
        column.addLayout(row)
        if not self.predict:
            self.line.hide()
        if not self.along.can_take():
            self.takes.hide()

    def first_focus(self) -> QWidget | None:
        """The expectation, or "Take it"; None where the page takes nothing."""
        if self.predict:
            return self.line
        return self.takes if self.along.can_take() else None

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Enter on one of the two buttons presses it; a plain button would hand it on to the page."""
        pressed = next((one for one in (self.takes, self.ends) if one.hasFocus()), None)
        if pressed is not None and event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            pressed.click()
        else:
            super().keyPressEvent(event)

    def take(self) -> None:
        """Do what the page asks on the house, and fill the page with what came of it."""
        expected = self.line.text().strip()
        if self.predict and not expected and self.along.taken is None:
            self.page.say(SAY_FIRST)
            self.line.setFocus()
            return
        try:
            event = self.along.take(expected)
        except (CantDo, Stuck) as problem:
            self.page.say(str(problem))
            return
        self.line.setReadOnly(True)
        if self.page.verdict.text() == SAY_FIRST:
            self.page.say("")
        fill(self.page, event)


def dress(page: Page, driver: DrillDriver, predict: bool, finish: Callable[[], None]) -> TakeBar:
    """The line above a page of the walk."""
    bar = TakeBar(driver, page, predict, finish)
    page.column.insertWidget(0, bar)
    if bar.first_focus() is not None:
        page.first_focus = bar.first_focus
    return bar


def fill(page: Page, event: Event) -> None:
    """Write into a page's own fields what the house showed; the apprentice saves it."""
    if isinstance(event, Cannot):
        ways = [one for one in page.findChildren(QPushButton) if one.text().startswith("&Can't ")]
        open_ways = [one.text().replace("&", "") for one in ways if not one.isHidden()]
        page.say(NOT_HERE + (f" Press \u201c{open_ways[0]}\u201d." if open_ways else ""))
    elif isinstance(event, Did) and isinstance(page, DoPage):
        if page.record(event):
            page.left.emit()
    elif isinstance(event, Read) and isinstance(page, MeasurePage):
        page.entry.write(plain(event.readings[page.name].text, page.reading.unit))
        page.entry.line.setFocus()
    elif isinstance(event, Read) and isinstance(page, GroupPage):
        for row in page.rows:
            if row.name in event.readings:
                row.entry.write(plain(event.readings[row.name].text, row.reading.unit))
        page.to_first()
    elif isinstance(event, Read) and isinstance(page, SurveyPage):
        page.lay_out(from_cells({name: typed.text for name, typed in event.readings.items()}))
    elif isinstance(event, Saw) and isinstance(page, LookPage):
        page.choices.buttons[event.value].click()
        page.say(f"You see: {event.value}")
        page.next_button.setFocus()
    elif isinstance(event, PlateRead) and isinstance(page, PlatePage):
        _fill_plate(page, event)
    elif isinstance(event, Watched) and isinstance(page, WatchPage):
        _fill_watch(page, event)


def plain(text: str, unit: str) -> str:
    """What the display showed, without the unit that stands beside the field already."""
    return text.removesuffix(f" {unit}")


def _fill_plate(page: PlatePage, event: PlateRead) -> None:
    if page.entry is not None:
        page.entry.write(event.text)
        page.entry.line.setFocus()
        return
    for value, button in page.choices.buttons.items():
        if value.split()[0] == event.text:
            button.click()
    page.next_button.setFocus()


def _fill_watch(page: WatchPage, event: Watched) -> None:
    page.again()
    page.start()
    for name, at in sorted(event.events.items(), key=lambda one: one[1]):
        page.times[name] = at
        page.order.append(name)
    page.enter()
    for name, typed in event.readings.items():
        if name in page.lines:
            unit = next((r.unit for r in page.ask.readings if r.name == name), "")
            page.lines[name][0].write(plain(typed.text, unit))
    page.next_button.setFocus()
