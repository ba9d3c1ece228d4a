"""One computation as a page: its fields, the result as it is typed, the formula with the numbers, where it
comes from, and its plot.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QPushButton, QWidget

from assistant.trade.entry import Entry
from assistant.trade.plotted import in_units, plot_of
from assistant.trade.registry import REGISTRY
from assistant.trade.sheet import Worked, work_out
from assistant.trade.systems import SI, US
from assistant.tree.library import Library
from assistant.walk.ask import Taken
from assistant.walk.bench import event_of, inputs_of
from assistant.window import files, look
from assistant.window.flow import Flow
from assistant.window.line import Line
from assistant.window.pad import Pad
from assistant.window.page.aside.base import AsidePage
from assistant.window.page.base import TINY, WIDE
from assistant.window.page.bench.fields import Fields
from assistant.window.page.bench.limits import TreeLimit, limits_of
from assistant.window.page.bench.paper import printed
from assistant.window.page.bench.plot_view import PlotView
from assistant.window.page.bench.result import ResultView

if TYPE_CHECKING:
    from assistant.window.desk import Desk
    from assistant.window.session import Driver

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
        self.listed = not isinstance(what, Taken)
        texts: dict[str, str] = {}
        units: dict[str, str] = {}
        if isinstance(what, Taken):
            name, texts, units = inputs_of(driver.visit, what)
        else:
            name = desk.sheets["opened"] = what
            texts, units = desk.sheets.get(name, ({}, {}))
        self.entry: Entry = REGISTRY[name]
        self.system = desk.sheets.get("system", US)
        self.worked: Worked | None = None
        self.filling = True
        self.pad: Pad | None = None
        self.heading.setText(self.entry.title)
        self.sheet = Fields(self.entry)
        self.fields = self.sheet.all
        self.sheet.typed.connect(self._typed)
        self.sheet.entered.connect(self._past_the_last)
        self.sheet.went.connect(self._went)
        self.sheet.moved.connect(self._moved)
        self.result = ResultView(self.entry, self.library.vocabulary.plate)
        self.result.plate.typed.connect(self._plate_typed)
        self.result.plate.entered.connect(self._write_to)
        self.column.addLayout(self.beside, 1)
        self.words.addWidget(self.sheet)
        self.words.addWidget(self.result)
        self.words.addStretch(1)
        self.picture_view = PlotView(self)
        self._lay_ways()
        self.sheet.fill(texts, units, self.system)
        self.filling = False
        self._work_out()
        self.fold(self.mode)

    def first_focus(self) -> QWidget:
        return self.sheet.first()

    def write_down(self) -> None:
        """The result into the open visit's trail."""
        if self.driver is None or self.worked is None or not self.worked.done:
            self.say(self._problem() or "Nothing is worked out yet.")
            return
        event = event_of(self.driver.now(), self.entry, self.sheet.texts, self.sheet.units, self.worked)
        if self.record(event):
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
        self.sheet.write_in(self.system, self.worked.meant)
        self.result.plate.write_in(self.system)
        self.filling = False
        self._system_words()
        self._typed()

    def toggle_pad(self) -> None:
        """The number pad for the field that was last in, or away again."""
        if self.pad is None:
            self.pad = Pad(self)
            self.pad.hide()
            self.pad.entered.connect(lambda: self.sheet.after(self.sheet.place))
            self.foot_column.insertWidget(self.foot_column.indexOf(self.verdict), self.pad)
        self.pad.setVisible(self.pad.isHidden())
        self.sheet.go(self.sheet.place)

    def fold(self, mode: str) -> None:
        super().fold(mode)
        if hasattr(self, "ways"):
            tiny = mode == TINY  # only field, result and Next stay; the rest scrolls with the page
            self.heading.setFont(look.font(look.LEAD if tiny else look.QUESTION, bold=tiny))
            self.ways.setParent(None)
            (self.column if tiny else self.own).addWidget(self.ways)
            self.ways.show()
            self.result.plate.fold(tiny)
            self.sheet.lay(narrow=mode != WIDE and (self.picture is not None or mode == TINY))

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Esc goes one page back: to the list, or to the question where the sheet was opened from there."""
        if event.key() == Qt.Key.Key_Escape and self.listed:
            self.opens.emit("workbench:list")
        else:
            super().keyPressEvent(event)

    def enter(self) -> None:
        """The big button: to the list where there is no visit, else to the question."""
        if self.driver is None:
            self.opens.emit("workbench:list")
        else:
            super().enter()

    # how it is put together

    def _lay_ways(self) -> None:
        self.keep_way = _way("Into the &trail", self.write_down)
        self.print_way = _way("P&rint one page", self.save_page)
        self.system_way = _way("", self.change_system)
        self.other_way = _way("&Another computation", lambda: self.opens.emit("workbench:list"))
        self.pad_way = _way("&Pad", self.toggle_pad)
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
            self.other_way.hide()  # the big button leads there

    def _system_words(self) -> None:
        other = SI if self.system == US else US
        self.system_way.setText(f"&Units: {self.system}")
        self.system_way.setAccessibleName(f"Units: {self.system}, press for {other}")

    # what is typed

    def _typed(self) -> None:
        if not self.filling:
            self.desk.sheets[self.entry.name] = (self.sheet.texts, self.sheet.units)
            self._work_out()

    def _work_out(self) -> None:
        self.worked = work_out(self.entry, self.sheet.texts, self.sheet.units, self.system)
        self.sheet.tell(self.worked.meant)
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

    @property
    def library(self) -> Library:
        """The trees of this visit, or of new ones."""
        return self.driver.library if self.driver is not None else self.desk.library

    def _limits(self, value: object) -> list[TreeLimit]:
        """Where the trees draw the line; what they want from the plate is asked for."""
        number = value if isinstance(value, (int, float)) else None
        visit = self.driver.visit if self.driver is not None else None
        plate = self.result.plate
        ask = (self.library, self.entry.name, number, visit)
        _, wanted = limits_of(*ask)
        plate.want(wanted, self.desk.sheets.get("plate", {}), self.system)
        return limits_of(*ask, plate.values(), self.system)[0]

    def _plate_typed(self) -> None:
        if not self.filling:
            known = self.desk.sheets.get("plate", {})
            self.desk.sheets["plate"] = {**known, **self.result.plate.texts}
            self._show()

    def _problem(self) -> str:
        """What is wrong or still missing."""
        if self.worked is None:
            return ""
        if self.worked.problem:
            said = self.worked.problem
            return said[:1].upper() + said[1:]
        return "Still missing: " + ", ".join(self.worked.missing) + "."

    def _past_the_last(self) -> None:
        """Enter after the last field: to what to do with the result."""
        if self.worked is not None and self.worked.done:
            (self.keep_way if not self.keep_way.isHidden() else self.next_button).setFocus()

    def _went(self, place: int) -> None:
        self.scroll.ensureWidgetVisible(self.fields[place].first(), 0, 40)

    def _moved(self, place: int) -> None:
        self._write_to(self.fields[place].line)

    def _write_to(self, line: Line) -> None:
        """The pad writes where the focus came in last."""
        if self.pad is not None:
            self.pad.line = line


def _short(said: str, most: int) -> str:
    return said if len(said) <= most else said[: most - 4].rstrip(" ;,") + " ..."


def _way(text: str, act) -> QPushButton:
    button = QPushButton(text)
    button.setMinimumHeight(look.TARGET)
    button.setAccessibleName(text.replace("&", ""))
    button.clicked.connect(act)
    return button
