"""Draws a computation's plot, on a screen or on paper: axes with round numbers, curves with their words at
the end, and the reading's own place as a filled mark. Nothing rests on colour alone.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass, field

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QBrush, QColor, QFont, QFontMetricsF, QPainter, QPen, QPolygonF

from assistant.trade.plotted import Axis, Curve, Mark, Plot

CENTRE = int(Qt.AlignmentFlag.AlignCenter)


@dataclass(frozen=True)
class Pens:
    """The colours and type of the place that is drawn on; `unit` is a device unit of one point or pixel."""

    text: QColor
    soft: QColor
    rule: QColor
    paper: QColor
    accent: QColor
    font: Callable[[bool], QFont]
    unit: float = 1.0


@dataclass
class _Sheet:
    """A plot on its rectangle: where values lie, and where words already stand."""

    plot: Plot
    area: QRectF
    pens: Pens
    taken: list[QRectF] = field(default_factory=list)

    def at(self, x: float, y: float) -> QPointF:
        across, up = _share(self.plot.x, x), _share(self.plot.y, y)
        return QPointF(
            self.area.left() + across * self.area.width(), self.area.bottom() - up * self.area.height()
        )


def paint(painter: QPainter, box: QRectF, plot: Plot, pens: Pens) -> None:
    """The plot, filling the box."""
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    measure = QFontMetricsF(pens.font(False), painter.device())
    line = measure.height()
    left = max(measure.horizontalAdvance(_number(t)) for t in ticks(plot.y)) + 10 * pens.unit
    right = max(0.8 * line, measure.horizontalAdvance(_number(ticks(plot.x)[-1])) / 2 + 4 * pens.unit)
    area = box.adjusted(left, 1.6 * line, -right, -2.5 * line)
    sheet = _Sheet(plot, area, pens)
    _axes(painter, sheet, measure, box)
    for band in plot.bands:
        _band(painter, sheet, band, measure)
    for curve in plot.curves:
        _curve(painter, sheet, curve)
    for mark in plot.marks:
        point = sheet.at(mark.x, mark.y)
        sheet.taken.append(
            QRectF(point.x() - 7 * pens.unit, point.y() - 7 * pens.unit, 14 * pens.unit, 14 * pens.unit)
        )
    for mark in plot.marks:
        _mark(painter, sheet, mark, measure)
    for curve in plot.curves:
        _curve_words(painter, sheet, curve, measure)
    painter.restore()


def ticks(axis: Axis) -> list[float]:
    """Round numbers along an axis: five or so, or 1, 2 and 5 of each decade."""
    if axis.log:
        first, last = math.floor(math.log10(axis.low)), math.ceil(math.log10(axis.high))
        every = [m * 10.0**d for d in range(first, last + 1) for m in (1, 2, 5)]
        inside = [v for v in every if axis.low * 0.999 <= v <= axis.high * 1.001]
        return inside if len(inside) <= 9 else [v for v in inside if f"{v:e}"[0] == "1"]
    span = axis.high - axis.low
    power = 10.0 ** math.floor(math.log10(span))
    step = next(power * m for m in (0.1, 0.2, 0.25, 0.5, 1.0, 2.0) if span / (power * m) <= 6.01)
    count = round(span / step)
    return [axis.low + step * i for i in range(count + 1) if axis.low + step * i <= axis.high * (1 + 1e-9)]


def _share(axis: Axis, value: float) -> float:
    if axis.log:
        value = max(value, axis.low / 10)
        return math.log(value / axis.low) / math.log(axis.high / axis.low)
    return (value - axis.low) / (axis.high - axis.low)


def _number(value: float) -> str:
    return f"{value:.4g}" if abs(value) < 1e5 else f"{value:.0f}"


def _axes(painter: QPainter, sheet: _Sheet, measure: QFontMetricsF, box: QRectF) -> None:
    area, pens, line = sheet.area, sheet.pens, measure.height()
    painter.setFont(pens.font(False))
    last = -math.inf
    for value in ticks(sheet.plot.x):
        x = sheet.at(value, sheet.plot.y.low).x()
        painter.setPen(QPen(pens.rule, pens.unit))
        painter.drawLine(QPointF(x, area.top()), QPointF(x, area.bottom()))
        text = _number(value)
        wide = measure.horizontalAdvance(text)
        if x - wide / 2 > last:
            painter.setPen(pens.text)
            painter.drawText(
                QRectF(x - 40 * pens.unit, area.bottom(), 80 * pens.unit, 1.2 * line), CENTRE, text
            )
            last = x + wide / 2 + 6 * pens.unit
    for value in ticks(sheet.plot.y):
        y = sheet.at(sheet.plot.x.low, value).y()
        painter.setPen(QPen(pens.rule, pens.unit))
        painter.drawLine(QPointF(area.left(), y), QPointF(area.right(), y))
        painter.setPen(pens.text)
        place = QRectF(box.left(), y - line, area.left() - box.left() - 5 * pens.unit, 2 * line)
        painter.drawText(
            place, int(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter), _number(value)
        )
    painter.setPen(QPen(pens.text, 1.4 * pens.unit))
    painter.drawLine(area.topLeft(), area.bottomLeft())
    painter.drawLine(area.bottomLeft(), area.bottomRight())
    painter.setFont(pens.font(True))
    painter.drawText(QRectF(box.left(), box.top(), box.width(), 1.3 * line), _left(), sheet.plot.y.title)
    below = QRectF(box.left(), area.bottom() + 1.2 * line, box.width() - 0.8 * line, 1.3 * line)
    painter.drawText(
        below, int(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter), sheet.plot.x.title
    )


def _left() -> int:
    return int(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)


def _band(painter: QPainter, sheet: _Sheet, band, measure: QFontMetricsF) -> None:
    area, pens = sheet.area, sheet.pens
    top = max(area.top(), sheet.at(sheet.plot.x.low, band.high).y())
    bottom = min(area.bottom(), sheet.at(sheet.plot.x.low, band.low).y())
    if bottom <= top:
        return
    place = QRectF(area.left(), top, area.width(), bottom - top)
    painter.setPen(QPen(pens.soft, pens.unit, Qt.PenStyle.DotLine))
    painter.setBrush(
        QBrush(pens.rule, Qt.BrushStyle.BDiagPattern) if pens.unit < 2 else Qt.BrushStyle.NoBrush
    )
    painter.drawRect(place)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    words = QRectF(
        area.left() + 6 * pens.unit, top + 2 * pens.unit, _wide(measure, band.words), measure.height()
    )
    _words(painter, sheet, words, band.words, pens.soft, False)


def _curve(painter: QPainter, sheet: _Sheet, curve: Curve) -> None:
    pens = sheet.pens
    painter.save()
    painter.setClipRect(sheet.area)
    colour = pens.soft if curve.faint else pens.text
    style = Qt.PenStyle.DashLine if curve.dashed else Qt.PenStyle.SolidLine
    painter.setPen(QPen(colour, (1.0 if curve.faint else 2.2) * pens.unit, style))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.drawPolyline(QPolygonF([sheet.at(x, y) for x, y in curve.points]))
    painter.restore()


def _mark(painter: QPainter, sheet: _Sheet, mark: Mark, measure: QFontMetricsF) -> None:
    """A filled diamond for the reading's own place, a ring for another; its words beside it, where there is
    room.
    """
    pens, point = sheet.pens, sheet.at(mark.x, mark.y)
    size = 7 * pens.unit
    painter.setPen(QPen(pens.paper if mark.own else pens.text, 1.5 * pens.unit))
    painter.setBrush(pens.accent if mark.own else pens.paper)
    if mark.own:
        corners = [(0, -size), (size, 0), (0, size), (-size, 0)]
        painter.drawPolygon(QPolygonF([point + QPointF(x, y) for x, y in corners]))
    else:
        painter.drawEllipse(point, 0.7 * size, 0.7 * size)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    wide, tall, away = _wide(measure, mark.words, True), measure.height(), 10 * pens.unit
    spots = [
        QRectF(point.x() + away, point.y() - tall - 2 * pens.unit, wide, tall),
        QRectF(point.x() - away - wide, point.y() - tall - 2 * pens.unit, wide, tall),
        QRectF(point.x() + away, point.y() + 4 * pens.unit, wide, tall),
        QRectF(point.x() - away - wide, point.y() + 4 * pens.unit, wide, tall),
    ]
    spot = _free(sheet, spots)
    _words(painter, sheet, spot, mark.words, pens.accent if mark.own else pens.text, True)


def _curve_words(painter: QPainter, sheet: _Sheet, curve: Curve, measure: QFontMetricsF) -> None:
    """The curve's words along it, at the first place from its end where nothing stands yet."""
    if not curve.words:
        return
    wide, tall, gap = _wide(measure, curve.words), measure.height(), 4 * sheet.pens.unit
    spots = []
    inside = [p for p in (sheet.at(x, y) for x, y in _dense(curve)) if sheet.area.contains(p)]
    for point in reversed(inside):
        spots += [
            QRectF(point.x() - wide - gap, point.y() - tall, wide, tall),
            QRectF(point.x() - wide - gap, point.y() + gap, wide, tall),
            QRectF(point.x() + gap, point.y() - tall - gap, wide, tall),
            QRectF(point.x() + gap, point.y(), wide, tall),
        ]
    if spots:
        colour = sheet.pens.soft if curve.faint else sheet.pens.text
        _words(painter, sheet, _free(sheet, spots), curve.words, colour, False)


def _dense(curve: Curve) -> list[tuple[float, float]]:
    """The curve's points with some between those that lie far apart."""
    out = []
    for (x0, y0), (x1, y1) in zip(curve.points, curve.points[1:], strict=False):
        count = 12 if len(curve.points) < 10 else 1
        out += [(x0 + (x1 - x0) * i / count, y0 + (y1 - y0) * i / count) for i in range(count)]
    return [*out, curve.points[-1]]


def _free(sheet: _Sheet, spots: list[QRectF]) -> QRectF:
    """The first place inside the sheet that no other words take; the first of all where there is none."""
    room = sheet.area.adjusted(-2, -2, 2, 2)
    for spot in spots:
        if room.contains(spot) and not any(spot.intersects(other) for other in sheet.taken):
            return spot
    return next((spot for spot in spots if room.contains(spot)), spots[0])


def _words(painter: QPainter, sheet: _Sheet, place: QRectF, text: str, colour: QColor, bold: bool) -> None:
    painter.fillRect(place, sheet.pens.paper)
    painter.setFont(sheet.pens.font(bold))
    painter.setPen(colour)
    painter.drawText(place, CENTRE, text)
    sheet.taken.append(place)


def _wide(measure: QFontMetricsF, text: str, bold: bool = False) -> float:
    return measure.horizontalAdvance(text) * (1.12 if bold else 1.0) + 8
