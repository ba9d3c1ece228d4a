"""Which drill, who works on it, and which way."""

from __future__ import annotations

from collections.abc import Mapping

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QButtonGroup, QListWidgetItem, QPushButton, QWidget

from assistant.drill.practice.drill import DIFFICULTIES, Drill
from assistant.drill.practice.record import apprentices
from assistant.house.model import Vocabulary
from assistant.trail.practice import WORDS
from assistant.window import look
from assistant.window.flow import Flow
from assistant.window.line import Line
from assistant.window.listing import Listing
from assistant.window.page.base import TINY, Page
from assistant.window.text import label

ANY = "any"
FREE, TREE = "free", "tree"


class LobbyPage(Page):
    """`begun` carries (drill, apprentice, way); `foreman` and `looks_back` ask for those pages."""

    begun = Signal(object, str, str)
    foreman = Signal()
    looks_back = Signal(str)
    takes_digits = False

    def __init__(
        self,
        drills: Mapping[str, Drill],
        vocabulary: Vocabulary,
        who: str = "",
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(None, parent)
        self.vocabulary = vocabulary
        self.drills = list(drills.values())
        self.complaint, self.difficulty = ANY, ANY
        self.column.setSpacing(6)
        self.column.addWidget(label("Drills", look.QUESTION))
        self.column.addWidget(label(WORDS, look.SMALL, soft=True))
        self.who = Line("Who works on it: a name")
        self.who.setPlaceholderText("who works on it: a name")
        self.who.setText(who)
        self.who.textChanged.connect(lambda _: self._state())
        self.column.addWidget(self.who)
        row = Flow()
        self.names: dict[str, QPushButton] = {}
        for name in apprentices()[:8]:
            button = _button(name)
            button.clicked.connect(lambda _=False, name=name: self.who.setText(name))
            self.names[name] = button
            row.addWidget(button)
        self.which = _button("")
        self.which.clicked.connect(self.next_complaint)
        self.how_hard = _button("")
        self.how_hard.clicked.connect(self.next_difficulty)
        row.addWidget(self.which)
        row.addWidget(self.how_hard)
        self.column.addLayout(row)
        self.list = Listing("Drills: what the customer says", 90)
        self.list.currentRowChanged.connect(lambda _: self._state())
        self.list.itemDoubleClicked.connect(lambda _: self.enter())
        self.who.down.connect(self.list.setFocus)
        self.who.returnPressed.connect(self.list.setFocus)
        self.column.addWidget(self.list, 1)
        self._lay_foot()
        self._show()

    def _lay_foot(self) -> None:
        row = self.foot_flow = Flow()
        self.ways: dict[str, QPushButton] = {}
        group = QButtonGroup(self)
        for way, words in ((TREE, "Along the &tree"), (FREE, "&Free in the house")):
            button = _button(words)
            button.setCheckable(True)
            group.addButton(button)
            self.ways[way] = button
            row.addWidget(button)
        self.ways[TREE].setChecked(True)
        back, made = _button("&Looking back"), _button("F&oreman")
        back.clicked.connect(lambda: self.looks_back.emit(self.who.text().strip()))
        made.clicked.connect(self.foreman.emit)
        visits = _button("&Visits")
        visits.clicked.connect(self.left.emit)
        self.others = (back, made, visits)
        for button in self.others:
            row.addWidget(button)
        self.own.addLayout(row)

    def fold(self, mode: str) -> None:
        """In a tiny window only the two ways stay in the foot."""
        super().fold(mode)
        if hasattr(self, "others"):
            for button in self.others:
                self.foot_flow.removeWidget(button)
                self.column.removeWidget(button)
                if mode == TINY:
                    self.column.addWidget(button)
                else:
                    self.foot_flow.addWidget(button)

    def first_focus(self) -> QWidget:
        return self.list if self.who.text().strip() else self.who

    def enter(self) -> None:
        drill = self._chosen()
        who = " ".join(self.who.text().split())
        if not who:
            self.say("Say who works on it: a name. What came of it is kept under that.")
            self.who.setFocus()
        elif drill is not None:
            self.begun.emit(drill, who, self._way())

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() == Qt.Key.Key_Escape:
            self.left.emit()
        else:
            super().keyPressEvent(event)

    def next_complaint(self) -> None:
        """Any complaint, then each that has a drill."""
        known = [ANY, *dict.fromkeys(drill.complaint for drill in self.drills)]
        self.complaint = known[(known.index(self.complaint) + 1) % len(known)]
        self._show()

    def next_difficulty(self) -> None:
        """Any difficulty, then each."""
        known = [ANY, *DIFFICULTIES]
        self.difficulty = known[(known.index(self.difficulty) + 1) % len(known)]
        self._show()

    def _way(self) -> str:
        return next(way for way, button in self.ways.items() if button.isChecked())

    def _chosen(self) -> Drill | None:
        row = self.list.currentRow()
        return self.shown[row] if 0 <= row < len(self.shown) else None

    def _show(self) -> None:
        titles = self.vocabulary.complaints
        title = titles[self.complaint].title if self.complaint != ANY else "any"
        _say(self.which, f"Complaint: {title}")
        _say(self.how_hard, f"Difficulty: {self.difficulty}")
        self.shown = sorted(
            (
                drill
                for drill in self.drills
                if self.complaint in (ANY, drill.complaint) and self.difficulty in (ANY, drill.difficulty)
            ),
            key=lambda drill: (DIFFICULTIES.index(drill.difficulty), drill.complaint, drill.name),
        )
        self.list.clear()
        for drill in self.shown:
            where = "" if drill.origin == "shipped" else f" \u00b7 {drill.origin}"
            head = f"{titles[drill.complaint].title} \u00b7 {drill.difficulty}{where}"
            self.list.addItem(QListWidgetItem(f"\u201c{drill.words}\u201d\n{head}"))
        if self.shown:
            self.list.setCurrentRow(0)
        self._state()

    def _state(self) -> None:
        self.set_next("&Begin", self._chosen() is not None)
        self.say("" if self.shown else "No drill is like that.")


def _button(words: str) -> QPushButton:
    button = QPushButton(words)
    button.setMinimumHeight(look.TARGET)
    button.setFont(look.font(look.BODY))
    return button


def _say(button: QPushButton, words: str) -> None:
    button.setText(words)
    button.setAccessibleName(words)
