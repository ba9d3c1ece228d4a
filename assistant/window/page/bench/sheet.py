"""One computation as a page: its fields, the result as it is typed, the formula with the numbers, where it
comes from, and its plot.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtWidgets import QGridLayout, QPushButton, QWidget

from assistant.trade.entry import ANY, Entry
from assistant.trade.plotted import in_units, plot_of
from assistant.trade.registry import REGISTRY
from assistant.trade.sheet import Meant, Worked, work_out
from assistant.trade.systems import SI, US, in_system
from assistant.walk.ask import Taken
from assistant.walk.bench import event_of, inputs_of
from assistant.window import files, look
from assistant.window.flow import Flow
from assistant.window.pad import Pad
from assistant.window.page.aside.base import AsidePage
from assistant.window.page.base import TINY, WIDE
from assistant.window.page.bench.field import Field
from assistant.window.page.bench.limits import TreeLimit, limits_of
from assistant.window.page.bench.paper import printed
from assistant.window.page.bench.plot_view import PlotView
from assistant.window.page.bench.result import ResultView
from assistant.window.text import row_of

if TYPE_CHECKING:
    from assistant.window.desk import Desk
    from assistant.window.session import Driver

MOST = 3
"""So many further fields are named on the button that shows them."""
LONGEST = 150
"""Letters of the result that stand in the foot; the page shows the whole."""


class SheetPage(AsidePage):
    """`what` is a computation's name, or the step of the walk that was worked out: its inputs then stand in
    the fields.
    """

    takes_digits = False

    def __init__(
        self, desk: Desk, driver: Driver | None, what: str | Taken, parent: QWidget | None = None
    ) -> None:
        super().__init__(driver, parent)
        self.desk = desk
        texts: dict[str, str] = {}
        units: dict[str, str] = {}
        if isinstance(what, Taken):
            name, texts, units = inputs_of(driver.visit, what)
        else:
            name = what
            texts, units = desk.sheets.get(name, ({}, {}))
        self.entry: Entry = REGISTRY[name]
        self.system = desk.sheets.get("system", US)
        self.worked: Worked | None = None
        self.written = False
        self.filling = True
        self.pad: Pad | None = None
        self.place = 0
        """The field that was last written in."""
        self.heading.setText(self.entry.title)
        self._lay_fields()
        self.result = ResultView(self.entry)
        self.words.addWidget(self.result)
        self.words.addStretch(1)
        self.picture_view = PlotView(self)
        self._lay_ways()
        for field in self.fields:
            field.show_unit(units.get(field.argument.name) or in_system(field.unit, self.system))
            if texts.get(field.argument.name):
                field.write(texts[field.argument.name])
        self.filling = False
        self._typed()
        self.fold(self.mode)
        if self.folds:
            given = [f.text.strip() not in ("", str(f.argument.default)) for f in self.fields if f.optional]
            self.more_way.setChecked(any(given))
            self._show_usual(any(given))

    def first_focus(self) -> QWidget:
        return next((f for f in self.fields if not f.text.strip()), self.fields[0]).first()

    @property
    def texts(self) -> dict[str, str]:
        return {field.argument.name: field.text for field in self.fields}

    @property
    def units(self) -> dict[str, str]:
        return {field.argument.name: field.unit for field in self.fields}

    def write_down(self) -> None:
        """The result into the open visit's trail."""
        if self.driver is None or self.worked is None or not self.worked.done:
            self.say(self._problem() or "Nothing is worked out yet.")
            return
        event = event_of(self.driver.now(), self.entry, self.texts, self.units, self.worked)
        if self.record(event):
            self.written = True
            self.say(f"In the trail: {_short(self.worked.said_shortly, LONGEST)}")
            self.keep_way.setEnabled(False)
            self.next_button.setFocus()

    def save_page(self) -> None:
        """One page as a PDF, Letter or A4 by the units."""
        if self.worked is None or not self.worked.done:
            self.say(self._problem() or "Nothing is worked out yet.")
            return
        path = files.pick_file(self, f"{self.entry.name}.pdf", "PDF (*.pdf)")
        if path is None:
            return
        try:
            path.write_bytes(
                printed(self.entry, self.fields, self.worked, self.plot, self.system, self.driver)
            )
        except OSError as problem:
            self.say(f"The page can't be written to {path} ({problem.strerror}). Choose another place.")
            return
        self.say(f"The page is in {path}.")

    def change_system(self) -> None:
        """US customary or SI: what was typed is written anew in the other unit, its value the same."""
        self.system = self.desk.sheets["system"] = SI if self.system == US else US
        self.filling = True
        for field in self.fields:
            if field.argument.kind != ANY and field.units:
                meant = self.worked.meant[field.argument.name] if self.worked else Meant(blank=True)
                field.write_in(in_system(field.argument.unit, self.system), meant)
        self.filling = False
        self._system_words()
        self._typed()

    def toggle_pad(self) -> None:
        """The number pad for the field that was last in, or away again."""
        if self.pad is None:
            self.pad = Pad(self)
            self.pad.hide()
            self.pad.entered.connect(lambda: self._after(self.place))
            self.foot_column.insertWidget(self.foot_column.indexOf(self.verdict), self.pad)
        self.pad.setVisible(self.pad.isHidden())
        self._go(self.place)

    def fold(self, mode: str) -> None:
        super().fold(mode)
        if hasattr(self, "ways"):
            tiny = mode == TINY  # only field, result and Next stay; the rest scrolls with the page
            self.heading.setFont(look.font(look.LEAD if tiny else look.QUESTION, bold=tiny))
            self.ways.setParent(None)
            (self.column if tiny else self.own).addWidget(self.ways)
            self.ways.show()
            self._lay_grid(narrow=mode != WIDE and (self.picture is not None or mode == TINY))

    # how it is put together

    def _lay_fields(self) -> None:
        self.column.addLayout(self.beside, 1)
        self.grid_home = QWidget()
        self.grid = QGridLayout(self.grid_home)
        self.grid.setContentsMargins(0, 0, 0, 0)
        self.grid.setHorizontalSpacing(12)
        self.grid.setVerticalSpacing(3)
        self.grid.setColumnStretch(0, 4)
        self.grid.setColumnStretch(1, 4)
        self.fields = [
            Field(a, number, self._typed, self._unit_changed, self.grid_home)
            for number, a in enumerate(self.entry.arguments, 1)
        ]
        for field in self.fields:
            if field.line is not None:
                place = self.fields.index(field)
                field.line.returnPressed.connect(lambda place=place: self._after(place))
                field.line.up.connect(lambda place=place: self._go(place - 1))
                field.line.down.connect(lambda place=place: self._go(place + 1))
                field.line.selectionChanged.connect(lambda place=place: self._at(place))
                field.line.cursorPositionChanged.connect(lambda *_, place=place: self._at(place))
        self.words.addWidget(self.grid_home)
        usual = [field for field in self.fields if field.optional]
        self.more_way = QPushButton()
        self.more_way.setCheckable(True)
        self.more_way.setMinimumHeight(look.TARGET)
        self.more_way.toggled.connect(self._show_usual)
        names = ", ".join(field.argument.title for field in usual)
        said = names if len(usual) <= MOST else f"{len(usual)} more fields"
        self.more_way.setText(f"A&lso: {said}")
        self.more_way.setAccessibleName(f"Also: {said}")
        self.folds = bool(usual) and len(usual) < len(self.fields)
        self.more_row = row_of(self.more_way)
        self.words.addWidget(self.more_row)
        self.more_row.setVisible(self.folds)

    def _show_usual(self, on: bool) -> None:
        """The fields that may stay at their usual values."""
        for field in self.fields:
            if field.optional:
                field.show(on)

    def _lay_grid(self, narrow: bool) -> None:
        while self.grid.count():
            self.grid.takeAt(0)
        for place, field in enumerate(self.fields):
            field.lay(self.grid, 4 * place, narrow)

    def _lay_ways(self) -> None:
        self.keep_way = _way("Into the &trail", self.write_down)
        self.print_way = _way("&Print one page", self.save_page)
        self.system_way = _way("", self.change_system)
        self.other_way = _way("&Another computation", lambda: self.opens.emit("workbench:list"))
        self.pad_way = _way("Pa&d", self.toggle_pad)
        self.pad_way.setAccessibleName("Pad of numbers")
        self._system_words()
        if self.driver is None or self.driver.read_only or self.driver.visit.signed is not None:
            self.keep_way.hide()
        self.ways = QWidget()
        flow = Flow()
        self.ways.setLayout(flow)
        for way in (self.keep_way, self.print_way, self.system_way, self.other_way, self.pad_way):
            flow.addWidget(way)
        self.own.addWidget(self.ways)
        if self.driver is None:
            self.set_next("&Back to the list")

    def _system_words(self) -> None:
        other = SI if self.system == US else US
        self.system_way.setText(f"&Units: {self.system}")
        self.system_way.setAccessibleName(f"Units: {self.system}, press for {other}")

    # what is typed

    def _unit_changed(self, field: Field, unit: str) -> None:
        """The field's unit; readings of any kind share one."""
        together = (
            [f for f in self.fields if f.argument.kind == ANY] if field.argument.kind == ANY else [field]
        )
        for each in together:
            each.show_unit(unit)
        self._typed()

    def _typed(self) -> None:
        if self.filling:
            return
        self.desk.sheets[self.entry.name] = (self.texts, self.units)
        self.worked = work_out(self.entry, self.texts, self.units, self.system)
        for field in self.fields:
            field.tell(self.worked.meant[field.argument.name])
        self._show()

    def _show(self) -> None:
        worked = self.worked
        self.keep_way.setEnabled(worked.done)
        self.print_way.setEnabled(worked.done)
        if worked.done:
            self.say(_short(worked.said_shortly, LONGEST if self.mode != TINY else LONGEST // 3))
        else:
            self.say(self._problem(), sure=False)
        outcome = {each.key: each.value for each in worked.results}
        plot = plot_of(self.entry.name, worked.values, outcome) if worked.done else None
        self.plot = in_units(plot, self.system) if plot is not None else None
        self._show_plot()
        self.result.show_worked(worked, self._limits(outcome.get("result")))

    def _show_plot(self) -> None:
        self.picture_view.show_plot(self.plot)
        had = self.picture is not None
        if self.plot is not None and not had:
            self.place_picture(self.picture_view)
        elif self.plot is None and had:
            self.picture_view.hide()

    def _limits(self, value: object) -> list[TreeLimit]:
        """Where the trees of this visit, or of new ones, draw the line."""
        number = value if isinstance(value, (int, float)) else None
        if self.driver is not None:
            return limits_of(self.driver.library, self.entry.name, number, self.driver.visit)
        return limits_of(self.desk.library, self.entry.name, number, None)

    def _problem(self) -> str:
        """What is wrong or still missing."""
        if self.worked is None:
            return ""
        if self.worked.problem:
            said = self.worked.problem
            return said[:1].upper() + said[1:]
        return "Still missing: " + ", ".join(self.worked.missing) + "."

    def _after(self, place: int) -> None:
        """Enter in a field: on to the next one that is empty, else to what to do with the result."""
        order = [*range(place + 1, len(self.fields)), *range(place)]
        order = [i for i in order if not self.fields[i].title.isHidden()]
        needed = [i for i in order if not self.fields[i].text.strip() and self.fields[i].line is not None]
        needed = [i for i in needed if self.fields[i].argument.default is None]
        if needed:
            self._go(needed[0])
        elif self.worked is not None and self.worked.done:
            way = self.keep_way if not self.keep_way.isHidden() else self.next_button
            way.setFocus()
        elif order and order[0] > place:
            self._go(order[0])

    def _at(self, place: int) -> None:
        """The field that is written in."""
        self.place = place
        if self.pad is not None:
            self.pad.line = self.fields[place].line

    def _go(self, place: int) -> None:
        if 0 <= place < len(self.fields):
            there = self.fields[place].first()
            there.setFocus()
            if self.fields[place].line is not None:
                self._at(place)
            self.scroll.ensureWidgetVisible(there, 0, 40)


def _short(said: str, most: int) -> str:
    return said if len(said) <= most else said[: most - 4].rstrip(" ;,") + " ..."


def _way(text: str, act) -> QPushButton:
    button = QPushButton(text)
    button.setMinimumHeight(look.TARGET)
    button.setAccessibleName(text.replace("&", ""))
    button.clicked.connect(act)
    return button
