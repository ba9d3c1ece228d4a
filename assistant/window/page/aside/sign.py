"""Sign and close the visit, with the report saved before or after."""

from __future__ import annotations

import contextlib
import time

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QPushButton, QWidget

from assistant.folders import cache_folder
from assistant.trail.fingerprint import short
from assistant.walk.ask import Ask
from assistant.walk.event import Resumed, Signed
from assistant.walk.points import open_points
from assistant.window import look
from assistant.window.line import Line
from assistant.window.page import base
from assistant.window.page.aside.base import AsidePage
from assistant.window.page.between import BetweenPage
from assistant.window.page.report import ReportSaver
from assistant.window.session import Driver
from assistant.window.text import banner, label, row_of

LAST = "signed-last"
"""In this computer's cache folder: the name that signed here last, offered the next time."""


def who(driver: Driver) -> str:
    """The name to offer: of whoever took the visit up last, or who signed last on this computer."""
    by = [event.by for event in driver.visit.events if isinstance(event, Resumed) and event.by]
    if by:
        return by[-1]
    try:
        return (cache_folder() / LAST).read_text(encoding="utf-8").strip()[:200]
    except (OSError, ValueError):
        return ""


def remember(name: str) -> None:
    """For the next visit; where that can't be written down, it is typed again."""
    with contextlib.suppress(OSError):
        cache_folder().mkdir(parents=True, exist_ok=True)
        (cache_folder() / LAST).write_text(name + "\n", encoding="utf-8")


class SignPage(AsidePage):
    """The technician's name closes the visit; nothing can be added after it."""

    title = "Sign"
    takes_digits = False

    def __init__(self, driver: Driver, parent: QWidget | None = None) -> None:
        super().__init__(driver, parent)
        self._armed_at = float("-inf")
        points = open_points(driver.visit)
        self.column.addWidget(
            label(
                "Signing closes the visit: nothing can be added to it afterwards. The fingerprint "
                "on the report stands for every line of the trail."
            )
        )
        if typed := ", ".join(driver.unsaved()):
            self.column.addWidget(banner(f"Typed and not saved: {typed}. It will not be in the trail."))
        for point in points:
            left = f" (stays open: {point.left})" if point.left else ""
            self.column.addWidget(label(f"– Open: {point.words}{left}"))
        self.report = ReportSaver(driver)
        self.report.said.connect(self.say)
        self.column.addWidget(self.report)
        self.column.addStretch(1)
        heading = label("Technician's name")
        known = driver.drafts.get(("sign", ""), "") or who(driver)
        self.name = Line("Technician's name", known, look.WRITTEN)
        self.name.selectAll()  # another name is typed over it
        self.name.textChanged.connect(self._changed)
        self.name.returnPressed.connect(self.to_button)
        heading.setBuddy(self.name)
        self.own.addWidget(heading)
        self.own.addWidget(self.name)
        self.button_after(self.name)
        self._changed(self.name.text())

    def first_focus(self) -> QWidget:
        return self.name

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Enter signs on the button only, and not by the press that brought it there."""
        enter = event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter)
        early = event.isAutoRepeat() or time.monotonic() - self._armed_at < 3 * base.SETTLE
        if enter and self.name.text().strip() and (not self.next_button.hasFocus() or early):
            self.to_button()
            return
        super().keyPressEvent(event)

    def to_button(self) -> None:
        """A name was written: what the button does is said before anybody presses it."""
        name = self.name.text().strip()
        if not name:
            self.left.emit()
            return
        if not self.next_button.hasFocus():
            self._armed_at = time.monotonic()
        self.say(f"{name} closes this visit for good. Enter once more, or the button, signs.")
        self.next_button.setFocus(Qt.FocusReason.OtherFocusReason)

    def enter(self) -> None:
        name = self.name.text().strip()
        if not name:
            self.left.emit()
        elif self.record(Signed(self.driver.now(), name)):
            self.driver.drafts.pop(("sign", ""), None)
            remember(name)
            self.left.emit()

    def _changed(self, text: str) -> None:
        self.driver.drafts["sign", ""] = text
        self.set_next("&Sign and close" if text.strip() else "&Back to it")


class SignedPage(BetweenPage):
    """The visit is closed: its fingerprint, its report."""

    next_words = "&Visits"

    def __init__(self, driver: Driver, ask: Ask, parent: QWidget | None = None) -> None:
        super().__init__(driver, ask, f"Signed by {driver.visit.signed}", parent)
        tip = driver.recorder.tip if driver.recorder is not None else ""
        if tip:
            self.column.addWidget(label("Fingerprint", bold=True))
            self.column.addWidget(label(short(tip), look.LEAD))
        self.report = ReportSaver(driver)
        self.report.said.connect(self.say)
        self.column.addWidget(self.report)
        self.column.addStretch(1)
        back = QPushButton("Come &back here")
        back.setMinimumHeight(look.TARGET)
        back.clicked.connect(lambda: self.opens.emit("call_back"))
        self.own.addWidget(row_of(back))
        self.set_next("&Visits")

    def enter(self) -> None:
        self.opens.emit("shelf")


class ReadyToLeavePage(BetweenPage):
    """Nothing is left to ask."""

    def __init__(self, driver: Driver, ask: Ask, parent: QWidget | None = None) -> None:
        super().__init__(driver, ask, ask.say, parent)
        points = open_points(driver.visit)
        for point in points:
            self.column.addWidget(label(f"– Open: {point.words}"))
        if not points:
            self.column.addWidget(label("Nothing is open."))
        self.column.addStretch(1)
        self.set_next("&Hand over")

    def enter(self) -> None:
        self.opens.emit("leave")
