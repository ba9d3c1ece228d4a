"""The zone survey: a grid filled in while walking the house, in any order, with what it says as it fills."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import (
    QButtonGroup,
    QFileDialog,
    QHBoxLayout,
    QStackedWidget,
    QVBoxLayout,
    QWidget,
)

from assistant.errors import UserError
from assistant.trade.zone.survey import WORDS
from assistant.trade.zone_sheet import MODES, BadSheet
from assistant.walk.ask import Ask
from assistant.walk.astray import against_the_words, of_visit
from assistant.walk.event import Read, Typed
from assistant.walk.survey import weigh_cell
from assistant.walk.survey_sheet import MODE_WORDS, Sheet
from assistant.window import look
from assistant.window.flow import Flow
from assistant.window.line import Line
from assistant.window.page.base import NARROW, TINY, WIDE
from assistant.window.page.step import StepPage
from assistant.window.session import Driver
from assistant.window.survey.grid import SHOULD, SurveyGrid
from assistant.window.survey.plan import Panel, Says
from assistant.window.survey.quick import Quick, button
from assistant.window.survey.started import started
from assistant.window.text import label

NAMES, GRID, SAYS = range(3)
SAVE = "&Save the survey"


class SurveyPage(StepPage):
    """First the names of thermostats and registers, then one field for the present cell. Enter writes it and
    goes to the next register; the big button saves the survey.
    """

    next_words = SAVE
    cautions_folded = True
    fields_first = True
    takes_digits = False

    def __init__(self, driver: Driver, ask: Ask, parent: QWidget | None = None) -> None:
        self.sheet = started(driver, ask)
        self._taught: QWidget | None = None
        self._told_of_owners = False
        super().__init__(driver, ask, parent)
        self.reading = ask.readings[0]
        self.name = self.reading.name or (self.common.name if self.common else "")
        self.saved = False
        self.question.setFont(look.font(look.LEAD, bold=True))
        self.grid = SurveyGrid(self.sheet)
        self.grid.moved.connect(self._moved)
        self.says = Says()
        self.panel = Panel(self.says)
        self.stack = QStackedWidget()
        self.stack.addWidget(self._make_names())
        self.stack.addWidget(self.grid)
        self.stack.addWidget(QWidget())
        self._says_home = QVBoxLayout(self.stack.widget(SAYS))
        self._says_home.setContentsMargins(0, 0, 0, 0)
        self.column.removeItem(self.beside)
        self.column.insertLayout(self.column.indexOf(self.question) + 1, self._make_modes())
        self.middle = QHBoxLayout()
        self.middle.setSpacing(14)
        self.middle.addWidget(self.stack, 2)
        self.middle.addWidget(self.panel, 1)
        self.column.insertLayout(self.column.indexOf(self.question) + 2, self.middle, 3)
        self.so_far = label("")
        self.column.insertWidget(self.column.indexOf(self.question) + 3, self.so_far)
        self.column.addLayout(self.beside)
        self.close_words()
        self._lay_foot()
        self.stack.setCurrentIndex(GRID if self.sheet.thermostats and self.sheet.registers else NAMES)
        self.fold(self.mode)

    # laid out once

    def _make_modes(self) -> Flow:
        row = Flow()
        self.modes = QButtonGroup(self)
        for mode in MODES:
            made = button(MODE_WORDS[mode], lambda _=False, m=mode: self._mode(m))
            made.setCheckable(True)
            made.setChecked(mode == "fan")
            self.modes.addButton(made)
            row.addWidget(made)
        self.mode_ways = list(self.modes.buttons())
        self.names_way = button("&Names", lambda: self._show(NAMES))
        self.says_way = button("&What it says", self._turn)
        self.paper_way = button("Paper &form", self._paper)
        for way in (self.names_way, self.says_way, self.paper_way):
            row.addWidget(way)
        return row

    def _make_names(self) -> QWidget:
        box = QWidget()
        column = QVBoxLayout(box)
        column.setContentsMargins(0, 0, 0, 0)
        self.thermostats = Line(
            "Thermostats, a comma between two", ", ".join(self.sheet.thermostats), most=800
        )
        self.registers = Line("Registers, a comma between two", ", ".join(self.sheet.registers), most=4000)
        self.thermostats.setPlaceholderText("such as: den, bedrooms, upstairs")
        self.registers.setPlaceholderText("such as: den 1, den 2, bed 1, hall")
        self.thermostats.returnPressed.connect(self.registers.setFocus)
        self.registers.returnPressed.connect(self._named)
        for line in (self.thermostats, self.registers):
            column.addWidget(label(line.accessibleName()))
            column.addWidget(line)
        column.addStretch(1)
        return box

    def _lay_foot(self) -> None:
        self.cell = Line("This cell", points=18.0)
        self.cell.returnPressed.connect(self._write)
        self.cell.textChanged.connect(self._typed)
        self.cell.up.connect(lambda: self.grid.step(-1))
        self.cell.down.connect(lambda: self.grid.step(1))
        self.cannot_way = self.cannot_button()
        self.pad_way = button("&Pad", lambda: self.toggle_pad(self.cell))
        self.pad_way.setAccessibleName("Pad of numbers")
        self.own.addWidget(self.cell)
        self.quick = Quick(self._put, (self.pad_way, self.cannot_way))
        self.own.addLayout(self.quick)
        if self.folded_way is not None:
            self.words.addWidget(self.folded_way, 0, Qt.AlignmentFlag.AlignLeft)

    # what the page does

    def first_focus(self) -> QWidget:
        if self.saved:
            return self.next_button
        return self.thermostats if self.stack.currentIndex() == NAMES else self.cell

    def enter(self) -> None:
        """The big button: save, then go on."""
        if self.saved:
            self.left.emit()
            return
        if self.stack.currentIndex() == NAMES:
            self._named()
            return
        if self.cell.text().strip() and self.cell.text().strip() != self._here() and not self._write():
            return
        if not self.sheet.drawn and not self._told_of_owners:
            self._told_of_owners = True
            self.grid.setCurrentCell(0, 0)
            self.say(f"Write whose each register should be ({SHOULD}), or save once more to leave that open.")
            return
        try:
            line = self.sheet.line()
        except BadSheet as problem:
            self.say(str(problem))
            return
        self.seen()
        if self.record(Read(self.driver.now(), self.ask.step, {self.name: Typed(line)})):
            self.driver.draft(self.ask.step, self.name, "")
            self.saved = True
            self._saved()

    def _saved(self) -> None:
        record = next((r for r in reversed(self.driver.visit.readings) if r.name == self.name), None)
        self.set_next("&Next")
        for thing in (self.cell, *self.quick.ways, self.names_way, self.cannot_way, self.pad_way):
            thing.hide()
        for mode in self.modes.buttons():
            mode.setEnabled(False)
        self._show(GRID if self.mode == WIDE else SAYS)
        self.says_way.hide()
        visit = self.driver.visit
        spill, state = of_visit(visit), visit.state_of(visit.complaint or "")
        odd = against_the_words(spill, state.words) if spill and state else ""
        self.say(" ".join(filter(None, (f"Saved: {record.echo}." if record else "Saved.", odd))))
        self.next_button.setFocus()

    def lay_out(self, sheet: Sheet) -> None:
        """A sheet that was filled in elsewhere: in a drill the house fills it."""
        self.sheet = self.grid.sheet = sheet
        self._keep()
        self._show(GRID)
        self.cell.setFocus()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Ctrl with Left and Right: another thermostat."""
        steps = {Qt.Key.Key_Left: -1, Qt.Key.Key_Right: 1}
        if event.modifiers() & Qt.KeyboardModifier.ControlModifier and event.key() in steps:
            self.grid.step(0, steps[event.key()])
        else:
            super().keyPressEvent(event)

    def _named(self) -> None:
        problem = self.sheet.name(self.thermostats.text(), self.registers.text())
        self.say(problem)
        if not problem:
            self._keep()
            self._show(GRID)
            self.cell.setFocus()

    def _mode(self, mode: str) -> None:
        self.grid.mode = mode
        if self.stack.currentIndex() != NAMES:
            self._show(GRID)
        self.grid.lay()
        self._moved()

    def _turn(self) -> None:
        """The grid, or what it says."""
        self._show(GRID if self.stack.currentIndex() == SAYS else SAYS)

    def _show(self, which: int) -> None:
        self.stack.setCurrentIndex(which)
        if which == GRID:
            self.grid.lay()
            self._moved()
        self._details(which == NAMES)
        for way in (*self.mode_ways, self.names_way):
            way.setVisible(which != NAMES and not (self.saved and way is self.names_way))
        if not self.saved:
            self.set_next("&Make the grid" if which == NAMES else self.next_words)
        if which == SAYS:
            self.say("")
        on_grid = which == GRID and not self.saved
        self.cell.setVisible(on_grid)
        for thing in (*self.quick.ways, self.pad_way, self.cannot_way):
            thing.setVisible(on_grid and not (thing is self.cannot_way and self._no_way()))
        self.says_way.setText("&Back to the grid" if which == SAYS else "&What it says")
        self._place_says()
        self._conclude()

    def _details(self, shown: bool) -> None:
        """Why, how and power stand on the first page; while the grid fills, it has their room."""
        for item in (self.words.itemAt(place) for place in range(self.words.count())):
            if item.widget() is not None and item.widget() is not self.folded_way:
                item.widget().setVisible(shown and item.widget() is not self._taught)
        if self.folded_way is not None and not self.folded_way.isChecked():
            self.folded_way.setVisible(shown)
        if self.why is not None:
            self.why.setVisible(shown)
        self.essential.setVisible(shown and bool(self.essential.text()))

    def _teach(self, said: str) -> None:
        """The text stays shut until asked for, also after the grid was shown."""
        super()._teach(said)
        self._taught = self.words.itemAt(self.words.count() - 1).widget()

    def _no_way(self) -> bool:
        return getattr(self.ask.body, "cannot", None) is None

    def _here(self) -> str:
        row, column = self.grid.currentRow(), self.grid.currentColumn()
        return self.grid.text_at(row, column) if row >= 0 and column >= 0 else ""

    def _moved(self) -> None:
        """Another cell: its words stand beside the field, and its text in it."""
        register, caller = self.grid.here
        if not register:
            return
        mode = MODE_WORDS[self.grid.mode].lower()
        calls = "nobody calls" if caller == "nobody" else f"{caller} alone calls"
        said = f"{register}: {calls} ({mode})" if caller else f"{register} {SHOULD}"
        self.cell.setAccessibleName(said)
        self.cell.setPlaceholderText("cfm, or none, some, full" if caller else "a thermostat")
        self.cell.setText(self._here())
        self.cell.selectAll()
        choices = WORDS if caller else tuple(self.sheet.thermostats)
        if not self.saved:
            self.quick.offer(choices)
        self.say(said, sure=False)
        if self.mode == TINY:
            self.scroll.ensureWidgetVisible(self.grid, 0, 0)

    def _put(self, text: str) -> None:
        self.cell.setText(text)
        self._write()
        self.cell.setFocus()

    def _typed(self, text: str) -> None:
        if self.grid.here[1] and text.strip() and text.strip().lower() not in ("n", "s", "f"):
            found = weigh_cell(self.reading, text)
            if found.problem:
                self.say(found.problem, sure=False)

    def _write(self) -> bool:
        """The field into its cell, and on to the next register. False where it is not understood."""
        register, caller = self.grid.here
        row, column, text = self.grid.currentRow(), self.grid.currentColumn(), self.cell.text()
        if not caller:
            problem = self.sheet.draw(register, text)
        else:
            self.sheet.write(self.grid.mode, caller, register, text)
            problem = weigh_cell(self.reading, self._here()).problem
        self.grid.fill(row, column, bool(problem and caller))
        self._keep()
        self._conclude()
        if problem:
            self.say(problem)
            return False
        self.grid.step(1)
        return True

    def _keep(self) -> None:
        """On disk with every cell: a survey takes an hour, and a battery may not."""
        self.driver.draft(self.ask.step, self.name, self.sheet.as_text())

    def _conclude(self) -> None:
        """What the sheet says so far, where there is room for it or it was asked for."""
        instrument = self.driver.visit.shop.instrument("airflow", self.driver.visit.instrument)
        share = instrument.percent.get("airflow") if instrument is not None else None
        answer, why_not = self.sheet.answer(share / 100 if share else None)
        self.so_far.setText(self.says.in_a_line(answer, self.sheet, why_not))
        self.says.show_answer(answer, self.sheet, why_not)

    def _place_says(self) -> None:
        """At the side of a wide window, beside the grid of a narrow one, by itself in a tiny one or where it
        was asked for.
        """
        which = self.stack.currentIndex()
        beside = self.mode == NARROW and which == GRID
        self.says.short = beside
        if self.mode == WIDE:
            self.side_column.insertWidget(0, self.panel, 3)
            self.panel.take()
        elif beside:
            self.middle.addWidget(self.panel, 1)
            self.panel.take()
        else:
            self._says_home.addWidget(self.panel.give())
            self.says.show()
        self.so_far.setVisible(self.mode == TINY and which == GRID)
        self.says_way.setVisible(self.mode != WIDE and which != NAMES and not self.saved)

    def fold(self, mode: str) -> None:
        """In a wide window what it says stands at the side, in a narrow one beside the grid."""
        super().fold(mode)
        if not hasattr(self, "_says_home"):
            return
        tiny = mode == TINY
        self.next_words = "&Save" if tiny else SAVE
        for way in (self.pad_way, self.cannot_way):  # a tiny window's foot has room for the words alone
            (self.words if tiny else self.quick).addWidget(way)
        self.quick.behind = () if tiny else (self.pad_way, self.cannot_way)
        self._show(self.stack.currentIndex())
        self.side.setVisible(mode == WIDE)
        if self.picture is not None:
            self.picture.hide()
        self.unproved.hide()

    def _paper(self) -> None:
        chosen, _ = QFileDialog.getSaveFileName(
            self, "The form to take along", "zone-survey.pdf", "PDF (*.pdf)"
        )
        if chosen:
            self.form_to(Path(chosen))

    def form_to(self, file: Path) -> None:
        """The grid on paper, to be filled in by hand and typed in later."""
        from assistant.report.survey_form import write_form

        try:
            write_form(file, self.sheet)
        except (UserError, OSError) as problem:
            self.say(
                f"The form can't be written to {file} ({getattr(problem, 'strerror', None) or problem})."
            )
            return
        self.say(f"The form is in {file}.")
