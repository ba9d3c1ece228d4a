"""What a sheet's scale needs from the rating plate, where no open visit has read it: a line a value."""

from __future__ import annotations

from collections.abc import Mapping

from PySide6.QtCore import QEvent, QObject, Signal
from PySide6.QtWidgets import QGridLayout, QHBoxLayout, QLabel, QWidget

from assistant.house.model import PlateValue
from assistant.quantity.entry import Understood, understand
from assistant.quantity.interval import Interval
from assistant.trade.figure import plain
from assistant.trade.systems import in_system
from assistant.trade.unit import from_si, symbol
from assistant.window import look
from assistant.window.line import Line
from assistant.window.text import label

WHY = "For the scale, from the rating plate:"


class PlateFields(QWidget):
    """Shown while `want` names any; `typed` after every change. The scale shows once all are there."""

    typed = Signal()
    entered = Signal(object)
    """A line that now has the focus."""

    def __init__(self, known: Mapping[str, PlateValue], parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.known = known
        self.lines: dict[str, Line] = {}
        self._units: dict[str, QLabel] = {}
        self.rows: list[QWidget] = []
        self.narrow = False
        self.grid = QGridLayout(self)
        self.grid.setContentsMargins(0, 0, 0, 0)
        self.grid.setHorizontalSpacing(18)
        self.grid.setVerticalSpacing(3)
        self.why = label(WHY, look.SMALL, soft=True)
        self.grid.addWidget(self.why, 0, 0, 1, 2)
        self.system = ""
        self.hide()

    def want(self, names: tuple[str, ...], typed: Mapping[str, tuple[str, str]], system: str) -> None:
        """A line for each of these; `typed` is what was typed into them before, with its system."""
        self.system = system
        for name in names:
            if name not in self.lines:
                text, then = typed.get(name, ("", system))
                value = self._value(name, text, then)
                self._lay(name, text if then == system or value is None else self._written(name, value))
        for name, unit in self._units.items():
            unit.setText(symbol(self._unit(name)))
        self.setVisible(bool(self.lines))

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """The line that a finger or a key has come into."""
        if event.type() == QEvent.Type.FocusIn:
            self.entered.emit(watched)
        return super().eventFilter(watched, event)

    def fold(self, narrow: bool) -> None:
        """Below each other, or two side by side."""
        self.narrow = narrow
        for place, row in enumerate(self.rows):
            self.grid.removeWidget(row)
            self.grid.addWidget(row, 1 + (place if narrow else place // 2), 0 if narrow else place % 2)

    def _lay(self, name: str, text: str) -> None:
        value = self.known[name]
        said = label(value.title)
        line = Line(f"Rating plate: {value.title}", points=look.LEAD, most=40)
        line.setPlaceholderText(self._example(value))
        line.setText(text)
        line.textChanged.connect(lambda _: self.typed.emit())
        line.installEventFilter(self)
        said.setBuddy(line)
        unit = label("")
        row = QWidget(self)
        across = QHBoxLayout(row)
        across.setContentsMargins(0, 0, 0, 0)
        for thing, share in ((said, 3), (line, 3), (unit, 0)):
            across.addWidget(thing, share)
        self.rows.append(row)
        self.lines[name], self._units[name] = line, unit
        self.fold(self.narrow)

    def values(self) -> dict[str, Interval]:
        """What is understood and can stand on a plate, in SI. What is not, is told above the lines."""
        found, wrong = {}, ""
        for name, line in self.lines.items():
            value = self._value(name, line.text(), self.system)
            if value is not None:
                found[name] = Interval.exact(value)
            elif line.text().strip():
                wrong = f"No plate says so: {self.known[name].title} is {self._example(self.known[name])}."
        self.why.setText(wrong or WHY)
        return found

    @property
    def texts(self) -> dict[str, tuple[str, str]]:
        """As typed, with the system of its unit, by name."""
        return {name: (line.text(), self.system) for name, line in self.lines.items()}

    def write_in(self, system: str) -> None:
        """The same values in the other system's units."""
        values = self.values()
        self.system = system
        for name, line in self.lines.items():
            self._units[name].setText(symbol(self._unit(name)))
            line.setPlaceholderText(self._example(self.known[name]))
            if name in values:
                line.setText(self._written(name, values[name].lo))

    def _value(self, name: str, text: str, system: str) -> float | None:
        """In SI; None where it is not understood or no plate can say so."""
        value = self.known[name]
        got = understand(text.strip(), value.kind, in_system(value.unit, system))
        if not isinstance(got, Understood) or not got.interval.finite:
            return None
        middle = got.interval.middle
        slack = 1e-6 * max(abs(value.span.lo), abs(value.span.hi))
        return middle if value.span.lo - slack <= middle <= value.span.hi + slack else None

    def _written(self, name: str, value: float) -> str:
        return plain(from_si(value, self._unit(name)))

    def _unit(self, name: str) -> str:
        return in_system(self.known[name].unit, self.system)

    def _example(self, value: PlateValue) -> str:
        unit = in_system(value.unit, self.system)
        if value.choices:
            return " or ".join(plain(from_si(one, unit)) for one in value.choices)
        return f"{plain(from_si(value.span.lo, unit))} to {plain(from_si(value.span.hi, unit))}"
