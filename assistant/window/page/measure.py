"""One reading: the question, where the leads go, one line to write on, and its place on the step's own
scale.
"""

from __future__ import annotations

from PySide6.QtWidgets import QBoxLayout, QPushButton, QWidget

from assistant.tree.model import Reading
from assistant.walk.ask import Ask, Verdict
from assistant.walk.event import Back, Read, StillTrue, Typed
from assistant.walk.past import said_today
from assistant.walk.weigh import Weighed
from assistant.window import gauge, look, words
from assistant.window.entry_line import EntryLine
from assistant.window.flow import Flow
from assistant.window.page.base import TINY, WIDE
from assistant.window.page.step import StepPage, retake_words
from assistant.window.scale import ScaleView
from assistant.window.session import Driver
from assistant.window.text import banner, label

RETAKE = "Too close to call the first time. Take it once more."
UNSTEADY = "Type the lowest and the highest it shows, like 4.5-6."


class MeasurePage(StepPage):
    """Enter judges and saves; Enter again goes on. A doubt keeps the text and offers what may have been
    meant.
    """

    next_words = "Save"
    keeps_line = True
    gravest_first = True

    def __init__(self, driver: Driver, ask: Ask, parent: QWidget | None = None) -> None:
        super().__init__(driver, ask, parent)
        self.reading: Reading = ask.readings[0]
        self.name = self.reading.name or (self.common.name if self.common else "")
        self.saved = False
        vocabulary = driver.vocabulary
        self.earlier = self.earlier_reading(self.reading)
        self.show_essential(
            words.leads(vocabulary, self.reading.at),
            words.meter(self.reading, driver.instrument(self.reading.kind)),
            *([words.earlier(self.earlier)] if self.earlier is not None else []),
        )
        self.close_words()
        if ask.retake:
            self.column.insertWidget(self.column.indexOf(self.question), banner(retake_words(driver, RETAKE)))
        self.scale = ScaleView()
        self.limits = label(
            gauge.limits_said(
                self.reading.bands,
                self.reading.safe,
                self.reading.unit,
                ask.env,
                vocabulary.sources,
                self.reading.source,
            ),
            look.SMALL,
            soft=True,
        )
        self.entry = EntryLine(
            words.spoken(ask, vocabulary),
            self.reading.unit,
            lambda text: driver.weigh(self.name, text),
            echoes=False,
        )
        self.entry.entered.connect(self.enter)
        self.entry.typed.connect(self._typed)
        self._lay_foot()
        self._show_scale(None)
        self.entry.write(driver.drafts.get(self.key(self.name), ""))
        self.fold(self.mode)

    def _lay_foot(self) -> None:
        self.foot_column.insertWidget(1, self.scale)
        self.foot_column.insertWidget(2, self.limits)
        self.limits.setVisible(bool(self.limits.text()))
        self.cannot_way = self.cannot_button()
        self.unsteady_way = _way("&Won't hold steady", self.unsteady)
        self.mend_way = _way("&Mend a slip", self.mend)
        self.pad_way = _way("&Pad", lambda: self.toggle_pad(self.entry.line))
        self.pad_way.setAccessibleName("Pad of numbers")
        self.still_way = _way(self._still_words(), self.still)
        if not self.ask.offer:
            self.still_way.hide()
        self.mend_way.hide()
        self.ways = QWidget()
        flow = Flow()
        self.ways.setLayout(flow)
        for way in (self.still_way, self.cannot_way, self.unsteady_way, self.mend_way, self.pad_way):
            flow.addWidget(way)
        self.row = QBoxLayout(QBoxLayout.Direction.LeftToRight)
        self.row.setSpacing(14)
        self.row.addWidget(self.entry, 1)
        self.own.addLayout(self.row)

    def first_focus(self) -> QWidget:
        return self.entry.line

    def enter(self) -> None:
        if self.saved:
            self.left.emit()
            return
        weighed = self.entry.weigh_again()
        if weighed.blank:
            self.say("Nothing typed yet. Type what the meter shows.")
        elif weighed.doubtful:
            self._offer(
                weighed,
                [
                    (choice, lambda c=choice: self._commit(Typed(self.entry.text, chosen=c)))
                    for choice in weighed.choices
                ],
            )
        elif weighed.implausible:
            offered = [
                (f"I meant {choice} {self.entry.unit.text()}", lambda c=choice: self._rewrite(c))
                for choice in weighed.choices
            ]
            offered.append(
                (
                    f"It really shows {weighed.understood.echo}",
                    lambda: self._commit(Typed(self.entry.text, sure=True)),
                )
            )
            self._offer(weighed, offered)
        elif weighed.understood is None:
            self.say(weighed.message)
        else:
            self._commit(Typed(self.entry.text))

    def unsteady(self) -> None:
        """A reading that wanders is written as its lowest and highest."""
        self.entry.line.setPlaceholderText("lowest-highest")
        self.say(UNSTEADY)
        self.entry.line.setFocus()

    def still(self) -> None:
        """The earlier reading still holds."""
        self.seen()
        if self.record(StillTrue(self.driver.now(), self.ask.step)):
            self._saved(None, f"Taken as it was: {self.ask.offer[0].echo}")

    def mend(self) -> None:
        """It was a slip of the key: the same question again, with the text to mend."""
        self.driver.drafts[self.key(self.name)] = self.entry.text
        if self.record(Back(self.driver.now(), self.ask.step, "slip")):
            self.left.emit()

    def fold(self, mode: str) -> None:
        super().fold(mode)
        if not hasattr(self, "ways"):
            return
        # A tiny window keeps field, verdict and Next; the rest scrolls with the page.
        tiny = mode == TINY
        _move(self.scale, self.column if tiny else self.foot_column, -1 if tiny else 1)
        _move(self.limits, self.column if tiny else self.foot_column, -1 if tiny else 2)
        below = mode == WIDE or bool(self.ask.offer)
        _move(self.ways, self.column if tiny else self.foot_column if below else self.row, -1)
        self.ways.show()
        self.crowded()

    def crowded(self) -> None:
        """Scale and limits make room for the number pad or a question back, except in a wide window."""
        if hasattr(self, "ways"):
            room = self.mode == WIDE or not self.crowding
            self.limits.setVisible(room and bool(self.limits.text()))
            self.scale.setVisible(room and self.scale.drawn is not None)

    def _offer(self, weighed: Weighed, offered: list) -> None:
        self.offers.ask(weighed.message, offered, self.entry.line)

    def _rewrite(self, text: str) -> None:
        self.entry.write(text)
        self.enter()

    def _typed(self, text: str) -> None:
        self.driver.drafts[self.key(self.name)] = text
        if not self.saved:
            self.offers.put_away()
            self.say(self.entry.understood, sure=False)

    def _commit(self, typed: Typed) -> None:
        self.seen()
        if self.record(Read(self.driver.now(), self.ask.step, {self.name: typed})):
            taken = next(t for t in reversed(self.driver.visit.history) if t.step == self.ask.step)
            self._saved(taken.records[0].verdict, taken.records[0].echo)

    def _saved(self, verdict: Verdict | None, echo: str) -> None:
        self.saved = True
        self.driver.drafts.pop(self.key(self.name), None)
        said = f"{echo} – {verdict.words}" if verdict else echo
        spot = (self.reading.kind, self.reading.at)
        record = next((r for r in reversed(self.driver.visit.readings) if (r.kind, r.points) == spot), None)
        if self.earlier is not None and record is not None:
            change = said_today(self.earlier, record.value)
            said += f"; {change}" if change else ""
        now = self.driver.ask()
        if now.retake and now.step == self.ask.step:
            said += ". Take it once more."
        self.say(said)
        self._show_scale(verdict)
        self.entry.line.setReadOnly(True)
        for way in (self.cannot_way, self.unsteady_way, self.still_way, self.pad_way):
            way.hide()
        self.mend_way.show()
        if self.pad is not None:
            self.pad.hide()
        self.crowded()
        self.set_next("&Next")
        self.stops()
        self.entry.line.setFocus()

    def _show_scale(self, verdict: Verdict | None) -> None:
        reading = self.reading
        self.scale.show_scale(
            gauge.gauge(reading.bands, reading.safe, reading.unit, self.ask.env, reading.plausible, verdict)
        )

    def _still_words(self) -> str:
        if not self.ask.offer:
            return "&Still true"
        record = self.ask.offer[0]
        return f"&Still true: {record.echo} at {words.clock(record.at)}"


def _move(thing: QWidget, home: QBoxLayout, place: int) -> None:
    """Take a widget out of wherever it stands and into another layout; -1 is at the end."""
    thing.setParent(None)
    home.insertWidget(place, thing)


def _way(text: str, act) -> QPushButton:
    button = QPushButton(text)
    button.setMinimumHeight(look.TARGET)
    button.clicked.connect(act)
    return button
