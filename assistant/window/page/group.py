"""Several readings of one act on one page, straight down: the dead-proof, three windings, a pressure
split.
"""

from __future__ import annotations

from dataclasses import dataclass

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QGridLayout, QLabel, QPushButton, QWidget

from assistant.quantity.interval import Interval
from assistant.tree.model import Reading
from assistant.walk.ask import Ask
from assistant.walk.event import Back, Read, StillTrue, Typed
from assistant.walk.past import said_today
from assistant.walk.weigh import Weighed
from assistant.window import gauge, look, words
from assistant.window.entry_line import EntryLine
from assistant.window.flow import Flow
from assistant.window.page.step import StepPage, retake_words
from assistant.window.session import Driver
from assistant.window.text import banner, label


@dataclass
class Row:
    """One reading of the page. `typed` is set once Enter has found nothing more to ask about it."""

    name: str
    reading: Reading
    entry: EntryLine
    verdict: QLabel
    typed: Typed | None = None


class GroupPage(StepPage):
    """Enter judges a field and goes to the next; after the last everything is saved at once."""

    next_words = "Save"

    cautions_folded = True
    fields_first = True

    def __init__(self, driver: Driver, ask: Ask, parent: QWidget | None = None) -> None:
        self.rows: list[Row] = []
        super().__init__(driver, ask, parent)
        self.saved = False
        if ask.retake:
            said = retake_words(driver, "Too close to call. Take them again.")
            self.column.insertWidget(self.column.indexOf(self.question), banner(said))
        grid = QGridLayout()
        grid.setHorizontalSpacing(14)
        grid.setVerticalSpacing(3)
        for column, share in enumerate((4, 3, 4)):
            grid.setColumnStretch(column, share)
        for number, reading in enumerate(ask.readings, 1):
            self._add_row(grid, number, reading)
        self.words.addLayout(grid)
        said = dict.fromkeys(
            gauge.limits_said(r.bands, r.safe, r.unit, ask.env, driver.vocabulary.sources, r.source)
            for r in ask.readings
        )
        self.words.addWidget(label(" ".join(line for line in said if line), look.SMALL, soft=True))
        self.close_words()
        self._lay_ways()
        for row in self.rows:
            row.entry.write(driver.drafts.get(self.key(row.name), ""))
        self._mark(self.rows[0])

    def _add_row(self, grid: QGridLayout, number: int, reading: Reading) -> None:
        name = reading.name or (self.common.name if self.common else "")
        asked = self.fill(reading.ask)
        entry = EntryLine(
            f"{number}. {asked}",
            reading.unit,
            lambda text, n=number - 1: self._weigh(n, text),
            18.0,
            echoes=False,
        )
        verdict = label("")
        row = Row(name, reading, entry, verdict)
        self.rows.append(row)
        entry.entered.connect(lambda: self._entered(row))
        entry.typed.connect(lambda text: self._typed(row, text))
        entry.line.up.connect(lambda: self._focus_row(self.rows.index(row) - 1))
        entry.line.down.connect(lambda: self._focus_row(self.rows.index(row) + 1))
        entry.line.selectionChanged.connect(lambda: self._mark(row))
        entry.line.cursorPositionChanged.connect(lambda *_: self._mark(row))
        text = label(f"{number}. {asked}")
        text.setBuddy(entry.line)
        grid.addWidget(text, number, 0, Qt.AlignmentFlag.AlignVCenter)
        grid.addWidget(entry, number, 1)
        grid.addWidget(verdict, number, 2, Qt.AlignmentFlag.AlignVCenter)

    def _lay_ways(self) -> None:
        self.ways = Flow()
        self.cannot_way = self.cannot_button()
        self.still_way = QPushButton(
            "&Still true" + "".join(f", {r.echo} at {words.clock(r.at)}" for r in self.ask.offer)
        )
        self.still_way.clicked.connect(self.still)
        if not self.ask.offer:
            self.still_way.hide()
        self.mend_way = QPushButton("&Mend a slip")
        self.mend_way.clicked.connect(self.mend)
        self.mend_way.hide()
        self.pad_way = QPushButton("&Pad")
        self.pad_way.clicked.connect(lambda: self.toggle_pad(self._present().entry.line))
        for way in (self.still_way, self.cannot_way, self.mend_way, self.pad_way):
            way.setMinimumHeight(look.TARGET)
            self.ways.addWidget(way)
        if self.folded_way is not None:
            self.ways.addWidget(self.folded_way)
        self.own.addLayout(self.ways)

    def points(self) -> tuple[str, ...]:
        return self.ask.readings[0].at if self.ask.readings else super().points()

    def first_focus(self) -> QWidget:
        return next((row for row in self.rows if row.typed is None), self.rows[0]).entry.line

    def enter(self) -> None:
        if self.saved:
            self.left.emit()
        else:
            self._entered(self._present())

    def still(self) -> None:
        self.seen()
        if self.record(StillTrue(self.driver.now(), self.ask.step)):
            self._saved()

    def mend(self) -> None:
        for row in self.rows:
            self.driver.drafts[self.key(row.name)] = row.entry.text
        if self.record(Back(self.driver.now(), self.ask.step, "slip")):
            self.left.emit()

    def _present(self) -> Row:
        return next(
            (row for row in self.rows if row.entry.line.hasFocus()),
            next((row for row in self.rows if row.typed is None), self.rows[-1]),
        )

    def _weigh(self, index: int, text: str) -> Weighed:
        return self.driver.weigh_reading(self.ask.readings[index], text, self._env(index))

    def _env(self, index: int) -> dict[str, Interval]:
        """What the limits of a row can use: the step's values and the rows above it."""
        env = dict(self.ask.env)
        for row in self.rows[:index]:
            if row.entry.weighed.understood is not None:
                env[row.name] = row.entry.weighed.understood.interval
        return env

    def _typed(self, row: Row, text: str) -> None:
        self.driver.drafts[self.key(row.name)] = text
        row.typed = None
        if row.entry.line.hasFocus():
            self.scroll.ensureWidgetVisible(row.entry.line, 0, 10)
        self._say_row(row, row.entry.understood, sure=False)
        self.offers.put_away()

    def _entered(self, row: Row) -> None:
        if self.saved:
            self.left.emit()
            return
        weighed = row.entry.weigh_again()
        text = row.entry.text
        if weighed.blank:
            self.say(f"{self.fill(row.reading.ask)}: nothing typed yet.")
            row.entry.line.setFocus()
        elif weighed.doubtful:
            self.offers.ask(
                weighed.message,
                [(c, lambda c=c: self._take(row, Typed(text, chosen=c))) for c in weighed.choices],
                row.entry.line,
            )
        elif weighed.implausible:
            offered = [
                (f"I meant {c} {row.entry.unit.text()}", lambda c=c: self._rewrite(row, c))
                for c in weighed.choices
            ]
            offered.append(
                (
                    f"It really shows {weighed.understood.echo}",
                    lambda: self._take(row, Typed(text, sure=True)),
                )
            )
            self.offers.ask(weighed.message, offered, row.entry.line)
        elif weighed.understood is None:
            self.say(weighed.message)
        else:
            self._take(row, Typed(text))

    def _rewrite(self, row: Row, text: str) -> None:
        row.entry.write(text)
        self._entered(row)

    def _take(self, row: Row, typed: Typed) -> None:
        """A field has nothing more to ask: its verdict beside it, and on."""
        row.typed = typed
        index = self.rows.index(row)
        meant = self._weigh(index, typed.chosen) if typed.chosen else row.entry.weigh_again()
        said = meant.verdict.words if meant.verdict else "recorded"
        earlier = self.earlier_reading(row.reading)
        if earlier is not None and meant.understood is not None:
            change = said_today(earlier, meant.understood.interval)
            said += f"; {change}" if change else ""
        self._say_row(row, said, sure=True)
        self.say("")
        after = next((r for r in self.rows[index + 1 :] + self.rows[:index] if r.typed is None), None)
        if after is not None:
            self._focus_row(self.rows.index(after))
            return
        self.seen()
        if self.record(
            Read(self.driver.now(), self.ask.step, {r.name: r.typed for r in self.rows if r.typed})
        ):
            self._saved()

    def _saved(self) -> None:
        self.saved = True
        for row in self.rows:
            self.driver.drafts.pop(self.key(row.name), None)
            row.entry.line.setReadOnly(True)
        taken = next((t for t in reversed(self.driver.visit.history) if t.step == self.ask.step), None)
        self.say(_short(taken.answer) if taken else "Saved")
        self.cannot_way.hide()
        self.still_way.hide()
        self.pad_way.hide()
        self.mend_way.show()
        self.set_next("&Next")
        self.stops()
        self.next_button.setFocus()

    def _say_row(self, row: Row, said: str, sure: bool) -> None:
        row.verdict.setText(said)
        row.verdict.setFont(look.font(look.BODY, sure))
        row.verdict.setAccessibleName(f"{row.entry.line.accessibleName()}: {said or 'no verdict yet'}")

    def _focus_row(self, index: int) -> None:
        if 0 <= index < len(self.rows):
            line = self.rows[index].entry.line
            line.setFocus()
            line.selectAll()
            self.scroll.ensureWidgetVisible(line, 0, 40)
            self._mark(self.rows[index])

    def to_first(self) -> None:
        """The cursor, the heading and the drawing are at the first field."""
        self._focus_row(0)

    def _mark(self, row: Row) -> None:
        """This row's points, in words and on the drawing."""
        earlier = self.earlier_reading(row.reading)
        self.show_essential(
            f"{self.rows.index(row) + 1}. {words.leads(self.driver.vocabulary, row.reading.at)}",
            words.meter(row.reading, self.driver.instrument(row.reading.kind)),
            *([words.earlier(earlier)] if earlier is not None else []),
        )
        if self.pad is not None:
            self.pad.line = row.entry.line
        if self.picture is not None and row.reading.at and self.picture.points != row.reading.at:
            self.picture.mark(row.reading.at, words.leads(self.driver.vocabulary, row.reading.at))


def _short(answer: str) -> str:
    """The verdicts of a page, each once: "known live, dead"."""
    parts = [part.rsplit(": ", 1)[-1] for part in answer.split("; ")]
    return "Saved: " + ", ".join(dict.fromkeys(parts))
