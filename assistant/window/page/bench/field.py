"""One field of a sheet: what goes in, its line or its words to choose from, its unit, and its range with the
value's place on it.
"""

from __future__ import annotations

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QFontMetricsF, QPainter, QPaintEvent, QPen, QPolygonF
from PySide6.QtWidgets import QButtonGroup, QGridLayout, QPushButton, QSizePolicy, QWidget

from assistant.trade.entry import ANY, TEXT, Argument, range_text
from assistant.trade.figure import plain
from assistant.trade.sheet import Meant
from assistant.trade.systems import units_of
from assistant.trade.unit import from_si, symbol
from assistant.window import look
from assistant.window.flow import Flow
from assistant.window.line import Line
from assistant.window.text import label


class RangeBar(QWidget):
    """The argument's range as a line from end to end, and the value's place on it."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.low = self.high = 0.0
        self.ends = ("", "")
        self.share: float | None = None
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)

    def sizeHint(self) -> QSize:
        return QSize(160, 22)

    def show_range(self, ends: tuple[str, str], share: float | None) -> None:
        """`share` is the value's place from 0 to 1, None where there is no value or it lies outside."""
        self.ends, self.share = ends, share
        self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:
        ink = look.inks(self.palette())
        paint = QPainter(self)
        paint.setRenderHint(QPainter.RenderHint.Antialiasing)
        font = look.font(look.SMALL - 1)
        measure = QFontMetricsF(font)
        left, right = (measure.horizontalAdvance(end) + 6 for end in self.ends)
        paint.setFont(font)
        paint.setPen(ink.soft)
        box, middle = QRectF(self.rect()), self.height() / 2
        flags = int(Qt.AlignmentFlag.AlignVCenter)
        paint.drawText(box, flags | int(Qt.AlignmentFlag.AlignLeft), self.ends[0])
        paint.drawText(box, flags | int(Qt.AlignmentFlag.AlignRight), self.ends[1])
        start, end = left, self.width() - right
        if end - start < 20:
            return
        paint.setPen(QPen(ink.edge, 1.5))
        paint.drawLine(QPointF(start, middle), QPointF(end, middle))
        for x in (start, end):
            paint.drawLine(QPointF(x, middle - 4), QPointF(x, middle + 4))
        if self.share is not None:
            x = start + self.share * (end - start)
            paint.setPen(QPen(ink.paper, 1))
            paint.setBrush(ink.accent)
            corners = [(0, -7), (6, 0), (0, 7), (-6, 0)]
            paint.drawPolygon(QPolygonF([QPointF(x + a, middle + b) for a, b in corners]))


class Field:
    """The widgets of one argument, laid into a grid by the page. `changed` is called after every change."""

    def __init__(self, a: Argument, number: int, changed, unit_changed, home: QWidget) -> None:
        self.argument, self.unit = a, a.unit
        self._changed, self._unit_changed = changed, unit_changed
        self.units = units_of(a)
        self._before: tuple[str, str, str] | None = None
        """(text written for another unit, the text that stood there, its unit)."""
        self.name = f"{number}. {a.title}"
        self.title = label(f"{self.name} \u2013 {a.words}" if a.words != a.title else self.name)
        self.line: Line | None = None
        self.buttons: list[QPushButton] = []
        self.choices: QWidget | None = None
        self.unit_button: QPushButton | None = None
        self.echo = label("", look.SMALL, soft=True)
        self.bar: RangeBar | None = None
        self._nothing = QWidget()
        self._nothing.setMaximumHeight(1)
        if a.choices:
            self._choose()
        else:
            self._write()
        for thing in (
            self.title,
            self.line,
            self.choices,
            self.unit_button,
            self.bar,
            self.echo,
            self._nothing,
        ):
            if thing is not None:
                thing.setParent(home)  # without a parent it would be a window for a moment

    def _write(self) -> None:
        a = self.argument
        self.line = Line(self.name, points=look.LEAD, most=4000 if a.kind == TEXT else 400)
        self.line.setPlaceholderText(self._example())
        self.line.textChanged.connect(lambda _: self._changed())
        self.title.setBuddy(self.line)
        if len(self.units) > 1:
            self.unit_button = QPushButton()
            self.unit_button.setMinimumSize(64, look.TARGET)
            self.unit_button.setFocusPolicy(Qt.FocusPolicy.TabFocus)
            self.unit_button.clicked.connect(self.next_unit)
        if a.kind not in (ANY, TEXT):
            self.bar = RangeBar()
        self.show_unit(self.unit)

    def _choose(self) -> None:
        self.choices = QWidget()
        flow = Flow(6)
        self.choices.setLayout(flow)
        group = QButtonGroup(self.choices)
        for word in self.argument.choices:
            button = QPushButton(word)
            button.setCheckable(True)
            button.setMinimumSize(64, look.TARGET)
            button.setAccessibleName(f"{self.name}: {word}")
            button.toggled.connect(lambda on: self._changed() if on else None)
            group.addButton(button)
            flow.addWidget(button)
            self.buttons.append(button)
        if self.argument.default is not None:
            self.write(str(self.argument.default))

    def lay(self, grid: QGridLayout, row: int, narrow: bool) -> None:
        """Side by side in a wide grid, below each other in a narrow one."""
        place = self.line if self.line is not None else self.choices
        if narrow:
            grid.addWidget(self.title, row, 0, 1, 3)
            grid.addWidget(place, row + 1, 0, 1, 2 if self.unit_button else 3)
            if self.unit_button is not None:
                grid.addWidget(self.unit_button, row + 1, 2)
            grid.addWidget(self.below(), row + 2, 0, 1, 3)
            grid.addWidget(self.echo, row + 3, 0, 1, 3)
            return
        grid.addWidget(self.title, row, 0, 2 if self.bar is not None else 1, 1)
        grid.addWidget(place, row, 1, 1, 1 if self.unit_button else 2)
        if self.unit_button is not None:
            grid.addWidget(self.unit_button, row, 2)
        grid.addWidget(self.below(), row + 1, 1, 1, 2)
        grid.addWidget(self.echo, row + 2, 0, 1, 3)

    def below(self) -> QWidget:
        """What stands under the line: the range, or nothing."""
        return self._nothing if self.bar is None else self.bar

    @property
    def optional(self) -> bool:
        """Whether it has a usual value and may stay empty."""
        return self.argument.default is not None

    def show(self, on: bool) -> None:
        """In sight or not; what stands in it counts all the same."""
        for thing in (self.title, self.line, self.choices, self.unit_button, self.bar):
            if thing is not None:
                thing.setVisible(on)
        self.echo.setVisible(on and bool(self.echo.text()))

    @property
    def text(self) -> str:
        if self.line is not None:
            return self.line.text()
        return next((b.text() for b in self.buttons if b.isChecked()), "")

    def write(self, text: str) -> None:
        if self.line is not None:
            self.line.setText(text)
            return
        for button in self.buttons:
            if button.text() == text:
                button.setChecked(True)

    def first(self) -> QWidget:
        return self.line if self.line is not None else self.buttons[0]

    def next_unit(self) -> None:
        """The next unit that it can stand in; what was typed stays as it is."""
        place = self.units.index(self.unit) if self.unit in self.units else -1
        self._unit_changed(self, self.units[(place + 1) % len(self.units)])

    def write_in(self, unit: str, meant: Meant) -> None:
        """Stand in another unit, the value the same; what a person typed comes back as it was typed."""
        if unit == self.unit:
            return
        typed, before = self.text, self._before
        if before is not None and before[0] == typed and before[2] == unit:
            self.write(before[1])
        elif meant.unit == self.unit and typed.strip():
            values = meant.value if isinstance(meant.value, tuple) else (meant.value,)
            self.write(", ".join(f"{from_si(value, unit):.6g}" for value in values))
        self._before = (self.text, typed, self.unit)
        self.show_unit(unit)

    def show_unit(self, unit: str) -> None:
        self.unit = unit
        if self.unit_button is not None:
            said = symbol(unit) or "no unit"
            self.unit_button.setText(said)
            self.unit_button.setAccessibleName(f"Unit of {self.argument.title}: {said}")
        if self.line is not None:
            self.line.setPlaceholderText(self._example())

    def tell(self, meant: Meant) -> None:
        """What the text means: its echo or what is wrong, and its place in the range."""
        said = meant.problem or ("" if self._as_typed(meant.echo) else meant.echo)
        if meant.choices:
            said = f"{said} Write {' or '.join(meant.choices)}."
        self.echo.setText(said)
        self.echo.setVisible(bool(said) and not self.title.isHidden())
        self.echo.setProperty("soft", not meant.problem)
        self.echo.setFont(look.font(look.SMALL, bold=bool(meant.problem)))
        self.echo.style().unpolish(self.echo)
        self.echo.style().polish(self.echo)
        if self.bar is not None:
            a = self.argument
            ends = tuple(plain(from_si(end, self.unit or a.unit)) for end in (a.low, a.high))
            self.bar.show_range(ends, None if meant.problem else _share(a, meant.value))
            self.bar.setAccessibleName(f"Range of {a.title}: {range_text(a)}")

    def _as_typed(self, echo: str) -> bool:
        """Whether the echo says nothing that does not stand there already."""
        typed = self.text.strip()
        shown = ", ".join(f"{item.strip()} {symbol(self.unit)}".strip() for item in typed.split(","))
        return echo in (typed, shown)

    def _example(self) -> str:
        a = self.argument
        if a.kind == TEXT:
            return f"{a.example}"[:60]
        if a.default is not None and a.default != ():
            said = "" if a.many else f"{from_si(a.default, self.unit):.5g}"
            return f"{said} when left empty"
        values = a.example if a.many else (a.example,)
        shown = ", ".join(f"{from_si(v, self.unit):.4g}" for v in values)
        left = ", or nothing" if a.default == () else ""
        return f"like {shown}{left}"


def _share(a: Argument, value: object) -> float | None:
    """Where the value (the middle of a list) lies between the ends."""
    if isinstance(value, tuple):
        value = sum(value) / len(value) if value else None
    if not isinstance(value, (int, float)) or a.high <= a.low:
        return None
    size = abs(value) if a.unsigned else value
    return min(1.0, max(0.0, (size - a.low) / (a.high - a.low)))
