"""Name and address, kept apart from the trail so that they can be erased later."""

from __future__ import annotations

from PySide6.QtWidgets import QGridLayout, QWidget

from assistant.walk.event import Person
from assistant.window.line import Line
from assistant.window.page.aside.base import AsidePage
from assistant.window.refused import Refused
from assistant.window.session import Driver
from assistant.window.text import label

ASKED = (
    ("name", "Name"),
    ("address", "Address"),
    ("phone", "Telephone"),
    ("order", "Order or invoice number"),
)


class PersonPage(AsidePage):
    """Every line may stay empty."""

    title = "For whom"
    takes_digits = False
    leads_to = "sign"

    def __init__(self, driver: Driver, parent: QWidget | None = None) -> None:
        super().__init__(driver, parent)
        self.column.addWidget(
            label(
                "It stands on the report and lies beside the trail, not in it: it can be erased "
                "later and the trail stays whole.",
                soft=True,
            )
        )
        grid = QGridLayout()
        grid.setColumnStretch(1, 1)
        grid.setHorizontalSpacing(14)
        known = driver.person()
        self.lines: dict[str, Line] = {}
        for row, (name, asked) in enumerate(ASKED):
            line = Line(asked, driver.drafts.get(("person", name), known.get(name, "")))
            line.textChanged.connect(
                lambda text, name=name: driver.drafts.__setitem__(("person", name), text)
            )
            line.up.connect(lambda row=row: self._go(row - 1))
            line.down.connect(lambda row=row: self._go(row + 1))
            line.returnPressed.connect(lambda row=row: self._down(row))
            text = label(asked)
            text.setBuddy(line)
            grid.addWidget(text, row, 0)
            grid.addWidget(line, row, 1)
            self.lines[name] = line
        self.known = known
        self.column.addLayout(grid)
        self.column.addStretch(1)
        self.tell_restored("person")
        self.button_after(next(reversed(self.lines.values())))
        self.set_next("&Next")

    def first_focus(self) -> QWidget:
        return next(iter(self.lines.values()))

    def enter(self) -> None:
        data = {name: line.text().strip() for name, line in self.lines.items() if line.text().strip()}
        if data and data != self.known:
            try:
                kept = self.driver.keep_person(data)
            except Refused as problem:
                self.say(str(problem))
                return
            if not self.record(Person(self.driver.now(), kept)):
                return
        for name in self.lines:
            self.driver.drafts.pop(("person", name), None)
        if self.driver.perhaps and not self.leads_to:
            self.opens.emit("earlier")
        elif self.leads_to:
            self.opens.emit(self.leads_to)
        else:
            self.left.emit()

    def _go(self, row: int) -> None:
        lines = list(self.lines.values())
        if 0 <= row < len(lines):
            lines[row].setFocus()

    def _down(self, row: int) -> None:
        lines = list(self.lines.values())
        if row + 1 < len(lines):
            lines[row + 1].setFocus()
        else:
            self.enter()


class WhoPage(PersonPage):
    """The same earlier in a visit: it leads back."""

    leads_to = ""
