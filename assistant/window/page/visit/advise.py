"""Recommendations: what, why, the number that shows it, and what the customer says to it."""

from __future__ import annotations

from PySide6.QtWidgets import QWidget

from assistant.house.model import Question
from assistant.walk.around import ANSWERS
from assistant.walk.event import Advised
from assistant.walk.outlook import facts
from assistant.window import look
from assistant.window.page.aside.base import AsidePage
from assistant.window.page.base import TINY
from assistant.window.page.visit.lines import Lines
from assistant.window.page.visit.sheet import SheetPage
from assistant.window.session import Driver
from assistant.window.text import label, rule

ASKED = (
    ("what", "What you recommend", "", ()),
    ("why", "Why", "the reason, in words the customer follows", ()),
    ("number", "The number that shows it", "such as 0.84 against 0.50 in. w.c.", ()),
    ("answer", "What the customer says", "", ANSWERS[1:]),
)


class AdvisePage(AsidePage):
    """Enter goes down, and saves after the last; the page stays for the next one."""

    title = "Recommend"
    takes_digits = False

    def __init__(self, driver: Driver, parent: QWidget | None = None) -> None:
        super().__init__(driver, parent)
        questions = {
            name: Question(name, words, hint, choices, {}, None, None, (), None, None, None)
            for name, words, hint, choices in ASKED
        }
        self.lines = Lines(questions, lambda name: driver.drafts.get(("advise", name), ""))
        self.lines.typed.connect(self._typed)
        self.lines.done.connect(self.enter)
        self.column.addWidget(self.lines)
        if driver.visit.advice:
            self.column.addWidget(rule())
            self.column.addWidget(label("Recommended so far", bold=True))
            for each in driver.visit.advice:
                number = f" ({each.number})" if each.number else ""
                self.column.addWidget(
                    label(f"– {each.what}: {each.why}{number}. {each.answer or 'not answered'}")
                )
        self.column.addStretch(1)
        self.tell_restored("advise")
        self.button_after(self.lines.last())
        self._state()

    def first_focus(self) -> QWidget:
        return self.lines.first()

    def fold(self, mode: str) -> None:
        super().fold(mode)
        if hasattr(self, "lines"):
            self.lines.stack(mode == TINY)

    def enter(self) -> None:
        said = self.lines.texts()
        if not said:
            self.left.emit()
            return
        event = Advised(self.driver.now(), *(said.get(name, "") for name, *_ in ASKED))
        if self.record(event):
            for name, *_ in ASKED:
                self.driver.drafts.pop(("advise", name), None)
            self.opens.emit("advise")

    def _typed(self, name: str, text: str) -> None:
        self.driver.drafts["advise", name] = text
        self.say("")
        self._state()

    def _state(self) -> None:
        self.set_next("Sa&ve" if self.lines.texts() else "&Back to it")


class OutlookPage(SheetPage):
    """Repair or replace: the facts that this visit knows, and the choices in the shop's own words."""

    sheet_name = "outlook"

    def before_lines(self) -> None:
        known = facts(self.driver.visit)
        for name, words in known:
            self.column.addWidget(label(f"{name}: {words}", look.BODY))
        if not known:
            self.column.addWidget(
                label("No fact is known yet: write down the unit (make, model, when made).")
            )
        self.column.addWidget(rule())
