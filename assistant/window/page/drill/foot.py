"""The foot of free work: the meter's display, what is expected, and the end of the drill."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtWidgets import QHBoxLayout, QPushButton, QWidget

from assistant.window import look
from assistant.window.line import Line
from assistant.window.page.drill.display import Display

EXPECT = "What do you expect? A value, a range, or a word"


class FreeFoot(QHBoxLayout):
    """`enters` is called by Enter in the line, `finishes` by the button. In a tiny window the button stands
    elsewhere: `end` is then for the page to place.
    """

    def __init__(
        self, enters: Callable[[], None], finishes: Callable[[], None], stood: Callable[[str], None]
    ) -> None:
        super().__init__()
        self.setSpacing(8)
        self.display = Display()
        self.display.stands.connect(stood)
        self.expected = Line(EXPECT)
        self.expected.setPlaceholderText("what do you expect?")
        self.expected.setToolTip(EXPECT)
        self.expected.returnPressed.connect(enters)
        self.end = QPushButton("&End the drill")
        self.end.setMinimumHeight(look.TARGET)
        self.end.clicked.connect(finishes)
        for thing in (self.display, self.expected):  # what stands right of them keeps its place
            policy = thing.sizePolicy()
            policy.setRetainSizeWhenHidden(True)
            thing.setSizePolicy(policy)
        self.addWidget(self.display)
        self.addWidget(self.expected, 1)
        self.addWidget(self.end)

    def fold(self, tiny: bool) -> QWidget:
        """Lay it out; the button, taken out where the window is tiny."""
        self.display.setFont(look.font(look.LEAD if tiny else look.QUESTION, bold=True))
        self.display.setMinimumWidth(90 if tiny else 170)
        self.expected.setMinimumWidth(140 if tiny else 220)
        self.removeWidget(self.end)
        if not tiny:
            self.addWidget(self.end)
        return self.end
