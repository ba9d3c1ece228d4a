"""What our own calls say: findings and how often they held, where the time goes, and what was idle."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtWidgets import QButtonGroup, QFileDialog, QPushButton, QVBoxLayout, QWidget

from assistant.past.calls import CALL_BACK_DAYS, FEW, as_csv, findings, never_changed, step_costs
from assistant.trail.clock import now
from assistant.window import look
from assistant.window.bars import Bar, Bars
from assistant.window.flow import Flow
from assistant.window.page.aside.base import AsidePage
from assistant.window.refused import Refused
from assistant.window.text import label
from assistant.window.words import plain

if TYPE_CHECKING:
    from assistant.window.desk import Desk
    from assistant.window.session import Driver

SHOWN = 25
TABLES = ("Findings", "Where the time goes", "Never changed anything")


class CallsPage(AsidePage):
    """Three tables of one page each; 1 to 3 choose, the numbers can be taken along as CSV."""

    title = "What our calls say"
    next_words = "&Back to the list"

    def __init__(self, desk: Desk, driver: Driver | None = None, parent: QWidget | None = None) -> None:
        super().__init__(driver, parent)
        self.desk = desk
        if driver is not None:
            self.set_next("&Back to it")
        self.tables: dict[str, list] = {}
        row = Flow()
        self.group = QButtonGroup(self)
        for number, words in enumerate(TABLES, 1):
            button = QPushButton(f"{number}  {words}")
            button.setAccessibleName(f"{number} {words}")
            button.setCheckable(True)
            button.setMinimumHeight(look.TARGET)
            button.clicked.connect(lambda _=False, name=words: self._show(name))
            self.group.addButton(button)
            row.addWidget(button)
        self.column.addLayout(row)
        self.under = QVBoxLayout()
        self.column.addLayout(self.under)
        self.column.addStretch(1)
        self.save = QPushButton("Save the three tables as &CSV")
        self.save.setMinimumHeight(look.TARGET)
        self.save.clicked.connect(self._save)
        self.own.addWidget(self.save)
        self._count()
        self.group.buttons()[0].click()

    def choose(self, digit: int) -> None:
        if digit <= len(TABLES):
            self.group.buttons()[digit - 1].click()

    def _count(self) -> None:
        try:
            while self.desk.read_visits(0.2, anew="memory" not in vars(self.desk)):
                pass
        except Refused as problem:
            self.say(str(problem))
        store = self.desk.memory.store
        self.tables = {
            "Findings": findings(store, now()),
            "Where the time goes": step_costs(store),
            "Never changed anything": never_changed(store),
        }
        self.save.setEnabled(any(self.tables.values()))

    def _show(self, name: str) -> None:
        while self.under.count():
            old = self.under.takeAt(0).widget()
            old.hide()
            old.deleteLater()
        intro, bars = {
            "Findings": self._findings,
            "Where the time goes": self._costs,
            "Never changed anything": self._idle,
        }[name]()
        count = self.desk.memory.count()
        of = f"From {count:,} visits of our own; practice is not among them. "
        self.under.addWidget(label(of + intro if bars else of + "Nothing to show yet.", soft=True))
        if bars:
            self.under.addWidget(Bars(bars[:SHOWN]))
        if len(bars) > SHOWN:
            self.under.addWidget(label(f"And {len(bars) - SHOWN} more: they are in the CSV file.", soft=True))

    def _findings(self) -> tuple[str, list[Bar]]:
        intro = (
            f"Full: no call from that address for {CALL_BACK_DAYS} days after. Hatched: there was one. "
            f"Dotted: less than {CALL_BACK_DAYS} days ago. Empty: no address."
        )
        return intro, [
            Bar(
                f"{self._complaint(row.complaint)}: {row.title}",
                _counted(
                    (row.visits, "in all"),
                    (row.held, "held"),
                    (row.came_back, "came back"),
                    (row.too_early, "too early to say"),
                    (row.unknown, "no address"),
                ),
                (row.held, row.came_back, row.too_early, row.unknown),
            )
            for row in self.tables["Findings"]
        ]

    def _costs(self) -> tuple[str, list[Bar]]:
        return "Minutes between the answer before and the step's own, in all.", [
            Bar(
                self._question(row.step),
                f"{row.total_minutes:,.0f} min in all, {row.times} times {row.mean_minutes:.1f} min",
                (row.total_minutes,),
            )
            for row in self.tables["Where the time goes"]
        ]

    def _idle(self) -> tuple[str, list[Bar]]:
        intro = (
            f"Taken {FEW} times or more, and it led the same way every time. That alone is no reason to drop "
            "it."
        )
        return intro, [
            Bar(self._question(row.step), f"{row.times} times, {row.minutes:,.0f} min in all", (row.times,))
            for row in self.tables["Never changed anything"]
        ]

    def _complaint(self, name: str) -> str:
        known = self.desk.library.vocabulary.complaints.get(name)
        return known.title if known else plain(name)

    def _question(self, address: str) -> str:
        """What the step asks; its name where the trees of today don't have it any more."""
        try:
            asks = self.desk.library.step(address)[1].ask
        except KeyError:
            asks = ""
        return asks or plain(address.partition(".")[2])

    def _save(self) -> None:
        chosen = QFileDialog.getExistingDirectory(self, "A folder for the three tables")
        if chosen:
            self.save_to(Path(chosen))

    def save_to(self, folder: Path) -> None:
        """The three tables into this folder."""
        try:
            for name, rows in self.tables.items():
                file = folder / f"{name.lower().replace(' ', '-')}.csv"
                file.write_text(as_csv(rows), encoding="utf-8", newline="")
        except OSError as problem:
            self.say(f"The tables can't be written to {folder} ({problem.strerror}). Choose another folder.")
            return
        self.say(f"The tables are in {folder}.")


def _counted(*counts: tuple[int, str]) -> str:
    return ", ".join(f"{count} {words}" for count, words in counts if count)
