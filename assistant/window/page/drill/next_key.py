"""Alt+N is the big button on the pages of a drill, too, whatever stands on it."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeySequence, QShortcut

from assistant.window.page.base import Page


def give_next_key(page: Page) -> None:
    """While the focus is on this page. Its button must have no N of its own."""
    shortcut = QShortcut(QKeySequence("Alt+N"), page, context=Qt.ShortcutContext.WidgetWithChildrenShortcut)
    shortcut.activated.connect(page.next_button.click)
