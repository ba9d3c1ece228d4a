"""On the telephone: what to ask whoever calls, before anyone drives. Two answers send everybody out."""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from pathlib import Path

from PySide6.QtCore import QTimer, Signal
from PySide6.QtGui import QHideEvent
from PySide6.QtWidgets import QFrame, QPushButton, QVBoxLayout, QWidget

from assistant.house.model import Question, StopPage, Vocabulary
from assistant.trail.calls import Call
from assistant.walk.around import leads_out
from assistant.window import look
from assistant.window.big import BigButton
from assistant.window.page.aside.base import AsidePage
from assistant.window.page.base import TINY
from assistant.window.page.offers import Offers
from assistant.window.page.visit.lines import Lines
from assistant.window.text import label, row_of, rule

WHO = (("name", "Name", ""), ("address", "Address", "street and number"), ("phone", "Telephone", ""))
LATER = 250
"""Milliseconds after the last letter before it goes to the disk."""
MOST = 3
"""Interrupted calls that are offered."""
TELL_THEM = "Tell them now, word for word:"


class TelephonePage(AsidePage):
    """`begun` carries (person, answers, stop page or ''). What was typed is kept in `call`, on disk after
    every answer.
    """

    begun = Signal(object, object, str)
    again = Signal(object)
    """A call that was left before it became a visit is taken up again: its folder."""
    thrown = Signal()
    title = "On the telephone"
    takes_digits = False

    def __init__(
        self,
        vocabulary: Vocabulary,
        call: Call,
        interrupted: Sequence[tuple[Path, str]] = (),
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(None, parent)
        self.vocabulary = vocabulary
        self.call = call
        self._told: StopPage | None = None
        self.later = QTimer(self)
        self.later.setSingleShot(True)
        self.later.setInterval(LATER)
        self.later.timeout.connect(self.keep)
        if call.texts:
            away = QPushButton("Throw this call &away")
            away.setMinimumHeight(look.TARGET)
            away.clicked.connect(self._ask_away)
            self.own.addWidget(row_of(away))
        else:
            for button in again_buttons(interrupted, self.again.emit):
                self.column.addWidget(button)
        self.offers = Offers()
        self.foot_column.insertWidget(0, self.offers)
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
        return self.call.texts.get(name, "")

    def keep(self) -> None:
        """Onto the disk, now."""
        self.later.stop()
        if trouble := self.call.keep():
            self.say(trouble)

    def hideEvent(self, event: QHideEvent) -> None:
        if self.later.isActive():
            self.keep()
        super().hideEvent(event)

    def _ask_away(self) -> None:
        self.offers.ask(
            "Throw away all that was written down of this call?",
            [("Keep it", lambda: None), ("Throw it away for good", self.thrown.emit)],
            self.first_focus(),
        )

    def choose(self, digit: int) -> None:
        self.offers.pick(digit)

    def _typed(self, name: str, text: str) -> None:
        self.call.texts[name] = text
        self._state()
        if name in self.questions and self.questions[name].choices:
            self.keep()
        else:
            self.later.start()

    def _on(self, place: int) -> None:
        if place + 1 < len(self.parts):
            self.parts[place + 1].first().setFocus()
        else:
            self.enter()

    def _tell(self, page: StopPage | None) -> None:
        """What to say to the caller now, above everything else; nothing where nobody has to leave."""
        while self.out_column.count():
            gone = self.out_column.takeAt(0).widget()
            gone.hide()  # one without a parent that is still to be shown would be a window of its own
            gone.deleteLater()
        self.out.setVisible(page is not None)
        if page is None:
            return
        size = look.LEAD if self.mode == TINY else look.QUESTION - 4
        self.out_column.addWidget(label(f"STOP: {page.title}", look.LEAD + 2, bold=True))
        self.out_column.addWidget(label(TELL_THEM))
        for line in map(for_the_caller, page.lines):
            self.out_column.addWidget(label(line, size, bold=True))
        self.scroll.verticalScrollBar().setValue(0)

    def _state(self) -> None:
        page = self.vocabulary.stops.get(self.stop())
        if page is not self._told:
            self._told = page
            self._tell(page)
        if page is not None:
            self.say("Nobody drives before they are out.")
            self.set_next("Write it &down")
            return
        self.say("")
        anything = self.answers() or self.person()
        self.set_next("&Go on" if anything else "&Back to it")


def again_buttons(
    calls: Sequence[tuple[Path, str]], pressed: Callable[[Path], None]
) -> list[BigButton]:
    """A button for each of the latest calls that were interrupted."""
    made = []
    for folder, whose in calls[:MOST]:
        button = BigButton(f"Go on with the interrupted call: {whose}", "", when(folder.name))
        button.clicked.connect(lambda _=False, folder=folder: pressed(folder))
        made.append(button)
    return made


def when(name: str) -> str:
    """When a call began, from its folder's name; empty where that says no time."""
    found = re.match(r"(\d{4}-\d\d-\d\d)-(\d\d)(\d\d)-", name)
    return f"begun {found[1]}, {int(found[2])}:{found[3]}" if found else ""


def for_the_caller(line: str) -> str:
    """A line of a stop page as it is said to somebody who has no program in the hand."""
    kept = [part for part in line.split(". ") if "this machine" not in part]
    said = ". ".join(kept).strip()
    return said if said.endswith(".") else f"{said}."
