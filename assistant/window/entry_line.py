"""The line a reading is written on: any text, kept as typed, with its unit beside it and what was understood
below.

A plain line, never a spin box: a box with limits drops digits without a word. What it says comes from the
walk.
"""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QLabel, QSizePolicy, QVBoxLayout, QWidget

from assistant.quantity.kind import UNITS
from assistant.walk.weigh import Weighed
from assistant.window import look
from assistant.window.line import Line


class EntryLine(QWidget):
    """`weigh` tells what a text would mean; `entered` is Enter. `weighed` is what the present text means.

    `echoes` False leaves saying what was understood to the page.
    """

    entered = Signal()
    typed = Signal(str)

    def __init__(
        self,
        name: str,
        unit: str,
        weigh: Callable[[str], Weighed],
        points: float = look.WRITTEN,
        echoes: bool = True,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self._weigh = weigh
        self.weighed = Weighed(blank=True)
        self.line = Line(name, points=points)
        self.unit = QLabel(UNITS[unit].symbol if unit in UNITS else unit)
        self.unit.setFont(look.font(min(points, 18.0)))
        self.echo = QLabel("")
        self.echo.setTextFormat(Qt.TextFormat.PlainText)
        self.echo.setFont(look.font(look.SMALL))
        self.echo.setProperty("soft", True)
        self.echo.setWordWrap(True)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(1)
        row = QHBoxLayout()
        row.setSpacing(8)
        row.addWidget(self.line, 1)
        row.addWidget(self.unit)
        column.addLayout(row)
        column.addWidget(self.echo)
        self.echo.setVisible(echoes)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.line.textChanged.connect(self._changed)
        self.line.returnPressed.connect(self.entered)
        self._changed("")

    @property
    def text(self) -> str:
        return self.line.text()

    def write(self, text: str) -> None:
        self.line.setText(text)

    def weigh_again(self) -> Weighed:
        """What the text means now: a limit may rest on another field of the page."""
        self.weighed = self._weigh(self.line.text())
        return self.weighed

    @property
    def understood(self) -> str:
        """What to say about the present text; empty for none."""
        weighed = self.weighed
        if weighed.blank:
            return ""
        return f"understood: {weighed.understood.echo}" if weighed.understood is not None else weighed.message

    def _changed(self, text: str) -> None:
        self.weigh_again()
        self.echo.setText(self.understood)
        self.echo.setAccessibleName(self.understood or "nothing typed yet")
        self.typed.emit(text)
