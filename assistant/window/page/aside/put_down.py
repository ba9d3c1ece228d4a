"""Readings already taken, in any order: from memory, from paper, from the unit across the cellar.

They answer the steps they fit; those steps are then passed over with a note.
"""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QHBoxLayout, QListWidgetItem, QPushButton, QWidget

from assistant.quantity.kind import KINDS
from assistant.tree.model import Reading, readings_of
from assistant.walk.event import PutDown, Typed
from assistant.walk.weigh import Weighed
from assistant.window import look, words
from assistant.window.entry_line import EntryLine
from assistant.window.flow import Flow
from assistant.window.line import Line
from assistant.window.listing import Listing
from assistant.window.page.aside.base import AsidePage
from assistant.window.page.base import TINY
from assistant.window.page.offers import Offers
from assistant.window.session import Driver

AGO = (("Just now", None), ("10 min ago", 10.0), ("20 min ago", 20.0), ("An hour ago", 60.0))

NONE_SUCH = "No reading has these words. Take some away, or try another word."
WRONG = "Wrong? Put it down again, the later one counts."


def known_readings(driver: Driver) -> list[Reading]:
    """Every reading of the library's trees that has points of its own, each spot once, by its words."""
    out: dict[tuple, Reading] = {}
    for tree in driver.library.trees.values():
        for step in tree.steps.values():
            for reading in readings_of(step):
                if reading.at and not any("$" in point for point in reading.at) and not reading.known_live:
                    out.setdefault((reading.kind, tuple(sorted(reading.at))), reading)
    return sorted(out.values(), key=lambda reading: reading.ask.lower())


class PutDownPage(AsidePage):
    """Find the reading by a word of it, type the value, say about when."""

    title = "Put down a reading"

    def __init__(self, driver: Driver, parent: QWidget | None = None) -> None:
        super().__init__(driver, parent)
        self.readings = known_readings(driver)
        self.offers = Offers()
        self.foot_column.insertWidget(0, self.offers)
        self.find = Line("Find the reading")
        self.find.setPlaceholderText("any word of it: plug, manifold, secondary ...")
        self.find.down.connect(self._to_list)
        self.find.textChanged.connect(self._list)
        self.find.returnPressed.connect(self._to_entry)
        self.column.addWidget(self.find)
        self.listed = Listing("Readings", 110)
        self.listed.currentRowChanged.connect(lambda _: self._chosen())
        self.column.addWidget(self.listed, 1)
        self.entry_home = QHBoxLayout()
        self.own.addLayout(self.entry_home)
        self.ago: float | None = None
        self.when: list[QPushButton] = []
        self._lay_when()
        self.entry = self._new_entry(None)
        self._list("")

    def first_focus(self) -> QWidget:
        return self.find

    @property
    def reading(self) -> Reading | None:
        item = self.listed.currentItem()
        return self.readings[item.data(0x0100)] if item is not None else None

    def choose(self, digit: int) -> None:
        self.offers.pick(digit)

    def enter(self) -> None:
        reading = self.reading
        weighed = self.entry.weigh_again()
        if weighed.blank:
            self.left.emit()
        elif reading is None:
            self.say(NONE_SUCH if not self.listed.count() else "Choose first what was read.")
        elif weighed.doubtful:
            self.offers.ask(
                weighed.message,
                [
                    (c, lambda c=c: self._put(Typed(self.entry.text, None, self.ago, chosen=c)))
                    for c in weighed.choices
                ],
                self.entry.line,
            )
        elif weighed.understood is None:
            self.say(weighed.message)
        else:
            self._put(Typed(self.entry.text, None, self.ago))

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Enter on a chosen row goes to the value; only the big button itself leads back."""
        enter = event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter)
        if enter and not self.next_button.hasFocus() and self.entry.weighed.blank:
            self._to_entry()
        else:
            super().keyPressEvent(event)

    def _to_list(self) -> None:
        if self.listed.count():
            self.listed.step_down()

    def _to_entry(self) -> None:
        if self.reading is None:
            self.say(NONE_SUCH)
            return
        self.entry.line.setFocus()

    def _entered(self) -> None:
        """Enter in the value's line, which never leads away."""
        if self.entry.weigh_again().blank:
            self.say("Nothing typed yet. Type what was read; Esc leads back to the question.")
        else:
            self.enter()

    def _put(self, typed: Typed) -> None:
        reading = self.reading
        if reading is None:
            return
        text = typed.chosen or typed.text
        quantity = words.quantity(reading.kind)
        weighed = self.driver.weigh_loose(reading.kind, reading.unit, text)
        shown = weighed.understood.echo if weighed.understood is not None else text
        default = KINDS[reading.kind].units[0]
        if reading.unit != default and self.entry.weighed.understood is not None:
            text = f"{text} {reading.unit}" if _bare(text) else text
            typed = Typed(text, typed.instrument, typed.ago)
        if self.record(PutDown(self.driver.now(), reading.kind, reading.at, typed)):
            when = "just now" if typed.ago is None else f"about {typed.ago:g} min ago"
            self.entry.write("")
            self.find.clear()
            self.find.setFocus()
            self.say(f"Put down: {reading.ask}, {quantity}: {shown}, {when}. {WRONG}")
            self.set_next("&Back to it")

    def _lay_when(self) -> None:
        ways = Flow()
        for place, (said, ago) in enumerate(AGO):
            button = QPushButton(said)
            button.setCheckable(True)
            button.setAutoExclusive(True)
            button.setChecked(place == 0)
            button.setMinimumHeight(look.TARGET)
            button.clicked.connect(lambda _=False, ago=ago: self._taken(ago))
            ways.addWidget(button)
            self.when.append(button)
        self.ways = QWidget()
        self.ways.setLayout(ways)
        self.own.addWidget(self.ways)

    def fold(self, mode: str) -> None:
        super().fold(mode)
        if hasattr(self, "ways"):
            self.ways.setParent(None)
            (self.column if mode == TINY else self.own).addWidget(self.ways)
            self.ways.show()

    def _taken(self, ago: float | None) -> None:
        self.ago = ago
        self.entry.line.setFocus()

    def _list(self, text: str) -> None:
        """The readings that hold every word typed."""
        asked = text.casefold().split()
        self.listed.clear()
        for index, reading in enumerate(self.readings):
            quantity = words.quantity(reading.kind)
            said = f"{reading.ask} – {quantity}\n{words.leads(self.driver.vocabulary, reading.at)}"
            searched = f"{said} {KINDS[reading.kind].title}".casefold()
            if all(word in searched for word in asked):
                item = QListWidgetItem(said)
                item.setData(0x0100, index)
                self.listed.addItem(item)
        self.listed.setCurrentRow(0)
        self._chosen()
        self.say("" if self.listed.count() else NONE_SUCH)

    def _chosen(self) -> None:
        """The line takes the chosen reading's unit; what was typed stays."""
        text = self.entry.text
        self.entry_home.removeWidget(self.entry)
        self.entry.hide()
        self.entry.deleteLater()
        self.entry = self._new_entry(self.reading)
        self.entry.write(text)

    def _new_entry(self, reading: Reading | None) -> EntryLine:
        kind, unit = (reading.kind, reading.unit) if reading else ("ac_voltage", "V")

        def weigh(text: str) -> Weighed:
            return self.driver.weigh_loose(kind, unit, text)

        entry = EntryLine(f"What was read: {reading.ask}" if reading else "What was read", unit, weigh)
        entry.entered.connect(self._entered)
        entry.typed.connect(self._typed)
        self.entry_home.addWidget(entry)
        return entry

    def _typed(self, text: str) -> None:
        self.offers.put_away()
        self.set_next("Put &down" if text.strip() else "&Back to it")


def _bare(text: str) -> bool:
    """Whether a text ends in a digit or point, so that it names no unit."""
    return text.strip()[-1:].isdigit() or text.strip().endswith((".", ","))
