"""A visit to a healthy unit: its readings, typed in any order, which later visits expect to find again."""

from __future__ import annotations

from PySide6.QtWidgets import QWidget

from assistant.house.model import Question
from assistant.quantity.kind import UNITS, show_interval
from assistant.walk.around import trouble_with, typed_in
from assistant.walk.event import Filled, PutDown
from assistant.walk.past import dead_volts, earlier_of, expected_words
from assistant.walk.reading import same_spot
from assistant.window.page.aside.base import AsidePage
from assistant.window.page.base import TINY
from assistant.window.page.visit.lines import Lines
from assistant.window.session import Driver
from assistant.window.text import label, rule

MARKED = "healthy"


def _mark(driver: Driver) -> str:
    """How well it is known that these are the readings to take."""
    mark = driver.vocabulary.marks.get("baseline", "")
    return f" Which readings: {mark}." if mark else ""


class BaselinePage(AsidePage):
    """Each line that is filled in is put down as a reading of today when the page is saved."""

    title = "The healthy numbers of this unit"
    takes_digits = False

    def __init__(self, driver: Driver, parent: QWidget | None = None) -> None:
        super().__init__(driver, parent)
        vocabulary = driver.vocabulary
        self.taken = {name: self._taken(known) for name, known in vocabulary.baseline.items()}
        questions = {
            name: Question(
                name,
                known.words,
                known.hint or UNITS[known.unit].symbol,
                (),
                {},
                known.kind,
                known.unit,
                known.at,
                None,
                None,
            )
            for name, known in vocabulary.baseline.items()
        }
        sheet = vocabulary.sheets.get(MARKED)
        if not questions:
            self.column.addWidget(label("The trees that this visit was begun with list no such readings."))
        said = f"In the unit's usual state, doors on. Leave out what you can't reach.{_mark(driver)}"
        self.column.addWidget(label(said, soft=True))
        words = dict.fromkeys(name for known in vocabulary.baseline.values() for name in known.caution)
        for name in words:
            if name in vocabulary.cautions:
                caution = vocabulary.cautions[name]
                self.column.addWidget(label(f"{caution.word.upper()}: {caution.short}"))
        self.lines = Lines(questions, lambda name: driver.drafts.get(("baseline", name), self.taken[name]))
        self.lines.typed.connect(self._typed)
        self.column.addWidget(self.lines)
        for known in vocabulary.baseline.values():
            earlier = earlier_of(driver.visit, known.kind, known.at)
            if earlier is not None and expected_words(earlier):
                self.column.addWidget(label(f"{known.words}: {expected_words(earlier)}", soft=True))
        self.column.addWidget(rule())
        self.judged = Lines(
            dict(sheet.questions) if sheet else {},
            lambda name: driver.drafts.get(
                ("sheet.healthy", name), driver.visit.sheets.get(MARKED, {}).get(name, "")
            ),
        )
        self.judged.typed.connect(self._judged)
        self.judged.done.connect(self.enter)
        if sheet:
            self.column.addWidget(self.judged)
            self.lines.done.connect(lambda: self.judged.first().setFocus())
        self.column.addStretch(1)
        self.tell_restored("baseline", "sheet.healthy")
        self._state()

    def first_focus(self) -> QWidget:
        return self.lines.first() if self.lines.fields else self.next_button

    def fold(self, mode: str) -> None:
        super().fold(mode)
        for lines in (getattr(self, "lines", None), getattr(self, "judged", None)):
            if lines is not None:
                lines.stack(mode == TINY)

    def enter(self) -> None:
        """Every new reading as it is, then what the person thinks of the unit. The first that can't be
        taken is said, and what stands before it is kept.
        """
        vocabulary, now = self.driver.vocabulary, self.driver.now()
        for name, text in self.lines.texts().items():
            if text == self.taken[name]:
                continue
            known = vocabulary.baseline[name]
            event = PutDown(now, known.kind, known.at, typed_in(known.kind, known.unit, text))
            if not self.record(event):
                self.say(f"{known.words}: {self.verdict.text()}")
                self.lines.fields[name].setFocus()
                return
            self.taken[name] = text
            self.driver.drafts.pop(("baseline", name), None)
        said = self._new_judgement()
        if said and not self.record(Filled(now, MARKED, said)):
            return
        for name in self.judged.fields:
            self.driver.drafts.pop(("sheet.healthy", name), None)
        self.left.emit()

    def _taken(self, known) -> str:
        """What was read at this line's place today, or nothing; volts of a dead circuit are left out."""
        off = dead_volts(self.driver.visit)
        for record in reversed(self.driver.visit.readings):
            if id(record) in off or record.kind != known.kind:
                continue
            if same_spot(known.kind, record.points, known.at):
                return (
                    record.typed.text
                    if record.unit == known.unit
                    else show_interval(record.value, known.unit)
                )
        return ""

    def _new_judgement(self) -> dict[str, str]:
        known = self.driver.visit.sheets.get(MARKED, {})
        return {name: text for name, text in self.judged.texts().items() if known.get(name) != text}

    def _typed(self, name: str, text: str) -> None:
        self.driver.drafts["baseline", name] = text
        self.say(trouble_with(self.lines.questions[name], text), sure=False)
        self._state()

    def _judged(self, name: str, text: str) -> None:
        self.driver.drafts["sheet.healthy", name] = text
        self._state()

    def _state(self) -> None:
        new = any(text != self.taken[name] for name, text in self.lines.texts().items())
        self.set_next("Sa&ve" if new or self._new_judgement() else "&Back to it")
