"""As found and as left, side by side: what is put back, and what is different and why."""

from __future__ import annotations

from PySide6.QtWidgets import QPushButton, QWidget

from assistant.house.model import Question
from assistant.walk.event import AsLeft
from assistant.window import look
from assistant.window.page.aside.base import AsidePage
from assistant.window.page.aside.photos import Photos
from assistant.window.page.visit.lines import Lines
from assistant.window.session import Driver
from assistant.window.text import label, row_of
from assistant.window.words import plain

ONLY_FOUND = ("code_light", "code light", "touched")
"""Things that are found and not left."""


def settings_of(driver: Driver) -> dict[str, Question]:
    """The settings of the sheet, and everything else that was written down as found."""
    sheet = driver.vocabulary.sheets.get("settings")
    questions = dict(sheet.questions) if sheet else {}
    found = driver.visit.as_found.seen if driver.visit.as_found else {}
    for name in found:
        if name not in questions and name not in ONLY_FOUND:
            place = next(iter(questions.values())).place if questions else None
            questions[name] = Question(name, plain(name), "", (), {}, None, None, (), None, None, place)
    written = [name for name in questions if name in found]
    rest = [name for name in questions if name not in found]
    return {name: questions[name] for name in (*written, *rest)}


class AsLeftPage(AsidePage):
    """`leads_to` is the page after saving, where this one stands on the way out."""

    title = "As left"
    takes_digits = False
    leads_to = ""

    def __init__(self, driver: Driver, parent: QWidget | None = None) -> None:
        super().__init__(driver, parent)
        self.found = driver.visit.as_found.seen if driver.visit.as_found else {}
        left = driver.visit.as_left.seen if driver.visit.as_left else {}
        self.known = dict(left)
        self.lines = Lines(
            settings_of(driver),
            lambda name: driver.drafts.get(("as_left", name), left.get(name, "")),
            self.found,
            ("As found", "As left"),
        )
        self.lines.typed.connect(self._typed)
        self.lines.done.connect(self.enter)
        self.same = QPushButton("All &else as found")
        self.same.setMinimumHeight(look.TARGET)
        self.same.clicked.connect(self.as_found)
        self.same.setEnabled(bool(self.found))
        self.column.addWidget(label("Look at each one again before you say so.", soft=True))
        self.column.addWidget(row_of(self.same))
        self.column.addWidget(self.lines)
        self.photos = Photos(driver, "as_left")
        self.photos.changed.connect(self._state)
        self.photos.trouble.connect(self.say)
        self.column.addWidget(self.photos)
        self.column.addStretch(1)
        self.tell_restored("as_left")
        self.button_after(self.photos.button)
        self._state()

    def first_focus(self) -> QWidget:
        return self.lines.first() if self.lines.fields else self.next_button

    def as_found(self) -> None:
        """Every empty line gets what was found."""
        for name, field in self.lines.fields.items():
            if not field.text().strip() and self.found.get(name):
                field.setText(self.found[name])
        self._state()

    def enter(self) -> None:
        said = {name: text for name, text in self.lines.texts().items() if self.known.get(name) != text}
        photos = tuple(kept for kept, _ in self.photos.kept)
        if (said or photos) and not self.record(AsLeft(self.driver.now(), said, photos)):
            return
        for name in self.lines.fields:
            self.driver.drafts.pop(("as_left", name), None)
        self.photos.saved()
        if self.leads_to:
            self.opens.emit(self.leads_to)
        else:
            self.left.emit()

    def _typed(self, name: str, text: str) -> None:
        self.driver.drafts["as_left", name] = text
        self._state()

    def _state(self) -> None:
        said = any(self.known.get(name) != text for name, text in self.lines.texts().items())
        self.set_next("Sa&ve" if said or self.photos.kept else "S&kip")


class LeavingPage(AsLeftPage):
    """The same on the way out: name and address come next."""

    leads_to = "person"
