"""Looking back: each apprentice's drills over time, as a plot and a list, and saved as a table or a page."""

from __future__ import annotations

from PySide6.QtCore import QSize, Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QListWidgetItem, QPushButton, QWidget

from assistant.drill.practice.record import Done, apprentices, history, to_csv
from assistant.errors import UserError
from assistant.trail.practice import WORDS
from assistant.window import files, look
from assistant.window.flow import Flow
from assistant.window.listing import Listing
from assistant.window.page.base import Page
from assistant.window.page.drill.paper import history_pdf
from assistant.window.page.drill.plot import Plot
from assistant.window.page.drill.told import write
from assistant.window.text import label


class Few(Listing):
    """A list that asks for no more than its least height, so that page and plot fit a small screen."""

    def sizeHint(self) -> QSize:
        return QSize(super().sizeHint().width(), self.minimumHeight())


class HistoryPage(Page):
    """One apprentice at a time; their names are buttons."""

    takes_digits = False
    opened = Signal(object)
    """Carries the Done whose debrief is to be read."""

    def __init__(self, who: str = "", parent: QWidget | None = None) -> None:
        super().__init__(None, parent)
        self.done: list[Done] = []
        self.heading = label("Looking back", look.QUESTION)
        self.column.addWidget(self.heading)
        self.column.addWidget(label(WORDS, look.SMALL, soft=True))
        row = Flow()
        self.names: dict[str, QPushButton] = {}
        for name in apprentices():
            button = QPushButton(name)
            button.setAccessibleName(name)
            button.setCheckable(True)
            button.setMinimumHeight(look.TARGET)
            button.setFont(look.font(look.BODY))
            button.clicked.connect(lambda _=False, name=name: self.show_one(name))
            self.names[name] = button
            row.addWidget(button)
        self.column.addLayout(row)
        self.plot = Plot()
        self.column.addWidget(self.plot, 3)
        self.list = Few("Drills, the latest first", 60)
        self.column.addWidget(self.list, 2)
        self.list.itemDoubleClicked.connect(lambda _: self.open())
        saves = Flow()
        for words, act in (
            ("Read its &debrief", self.open),
            ("Save as &table\u2026", self.save_table),
            ("Save as &PDF\u2026", self.save_page),
        ):
            button = QPushButton(words)
            button.setMinimumHeight(look.TARGET)
            button.clicked.connect(act)
            saves.addWidget(button)
        self.own.addLayout(saves)
        self.set_next("&Back to the drills")
        known = next((name for name in self.names if name.lower() == who.lower()), None)
        self.who = ""
        if known or self.names:
            self.show_one(known or next(iter(self.names)))
        else:
            self.say("No drill was ended yet.")

    def show_one(self, name: str) -> None:
        """This apprentice's drills."""
        self.who = name
        for one, button in self.names.items():
            button.setChecked(one == name)
        try:
            self.done = history(name)
        except UserError as problem:
            self.done = []
            self.say(str(problem))
        self.heading.setText(f"Looking back: {name}")
        self.plot.show_done(self.done)
        self.list.clear()
        for one in reversed(self.done):
            self.list.addItem(QListWidgetItem(line(one)))

    def open(self) -> None:
        """The debrief of the drill that is selected, of the latest where none is."""
        if not self.done:
            self.say("No drill was ended yet.")
            return
        row = max(0, self.list.currentRow())
        self.opened.emit(self.done[len(self.done) - 1 - row])

    def save_table(self) -> None:
        """As CSV."""
        place = files.pick_file(self, "practice.csv", "Table (*.csv)")
        if place is not None:
            self.say(write(place, b"\xef\xbb\xbf" + to_csv(self.done).encode("utf-8")))

    def save_page(self) -> None:
        """As a PDF, for printing."""
        place = files.pick_file(self, "practice.pdf", "PDF (*.pdf)")
        if place is not None:
            self.say(write(place, history_pdf(self.who, self.done)))

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() == Qt.Key.Key_Escape:
            self.left.emit()
        else:
            super().keyPressEvent(event)


def line(one: Done) -> str:
    """One drill in the list."""
    first = "right first time" if one.right_first else "right later" if one.right else "not found"
    cause = {True: "cause named", False: "cause missed", None: "no cause asked"}[one.cause]
    beyond = "" if one.beyond is None else f", {one.beyond} beyond the shortest"
    asked = "1 look or reading" if one.asked == 1 else f"{one.asked} looks and readings"
    empty = "debrief not ready" if one.told_nothing is None else f"{one.told_nothing} told nothing new"
    way = "along the tree" if one.way == "tree" else "free"
    return (
        f"{one.began[:10]} \u00b7 {one.drill.replace('_', ' ')} \u00b7 {one.difficulty} \u00b7 {way}\n"
        f"{first}; {cause}; {asked}{beyond}; "
        f"{empty}; {one.unsafe} unsafe; {one.minutes:.0f} min"
    )
