"""What can still be the fault, nearest first; and, once two readings are in, what was usually found."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtWidgets import QPushButton, QWidget

from assistant.window import look
from assistant.window.page.aside.base import AsidePage
from assistant.window.session import Driver
from assistant.window.text import label
from assistant.window.unproved import titles

if TYPE_CHECKING:
    from assistant.window.desk import Desk

SHUT = "What was usually found: after two readings"
OPENS = "What was &usually found on our calls"


class UnprovedPage(AsidePage):
    """The same list as beside a wide window's question. What was usually found stands behind a button, so
    that nobody looks for it before measuring.
    """

    title = "Still unproved"

    def __init__(self, driver: Driver, desk: Desk | None = None, parent: QWidget | None = None) -> None:
        super().__init__(driver, parent)
        self.desk = desk
        names = titles(driver)
        self.column.addWidget(
            label(
                "Each of these can still be reached from where you are, the nearest first. "
                "The order says nothing about how likely they are."
                if names
                else "Nothing is being looked for at the moment.",
                soft=True,
            )
        )
        self.usual = QPushButton(SHUT)
        self.usual.setMinimumHeight(look.TARGET)
        self.usual.clicked.connect(self._open)
        self.column.addWidget(self.usual)
        self.place = self.column.count()
        for name in names:
            self.column.addWidget(label(f"– {name}"))
        self.column.addStretch(1)
        self._shut(driver)

    def _shut(self, driver: Driver) -> None:
        from assistant.past.usual import opened

        ready = self.desk is not None and opened(driver.visit)
        self.usual.setText(OPENS if ready else SHUT)
        self.usual.setEnabled(ready)
        self.usual.setVisible(self.desk is not None)

    def _open(self) -> None:
        """Counts of our own visits, never a share; and the readings that told most per minute on them."""
        from assistant.past.usual import telling, usual

        self.usual.hide()
        store = self.desk.memory.store
        found, told = usual(store, self.driver.visit), telling(store, self.driver.visit)
        lines = [f"{each.times} of {each.of}: {each.title}" for each in found[:8]]
        if not lines:
            lines = ["None of our calls came to one of these yet."]
        lines.insert(0, "On our own calls with this complaint that ended in one of these:")
        if told:
            lines.append("Of what can still be asked, this told most per minute there:")
            lines += [
                f"{number}. {each.ask} (about {max(each.minutes, 0.25):.0f} min, from {each.visits} visits)"
                for number, each in enumerate(told, 1)
            ]
        lines.append("The tree leads: it asks for what proves the fault, not for what is frequent.")
        for number, words in enumerate(lines):
            self.column.insertWidget(self.place + number, label(words))
        self.column.insertWidget(self.place + len(lines), label("Still unproved:", bold=True))
        self.next_button.setFocus()
