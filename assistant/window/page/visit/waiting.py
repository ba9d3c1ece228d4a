"""Waiting for a part: what to order with the data it is chosen by, and what is done first next time."""

from __future__ import annotations

from PySide6.QtWidgets import QWidget

from assistant.walk.event import Paused
from assistant.walk.waiting import Wanted, next_time, wanted
from assistant.window import look
from assistant.window.page.visit.sheet import SheetPage
from assistant.window.session import Driver
from assistant.window.text import banner, label, rule
from assistant.window.words import day

WHY = "Waiting for a part"


def show_wanted(page, driver: Driver) -> None:
    """The parts waited for, as lines of a page."""
    for each in wanted(driver.visit):
        page.column.addWidget(label(each.title[:1].upper() + each.title[1:], look.LEAD, bold=True))
        for line in lines_of(each):
            page.column.addWidget(label(line))
        if each.causes_open:
            page.column.addWidget(banner("Why the old one failed is not answered yet. Answer that first."))
        if each.before:
            times = ", ".join(day(at) for at in each.before)
            page.column.addWidget(banner(f"We fitted one here before: {times}."))


def lines_of(each: Wanted) -> list[str]:
    """What it is chosen by, in lines."""
    said = [f"A substitute must not differ in: {'; '.join(each.matches)}"] if each.matches else []
    said += [f"{name[:1].upper()}{name[1:]}: {value}" for name, value in each.plate]
    said += [f"Ordered with it: {'; '.join(each.together)}"] if each.together else []
    return said or ["Nothing is known of what it must match. Take a photo of the old one and its label."]


class WaitingPage(SheetPage):
    """Saving pauses the visit; with nothing to wait for it says so."""

    sheet_name = "order"

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
        self.column.addWidget(rule())
        self.column.addWidget(label("Next time, in this order", bold=True))
        for number, line in enumerate(next_time(self.driver.visit), 1):
            self.column.addWidget(label(f"{number}. {line}"))

    def saved(self) -> None:
        """The part is ordered: the visit pauses, and goes on another day."""
        answers = self.driver.visit.sheets.get("order", {})
        due = f", expected {answers['due']}" if answers.get("due") else ""
        if self.driver.visit.paused is None and wanted(self.driver.visit):
            self.record(Paused(self.driver.now(), f"{WHY}{due}"))
        self.left.emit()

    def _state(self) -> None:
        super()._state()
        if self.driver.visit.paused is None and wanted(self.driver.visit):
            self.set_next("&Pause here")

    def first_focus(self) -> QWidget:
        return self.next_button
