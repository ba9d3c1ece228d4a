"""All fields of a sheet in order: laid out wide or narrow, gone through with the keys, those with a usual
value folded away.
"""

from __future__ import annotations

from collections.abc import Mapping

from PySide6.QtCore import QEvent, QObject, Signal
from PySide6.QtWidgets import QGridLayout, QPushButton, QVBoxLayout, QWidget

from assistant.trade.entry import ANY, Entry
from assistant.trade.sheet import Meant
from assistant.trade.systems import in_system
from assistant.window import look
from assistant.window.page.bench.field import Field
from assistant.window.text import row_of

MOST = 3
"""So many further fields are named on the button that shows them."""


class Fields(QWidget):
    """`typed` after every change, `entered` where Enter leads past the last field, `went` to a field that
    now has the focus, `moved` where one is written in. `place` is the field that was last written in.
    """

    typed = Signal()
    entered = Signal()
    went = Signal(int)
    moved = Signal(int)

    def __init__(self, entry: Entry, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.place = 0
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        home = QWidget()
        self.grid = QGridLayout(home)
        self.grid.setContentsMargins(0, 0, 0, 0)
        self.grid.setHorizontalSpacing(12)
        self.grid.setVerticalSpacing(3)
        self.grid.setColumnStretch(0, 4)
        self.grid.setColumnStretch(1, 4)
        self.all = [
            Field(a, number, self.typed.emit, self._unit_changed, home)
            for number, a in enumerate(entry.arguments, 1)
        ]
        for place, field in enumerate(self.all):
            if field.line is not None:
                field.line.returnPressed.connect(lambda place=place: self.after(place))
                field.line.up.connect(lambda place=place: self.go(place - 1))
                field.line.down.connect(lambda place=place: self.go(place + 1))
                field.line.installEventFilter(self)
        column.addWidget(home)
        column.addWidget(self._fold_away())

    def fill(self, texts: Mapping[str, str], units: Mapping[str, str], system: str) -> None:
        """The fields with these texts and units; where none is given, the system's."""
        for field in self.all:
            field.show_unit(units.get(field.argument.name) or in_system(field.unit, system))
            if texts.get(field.argument.name):
                field.write(texts[field.argument.name])
        given = [f.text.strip() not in ("", str(f.argument.default)) for f in self.all if f.optional]
        self.more_way.setChecked(any(given))
        if self.folds:
            self._show_usual(any(given))

    @property
    def texts(self) -> dict[str, str]:
        return {field.argument.name: field.text for field in self.all}

    @property
    def units(self) -> dict[str, str]:
        return {field.argument.name: field.unit for field in self.all}

    def write_in(self, system: str, meant: Mapping[str, Meant]) -> None:
        """Every field in the system's units, its value the same."""
        for field in self.all:
            if field.argument.kind != ANY and field.units:
                field.write_in(in_system(field.argument.unit, system), meant[field.argument.name])

    def tell(self, meant: Mapping[str, Meant]) -> None:
        """What each text means, beside its field."""
        for field in self.all:
            field.tell(meant[field.argument.name])

    def lay(self, narrow: bool) -> None:
        """Side by side, or below each other."""
        while self.grid.count():
            self.grid.takeAt(0)
        for place, field in enumerate(self.all):
            field.lay(self.grid, 4 * place, narrow)

    def first(self) -> QWidget:
        """The first thing that is empty, else the first."""
        return next((f for f in self.all if not f.text.strip()), self.all[0]).first()

    def after(self, place: int) -> None:
        """Enter in a field: on to the next one that is needed and empty, or past the last."""
        order = [*range(place + 1, len(self.all)), *range(place)]
        order = [i for i in order if not self.all[i].title.isHidden()]
        needed = [i for i in order if self.all[i].line is not None and not self.all[i].optional]
        empty = next((i for i in needed if not self.all[i].text.strip()), None)
        if empty is not None:
            self.go(empty)
        else:
            self.entered.emit()

    def go(self, place: int) -> None:
        """The focus into a field."""
        if 0 <= place < len(self.all):
            self.all[place].first().setFocus()
            if self.all[place].line is not None:
                self._at(place)
            self.went.emit(place)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """The field that a finger or a key has come into."""
        if event.type() == QEvent.Type.FocusIn:
            self._at(next(i for i, field in enumerate(self.all) if field.line is watched))
        return super().eventFilter(watched, event)

    def _at(self, place: int) -> None:
        self.place = place
        self.moved.emit(place)

    def _fold_away(self) -> QWidget:
        usual = [field for field in self.all if field.optional]
        self.folds = bool(usual) and len(usual) < len(self.all)
        names = ", ".join(field.argument.title for field in usual)
        said = names if len(usual) <= MOST else f"{len(usual)} more fields"
        self.more_way = QPushButton(f"A&lso: {said}")
        self.more_way.setAccessibleName(f"Also: {said}")
        self.more_way.setCheckable(True)
        self.more_way.setMinimumHeight(look.TARGET)
        self.more_way.toggled.connect(self._show_usual)
        row = row_of(self.more_way)
        if not self.folds:
            row.hide()
        return row

    def _show_usual(self, on: bool) -> None:
        """The fields that may stay at their usual values."""
        for field in self.all:
            if field.optional:
                field.show(on or not self.folds)

    def _unit_changed(self, field: Field, unit: str) -> None:
        """The field's unit; readings of any kind share one."""
        one_kind = field.argument.kind == ANY
        for each in [f for f in self.all if f.argument.kind == ANY] if one_kind else [field]:
            each.show_unit(unit)
        self.typed.emit()
