"""No heat tonight: people, safe heat until we are back, and against freezing."""

from __future__ import annotations

from PySide6.QtWidgets import QVBoxLayout, QWidget

from assistant.house.model import Vocabulary
from assistant.window import look
from assistant.window.page.aside.base import AsidePage
from assistant.window.session import Driver
from assistant.window.text import label


def show_plan(column: QVBoxLayout, vocabulary: Vocabulary) -> None:
    """The plan, as lines of a page; nothing where the trees have none."""
    plan = vocabulary.tonight
    if plan is None:
        return
    for title, lines in (
        ("The people", plan.people),
        ("Safe heat until we are back", plan.heat),
        ("Against freezing", plan.freeze),
    ):
        column.addWidget(label(title, look.LEAD, bold=True))
        for line in lines:
            column.addWidget(label(f"– {line}"))


class TonightPage(AsidePage):
    """Only read; the report gives it to the customer."""

    title = "No heat tonight"

    def __init__(self, driver: Driver, parent: QWidget | None = None) -> None:
        super().__init__(driver, parent)
        if driver.vocabulary.tonight is None:
            self.column.addWidget(label("The trees that this visit was begun with have no plan for it."))
        show_plan(self.column, driver.vocabulary)
        self.column.addStretch(1)
