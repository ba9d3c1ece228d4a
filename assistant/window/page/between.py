"""Between two walks: which complaint next, a complaint handed over, one without a tree yet, a visit
paused.
"""

from __future__ import annotations

from PySide6.QtWidgets import QPlainTextEdit, QWidget

from assistant.walk.ask import Ask
from assistant.walk.cleared import said_cleared
from assistant.walk.event import GoOn, Resumed, Settled, TakeUp
from assistant.walk.points import NOT_CLOSED
from assistant.window import look
from assistant.window.line import Line
from assistant.window.page.base import Page
from assistant.window.page.choices import Choices
from assistant.window.session import Driver
from assistant.window.text import banner, label, rule


class BetweenPage(Page):
    """The question in large type; subclasses add the answer."""

    def __init__(self, driver: Driver, ask: Ask, question: str, parent: QWidget | None = None) -> None:
        super().__init__(driver, parent)
        self.ask = ask
        self.question = label(question, look.QUESTION)
        self.column.addWidget(self.question)

    def send(self, event) -> None:
        if self.record(event):
            self.left.emit()


class ChoosePage(BetweenPage):
    """The complaints that are not settled; one is taken up, or the visit is handed over as it is."""

    HAND_OVER = "hand over"
    HEALTHY = "healthy numbers"

    def __init__(self, driver: Driver, ask: Ask, parent: QWidget | None = None) -> None:
        super().__init__(driver, ask, ask.say or "Which complaint next?", parent)
        listed = []
        for name in ask.choices or (() if driver.visit.complaints else tuple(driver.vocabulary.complaints)):
            state = driver.visit.state_of(name)
            known = driver.vocabulary.complaints.get(name)
            note = state.note or NOT_CLOSED.get(state.status, state.status) if state else ""
            listed.append((name, f"{known.title if known else name}\n{note}"))
        cleared = said_cleared(driver.visit)
        if cleared:
            self.column.addWidget(
                banner(f"Cleared by {cleared}. Read the room again at the door before anything is switched.")
            )
        elif not driver.visit.complaints and driver.vocabulary.baseline:
            listed.insert(0, (self.HEALTHY, "Healthy numbers\nno complaint: what this unit reads when well"))
        listed.append((self.HAND_OVER, "Hand over as it is\nopen points, name and address, sign, report"))
        self.choices = Choices(listed)
        self.choices.picked.connect(lambda _: self.set_next("&Next"))
        self.column.addWidget(self.choices)
        self.column.addStretch(1)
        self.set_next("&Next", False)

    def first_focus(self) -> QWidget:
        return self.choices.first()

    def choose(self, digit: int) -> None:
        self.choices.choose(digit)

    def enter(self) -> None:
        if not self.choices.chosen:
            return
        if self.choices.chosen[0] == self.HAND_OVER:
            self.opens.emit("leave")
        elif self.choices.chosen[0] == self.HEALTHY:
            self.opens.emit("baseline")
        else:
            self.send(TakeUp(self.driver.now(), self.choices.chosen[0]))


class HandedOverPage(BetweenPage):
    """This walk leads to another complaint."""

    def __init__(self, driver: Driver, ask: Ask, parent: QWidget | None = None) -> None:
        super().__init__(driver, ask, f"Goes on as: {ask.say}", parent)
        self.column.addWidget(label("This is no finding. What was read so far is kept and counts there too."))
        self.column.addStretch(1)

    def enter(self) -> None:
        self.send(GoOn(self.driver.now(), self.ask.step))


class SettlePage(BetweenPage):
    """A complaint without a tree yet is settled with a few words."""

    takes_digits = False

    def __init__(self, driver: Driver, ask: Ask, parent: QWidget | None = None) -> None:
        super().__init__(driver, ask, ask.say, parent)
        state = driver.visit.state_of(ask.complaint or "")
        if state is not None:
            self.column.addWidget(label(f"The customer says: {state.words}"))
        words = label(
            "There is no tree for this yet. Write down what you found, what you did, and what is left to do."
        )
        self.column.addWidget(words)
        self.note = QPlainTextEdit()
        self.note.setAccessibleName("What you found, what you did, and what is left to do")
        self.note.setTabChangesFocus(True)
        self.note.setFont(look.font(look.LEAD))
        self.note.setMinimumHeight(120)
        self.note.setPlainText(driver.drafts.get(("note", ask.complaint or ""), ""))
        self.note.textChanged.connect(self._typed)
        self.column.addWidget(self.note, 1)
        self.set_next("&Next", bool(self.note.toPlainText().strip()))
        self.say("Alt+N goes on" if self.note.toPlainText().strip() else "")

    def first_focus(self) -> QWidget:
        return self.note

    def enter(self) -> None:
        self.send(Settled(self.driver.now(), self.ask.complaint, self.note.toPlainText().strip()))

    def _typed(self) -> None:
        text = self.note.toPlainText()
        self.driver.drafts["note", self.ask.complaint or ""] = text
        self.set_next("&Next", bool(text.strip()))
        self.say("Alt+N goes on" if text.strip() else "")


class PausedPage(BetweenPage):
    """What is open comes first. Taken up again, nobody knows what was switched meanwhile; the walk says so by
    asking again.
    """

    takes_digits = False

    def __init__(self, driver: Driver, ask: Ask, parent: QWidget | None = None) -> None:
        super().__init__(driver, ask, "Paused", parent)
        from assistant.report.beside import answered
        from assistant.walk.points import open_points
        from assistant.window.page.visit.waiting import show_wanted

        self.column.addWidget(label(ask.say, look.LEAD))
        points = open_points(driver.visit)
        if points:
            self.column.addWidget(label("Open now", bold=True))
            for point in points:
                left = f" (left open: {point.left})" if point.left else ""
                self.column.addWidget(label(f"– {point.words}{left}"))
            self.column.addWidget(rule())
        self.column.addWidget(
            label(
                "When you go on, every circuit counts as not known: the first step that needs "
                "power on, off or dead asks for it again."
            )
        )
        first = driver.visit.sheets.get("order", {}).get("first", "")
        if first:
            self.column.addWidget(label(f"First: {first}", bold=True))
        show_wanted(self, driver)
        night = answered(driver.visit, "tonight")
        if night:
            self.column.addWidget(label("Left for the night", look.LEAD, bold=True))
            for asked, said in night:
                self.column.addWidget(label(f"{asked}: {said}"))
        self.column.addStretch(1)
        self.by = Line("Who goes on")
        self.by.setPlaceholderText("who goes on, if it is somebody else")
        self.by.returnPressed.connect(self.enter)
        self.own.addWidget(self.by)
        self.button_after(self.by)
        self.set_next("&Go on")

    def first_focus(self) -> QWidget:
        return self.by

    def enter(self) -> None:
        self.send(Resumed(self.driver.now(), self.by.text().strip()))
