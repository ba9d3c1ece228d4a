"""What can still be the fault, nearest first."""

from __future__ import annotations

from PySide6.QtWidgets import QWidget

from assistant.window.page.aside.base import AsidePage
from assistant.window.session import Driver
from assistant.window.text import label
from assistant.window.unproved import titles


class UnprovedPage(AsidePage):
    """The same list as beside a wide window's question."""

    title = "Still unproved"

    def __init__(self, driver: Driver, parent: QWidget | None = None) -> None:
        super().__init__(driver, parent)
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
        for name in names:
            self.column.addWidget(label(f"– {name}"))
        self.column.addStretch(1)
