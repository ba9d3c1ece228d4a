"""A note or a picture for the trail, at the step where it was made."""

from __future__ import annotations

from PySide6.QtWidgets import QPlainTextEdit, QWidget

from assistant.walk.event import Note
from assistant.window import look, words
from assistant.window.page.aside.base import AsidePage
from assistant.window.page.aside.photos import Photos
from assistant.window.session import Driver
from assistant.window.text import label, rule


class NotesPage(AsidePage):
    """What was written stays when the page is left without saving, until it is saved."""

    title = "Note or photo"
    takes_digits = False

    def __init__(self, driver: Driver, parent: QWidget | None = None) -> None:
        super().__init__(driver, parent)
        self.note = QPlainTextEdit()
        self.note.setAccessibleName("Note")
        self.note.setTabChangesFocus(True)
        self.note.setFont(look.font(look.LEAD))
        self.note.setMinimumHeight(90)
        self.note.setPlainText(driver.drafts.get(("note", ""), ""))
        self.note.textChanged.connect(self._changed)
        self.column.addWidget(self.note, 1)
        self.photos = Photos(driver, "note")
        self.photos.changed.connect(self._changed)
        self.photos.trouble.connect(self.say)
        self.column.addWidget(self.photos)
        if driver.visit.notes:
            self.column.addWidget(rule())
            self.column.addWidget(label("Noted so far", bold=True))
            for note in driver.visit.notes:
                said = note.text or "a picture"
                self.column.addWidget(label(f"{words.clock(note.at)}  {said}"))
        self.tell_restored("note")
        self._changed()

    def first_focus(self) -> QWidget:
        return self.note

    def enter(self) -> None:
        text = self.note.toPlainText().strip()
        step = self.driver.ask().step or None
        now = self.driver.now()
        notes = [
            Note(now, text if not place else "", step, kept)
            for place, (kept, _) in enumerate(self.photos.kept)
        ] or ([Note(now, text, step)] if text else [])
        for note in notes:
            if not self.record(note):
                return
            if self.photos.kept:
                self.photos.saved(1)
        self.driver.drafts.pop(("note", ""), None)
        self.left.emit()

    def _changed(self) -> None:
        self.driver.drafts["note", ""] = self.note.toPlainText()
        anything = bool(self.note.toPlainText().strip() or self.photos.kept)
        self.set_next("Sa&ve" if anything else "&Back to it")
        self.say("Alt+V saves" if anything else "")
