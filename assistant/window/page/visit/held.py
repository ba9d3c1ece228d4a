"""What must not be left as it is: a held door switch, a jumper, an open port, a leak check still to do, power
that is off. What to do with each before leaving, and a line for the reason where it stays.
"""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QFrame, QPushButton, QScrollArea, QVBoxLayout, QWidget

from assistant.walk.points import open_points
from assistant.window import look
from assistant.window.line import Line
from assistant.window.session import Driver
from assistant.window.text import label, row_of

HELD = ("undo", "power")
"""Kinds of open points that this frame lists."""
ASKED = "Why it stays so, and who knows of it"
KEY = ("pause", "why it stays so")
STAYS_OFF = "Your tag and lock stay on it. Tell whoever lives here that it is off, and why."


class Held(QFrame):
    """Empty and hidden where nothing is held. Power that is off needs no reason: so it is safe to leave."""

    typed = Signal()
    entered = Signal()

    def __init__(self, driver: Driver, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.driver = driver
        points = open_points(driver.visit)
        acts = driver.vocabulary.acts
        resting = [p for p in points if p.kind == "undo" and acts[p.key.removeprefix("undo.")].rests]
        self.points = [point for point in points if point.kind == "undo" and point not in resting]
        off = [point for point in points if point.kind == "power"]
        self.setObjectName("banner")
        column = QVBoxLayout(self)
        column.setContentsMargins(12, 6, 8, 6)
        self.line: Line | None = None
        if self.points:
            column.addWidget(label("Before you go, do these now", look.LEAD, bold=True))
            for point in self.points:
                column.addWidget(label(f"– {point.words}"))
            self.put_back = QPushButton("All of it is put &back now")
            self.put_back.setCheckable(True)
            self.put_back.setMinimumHeight(look.TARGET)
            self.put_back.toggled.connect(lambda _: self.typed.emit())
            column.addWidget(row_of(self.put_back))
            heading = label(f"Not possible? {ASKED}")
            self.line = Line(ASKED, driver.drafts.get(KEY, ""))
            self.line.textChanged.connect(self._changed)
            self.line.returnPressed.connect(self.entered)
            heading.setBuddy(self.line)
            column.addWidget(heading)
            column.addWidget(self.line)
        for point in off:
            column.addWidget(label(f"– {point.words}"))
        if off:
            column.addWidget(label(STAYS_OFF))
        if resting:
            column.addWidget(label("These may wait until the work goes on", bold=True))
            for point in resting:
                column.addWidget(label(f"– {point.words}"))
        if not (self.points or off or resting):
            self.hide()

    def missing(self) -> str:
        """What to say where something is held and no reason stands there; empty otherwise."""
        if self.line is None or self.line.text().strip() or self.put_back.isChecked():
            return ""
        return "Something is still held or open. Put it back first, or write down why it stays so."

    def words(self) -> str:
        """The reason, or that it was put back, as it ends the sentence of a pause. The walk still lists it,
        and asks for it again where it is wanted.
        """
        if self.line is None:
            return ""
        if said := self.line.text().strip():
            return f"; left so: {said}"
        done = "; ".join(point.words[:1].lower() + point.words[1:] for point in self.points)
        return f"; put back for now: {done}"

    def ask(self, scroll: QScrollArea) -> None:
        """To the line for the reason, with all that is held in sight."""
        if self.line is not None:
            scroll.ensureWidgetVisible(self, 0, 10)
            scroll.ensureWidgetVisible(self.line, 0, 40)
            self.line.setFocus(Qt.FocusReason.OtherFocusReason)

    def done(self) -> None:
        """It is in the trail."""
        self.driver.drafts.pop(KEY, None)

    def _changed(self, text: str) -> None:
        self.driver.drafts[KEY] = text
        self.typed.emit()
