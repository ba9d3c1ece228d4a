"""Everything around the walk, as big buttons: what was written down already says so."""

from __future__ import annotations

from PySide6.QtWidgets import QWidget

from assistant.walk.state import Visit
from assistant.walk.waiting import wanted
from assistant.window.page.aside.base import AsidePage
from assistant.window.page.base import TINY
from assistant.window.page.choices import Choices
from assistant.window.page.visit.pages import AROUND
from assistant.window.session import Driver


def state_of(visit: Visit, name: str, perhaps: int = 0) -> str:
    """How far this page is, in a few words. `perhaps`: visits that may have been here too."""
    if name == "earlier":
        known = f"{len(visit.past)} visits" if visit.past else "none known"
        return f"{known}, {perhaps} to look at" if perhaps else known
    if name == "as_left":
        return "written down" if visit.as_left else "not yet"
    if name == "advise":
        return f"{len(visit.advice)} written down" if visit.advice else "none yet"
    if name == "waiting":
        parts = [each.title for each in wanted(visit)]
        return ", ".join(parts) if parts else "no part is waited for"
    if name == "tonight" and not visit.sheets.get(name):
        return "freeze plan and safe heat"
    if name == "who":
        return "written down" if visit.person else "not yet"
    if name == "proof":
        return "proved" if any(found.proof == "proved" for found in visit.found) else "nothing proved yet"
    sheet = {"baseline": "healthy"}.get(name, name)
    return "written down" if visit.sheets.get(sheet) else "not yet"


class AroundPage(AsidePage):
    """A digit or a tap opens a page at once."""

    title = "Around the walk"

    def __init__(self, driver: Driver, parent: QWidget | None = None) -> None:
        super().__init__(driver, parent)
        more = len(driver.perhaps)
        listed = [(name, f"{words}\n{state_of(driver.visit, name, more)}") for name, words in AROUND]
        self.choices = Choices(listed, 2)
        for name, button in self.choices.buttons.items():
            button.setCheckable(False)
            button.clicked.connect(lambda _=False, name=name: self.opens.emit(name))
        self.column.addWidget(self.choices)
        self.column.addStretch(1)

    def first_focus(self) -> QWidget:
        return self.choices.first()

    def choose(self, digit: int) -> None:
        self.choices.choose(digit)

    def fold(self, mode: str) -> None:
        super().fold(mode)
        if hasattr(self, "choices"):
            self.choices.lay(1 if mode == TINY else 2)
