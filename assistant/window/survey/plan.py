"""The plan of who blows where on the screen, with what the survey says below it, each with how sure it is."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtGui import QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QFrame, QScrollArea, QSizePolicy, QVBoxLayout, QWidget

from assistant.report.zone_plan import Draws
from assistant.trade.zone.reason import Answer
from assistant.walk.survey_plan import (
    conclusions,
    plan_in_words,
    plan_of,
    settles_the_rest,
    with_readings,
)
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
    """Plan, conclusions and what to read next; made anew when a cell has changed. `short`: the plan comes
    last, where there is little room.
    """

    def __init__(self) -> None:
        super().__init__()
        self.setObjectName("paper")
        self.setAttribute(Qt.WidgetAttribute.WA_StyledBackground)
        self.column = QVBoxLayout(self)
        self.column.setContentsMargins(0, 0, 0, 0)
        self.column.setSpacing(4)
        self.short = False
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
        self.lines = []
        if answer is None:
            self.column.addWidget(label(why_not, soft=True))
            self.column.addStretch(1)
            return
        self.lines = conclusions(answer)
        if not self.short:
            self.column.addWidget(PlanView(answer, sheet))
        for line, reading in with_readings(answer) or [(_nothing(sheet), "")]:
            self.column.addWidget(label(line, bold=bool(reading)))
            if reading:
                self.column.addWidget(label(f"To settle it: {reading}"))
        rest = settles_the_rest(answer)
        if rest:
            self.column.addWidget(label("What would settle the rest:", bold=True))
            for each in rest:
                self.column.addWidget(label(f"\u2013 {each}"))
        if self.short:
            self.column.addWidget(PlanView(answer, sheet))
        self.column.addStretch(1)


class Panel(QScrollArea):
    """What the survey says, beside the grid: it scrolls by itself, so that the grid stays where it is."""

    def __init__(self, says: Says) -> None:
        super().__init__()
        self.says = says
        self.setWidgetResizable(True)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)

    def take(self) -> None:
        """Show it here."""
        if self.widget() is not self.says:
            self.setWidget(self.says)
        self.says.show()
        self.show()

    def give(self) -> Says:
        """Let go of it, for another place."""
        if self.widget() is self.says:
            self.takeWidget()
        self.hide()
        return self.says


def _nothing(sheet: Sheet) -> str:
    """No conclusion; and what could not have been seen."""
    if sheet.drawn:
        return "Nothing unusual"
    return "Nothing unusual, but nobody said whose each register should be: one on another's duct is not seen"
