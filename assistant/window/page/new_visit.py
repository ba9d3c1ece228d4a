"""A new visit asks for one thing: what the customer says, in the order to take it up."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QPushButton, QWidget

from assistant.house.model import Complaint, Vocabulary
from assistant.window import look
from assistant.window.flow import Flow
from assistant.window.line import Line
from assistant.window.page.aside.base import AsidePage
from assistant.window.page.choices import Choices
from assistant.window.text import label


class NewVisitPage(AsidePage):
    """`begun` carries (complaint, the customer's words) in the order they were chosen."""

    begun = Signal(object)
    title = "What does the customer say?"

    def __init__(self, vocabulary: Vocabulary, parent: QWidget | None = None) -> None:
        super().__init__(None, parent)
        self.vocabulary = vocabulary
        self.order: list[str] = []
        self.column.addWidget(
            label("One or several, the first one first. Name, address and plate can wait.", soft=True)
        )
        self.choices = Choices(
            [(name, _words(known)) for name, known in vocabulary.complaints.items()],
            2,
            several=True,
        )
        self.choices.picked.connect(self._picked)
        self.column.addWidget(self.choices)
        heading = label("In the customer's own words, if they say it differently")
        self.column.addWidget(heading)
        self.own_words = Line("In the customer's own words, if they say it differently")
        self.own_words.returnPressed.connect(self.enter)
        heading.setBuddy(self.own_words)
        self.column.addWidget(self.own_words)
        other = Flow()
        for name, words in (("telephone", "On the &telephone"), ("tune_up", "T&une-up, no complaint")):
            button = QPushButton(words)
            button.setMinimumHeight(look.TARGET)
            button.clicked.connect(lambda _=False, name=name: self.opens.emit(name))
            other.addWidget(button)
        self.column.addSpacing(8)
        self.column.addLayout(other)
        self.column.addStretch(1)
        self.set_next("&Begin", False)

    def first_focus(self) -> QWidget:
        return self.choices.first()

    def choose(self, digit: int) -> None:
        self.choices.choose(digit)

    def enter(self) -> None:
        """Words of the customer's own belong to the complaint that was chosen first."""
        if not self.order:
            return
        said = self.own_words.text().strip()
        complaints = self.vocabulary.complaints
        self.begun.emit(
            tuple(
                (name, said if said and place == 0 else complaints[name].words)
                for place, name in enumerate(self.order)
            )
        )

    def _picked(self, _: str) -> None:
        chosen = self.choices.chosen
        self.order = [name for name in self.order if name in chosen] + [
            n for n in chosen if n not in self.order
        ]
        titles = [self.vocabulary.complaints[name].title for name in self.order]
        self.say(", then ".join([titles[0], *(title.lower() for title in titles[1:])]) if titles else "")
        self.set_next("&Begin", bool(self.order))


def _words(known: Complaint) -> str:
    """A complaint that no tree walks yet is marked: nothing is asked, a person writes down what was found."""
    mark = "" if known.tree else " (notes only)"
    return f"{known.title}{mark}\n“{known.words}”"
