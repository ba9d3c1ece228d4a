"""A cycle that won't wait for typing: tap each event as it happens, fill the readings in afterwards."""

from __future__ import annotations

import time
from collections.abc import Callable

from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QGridLayout, QPushButton, QVBoxLayout, QWidget

from assistant.tree.model import Watch
from assistant.walk.ask import Ask
from assistant.walk.event import Typed, Watched
from assistant.walk.sense import doubted
from assistant.window import look, words
from assistant.window.big import BigButton
from assistant.window.entry_line import EntryLine
from assistant.window.flow import Flow
from assistant.window.page.base import NARROW, TINY
from assistant.window.page.step import StepPage
from assistant.window.session import Driver
from assistant.window.text import label


class WatchPage(StepPage):
    """Three states: waiting for the start, running, and over (readings may be typed). Enter goes from each to
    the next; a digit is an event that has just happened.
    """

    cautions_folded = True
    fields_first = True

    def __init__(
        self,
        driver: Driver,
        ask: Ask,
        parent: QWidget | None = None,
        clock: Callable[[], float] = time.monotonic,
    ) -> None:
        super().__init__(driver, ask, parent)
        assert isinstance(ask.body, Watch)
        self.watch = ask.body
        self.clock = clock
        self.begun: float | None = None
        self.over = False
        self.times: dict[str, float] = {}
        self.order: list[str] = []
        self.running = label("", look.LEAD, bold=True)
        if self.why is not None:  # what has to be tapped comes before the reasons
            self.column.removeWidget(self.why)
            self.column.insertWidget(self.column.indexOf(self.beside), self.why)
        self.acting = QVBoxLayout()
        self.acting.setSpacing(8)
        self.column.insertLayout(self.column.indexOf(self.why or self.beside), self.acting)
        self.acting.addWidget(self.running)
        self.grid = QGridLayout()
        self.grid.setSpacing(8)
        self.events: dict[str, BigButton] = {}
        for number, name in enumerate(self.watch.events, 1):
            button = BigButton(driver.vocabulary.happens.get(name, words.plain(name)), str(number), "not yet")
            button.clicked.connect(lambda _=False, name=name: self.happened(name))
            self.events[name] = button
        self.acting.addLayout(self.grid)
        self.lines: dict[str, tuple[EntryLine, Typed | None]] = {}
        self.readings = QWidget()
        self._lay_readings()
        self.acting.addWidget(self.readings)
        self.close_words()
        self._lay_ways()
        self.timer = QTimer(self)
        self.timer.setInterval(200)
        self.timer.timeout.connect(self.tick)
        self._lay_events(self._columns())
        self._show_state()

    def _columns(self) -> int:
        """As many beside each other as keep all of them in sight in a narrow window."""
        return 1 if self.mode == TINY else 3 if self.mode == NARROW and len(self.events) > 4 else 2

    def _lay_events(self, columns: int) -> None:
        rows = -(-len(self.events) // columns)
        for place, button in enumerate(self.events.values()):
            self.grid.addWidget(button, place % rows, place // rows)

    def _lay_readings(self) -> None:
        grid = QGridLayout(self.readings)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.addWidget(label("Readings taken while it ran, if any:", bold=True), 0, 0, 1, 2)
        for row, reading in enumerate(self.ask.readings, 1):
            name = reading.name or self.watch.common.name
            asked = self.fill(reading.ask)
            entry = EntryLine(
                asked, reading.unit, lambda text, name=name: self.driver.weigh(name, text), 18.0
            )
            entry.write(self.driver.drafts.get(self.key(name), ""))
            entry.typed.connect(lambda text, name=name: self._typed(name, text))
            entry.entered.connect(lambda row=row: self._entered(row))
            entry.line.up.connect(lambda row=row: self._go(row - 2))
            entry.line.down.connect(lambda row=row: self._go(row))
            before = self.earlier_reading(reading)
            more = f"\n{words.earlier(before)}" if before is not None else ""
            text = label(f"{asked}\n{words.leads(self.driver.vocabulary, reading.at)}{more}")
            text.setBuddy(entry.line)
            grid.addWidget(text, row, 0)
            grid.addWidget(entry, row, 1)
            self.lines[name] = (entry, None)

    def _lay_ways(self) -> None:
        self.ways = Flow()
        self.undo_way = QPushButton("&Undo the last tap")
        self.undo_way.clicked.connect(self.undo)
        self.again_way = QPushButton("&Start over")
        self.again_way.clicked.connect(self.again)
        self.pad_way = QPushButton("&Pad")
        self.pad_way.clicked.connect(lambda: self.toggle_pad(self._present()))
        for way in (self.undo_way, self.again_way, self.cannot_button(), self.pad_way):
            way.setMinimumHeight(look.TARGET)
            self.ways.addWidget(way)
        if self.folded_way is not None:
            self.ways.addWidget(self.folded_way)
        self.own.addLayout(self.ways)

    def first_focus(self) -> QWidget:
        return self._present() if self.over and self.lines else self.next_button

    def choose(self, digit: int) -> None:
        if not self.offers.pick(digit) and 1 <= digit <= len(self.events):
            self.happened(list(self.events)[digit - 1])

    def happened(self, name: str) -> None:
        """This event, now. The first tap starts the clock where it was not started."""
        if self.over:
            return
        if self.begun is None:
            self.start()
        if name not in self.times:
            self.times[name] = round(self.clock() - self.begun, 1)
            self.order.append(name)
        self._show_state()

    def undo(self) -> None:
        """The last tap was a slip."""
        if self.order:
            self.times.pop(self.order.pop())
        self._show_state()

    def again(self) -> None:
        """From the start, with no tap."""
        self.times.clear()
        self.order.clear()
        self.begun, self.over = None, False
        self.timer.stop()
        self._show_state()
        self.next_button.setFocus()

    def start(self) -> None:
        self.begun = self.clock()
        self.timer.start()
        if self.folded_way is not None:  # read by now; what happens must be in sight
            self.folded_way.setChecked(False)
        self._show_state()

    def enter(self) -> None:
        if self.begun is None:
            self.start()
        elif not self.over:
            self.over = True
            self.timer.stop()
            self._show_state()
            self.first_focus().setFocus()
            self._doubt()
        else:
            self._save()

    def _doubt(self) -> None:
        """Times that can't be as they were tapped: a slip is put right here, what stays is in the trail."""
        found = doubted(self.watch, self.times, self.driver.vocabulary)
        if not found:
            return
        name, said = found[0]
        self.offers.ask(
            f"{said[:1].upper()}{said[1:]}.",
            [
                ("It was so", self.next_button.setFocus),
                (f"A slip: take {self.events[name].text()} out", lambda: self._take_out(name)),
                ("All of it once more", self.again),
            ],
            self.first_focus(),
        )

    def _take_out(self, name: str) -> None:
        self.times.pop(name, None)
        self.order = [one for one in self.order if one != name]
        self._show_state()
        self._doubt()

    def tick(self) -> None:
        """The running clock, and what is still to come."""
        gone = self.clock() - self.begun if self.begun is not None else 0.0
        within = words.lasting(self.watch.within)
        late = (
            f"Past {within}: what has not come by now is missing."
            if gone > self.watch.within
            else f"of {within}"
        )
        self.running.setText(f"{words.lasting(gone)} {late}")

    def fold(self, mode: str) -> None:
        super().fold(mode)
        if hasattr(self, "grid"):
            self._lay_events(self._columns())

    def _show_state(self) -> None:
        for name, button in self.events.items():
            at = self.times.get(name)
            button.small = "not yet" if at is None else f"✓ at {at:g} s"
            button.setEnabled(not self.over)
            button.setAccessibleName(f"{button.text()}, {button.small}")
            button.updateGeometry()
            button.update()
        self.undo_way.setVisible(bool(self.order) and not self.over)
        self.again_way.setVisible(self.begun is not None)
        self.readings.setVisible(self.over and bool(self.lines))
        self.pad_way.setVisible(self.over and bool(self.lines))
        if self.begun is None:
            self.running.setText(
                "Tap each thing as it happens, or press its number. Missed one? Leave it out."
            )
            self.set_next("&Start the clock")
        elif not self.over:
            self.tick()
            self.set_next("&Over")
        else:
            missing = [b.text() for n, b in self.events.items() if n not in self.times]
            self.say(f"Did not happen: {missing[0]}" if missing else "Everything happened")
            self.set_next("&Next")
            return
        self.say("")

    def _entered(self, row: int) -> None:
        """Enter in a line goes to the next one; after the last everything is saved."""
        if row < len(self.lines):
            self._go(row)
        else:
            self.enter()

    def _go(self, place: int) -> None:
        lines = [entry.line for entry, _ in self.lines.values()]
        if 0 <= place < len(lines):
            lines[place].setFocus()
            self.scroll.ensureWidgetVisible(lines[place], 0, 40)

    def _present(self) -> QWidget:
        lines = [entry.line for entry, _ in self.lines.values()]
        return next((line for line in lines if line.hasFocus()), lines[0] if lines else self.next_button)

    def _typed(self, name: str, text: str) -> None:
        self.driver.drafts[self.key(name)] = text
        if name in self.lines:
            self.lines[name] = (self.lines[name][0], None)

    def _save(self) -> None:
        """Every line that says something must be understood; then all goes to disk at once."""
        for name, (entry, settled) in self.lines.items():
            weighed = entry.weigh_again()
            if weighed.blank or settled is not None:
                continue
            if weighed.understood is None or weighed.implausible:
                self._ask_back(name, entry, weighed)
                return
            self.lines[name] = (entry, Typed(entry.text))
        self.seen()
        typed = {name: settled for name, (_, settled) in self.lines.items() if settled is not None}
        if self.record(Watched(self.driver.now(), self.ask.step, dict(self.times), typed)):
            for name in self.lines:
                self.driver.drafts.pop(self.key(name), None)
            self.left.emit()

    def _ask_back(self, name: str, entry: EntryLine, weighed) -> None:
        offered = [(c, lambda c=c: self._settle(name, Typed(entry.text, chosen=c))) for c in weighed.choices]
        if weighed.implausible:
            offered = [
                (f"I meant {c} {entry.unit.text()}", lambda c=c: entry.write(c)) for c in weighed.choices
            ]
            offered.append(
                (
                    f"It really showed {weighed.understood.echo}",
                    lambda: self._settle(name, Typed(entry.text, sure=True)),
                )
            )
        if offered:
            self.offers.ask(weighed.message, offered, entry.line)
        else:
            self.say(weighed.message)
            entry.line.setFocus()

    def _settle(self, name: str, typed: Typed) -> None:
        self.lines[name] = (self.lines[name][0], typed)
        self._save()
