"""Where a numbered flag stands beside its spot, so that it covers as little of the drawing as can be."""

from __future__ import annotations

import math
from collections.abc import Sequence

from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QImage

SIDE = 26.0
_DARK = 140
_DIRECTIONS = 12
_REACHES = (27.0, 38.0, 50.0)


def places(spots: Sequence[QPointF], drawn: QImage) -> list[QRectF]:
    """A square for each spot, in order. `drawn` is the drawing as it lies in the widget, dark on light, in
    grey.
    """
    out: list[QRectF] = []
    for spot in spots:
        others = [other for other in spots if other != spot]
        tried = [_square(spot, reach, turn) for reach in _REACHES for turn in range(_DIRECTIONS)]
        out.append(min(tried, key=lambda square: _cost(square, spot, others, out, drawn)))
    return out


def _square(spot: QPointF, reach: float, turn: int) -> QRectF:
    angle = 2 * math.pi * (turn + 0.5) / _DIRECTIONS
    middle = spot + QPointF(reach * math.cos(angle), reach * math.sin(angle))
    return QRectF(middle.x() - SIDE / 2, middle.y() - SIDE / 2, SIDE, SIDE)


def _cost(
    square: QRectF, spot: QPointF, others: Sequence[QPointF], taken: Sequence[QRectF], drawn: QImage
) -> float:
    inside = QRectF(drawn.rect())
    if not inside.contains(square):
        return 1e6
    cost = float(_dark_pixels(square, drawn))
    cost += sum(4000 for other in others if square.adjusted(-9, -9, 9, 9).contains(other))
    cost += sum(6000 for other in taken if square.adjusted(-3, -3, 3, 3).intersects(other))
    reach = math.hypot(square.center().x() - spot.x(), square.center().y() - spot.y())
    return cost + reach


def _dark_pixels(square: QRectF, drawn: QImage) -> int:
    left, right = int(square.left()), int(square.right())
    data, line = drawn.constBits(), drawn.bytesPerLine()
    count = 0
    for y in range(int(square.top()), int(square.bottom())):
        row = data[y * line + left : y * line + right]
        count += sum(1 for value in row if value < _DARK)
    return count
