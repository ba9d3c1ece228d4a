"""A drawing of the house that leads are laid on: a tap lays the lead on the nearest point."""

from __future__ import annotations

from PySide6.QtCore import QPointF, QSize, Qt, Signal
from PySide6.QtGui import QMouseEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from assistant.house.model import Vocabulary
from assistant.window import drawing
from assistant.window.drawing import DrawingView

REACH = 30.0
"""A tap this near to a point means it, in device-independent pixels: more than half a finger's width."""
TITLES = {"line_voltage": "120 V", "control": "24 V", "gas_vent": "Gas and vent", "air": "Air"}


def points_on(vocabulary: Vocabulary, name: str) -> tuple[str, ...]:
    """The points that this drawing shows."""
    return tuple(
        point
        for point, known in vocabulary.points.items()
        if known.drawing == name and drawing.has(name, point)
    )


def drawings(vocabulary: Vocabulary) -> tuple[str, ...]:
    """The drawings that there are, in the order of their titles."""
    used = {known.drawing for known in vocabulary.points.values()}
    return tuple(name for name in TITLES if name in used and (drawing.folder() / f"{name}.svg").is_file())


class HouseView(DrawingView):
    """`laid` carries the point under a tap. The two leads are marked: 1 red, 2 black."""

    laid = Signal(str)

    def __init__(self, vocabulary: Vocabulary, name: str, parent: QWidget | None = None) -> None:
        super().__init__(name, (), "", fits=True, parent=parent)
        self.vocabulary = vocabulary
        self.known = points_on(vocabulary, name)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.setCursor(Qt.CursorShape.CrossCursor)
        self.say_leads(())

    def turn_to(self, name: str) -> None:
        """Another drawing."""
        self.drawing, self._renderer, self._placed = name, None, None
        self.known = points_on(self.vocabulary, name)
        self.update()

    def say_leads(self, points: tuple[str, ...]) -> None:
        """Where the leads lie now; those on another drawing are not marked here."""
        words = [
            f"{colour} on {self.vocabulary.points[point].label}"
            for colour, point in zip(("red", "black"), points, strict=False)
            if point
        ]
        shown = tuple(point for point in points if point in self.known)
        self.mark(
            shown, f"{TITLES.get(self.drawing, self.drawing)}. {', '.join(words) or 'No lead laid on.'}"
        )

    def nearest(self, place: QPointF) -> str:
        """The point that a tap there means, or nothing."""
        found = [
            ((spot - place).manhattanLength(), point)
            for point in self.known
            if (spot := self.spot(point)) is not None
        ]
        near, point = min(found, default=(REACH + 1, ""))
        return point if near <= REACH * 1.4 else ""

    def sizeHint(self) -> QSize:
        return QSize(420, 320)

    def mousePressEvent(self, event: QMouseEvent) -> None:
        point = self.nearest(event.position())
        if point:
            self.laid.emit(point)
