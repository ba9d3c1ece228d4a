"""Beside something to do: the part that goes in, its number, and the settings that it puts back."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QPushButton, QVBoxLayout, QWidget

from assistant.house.model import Act
from assistant.walk.waiting import wanted
from assistant.window import look
from assistant.window.line import Line
from assistant.window.page.visit.waiting import lines_of
from assistant.window.session import Driver
from assistant.window.text import label, row_of, rule

ASKED = "Part number of the one that goes in"
NOT_FOUND = "Nothing was written down as found. Ask how they have it."


class Fitting(QWidget):
    """What was ordered and what it must match; a line for the number of what is fitted, which may stay
    empty.
    """

    entered = Signal()

    def __init__(self, driver: Driver, part: str, step: str) -> None:
        super().__init__()
        self.driver, self.key = driver, (f"fitted.{step}", "number")
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(6)
        order = driver.visit.sheets.get("order", {})
        ordered = order.get("number", "")
        if ordered:
            where = f", from {order['supplier']}" if order.get("supplier") else ""
            column.addWidget(label(f"Ordered: {ordered}{where}", bold=True))
        for each in wanted(driver.visit):
            if each.part == part:
                for line in lines_of(each, driver.vocabulary):
                    column.addWidget(label(line))
        column.addWidget(rule())
        heading = label(ASKED)
        self.line = Line(ASKED, driver.drafts.get(self.key, ""))
        self.line.setPlaceholderText("from its box or label; leave it out where there is none")
        self.line.textChanged.connect(lambda text: driver.drafts.__setitem__(self.key, text))
        self.line.returnPressed.connect(self.entered)
        heading.setBuddy(self.line)
        column.addWidget(heading)
        column.addWidget(self.line)
        if ordered:
            same = QPushButton(f"&As ordered: {ordered}".replace("&&", "&"))
            same.setMinimumHeight(look.TARGET)
            same.clicked.connect(lambda: self.line.setText(ordered))
            column.addWidget(row_of(same))

    def text(self) -> str:
        return self.line.text().strip()

    def done(self) -> None:
        """It is in the trail: no draft of it is left."""
        self.driver.drafts.pop(self.key, None)


def as_found(driver: Driver, act: Act) -> list[str]:
    """How what this act puts back was found, a line each."""
    sheet = driver.vocabulary.sheets.get("settings")
    if not act.settings or sheet is None:
        return []
    found = driver.visit.as_found.seen if driver.visit.as_found else {}
    told = [
        f"As found: {sheet.questions[name].words}: {found[name]}"
        for name in act.settings
        if name in sheet.questions and found.get(name, "").strip()
    ]
    return told or [NOT_FOUND]
