"""Every key of this window, on one page."""

from __future__ import annotations

from PySide6.QtWidgets import QGridLayout, QWidget

from assistant.window.keys import ACTIONS, AT_START, CLOSE, PAGE_KEYS
from assistant.window.page.aside.base import AsidePage
from assistant.window.session import Driver
from assistant.window.text import label, rule
from assistant.window.words import QUALIFIED


class HelpPage(AsidePage):
    """Read from the same table as the shortcuts themselves."""

    title = "Keys"

    def __init__(self, driver: Driver | None, parent: QWidget | None = None) -> None:
        super().__init__(driver, parent)
        grid = QGridLayout()
        grid.setColumnStretch(1, 1)
        grid.setHorizontalSpacing(20)
        actions = (*ACTIONS, *AT_START, CLOSE)
        rows = list(PAGE_KEYS) + [(action.key, f"{action.words}: {action.says}") for action in actions]
        for row, (key, says) in enumerate(rows):
            grid.addWidget(label(key, bold=True), row, 0)
            grid.addWidget(label(says), row, 1)
        self.column.addLayout(grid)
        self.column.addWidget(rule())
        self.column.addWidget(label(QUALIFIED))
        self.column.addStretch(1)
