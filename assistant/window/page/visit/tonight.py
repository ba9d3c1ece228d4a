"""No heat tonight: people, safe heat until we are back, against freezing; what was done and who was told."""

from __future__ import annotations

from PySide6.QtWidgets import QVBoxLayout, QWidget

from assistant.house.model import Vocabulary
from assistant.walk.state import Visit
from assistant.window import look
from assistant.window.page.visit.sheet import SheetPage
from assistant.window.session import Driver
from assistant.window.text import label, rule

FROM_THE_CALL = ("most", "cold", "water")
"""Answers of the telephone sheet that this page needs."""


def show_plan(column: QVBoxLayout, vocabulary: Vocabulary) -> None:
    """The plan, as lines of a page; nothing where the trees have none."""
    plan = vocabulary.tonight
    if plan is None:
        return
    for title, lines in plan.parts:
        column.addWidget(label(title, look.LEAD, bold=True))
        for line in lines:
            column.addWidget(label(f"– {line}"))


def from_the_call(visit: Visit) -> list[str]:
    """What was said on the telephone about people, cold and water."""
    sheet = visit.vocabulary.sheets.get("triage")
    said = visit.sheets.get("triage", {})
    if sheet is None:
        return []
    return [
        f"{sheet.questions[name].words} {said[name]}"
        for name in FROM_THE_CALL
        if name in sheet.questions and said.get(name)
    ]


class TonightPage(SheetPage):
    """What is written down goes into the trail; the plan stands below it, and the report gives it to the
    customer.
    """

    sheet_name = "tonight"

    def __init__(self, driver: Driver, parent: QWidget | None = None) -> None:
        super().__init__(driver, parent)
        plan = driver.vocabulary.tonight
        self.heading.setText(plan.title if plan else "No heat tonight")
        if self.sheet is None:
            show_plan(self.column, driver.vocabulary)

    def before_lines(self) -> None:
        told = from_the_call(self.driver.visit)
        if told:
            self.column.addWidget(label("On the telephone", bold=True))
            for line in told:
                self.column.addWidget(label(f"– {line}"))

    def after_lines(self) -> None:
        self.column.addWidget(rule())
        show_plan(self.column, self.driver.vocabulary)
        if self.driver.vocabulary.tonight is None:
            self.column.addWidget(label("The trees that this visit was begun with have no plan for it."))
