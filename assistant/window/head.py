"""The top of the window: what is being walked, the path in one line, and the ways that are always open."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QLabel, QPushButton, QWidget

from assistant.window import look
from assistant.window.keys import BY_NAME
from assistant.window.margin import Strip
from assistant.window.page.base import NARROW, TINY, WIDE
from assistant.window.unproved import titles

if TYPE_CHECKING:
    from assistant.window.session import Driver


class Head(QWidget):
    """`opens` carries the name of an action."""

    opens = Signal(str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName("head")
        self.setAttribute(Qt.WidgetAttribute.WA_StyledBackground)
        row = QHBoxLayout(self)
        row.setContentsMargins(12, 3, 12, 3)
        row.setSpacing(8)
        self.title = QLabel("Fault Trail")
        self.title.setFont(look.font(look.BODY, bold=True))
        row.addWidget(self.title)
        self.strip = Strip()
        self.strip.clicked.connect(lambda: self.opens.emit("back"))
        row.addWidget(self.strip, 1)
        self.gap = QWidget()
        row.addWidget(self.gap, 1)
        self.unproved = self._way("unproved")
        self.more = self._way("more")
        self.help = self._way("help")
        self.hazard = self._way("hazard")
        self.hazard.setObjectName("hazard")
        for way in (self.unproved, self.more, self.help, self.hazard):
            row.addWidget(way)
        self._driver: Driver | None = None
        self._mode = NARROW
        self._count = 0
        self.show_visit(None)

    def show_visit(self, driver: Driver | None) -> None:
        """What stands at the top for this visit, or without one."""
        self._driver = driver
        if driver is not None:
            known = driver.vocabulary.complaints.get(driver.visit.complaint or "")
            title = known.title if known else "Visit"
            mark = "PRACTICE: " if driver.practice is not None else ""
            self.title.setText(f"{mark}{title}".replace("&", "&&"))
            self.strip.show_path(driver)
            count = len(titles(driver))
            self.unproved.setText(f"Still unproved: {count} (F3)")
            self.unproved.setAccessibleName(f"Still unproved: {count} (F3)")
            self._count = count
        else:
            self.title.setText("Fault Trail")
        self.fold(self._mode)

    def fold(self, mode: str) -> None:
        self._mode = mode
        inside = self._driver is not None
        self.strip.setVisible(inside and mode == NARROW)
        self.gap.setVisible(not self.strip.isVisibleTo(self))
        self.unproved.setVisible(inside and mode != TINY and self._count > 0)
        self.more.setVisible(inside)
        self.help.setVisible(not inside or mode == WIDE)

    def _way(self, name: str) -> QPushButton:
        action = BY_NAME[name]
        button = QPushButton(f"{action.words} ({action.key})")
        button.setMinimumHeight(look.TARGET)
        button.setAccessibleName(f"{action.words} ({action.key})")
        button.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        button.clicked.connect(lambda: self.opens.emit(name))
        return button
