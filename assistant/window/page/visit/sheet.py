"""A sheet around the walk as a page: every line may stay empty, nothing typed is lost."""

from __future__ import annotations

from PySide6.QtWidgets import QWidget

from assistant.house.model import Sheet
from assistant.walk.around import trouble_with
from assistant.walk.event import Filled
from assistant.window.page.aside.base import AsidePage
from assistant.window.page.aside.photos import Photos
from assistant.window.page.base import TINY
from assistant.window.page.visit.lines import Lines
from assistant.window.session import Driver
from assistant.window.text import label

NO_SHEET = "The trees that this visit was begun with don't ask this. A note (F5) keeps it."


class SheetPage(AsidePage):
    """Enter goes down and saves after the last line; `photos` offers pictures beside the words."""

    takes_digits = False
    sheet_name = ""
    photos_too = False

    def __init__(self, driver: Driver, parent: QWidget | None = None) -> None:
        self.sheet: Sheet | None = driver.vocabulary.sheets.get(self.sheet_name)
        self.title = self.sheet.title if self.sheet else self.sheet_name.capitalize()
        super().__init__(driver, parent)
        self.photos: Photos | None = None
        self.lines: Lines | None = None
        if self.sheet is None:
            self.column.addWidget(label(NO_SHEET))
            self.column.addStretch(1)
            return
        if self.sheet.say:
            self.column.addWidget(label(self.sheet.say, soft=True))
        self.before_lines()
        self.lines = Lines(self.sheet.questions, self._known)
        self.lines.typed.connect(self._typed)
        self.lines.done.connect(self.enter)
        self.column.addWidget(self.lines)
        if self.photos_too:
            self.photos = Photos(driver, f"sheet.{self.sheet_name}")
            self.photos.changed.connect(self._state)
            self.photos.trouble.connect(self.say)
            self.column.addWidget(self.photos)
        self.after_lines()
        self.column.addStretch(1)
        self.tell_restored(f"sheet.{self.sheet_name}")
        if self.lines.fields:
            self.button_after(self.photos.button if self.photos else self.lines.last())
        self._state()

    def before_lines(self) -> None:
        """What stands above the questions."""

    def after_lines(self) -> None:
        """What stands below them."""

    def saved(self) -> None:
        """What comes after saving."""
        self.left.emit()

    def first_focus(self) -> QWidget:
        return self.lines.first() if self.lines else self.next_button

    def fold(self, mode: str) -> None:
        super().fold(mode)
        if getattr(self, "lines", None) is not None:
            self.lines.stack(mode == TINY)

    def enter(self) -> None:
        """Save what is new; with nothing new the page is only left."""
        if self.lines is None:
            self.left.emit()
            return
        known = self.driver.visit.sheets.get(self.sheet_name, {})
        said = self.lines.texts()
        new = {name: text for name, text in said.items() if known.get(name) != text}
        photos = tuple(kept for kept, _ in self.photos.kept) if self.photos else ()
        if (new or photos) and not self.record(Filled(self.driver.now(), self.sheet_name, new, photos)):
            return
        for name in self.sheet.questions:
            self.driver.drafts.pop((f"sheet.{self.sheet_name}", name), None)
        if self.photos:
            self.photos.saved()
        self.saved()

    def _known(self, name: str) -> str:
        known = self.driver.visit.sheets.get(self.sheet_name, {})
        return self.driver.drafts.get((f"sheet.{self.sheet_name}", name), known.get(name, ""))

    def _typed(self, name: str, text: str) -> None:
        self.driver.drafts[f"sheet.{self.sheet_name}", name] = text
        trouble = trouble_with(self.sheet.questions[name], text)
        self.say(trouble, sure=False)
        self._state()

    def _state(self) -> None:
        known = self.driver.visit.sheets.get(self.sheet_name, {})
        new = any(known.get(name) != text for name, text in self.lines.texts().items())
        anything = new or bool(self.photos and self.photos.kept)
        self.set_next("Sa&ve" if anything else "S&kip" if not known else "&Back to it")


class BeforePage(SheetPage):
    """Before starting: monitor, room, who may say yes."""

    sheet_name = "before"


class UnitPage(SheetPage):
    """Make, model, serial number; a photo of the plate."""

    sheet_name = "unit"
    photos_too = True


class TriagePage(SheetPage):
    """What was asked on the telephone, where the visit is under way: an answer can still be added."""

    sheet_name = "triage"
