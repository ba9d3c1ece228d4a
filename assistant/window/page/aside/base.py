"""A page beside the walk: Esc or the big button leads back to the question."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QWidget

from assistant.window import look
from assistant.window.page.base import Page
from assistant.window.session import Driver
from assistant.window.text import banner, label

RESTORED = "Some of this was typed before and not saved. Look through it, then save it."


class AsidePage(Page):
    """`title` in large type; the big button says Back to the question unless the page has something to
    save.
    """

    title = ""
    next_words = "&Back to it"

    def __init__(self, driver: Driver | None, parent: QWidget | None = None) -> None:
        super().__init__(driver, parent)
        self.heading = label(self.title, look.QUESTION)
        self.column.addWidget(self.heading)
        self.set_next(self.next_words)

    def tell_restored(self, *pages: str) -> None:
        """A sentence above the page where something in it was typed before the visit was opened."""
        drafts = self.driver.drafts
        if any(page in pages and drafts.get((page, name), "").strip() for page, name in drafts.restored):
            self.column.insertWidget(1, banner(RESTORED))

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() == Qt.Key.Key_Escape:
            self.left.emit()
        else:
            super().keyPressEvent(event)
