"""The step's drawing as large as the window, with its points and their names."""

from __future__ import annotations

from PySide6.QtWidgets import QWidget

from assistant.window.drawing import DrawingView
from assistant.window.page.aside.base import AsidePage
from assistant.window.session import Driver
from assistant.window.text import label


class DrawingPage(AsidePage):
    """Opened with the drawing that the step shows."""

    def __init__(self, driver: Driver, shown: DrawingView | None, parent: QWidget | None = None) -> None:
        super().__init__(driver, parent)
        self.heading.hide()
        if shown is None:
            self.column.addWidget(label("This step has no drawing."))
            self.column.addStretch(1)
            return
        self.column.addWidget(label(shown.caption, bold=True))
        self.column.addWidget(DrawingView(shown.drawing, shown.points, f"{shown.caption}, large", True), 1)
