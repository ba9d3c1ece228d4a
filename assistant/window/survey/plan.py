"""The plan of who blows where on the screen, with what the survey says below it, each with how sure it is."""

from __future__ import annotations

from PySide6.QtGui import QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QSizePolicy, QVBoxLayout, QWidget

from assistant.report.zone_plan import Draws
from assistant.trade.zone.reason import Answer
from assistant.walk.survey_plan import conclusions, plan_in_words, plan_of, sentence
from assistant.walk.survey_sheet import Sheet
from assistant.window import look
from assistant.window.text import label


class PlanView(QWidget):
    """Draws the plan as wide as it is."""

    def __init__(self, answer: Answer, sheet: Sheet) -> None:
        super().__init__()
        self.plan = plan_of(answer, sheet)
        said = "; ".join(f"{zone}: {registers}" for zone, registers in plan_in_words(self.plan))
        self.setAccessibleName(f"Who blows where: {said}")
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.draws = Draws(self.plan, 400, look.font(look.BODY))
        self.setMinimumHeight(int(self.draws.height) + 1)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self.draws = Draws(self.plan, self.width(), look.font(look.BODY))
        self.setFixedHeight(int(self.draws.height) + 1)

    def paintEvent(self, _event: QPaintEvent) -> None:
        inks = look.inks(self.palette())
        painter = QPainter(self)
        self.draws.paint(painter, inks.text, inks.edge, inks.paper)
        painter.end()


class Says(QWidget):
    """Plan, conclusions and what to read next; made anew when a cell has changed."""

    def __init__(self) -> None:
        super().__init__()
        self.column = QVBoxLayout(self)
        self.column.setContentsMargins(0, 0, 0, 0)
        self.column.setSpacing(6)
        self.lines: list[str] = []

    def in_a_line(self, answer: Answer | None, sheet: Sheet, why_not: str) -> str:
        """The surest conclusion so far, and how many more there are."""
        if answer is None:
            return why_not
        said = conclusions(answer) or [_nothing(sheet)]
        more = f" And {len(said) - 1} more." if len(said) > 1 else ""
        return f"So far: {said[0]}.{more}"

    def show_answer(self, answer: Answer | None, sheet: Sheet, why_not: str) -> None:
        """What is known so far, or the sentence that says why nothing is."""
        while self.column.count():
            item = self.column.takeAt(0)
            if item.widget() is not None:
                item.widget().hide()
                item.widget().deleteLater()
        if answer is None:
            self.lines = []
            self.column.addWidget(label(why_not, soft=True))
            self.column.addStretch(1)
            return
        self.lines = conclusions(answer)
        self.column.addWidget(PlanView(answer, sheet))
        for line in self.lines or [_nothing(sheet)]:
            self.column.addWidget(label(line))
        if answer.settle:
            self.column.addWidget(label("What would settle the rest:", bold=True))
            for each in answer.settle:
                self.column.addWidget(label(f"– {sentence(each)}"))
        self.column.addStretch(1)


def _nothing(sheet: Sheet) -> str:
    """No conclusion; and what could not have been seen."""
    if sheet.drawn:
        return "Nothing unusual"
    return "Nothing unusual, but nobody said whose each register should be: one on another's duct is not seen"
