"""The debrief of a drill that was ended some time ago, as it was kept."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QWidget

from assistant.drill.practice.record import PATHS, Done, kept_debrief
from assistant.errors import UserError
from assistant.trail.practice import WORDS
from assistant.window import look
from assistant.window.page.base import Page
from assistant.window.text import banner, label


class KeptPage(Page):
    """Read only. Enter, the big button and Esc lead back."""

    takes_digits = False

    def __init__(self, done: Done, parent: QWidget | None = None) -> None:
        super().__init__(None, parent)
        self.column.addWidget(banner(WORDS))
        words = f"{done.began[:10]} \u00b7 {done.drill.replace('_', ' ')}"
        self.column.addWidget(label(words, look.QUESTION))
        self.told: list[tuple[str, tuple[str, ...]]] = []
        try:
            self.told = kept_debrief(done)
        except UserError as problem:
            self.say(str(problem))
        for title, lines in self.told:
            self.column.addWidget(label(title, look.LEAD, bold=True))
            for n, line in enumerate(lines, 1):
                self.column.addWidget(label(f"{n}. {line}" if title in PATHS else line))
        self.column.addStretch(1)
        if not self.told:
            self.say("Its debrief can't be read.")
        elif done.told_nothing is None:
            self.say("The rest of its debrief was not ready yet.")
        self.set_next("&Back to looking back")

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() == Qt.Key.Key_Escape:
            self.left.emit()
        else:
            super().keyPressEvent(event)
