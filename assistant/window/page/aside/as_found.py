"""As found, in under a minute: what the code light, the switch and the thermostat showed before anything was
touched. The code light is read before the door opens: opening the door wipes it on many boards."""

from __future__ import annotations

from PySide6.QtWidgets import QGridLayout, QWidget

from assistant.walk.event import AsFound
from assistant.window.line import Line
from assistant.window.page.aside.base import AsidePage
from assistant.window.page.aside.photos import Photos
from assistant.window.session import Driver
from assistant.window.text import label

ASKED = (
    ("code_light", "Code light, door still on", "flashes and colour, or off"),
    ("service_switch", "Service switch", "on or off"),
    ("thermostat", "Thermostat", "mode, set and room temperature"),
    ("touched", "Who touched it last, and what", "a name, or not known"),
)


def settings(driver: Driver) -> tuple[tuple[str, str, str], ...]:
    """The shop's other settings, below what everybody asks: as left stands beside them in the report."""
    sheet = driver.vocabulary.sheets.get("settings")
    asked = {name for name, *_ in ASKED}
    questions = sheet.questions if sheet else {}
    return tuple((name, q.words, q.hint) for name, q in questions.items() if name not in asked)


class AsFoundPage(AsidePage):
    """Every line may stay empty; Enter goes down, and saves after the last."""

    title = "As found"
    takes_digits = False

    def __init__(self, driver: Driver, parent: QWidget | None = None) -> None:
        super().__init__(driver, parent)
        self.column.addWidget(
            label("Before anything is touched. Leave out what you can't see from here.", soft=True)
        )
        grid = QGridLayout()
        grid.setColumnStretch(1, 1)
        grid.setHorizontalSpacing(14)
        known = driver.visit.as_found.seen if driver.visit.as_found else {}
        self.lines: dict[str, Line] = {}
        for row, (name, asked, hint) in enumerate((*ASKED, *settings(driver))):
            line = Line(asked, driver.drafts.get(("as_found", name), known.get(name, "")))
            line.setPlaceholderText(hint)
            line.textChanged.connect(lambda text, name=name: self._typed(name, text))
            line.up.connect(lambda row=row: self._go(row - 1))
            line.down.connect(lambda row=row: self._go(row + 1))
            line.returnPressed.connect(lambda row=row: self._down(row))
            text = label(asked)
            text.setBuddy(line)
            grid.addWidget(text, row, 0)
            grid.addWidget(line, row, 1)
            self.lines[name] = line
        self.column.addLayout(grid)
        self.photos = Photos(driver, "as_found")
        self.photos.changed.connect(self._changed)
        self.photos.trouble.connect(self.say)
        self.column.addWidget(self.photos)
        self.column.addStretch(1)
        self.tell_restored("as_found")
        self.button_after(self.photos.button)
        self._changed()

    def first_focus(self) -> QWidget:
        return next(iter(self.lines.values()))

    def enter(self) -> None:
        seen = {name: line.text().strip() for name, line in self.lines.items() if line.text().strip()}
        if seen or self.photos.kept:
            event = AsFound(self.driver.now(), seen, tuple(kept for kept, _ in self.photos.kept))
            if not self.record(event):
                return
            for name in self.lines:
                self.driver.drafts.pop(("as_found", name), None)
            self.photos.saved()
        self.left.emit()

    def _go(self, row: int) -> None:
        lines = list(self.lines.values())
        if 0 <= row < len(lines):
            lines[row].setFocus()

    def _down(self, row: int) -> None:
        lines = list(self.lines.values())
        if row + 1 < len(lines):
            lines[row + 1].setFocus()
        else:
            self.enter()

    def _typed(self, name: str, text: str) -> None:
        self.driver.drafts["as_found", name] = text
        self._changed()

    def _changed(self) -> None:
        anything = any(line.text().strip() for line in self.lines.values()) or self.photos.kept
        self.set_next("Sa&ve" if anything else "S&kip")
