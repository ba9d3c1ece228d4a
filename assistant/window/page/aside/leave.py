"""Before leaving: everything that is still open, each closed, or left open with the reason."""

from __future__ import annotations

from PySide6.QtWidgets import QWidget

from assistant.report.beside import answered
from assistant.walk.event import LeftOpen
from assistant.walk.points import open_points
from assistant.window import look
from assistant.window.line import Line
from assistant.window.page.aside.base import AsidePage
from assistant.window.page.choices import Choices
from assistant.window.session import Driver
from assistant.window.text import label

KIND_WORDS = {
    "undo": "put back before signing",
    "complaint": "complaint",
    "cause": "cause to rule out",
    "part": "to do",
    "proof": "proof of repair",
    "power": "power",
    "note": "note",
    "stop": "stopped",
}


KEY = ("leave", "why it stays open")


class LeavePage(AsidePage):
    """Choose a point and say why it stays open; with nothing typed Enter goes on to name and address."""

    title = "Open points"

    def __init__(self, driver: Driver, parent: QWidget | None = None) -> None:
        super().__init__(driver, parent)
        self.points = open_points(driver.visit)
        if not self.points:
            self.column.addWidget(label("Nothing is open.", look.LEAD))
        else:
            self.column.addWidget(
                label(
                    "Close what you can (Esc leads back). For what stays open choose it here and "
                    "say why; it goes into the report.",
                    soft=True,
                )
            )
        if "before" in driver.vocabulary.sheets:
            said = "; ".join(f"{asked}: {answer}" for asked, answer in answered(driver.visit, "before"))
            self.column.addWidget(label(f"Before starting: {said or 'nothing was written down'}.", soft=True))
        self.choices = Choices([(point.key, self._words(point)) for point in self.points])
        self.choices.picked.connect(lambda _: self.reason.setFocus())
        self.column.addWidget(self.choices)
        self.column.addStretch(1)
        self.reason = Line("Why it stays open", driver.drafts.get(KEY, "") if self.points else "")
        self.reason.setPlaceholderText("why it stays open")
        self.reason.returnPressed.connect(self.enter)
        self.reason.textChanged.connect(self._changed)
        self.own.addWidget(self.reason)
        self.reason.setVisible(bool(self.points))
        self.set_next("&Leave open" if self.reason.text().strip() else "&Next")

    @staticmethod
    def _words(point) -> str:
        head = f"{KIND_WORDS.get(point.kind, point.kind)}: {point.words}"
        return f"{head}\nstays open: {point.left}" if point.left else head

    def first_focus(self) -> QWidget:
        return self.choices.first() if self.points else self.next_button

    def choose(self, digit: int) -> None:
        self.choices.choose(digit)

    def enter(self) -> None:
        why = self.reason.text().strip()
        if not why:
            self.opens.emit("leaving" if self._to_compare() else "person")
        elif not self.choices.chosen:
            self.say("Choose first what stays open.")
        elif self.record(LeftOpen(self.driver.now(), self.choices.chosen[0], why)):
            self.driver.drafts.pop(KEY, None)
            self.opens.emit("leave")

    def _to_compare(self) -> bool:
        """Whether something was written down as found and nothing yet as left."""
        visit = self.driver.visit
        return "settings" in self.driver.vocabulary.sheets and bool(visit.as_found) and not visit.as_left

    def _changed(self, text: str) -> None:
        self.driver.drafts[KEY] = text
        self.set_next("&Leave open" if text.strip() else "&Next")
