"""Waiting for a part: what to order with the data it is chosen by, and what is done first next time."""

from __future__ import annotations

from assistant.house.model import Vocabulary
from assistant.walk.event import Paused
from assistant.walk.waiting import Wanted, next_time, wanted
from assistant.window import look
from assistant.window.page.visit.held import Held
from assistant.window.page.visit.sheet import SheetPage
from assistant.window.session import Driver
from assistant.window.text import banner, label, rule
from assistant.window.words import day

WHY = "Waiting for a part"


def show_wanted(page, driver: Driver) -> None:
    """The parts waited for, as lines of a page."""
    for each in wanted(driver.visit):
        page.column.addWidget(label(each.title[:1].upper() + each.title[1:], look.LEAD, bold=True))
        for line in lines_of(each, driver.vocabulary):
            page.column.addWidget(label(line))
        if each.causes_open:
            page.column.addWidget(banner("Why the old one failed is not answered yet. Answer that first."))
        if each.before:
            times = ", ".join(day(at) for at in each.before)
            page.column.addWidget(banner(f"We fitted one here before: {times}."))


def lines_of(each: Wanted, vocabulary: Vocabulary) -> list[str]:
    """What it is chosen by, in lines, with how well that is known."""
    mark = vocabulary.marks.get("parts", "")
    known = f" ({mark})" if mark else ""
    said = [f"A substitute must not differ in{known}: {'; '.join(each.matches)}"] if each.matches else []
    said += [f"{name[:1].upper()}{name[1:]}: {value}" for name, value in each.plate]
    said += [f"Ordered with it: {'; '.join(each.together)}"] if each.together else []
    return said or ["Nothing is known of what it must match. Take a photo of the old one and its label."]


class WaitingPage(SheetPage):
    """Saving pauses the visit; with nothing to wait for it says so."""

    sheet_name = "order"
    held: Held | None = None

    def before_lines(self) -> None:
        driver = self.driver
        if not wanted(driver.visit):
            self.column.addWidget(label("No part is waited for: none was found to have failed yet."))
        show_wanted(self, driver)
        unit = driver.visit.sheets.get("unit", {})
        known = [unit[name] for name in ("make", "model", "serial") if unit.get(name)]
        self.column.addWidget(
            label(
                f"For: {', '.join(known)}"
                if known
                else "Make, model and serial number are not written down yet."
            )
        )
        if unit.get("warranty"):
            self.column.addWidget(label(f"Warranty ends: {unit['warranty']}"))
        self.column.addWidget(rule())

    def after_lines(self) -> None:
        if self.driver.visit.paused is None and wanted(self.driver.visit):
            self.held = Held(self.driver)
            self.held.typed.connect(self._state)
            self.held.entered.connect(self.enter)
            self.column.addWidget(self.held)
        self.column.addWidget(rule())
        self.column.addWidget(label("Next time, in this order", bold=True))
        for number, line in enumerate(next_time(self.driver.visit), 1):
            self.column.addWidget(label(f"{number}. {line}"))

    def enter(self) -> None:
        if self.held is not None and (trouble := self.held.missing()):
            self.say(trouble)
            self.held.ask(self.scroll)
            return
        super().enter()

    def saved(self) -> None:
        """The part is ordered: the visit pauses, and goes on another day."""
        answers = self.driver.visit.sheets.get("order", {})
        due = f", expected {answers['due']}" if answers.get("due") else ""
        if self.driver.visit.paused is None and wanted(self.driver.visit):
            reason = self.held.words() if self.held is not None else ""
            if not self.record(Paused(self.driver.now(), f"{WHY}{due}{reason}")):
                return
            if self.held is not None:
                self.held.done()
        self.left.emit()

    def _state(self) -> None:
        super()._state()
        if self.driver.visit.paused is None and wanted(self.driver.visit):
            self.set_next("&Pause here")
