"""How it went: while other houses are gone through the page says so, then it tells, in a foreman's words."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from pathlib import Path

from PySide6.QtCore import QTimer, Signal
from PySide6.QtWidgets import QBoxLayout, QHBoxLayout, QProgressBar, QPushButton, QVBoxLayout, QWidget

from assistant.drill.practice.debrief import Debrief, Section, Soon
from assistant.trail.practice import WORDS
from assistant.window import files, look
from assistant.window.page.base import TINY, Page
from assistant.window.text import banner, label, rule

GOING = "Still to come: what told nothing new. Doing the same in other houses:"


class ToldPage(Page):
    """`steps` is the debrief's generator; a bit of it runs at each turn of the event loop, so that the page
    can be left meanwhile. `done` carries the Debrief.
    """

    done = Signal(object)

    def __init__(
        self, steps: Iterator, title: str, paper: Callable[[Debrief], bytes], parent: QWidget | None = None
    ) -> None:
        super().__init__(None, parent)
        self.steps, self.paper = steps, paper
        self.told: Debrief | None = None
        self.column.addWidget(banner(WORDS))
        self.column.addWidget(label(title, look.QUESTION))
        self.early = QWidget()
        self.early.setLayout(QVBoxLayout())
        self.early.layout().setContentsMargins(0, 0, 0, 0)
        self.column.addWidget(self.early)
        self.column.addStretch(1)
        self.saves = QPushButton("Save as &PDF\u2026")
        self.saves.setAccessibleName("Save as PDF\u2026")
        self.saves.setMinimumHeight(look.TARGET)
        self.saves.clicked.connect(self.save)
        self.saves.setEnabled(False)
        self.progress = QProgressBar()
        self.progress.setAccessibleName("Houses gone through")
        self.progress.setTextVisible(False)
        self.progress.setFixedHeight(12)
        self.progress.setRange(0, 1)
        policy = self.progress.sizePolicy()
        policy.setRetainSizeWhenHidden(True)
        self.progress.setSizePolicy(policy)
        row = QHBoxLayout()
        row.addWidget(self.saves)
        row.addWidget(self.progress, 1)
        self.own.addLayout(row)
        self.say(f"{GOING} ...", sure=False)
        self.set_next("&Back to the drills")
        self.timer = QTimer(self)
        self.timer.setInterval(0)
        self.timer.timeout.connect(self._on)
        self.timer.start()

    def _on(self) -> None:
        step = next(self.steps, None)
        if isinstance(step, Soon):
            _lay(self.early.layout(), step.sections)
            return
        if isinstance(step, tuple):
            done, of_all = step
            self.progress.setRange(0, of_all)
            self.progress.setValue(done)
            self.say(f"{GOING} {done} of {of_all}.", sure=False)
            return
        self.timer.stop()
        if isinstance(step, Debrief):
            self._show(step)
            self.done.emit(step)

    def save(self) -> None:
        """As a PDF, where the person says."""
        place = files.pick_file(self, "practice-drill.pdf", "PDF (*.pdf)")
        if place is not None and self.told is not None:
            self.say(write(place, self.paper(self.told)))

    def _show(self, told: Debrief) -> None:
        self.told = told
        self.progress.hide()
        self.say("")
        self.column.takeAt(self.column.count() - 1)  # the stretch at the end
        shown = self.early.layout().count()
        _lay(self.column, told.sections, shown)
        self.column.addWidget(rule())
        self.paths = QBoxLayout(QBoxLayout.Direction.LeftToRight)
        self.paths.setSpacing(18)
        self.paths.addLayout(_path("Your path", told.own_path), 1)
        if told.best_path:
            self.paths.addLayout(_path(f"The shortest good path ({told.best_by})", told.best_path), 1)
        self.column.addLayout(self.paths)
        self.column.addStretch(1)
        self.saves.setEnabled(True)
        self.fold(self.mode)
        self.next_button.setFocus()

    def fold(self, mode: str) -> None:
        super().fold(mode)
        if hasattr(self, "paths"):
            tiny = mode == TINY
            self.paths.setDirection(
                QBoxLayout.Direction.TopToBottom if tiny else QBoxLayout.Direction.LeftToRight
            )

    def hideEvent(self, event) -> None:
        super().hideEvent(event)
        if self.window().isHidden():
            self.timer.stop()


def _lay(column, sections: tuple[Section, ...], shown: int = 0) -> None:
    """Headings and lines, but for the first so many labels, which stand already."""
    made = [
        (text, head)
        for section in sections
        for text, head in ((section.title, True), *((line, False) for line in section.lines))
    ]
    for text, head in made[shown:]:
        column.addWidget(label(text, look.LEAD if head else look.BODY, bold=head))


def _path(title: str, lines) -> QVBoxLayout:
    column = QVBoxLayout()
    column.addWidget(label(title, look.LEAD, bold=True))
    for n, line in enumerate(lines, 1):
        column.addWidget(label(f"{n}. {line}"))
    column.addStretch(1)
    return column


def write(place: Path, data: bytes) -> str:
    """What became of it, in a sentence."""
    try:
        place.write_bytes(data)
    except OSError as problem:
        return f"It can't be written to {place} ({problem.strerror}). Choose another folder."
    return f"It is in {place}."
