"""The meter's display: it ranges and settles before it stands, as a meter's does."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QTimer, Signal
from PySide6.QtWidgets import QLabel, QSizePolicy, QWidget

from assistant.window import look


class Display(QLabel):
    """`stands` is sent once the last text shows. `pace` stretches the seconds; nothing is waited for at 0."""

    stands = Signal(str)
    pace = 1.0

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__("- - -", parent)
        self.setFont(look.font(look.QUESTION, bold=True))
        self.setSizePolicy(QSizePolicy.Policy.Minimum, QSizePolicy.Policy.Preferred)
        self.setMinimumWidth(170)
        self.frames: list[tuple[float, str]] = []
        self.timer = QTimer(self)
        self.timer.setSingleShot(True)
        self.timer.timeout.connect(self._next)
        self._say("- - -")

    def run(self, frames: Sequence[tuple[float, str]]) -> None:
        """Show these texts, each at its second."""
        self.timer.stop()
        self.frames = list(frames)
        if self.pace <= 0:
            self.frames = self.frames[-1:]
        self._next()

    def blank(self) -> None:
        """Nothing is measured."""
        self.timer.stop()
        self.frames = []
        self._say("- - -")

    def _next(self) -> None:
        if not self.frames:
            return
        at, text = self.frames.pop(0)
        self._say(text)
        if self.frames:
            self.timer.start(max(1, round((self.frames[0][0] - at) * 1000 * self.pace)))
        else:
            self.stands.emit(text)

    def _say(self, text: str) -> None:
        self.setText(text)
        self.setAccessibleName(f"The meter shows {text}")
