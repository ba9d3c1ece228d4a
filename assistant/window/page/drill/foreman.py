"""The foreman's page: hide a fault, make a drill of a finished visit, ask for predictions or not.

One question at a time, each a list to search; Esc goes one question back.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QCheckBox, QPushButton, QWidget

from assistant.drill.practice import make
from assistant.drill.practice.answers import HAZARD, causes, findings
from assistant.drill.practice.drill import DIFFICULTIES, Drill
from assistant.drill.practice.drills import save
from assistant.drill.practice.make import Own
from assistant.drill.practice.record import asks_to_predict, set_predict
from assistant.errors import UserError
from assistant.tree.library import Library
from assistant.window import look
from assistant.window.flow import Flow
from assistant.window.line import Line
from assistant.window.page.base import Page
from assistant.window.page.drill.picker import Picker
from assistant.window.text import label

OWN, VISIT, PREPARE = "own", "visit", "prepare"
FROM = {
    OWN: "Hide a fault of your own",
    VISIT: "Make a drill of one of our finished visits",
    PREPARE: "Work out the shortest good paths, some minutes for each complaint, while others go on",
}
NO_CAUSE = "none"


class ForemanPage(Page):
    """`made` is sent after a drill was kept. `visits` gives finished visits: folder name -> words; `of_visit`
    makes a drill of one of them (it raises UserError).
    """

    made = Signal(str)
    prepares = Signal()
    takes_digits = False

    def __init__(
        self,
        library: Library,
        visits: Callable[[], Mapping[str, str]],
        of_visit: Callable[[str, str], Drill],
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(None, parent)
        self.library, self.visits, self.of_visit = library, visits, of_visit
        self.chosen: dict[str, str] = {}
        self.column.setSpacing(6)
        self.column.addWidget(label("Foreman", look.QUESTION))
        self.predicts = QCheckBox("Ask for a &prediction before each look and reading")
        self.predicts.setChecked(asks_to_predict())
        self.predicts.toggled.connect(self._set_predict)
        self.column.addWidget(self.predicts)
        self.so_far = label("", look.SMALL, soft=True)
        self.column.addWidget(self.so_far)
        self.picker = Picker("What do you want to do?")
        self.picker.picked.connect(self.take)
        self.picker.moved.connect(lambda name: self._state(bool(name)))
        self.column.addWidget(self.picker, 1)
        self.words_head = label("What the customer says", bold=True)
        self.words_line = Line("What the customer says")
        self.words_line.returnPressed.connect(self.enter)
        self.words_head.setBuddy(self.words_line)
        self.column.addWidget(self.words_head)
        self.column.addWidget(self.words_line)
        self.column.addStretch(0)
        row = Flow()
        self.back = QPushButton("One question &back")
        self.drills = QPushButton("Back to the &drills")
        for button, act in ((self.back, self.step_back), (self.drills, self.left.emit)):
            button.setMinimumHeight(look.TARGET)
            button.clicked.connect(act)
            row.addWidget(button)
        self.own.addLayout(row)
        self.ask()

    # -- the questions, in order

    def questions(self) -> tuple[str, ...]:
        """What is asked, by what was answered so far."""
        if self.chosen.get("from") == VISIT:
            return ("from", "visit", "difficulty")
        return ("from", "part", "change", "degree", "complaint", "finding", "cause", "difficulty", "words")

    def asked(self) -> str:
        """The question that is open, or nothing."""
        return next((name for name in self.questions() if name not in self.chosen), "")

    def ask(self) -> None:
        """Show the open question."""
        name = self.asked()
        is_words = name == "words"
        self.picker.setVisible(not is_words)
        self.words_head.setVisible(is_words)
        self.words_line.setVisible(is_words)
        titles = [self._title(one, self.chosen[one]) for one in self.questions() if one in self.chosen]
        self.so_far.setText(" \u2192 ".join(title for title in titles if title))
        self.so_far.setVisible(bool(self.chosen))
        self.back.setVisible(bool(self.chosen))
        if is_words:
            self.words_line.setText(self.library.vocabulary.complaints[self.chosen["complaint"]].words)
            self.words_line.setFocus()
            self.set_next("&Keep the drill")
            return
        self.picker.show_items(*self._listed(name))
        self._state(bool(self.picker.chosen))
        self.picker.find.setFocus()

    def take(self, name: str) -> None:
        """The answer to the open question."""
        self.say("")
        if name == PREPARE and self.asked() == "from":
            self.prepares.emit()
            return
        self.chosen[self.asked()] = name
        if not self.asked():
            self._keep()
        else:
            self.ask()

    def step_back(self) -> None:
        """The last answer is asked again."""
        if self.chosen:
            self.chosen.popitem()
            self.say("")
            self.ask()
        else:
            self.left.emit()

    def enter(self) -> None:
        if self.asked() == "words":
            if not self.words_line.text().strip():
                self.say("Write what the customer says. It may mislead.")
                return
            self.take(self.words_line.text().strip())
        elif self.picker.chosen:
            self.take(self.picker.chosen)

    def first_focus(self) -> QWidget:
        return self.picker.find if self.picker.isVisible() else self.words_line

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() == Qt.Key.Key_Escape:
            self.step_back()
        else:
            super().keyPressEvent(event)

    # -- inside

    def _listed(self, name: str) -> tuple[str, Mapping[str, str]]:
        chosen, house = self.chosen, self.library.vocabulary
        if name == "from":
            return "What do you want to do?", FROM
        if name == "visit":
            return "Which visit? Its people stay out of the drill", self.visits()
        if name == "part":
            return "Which part of the house?", make.components()
        if name == "change":
            return "What is wrong with it?", make.changes(chosen["part"])
        if name == "degree":
            return "How bad?", {one: one for one in make.degrees(chosen["part"], chosen["change"])}
        if name == "complaint":
            return "Which complaint does it make?", {
                n: c.title for n, c in house.complaints.items() if c.tree
            }
        if name == "finding":
            listed = findings(self.library, chosen["complaint"])
            titles = {key: one.title for key, one in listed.items() if not key.startswith(HAZARD)}
            return "What should a good technician find?", titles
        if name == "cause":
            known = causes(self.library, chosen["finding"], chosen["complaint"])
            trees = {key: title for key, title in known.items() if key in self.library.trees}
            return "What is the cause?", {NO_CAUSE: "No cause to be found", **trees}
        return "How difficult?", {one: one for one in DIFFICULTIES}

    def _title(self, name: str, value: str) -> str:
        if name in ("from", "words"):
            return ""
        kept = {key: self.chosen[key] for key in self.chosen}
        listed = self._listed(name)[1] if set(kept) else {}
        return listed.get(value, value)

    def _keep(self) -> None:
        chosen = self.chosen
        try:
            if chosen["from"] == VISIT:
                drill, text = self.of_visit(chosen["visit"], chosen["difficulty"]), ""
            else:
                cause = "" if chosen["cause"] == NO_CAUSE else chosen["cause"]
                own = Own(
                    chosen["part"],
                    chosen["change"],
                    chosen["degree"],
                    chosen["complaint"],
                    chosen["finding"],
                    cause,
                )
                drill, text = make.of_own(own, chosen["words"], chosen["difficulty"])
            kept = save(drill, self.library.vocabulary, text)
        except UserError as problem:
            self.chosen.popitem()
            self.ask()
            self.say(str(problem))
            return
        self.chosen = {}
        self.ask()
        self.say(f"Kept: \u201c{kept.words}\u201d It is in the list of drills.")
        self.made.emit(kept.name)

    def _state(self, ready: bool) -> None:
        self.set_next("&Next", ready)

    def _set_predict(self, on: bool) -> None:
        try:
            set_predict(on)
        except UserError as problem:
            self.say(str(problem))
