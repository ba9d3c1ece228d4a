"""A number pad on the screen, for hands that have no keyboard near: two rows that stay beside the field."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QGridLayout, QLineEdit, QPushButton, QSizePolicy, QWidget

from assistant.window import look

_ROWS = (("1", "2", "3", "4", "5", "6", "7", "8", "9", "0"), (".", "-", "/", "OL", "space", "⌫", "Enter"))
_SPOKEN = {"-": "minus or to", "/": "over", ".": "point", "OL": "over the range", "⌫": "rub out"}
_WIDE_KEYS = {"space": 2, "Enter": 3}


class Pad(QWidget):
    """Types into one line at a time; `entered` is its Enter."""

    entered = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.line: QLineEdit | None = None
        grid = QGridLayout(self)
        grid.setContentsMargins(0, 0, 0, 4)
        grid.setSpacing(6)
        self.keys: dict[str, QPushButton] = {}
        for row, keys in enumerate(_ROWS):
            column = 0
            for key in keys:
                button = QPushButton(key)
                button.setAccessibleName(f"Pad {key} {_SPOKEN[key]}" if key in _SPOKEN else f"Pad {key}")
                button.setFont(look.font(look.LEAD, bold=True))
                button.setFocusPolicy(Qt.FocusPolicy.NoFocus)
                button.setStyleSheet("padding: 0;")
                button.setMinimumSize(36, look.TARGET)
                button.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Fixed)
                button.clicked.connect(lambda _=False, key=key: self.press(key))
                width = _WIDE_KEYS.get(key, 1)
                grid.addWidget(button, row, column, 1, width)
                column += width
                self.keys[key] = button

    def press(self, key: str) -> None:
        """One key of the pad, at the cursor of the line."""
        line = self.line
        if key == "Enter":
            self.entered.emit()
            return
        if line is None or line.isReadOnly():
            return
        if key == "⌫":
            line.backspace()
        else:
            line.insert({"space": " "}.get(key, key))
        line.setFocus()
