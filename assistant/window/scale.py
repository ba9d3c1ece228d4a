"""The scale beside a reading: the step's own limits in order, with words, and the value's place among them.

Nothing on it depends on colour: bands carry their words, the normal one a double frame, the others hatching,
a stop cross-hatching and the word; the value is a pointer, or a bar where it may be anywhere in a span.
"""

from __future__ import annotations

from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QBrush, QFontMetricsF, QPainter, QPaintEvent, QPen, QPolygonF
from PySide6.QtWidgets import QSizePolicy, QWidget

from assistant.quantity.interval import Interval
from assistant.window import look, spread

_CENTRE = int(Qt.AlignmentFlag.AlignHCenter | Qt.AlignmentFlag.AlignBottom | Qt.TextFlag.TextWordWrap)
_PATTERNS = (Qt.BrushStyle.BDiagPattern, Qt.BrushStyle.FDiagPattern)
_BAR, _NUMBERS, _EDGE = 20, 18, 10


@dataclass(frozen=True)
class Drawn:
    """What a scale shows. `numbers` are the limits ready to print, one for each stretch's lower end."""

    parts: tuple[spread.Stretch, ...]
    numbers: tuple[str, ...]
    usual: tuple[float, float] | None
    value: Interval | None = None
    may: frozenset[int] = frozenset()
    """The stretches in which the value may lie."""
    spoken: str = ""


class ScaleView(QWidget):
    """Draws one `Drawn`; shows nothing when there is none."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.drawn: Drawn | None = None
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)

    def show_scale(self, drawn: Drawn | None) -> None:
        self.drawn = drawn if drawn and drawn.parts else None
        self.setAccessibleName("Scale: " + (self.drawn.spoken if self.drawn else "no limits here"))
        self.setVisible(self.drawn is not None)
        self.updateGeometry()
        self.update()

    def sizeHint(self) -> QSize:
        return QSize(400, int(self._label_height() + _BAR + _NUMBERS + 8))

    def minimumSizeHint(self) -> QSize:
        return QSize(200, self.sizeHint().height())

    def _label_height(self) -> float:
        return 2 * QFontMetricsF(look.font(look.SMALL)).lineSpacing()

    def layout_of(self) -> tuple[list[float], list[tuple[float, float]], float]:
        """(left of each stretch, its finite ends, the room), in the widget's own units."""
        parts = self.drawn.parts if self.drawn else ()
        measure = QFontMetricsF(look.font(look.SMALL, bold=True))
        room = self.width() - 2 * _EDGE
        needed = [max(_half(measure, part.words), 34) + 14 for part in parts]
        ends = spread.bounds(parts, self.drawn.usual if self.drawn else None)
        lefts, at = [], 0.0
        for width in spread.widths(needed, [high - low for low, high in ends], room):
            lefts.append(at)
            at += width
        return lefts, ends, room

    def paintEvent(self, _event: QPaintEvent) -> None:
        if not self.drawn:
            return
        ink = look.inks(self.palette())
        paint = QPainter(self)
        paint.setRenderHint(QPainter.RenderHint.Antialiasing)
        paint.translate(_EDGE, 0)
        lefts, ends, room = self.layout_of()
        top = self._label_height() + 2
        for index, part in enumerate(self.drawn.parts):
            right = lefts[index + 1] if index + 1 < len(lefts) else room
            self._draw_part(paint, ink, index, part, QRectF(lefts[index], top, right - lefts[index], _BAR))
        paint.setFont(look.font(look.SMALL))
        paint.setPen(ink.text)
        for index, number in enumerate(self.drawn.numbers):
            if number:
                box = QRectF(lefts[index] - 60, top + _BAR + 1, 120, _NUMBERS)
                box.moveLeft(min(max(box.left(), -_EDGE), room - 120 + _EDGE))
                paint.drawText(box, int(Qt.AlignmentFlag.AlignCenter), number)
        if self.drawn.value is not None:
            self._draw_value(paint, ink, lefts, ends, room, top)

    def _draw_part(
        self, paint: QPainter, ink: look.Inks, index: int, part: spread.Stretch, box: QRectF
    ) -> None:
        inside = index in self.drawn.may
        paint.setPen(QPen(ink.edge, 1))
        paint.setBrush(ink.paper)
        paint.drawRect(box)
        if part.kind == "stop":
            paint.setBrush(QBrush(ink.text, Qt.BrushStyle.DiagCrossPattern))
            paint.drawRect(box)
        elif part.kind == "band":
            paint.setBrush(QBrush(ink.edge, _PATTERNS[index % 2]))
            paint.drawRect(box)
        else:
            paint.setPen(QPen(ink.text, 1.5))
            paint.drawRect(box.adjusted(2.5, 2.5, -2.5, -2.5))
        if part.shade is not None:
            paint.setPen(QPen(ink.text, 1, Qt.PenStyle.DotLine))
            paint.drawRect(QRectF(box.left() - 8, box.top() - 3, 16, box.height() + 6))
        paint.setFont(look.font(look.SMALL, bold=inside))
        paint.setPen(ink.text if inside or self.drawn.value is None else ink.soft)
        paint.drawText(QRectF(box.left() + 2, 0, box.width() - 4, self._label_height()), _CENTRE, part.words)

    def _draw_value(
        self, paint: QPainter, ink: look.Inks, lefts: list, ends: list, room: float, top: float
    ) -> None:
        value = self.drawn.value
        low = spread.place(value.lo, ends, lefts, room)
        high = spread.place(value.hi, ends, lefts, room)
        paint.setPen(QPen(ink.paper, 1.5))
        paint.setBrush(ink.accent)
        if high - low > 3:
            paint.drawRect(QRectF(low, top + _BAR / 2 - 4, high - low, 8))
        for at in {low, high}:
            paint.drawPolygon(
                QPolygonF(
                    [
                        QPointF(at, top - 4),
                        QPointF(at + 6, top + _BAR / 2),
                        QPointF(at, top + _BAR + 4),
                        QPointF(at - 6, top + _BAR / 2),
                    ]
                )
            )


def _half(measure: QFontMetricsF, words: str) -> float:
    """The width of a text set on two lines, broken where it balances best."""
    parts = words.split()
    options = [
        max(
            measure.horizontalAdvance(" ".join(parts[:cut])), measure.horizontalAdvance(" ".join(parts[cut:]))
        )
        for cut in range(1, len(parts))
    ]
    return min(options, default=measure.horizontalAdvance(words))
