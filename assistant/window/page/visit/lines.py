"""Questions one below the other: a line to write on, or a row of buttons of which one is chosen."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QButtonGroup, QGridLayout, QPushButton, QWidget

from assistant.house.model import Question
from assistant.window import look
from assistant.window.flow import Flow
from assistant.window.line import Line
from assistant.window.text import label


class Choice(QWidget):
    """A question's few answers side by side, each with its digit. Enter goes on and answers nothing: nobody
    says "no smell of gas" by a key pressed too often. A second press takes the answer back.
    """

    changed = Signal(str)
    up = Signal()
    down = Signal()
    entered = Signal()
    answered = Signal()

    def __init__(self, question: str, choices: tuple[str, ...], chosen: str = "") -> None:
        super().__init__()
        flow = Flow()
        self.setLayout(flow)
        self.group = QButtonGroup(self)
        self.group.setExclusive(False)
        self.buttons: dict[str, QPushButton] = {}
        for number, words in enumerate(choices, 1):
            button = QPushButton(f"{number}  {words}".replace("&", "&&"))
            button.setCheckable(True)
            button.setMinimumHeight(look.TARGET)
            button.setAccessibleName(f"{question}: {number} {words}")
            button.setChecked(words == chosen)
            button.clicked.connect(lambda on, words=words: self._picked(words, on))
            self.group.addButton(button)
            flow.addWidget(button)
            self.buttons[words] = button

    def text(self) -> str:
        """The answer, or nothing."""
        return next((words for words, button in self.buttons.items() if button.isChecked()), "")

    def setText(self, text: str) -> None:
        for words, button in self.buttons.items():
            button.setChecked(words == text)

    def first(self) -> QPushButton:
        return next((b for b in self.buttons.values() if b.isChecked()), next(iter(self.buttons.values())))

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """A digit answers; Left and Right along the answers, Up and Down to the neighbouring question, Enter
        goes on.
        """
        buttons = list(self.buttons.values())
        place = next((i for i, button in enumerate(buttons) if button.hasFocus()), 0)
        step = {Qt.Key.Key_Left: -1, Qt.Key.Key_Right: 1}.get(event.key())
        if step is not None:
            buttons[(place + step) % len(buttons)].setFocus()
        elif event.key() == Qt.Key.Key_Up:
            self.up.emit()
        elif event.key() == Qt.Key.Key_Down:
            self.down.emit()
        elif event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.entered.emit()
        elif 0 <= (digit := event.key() - Qt.Key.Key_1) < len(buttons):
            if not self._hasty():
                if not buttons[digit].isChecked():
                    buttons[digit].click()
                self.answered.emit()
        else:
            super().keyPressEvent(event)

    def _hasty(self) -> bool:
        """Whether the page takes this key for one that was meant for the page before."""
        above = self.parentWidget()
        while above is not None and not hasattr(above, "hasty"):
            above = above.parentWidget()
        return above is not None and above.hasty()

    def _picked(self, words: str, on: bool) -> None:
        for other, button in self.buttons.items():
            if other != words:
                button.setChecked(False)
        self.changed.emit(words if on else "")


class Lines(QWidget):
    """`typed` carries (question, text) at every change; `done` is sent by Enter in the last line. `known`
    gives what a field begins with; `beside` stands between question and field.
    """

    typed = Signal(str, str)
    done = Signal()
    past = Signal()
    """The last question was answered by a digit."""

    def __init__(
        self,
        questions: dict[str, Question],
        known: Callable[[str], str],
        beside: dict[str, str] | None = None,
        heads: tuple[str, str] = ("", ""),
    ) -> None:
        super().__init__()
        self.fields: dict[str, Line | Choice] = {}
        self.labels = []
        self.questions = questions
        self.grid = QGridLayout(self)
        self.grid.setContentsMargins(0, 0, 0, 0)
        self.grid.setHorizontalSpacing(14)
        self.grid.setVerticalSpacing(8)
        self.beside = beside is not None
        if beside is not None:
            for column, head in enumerate(heads, 1):
                self.grid.addWidget(label(head, bold=True), 0, column)
        for row, (name, question) in enumerate(questions.items(), 1):
            field = self._field(name, question, known(name))
            words = label(question.words)
            if isinstance(field, Line):
                words.setBuddy(field)
            self.labels.append(words)
            self.grid.addWidget(words, row, 0)
            if beside is not None:
                self.grid.addWidget(label(beside.get(name, "") or "–", soft=True), row, 1)
            self.grid.addWidget(field, row, 2 if beside is not None else 1)
            self.fields[name] = field
        last = 2 if beside is not None else 1
        self.grid.setColumnStretch(0, 2)
        self.grid.setColumnStretch(last, 3)
        if beside is not None:
            self.grid.setColumnStretch(1, 2)

    def _field(self, name: str, question: Question, text: str) -> Line | Choice:
        if question.choices:
            field = Choice(question.words, question.choices, text)
            field.changed.connect(lambda said: self.typed.emit(name, said))
            field.entered.connect(lambda: self.step(name, 1, True))
            field.answered.connect(lambda: self.step(name, 1))
        else:
            field = Line(question.words, text)
            field.setPlaceholderText(question.hint)
            field.textChanged.connect(lambda said: self.typed.emit(name, said))
            field.returnPressed.connect(lambda: self.step(name, 1, True))
        field.up.connect(lambda: self.step(name, -1))
        field.down.connect(lambda: self.step(name, 1))
        return field

    def texts(self) -> dict[str, str]:
        """What is answered now, in the order of the page."""
        return {name: text for name, field in self.fields.items() if (text := field.text().strip())}

    def first(self) -> QWidget:
        return _focus_of(next(iter(self.fields.values())))

    def last(self) -> QWidget:
        """The last thing on it that Tab comes to."""
        field = next(reversed(self.fields.values()))
        return next(reversed(field.buttons.values())) if isinstance(field, Choice) else field

    def step(self, name: str, by: int, enter: bool = False) -> None:
        """The focus to a neighbouring question; Enter in the last one is `done`."""
        names = list(self.fields)
        place = names.index(name) + by
        if 0 <= place < len(names):
            _focus_of(self.fields[names[place]]).setFocus(Qt.FocusReason.TabFocusReason)
        elif enter:
            self.done.emit()
        elif by > 0:
            self.past.emit()

    def stack(self, tiny: bool) -> None:
        """In a tiny window the words stand above their field."""
        if self.beside:
            return
        for row, (words, field) in enumerate(zip(self.labels, self.fields.values(), strict=True)):
            self.grid.removeWidget(words)
            self.grid.removeWidget(field)
            if tiny:
                self.grid.addWidget(words, 2 * row, 0, 1, 2)
                self.grid.addWidget(field, 2 * row + 1, 0, 1, 2)
            else:
                self.grid.addWidget(words, row + 1, 0)
                self.grid.addWidget(field, row + 1, 1)


def _focus_of(field: Line | Choice) -> QWidget:
    return field.first() if isinstance(field, Choice) else field
