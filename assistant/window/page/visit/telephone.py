"""On the telephone: what to ask whoever calls, before anyone drives. Two answers send everybody out."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QFrame, QPushButton, QVBoxLayout, QWidget

from assistant.house.model import Question, Vocabulary
from assistant.walk.around import leads_out
from assistant.window import look
from assistant.window.page.aside.base import AsidePage
from assistant.window.page.base import TINY
from assistant.window.page.visit.lines import Lines
from assistant.window.text import label, rule

WHO = (("name", "Name", ""), ("address", "Address", "street and number"), ("phone", "Telephone", ""))
TELL_THEM = "Tell them now, word for word:"


class TelephonePage(AsidePage):
    """`begun` carries (person, answers, stop page or ''). What was typed is kept in the caller's `drafts`."""

    begun = Signal(object, object, str)
    again = Signal()
    """A call that was left before it became a visit is taken up again."""
    title = "On the telephone"
    takes_digits = False

    def __init__(
        self,
        vocabulary: Vocabulary,
        drafts: dict[str, str] | None = None,
        interrupted: str = "",
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(None, parent)
        self.vocabulary = vocabulary
        if interrupted:
            again = QPushButton(f"Go on with the &interrupted call: {interrupted}")
            again.setMinimumHeight(look.TARGET)
            again.clicked.connect(self.again)
            self.column.addWidget(again)
        self.drafts = {} if drafts is None else drafts
        sheet = vocabulary.sheets.get("triage")
        self.out = QFrame()
        self.out.setObjectName("banner")
        self.out_column = QVBoxLayout(self.out)
        self.out.hide()
        self.column.addWidget(self.out)
        if sheet is not None and sheet.say:
            self.column.addWidget(label(sheet.say, soft=True))
        self.questions = dict(sheet.questions) if sheet else {}
        urgent = {name: q for name, q in self.questions.items() if q.leave}
        rest = {name: q for name, q in self.questions.items() if not q.leave}
        who = {
            name: Question(name, words, hint, (), {}, None, None, (), None, None) for name, words, hint in WHO
        }
        self.parts = [Lines(part, self._known) for part in (urgent, who, rest) if part]
        for place, lines in enumerate(self.parts):
            if place:
                self.column.addWidget(rule())
            self.column.addWidget(lines)
            lines.typed.connect(self._typed)
            lines.done.connect(lambda place=place: self._on(place))
            lines.past.connect(lambda place=place: place + 1 < len(self.parts) and self._on(place))
        self.column.addStretch(1)
        self._state()

    def first_focus(self) -> QWidget:
        return self.parts[0].first()

    def fold(self, mode: str) -> None:
        super().fold(mode)
        for lines in getattr(self, "parts", ()):
            lines.stack(mode == TINY)

    def answers(self) -> dict[str, str]:
        """Question -> answer of the sheet."""
        return {n: t for lines in self.parts for n, t in lines.texts().items() if n in self.questions}

    def person(self) -> dict[str, str]:
        """Name, address and telephone."""
        return {n: t for lines in self.parts for n, t in lines.texts().items() if n not in self.questions}

    def stop(self) -> str:
        """The stop page that an answer leads to, or nothing."""
        said = self.answers()
        pages = (leads_out(self.questions[name], text) for name, text in said.items())
        return next((page for page in pages if page), "")

    def enter(self) -> None:
        if not (self.answers() or self.person()):
            self.left.emit()
        else:
            self.begun.emit(self.person(), self.answers(), self.stop())

    def _known(self, name: str) -> str:
        return self.drafts.get(name, "")

    def _typed(self, name: str, text: str) -> None:
        self.drafts[name] = text
        self._state()

    def _on(self, place: int) -> None:
        if place + 1 < len(self.parts):
            self.parts[place + 1].first().setFocus()
        else:
            self.enter()

    def _state(self) -> None:
        page, tiny = self.vocabulary.stops.get(self.stop()), self.mode == TINY
        while self.out_column.count():
            gone = self.out_column.takeAt(0).widget()
            gone.setParent(None)
            gone.deleteLater()
        self.out.setVisible(page is not None)
        if page is not None:
            self.out_column.addWidget(label(f"STOP: {page.title}", look.LEAD + 2, bold=True))
            self.out_column.addWidget(label(TELL_THEM))
            for line in map(for_the_caller, page.lines):
                self.out_column.addWidget(label(line, look.LEAD if tiny else look.QUESTION - 4, bold=True))
            self.scroll.verticalScrollBar().setValue(0)
            self.say("Nobody drives before they are out.")
            self.set_next("Write it &down")
            return
        self.say("")
        anything = self.answers() or self.person()
        self.set_next("&Go on" if anything else "&Back to it")


def for_the_caller(line: str) -> str:
    """A line of a stop page as it is said to somebody who has no program in the hand."""
    kept = [part for part in line.split(". ") if "this machine" not in part]
    said = ". ".join(kept).strip()
    return said if said.endswith(".") else f"{said}."
