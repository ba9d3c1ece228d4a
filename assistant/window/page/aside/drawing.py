"""The step's drawing as large as the window, with its points and their names."""

from __future__ import annotations

from PySide6.QtWidgets import QWidget

from assistant.window import look
from assistant.window.drawing import DrawingView
from assistant.window.page.aside.base import AsidePage
from assistant.window.session import Driver
from assistant.window.text import label

NONE = "This question has no drawing: it is about no one spot of the unit. Esc leads back to it."


class DrawingPage(AsidePage):
    """Opened with the drawing that the step shows; without one it says so."""

    title = "Large drawing"

    def __init__(self, driver: Driver, shown: DrawingView | None, parent: QWidget | None = None) -> None:
        super().__init__(driver, parent)
        if shown is None:
            self.column.addWidget(label(NONE, look.LEAD))
            self.column.addStretch(1)
            return
        self.heading.hide()
        self.column.addWidget(label(shown.caption, bold=True))
        self.column.addWidget(DrawingView(shown.drawing, shown.points, f"{shown.caption}, large", True), 1)
