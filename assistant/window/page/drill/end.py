"""The end of a drill: what was found, why, and what the customer is told."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QBoxLayout, QPushButton, QWidget

from assistant.drill.practice.answers import causes, findings
from assistant.drill.practice.drill import Drill
from assistant.tree.library import Library
from assistant.window import look
from assistant.window.flow import Flow
from assistant.window.line import Line
from assistant.window.page.base import TINY, Page
from assistant.window.page.drill.picker import Picker
from assistant.window.text import label


class EndPage(Page):
    """`said` carries finding, cause and sentence; `left_open`: leave it so. Esc leads back to the work.
    `walked_again`: the walk is over and the complaint is not; `may_walk_again` shows the button for it.
    `walk` are the causes that a walk found.
    """

    said = Signal(str, str, str)
    left_open = Signal()
    walked_again = Signal()
    changed = Signal()
    takes_digits = False

    def __init__(
        self,
        drill: Drill,
        library: Library,
        finding: str = "",
        cause: str = "",
        sentence: str = "",
        walk: tuple[str, ...] = (),
        may_walk_again: bool = False,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(None, parent)
        self.drill, self.library, self.walk = drill, library, walk
        self.column.addWidget(label("PRACTICE \u00b7 What was it?", look.QUESTION))
        self.findings = Picker("What was found")
        self.causes = Picker("Why it failed")
        titles = {key: one.title for key, one in findings(library, drill.complaint).items()}
        self.findings.show_items("What was found", titles, finding)
        self._list_causes(cause)
        self.findings.moved.connect(lambda _: self._moved())
        self.causes.moved.connect(lambda _: self._state())
        self.findings.picked.connect(lambda _: self.causes.find.setFocus())
        self.causes.picked.connect(lambda _: self.sentence.setFocus())
        self.across = QBoxLayout(QBoxLayout.Direction.LeftToRight)
        self.across.setSpacing(14)
        self.across.addWidget(self.findings)
        self.across.addWidget(self.causes)
        self.column.addLayout(self.across, 1)
        self.asks = heading = label("One sentence for the customer, in their words", bold=True)
        self.sentence = Line("One sentence for the customer, in their words")
        self.sentence.setText(sentence)
        self.sentence.returnPressed.connect(self.enter)
        self.sentence.textChanged.connect(lambda _: self.changed.emit())
        heading.setBuddy(self.sentence)
        self.own.addWidget(heading)
        self.own.addWidget(self.sentence)
        self.back = QPushButton("&Back to the house")
        self.back.setMinimumHeight(look.TARGET)
        self.back.clicked.connect(self.left.emit)
        self.unfinished = QPushButton("&Leave the drill unfinished")
        self.unfinished.setMinimumHeight(look.TARGET)
        self.unfinished.clicked.connect(self.left_open.emit)
        self.again = QPushButton("&Walk it again from the start")
        self.again.setMinimumHeight(look.TARGET)
        self.again.clicked.connect(self.walked_again.emit)
        if not may_walk_again:
            self.again.hide()
        self.other_ways = Flow()
        for way in (self.again, self.unfinished):
            self.other_ways.addWidget(way)
        self.column.addLayout(self.other_ways)
        self.fold(self.mode)
        self._state()

    def first_focus(self) -> QWidget:
        return self.sentence if self.findings.chosen else self.findings.find

    def fold(self, mode: str) -> None:
        super().fold(mode)
        if hasattr(self, "across"):
            tiny = mode == TINY
            self.asks.setHidden(tiny)
            self.sentence.setPlaceholderText("one sentence for the customer" if tiny else "")
            self.foot_row.removeWidget(self.back)
            self.other_ways.removeWidget(self.back)
            if tiny:  # the sentence needs the foot's width
                self.other_ways.addWidget(self.back)
            else:
                self.foot_row.insertWidget(1, self.back, 0, Qt.AlignmentFlag.AlignBottom)
            self.across.setDirection(
                QBoxLayout.Direction.TopToBottom if tiny else QBoxLayout.Direction.LeftToRight
            )

    def enter(self) -> None:
        if not self.findings.chosen:
            self.say("Pick what was found. A house can be sound, and it can be one to leave.")
            self.findings.find.setFocus()
            return
        self.said.emit(self.findings.chosen, self.causes.chosen, self.sentence.text())

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() == Qt.Key.Key_Escape:
            self.left.emit()
        else:
            super().keyPressEvent(event)

    def _moved(self) -> None:
        self._list_causes(self.causes.chosen)
        self._state()

    def _list_causes(self, chosen: str) -> None:
        listed = causes(self.library, self.findings.chosen, self.drill.complaint)
        found = {name: listed[name] for name in self.walk if name in listed}
        several = f": the walk found {len(found)}" if len(found) > 1 else ""
        self.causes.show_items(f"Why it failed{several}", {**found, **listed}, chosen)

    def _state(self) -> None:
        titles = [picker.items.get(picker.chosen, "") for picker in (self.findings, self.causes)]
        self.say(" \u2013 ".join(title for title in titles if title), sure=False)
        self.changed.emit()
        self.set_next("That &is it", bool(self.findings.chosen))
