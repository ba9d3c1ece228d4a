"""The meter in the hand: what its dial is set to and where its leads lie, a button each."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QFontMetrics
from PySide6.QtWidgets import QButtonGroup, QGridLayout, QPushButton, QSizePolicy, QWidget

from assistant.drill.practice.sitting import Sitting
from assistant.window import look
from assistant.window.page.drill.can_do import slot_words
from assistant.window.page.drill.picker import toggle

SLOTS = ("function", "red", "black")
EDGES = 26
"""What a button's frame and its insides take of its width, in device-independent pixels."""


class Slots(QWidget):
    """`turned` carries the slot that was pressed; `slot` is the one that the next pick is for."""

    turned = Signal(str)

    def __init__(self, sitting: Sitting, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.sitting, self.slot = sitting, "function"
        inner = QGridLayout(self)
        inner.setContentsMargins(0, 0, 0, 0)
        inner.setSpacing(4)
        self.button_of: dict[str, QPushButton] = {}
        group = QButtonGroup(self)
        for name in SLOTS:
            button = toggle("")
            button.setStyleSheet("text-align: left; padding-left: 8px; padding-right: 8px;")
            button.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Fixed)
            button.clicked.connect(lambda _=False, name=name: self.turned.emit(name))
            if name != "function":
                button.setFont(look.font(look.SMALL))  # two lines of a long name fit then
            group.addButton(button)
            self.button_of[name] = button
            place = (0, 0, 1, 2) if name == "function" else (1, SLOTS.index(name) - 1)
            inner.addWidget(button, *place)

    def turn_to(self, name: str) -> str:
        """Another slot; the red one where the picked function has no second lead."""
        one = self.sitting.meter.picked.leads == 1
        self.slot = "red" if name == "black" and one else name
        self.button_of[self.slot].setChecked(True)
        return self.slot

    def chosen(self) -> str:
        """What lies in the present slot."""
        meter = self.sitting.meter
        return {"function": meter.function, "red": meter.red, "black": meter.black}[self.slot]

    def take(self, name: str) -> str:
        """What was picked goes into the present slot; the slot whose turn comes then."""
        meter = self.sitting.meter
        if self.slot == "function":
            meter.function = name
        elif self.slot == "red":
            meter.red = name
            return "black"
        else:
            meter.black = name
        return "red"

    def laid(self) -> tuple[str, ...]:
        """Where the leads lie that the picked function has."""
        meter = self.sitting.meter
        return (meter.red, meter.black) if meter.picked.leads == 2 else (meter.red,)

    def say(self) -> None:
        """The buttons' words; a long name goes over two lines."""
        said = slot_words(self.sitting)
        for name, button in self.button_of.items():
            button.setAccessibleName(said[name].replace("&", "&&"))
            button.setToolTip(said[name])
            room = button.width() - EDGES if button.width() > 120 else 160
            lines = 1 if name == "function" else 2
            button.setText(in_lines(said[name], button.fontMetrics(), room, lines).replace("&", "&&"))
        self.button_of["black"].setVisible(self.sitting.meter.picked.leads == 2)


def in_lines(words: str, measure: QFontMetrics, room: int, lines: int) -> str:
    """The words in so many lines at most, what does not fit left out at the end."""
    done: list[str] = []
    left = words.split()
    while left and len(done) < lines - 1:
        line = left.pop(0)
        while left and measure.horizontalAdvance(f"{line} {left[0]}") <= room:
            line = f"{line} {left.pop(0)}"
        done.append(line)
    if left:
        done.append(measure.elidedText(" ".join(left), Qt.TextElideMode.ElideRight, room))
    return "\n".join(done)
