"""Who blows where, as a plan: a box for each thermostat, and in it the registers that blow when it calls.

Drawn for the screen and for the customer's page alike. A register that should be another thermostat's has a
heavy edge and says so; one that is not sure has a broken edge. Nothing is told by colour alone.
"""

from __future__ import annotations

from PySide6.QtCore import QBuffer, QIODevice, QRectF, Qt
from PySide6.QtGui import QColor, QFont, QFontMetricsF, QImage, QPainter, QPen

from assistant.report.drawing import ready
from assistant.trade.zone.reason import percent
from assistant.walk.survey_plan import NO_ZONE, NOT_SETTLED, Place

SURE = 0.90
GAP, PAD, ROUND = 8.0, 7.0, 4.0


class Draws:
    """Lays a plan out in a width; `paint` draws it, `height` is what it takes."""

    def __init__(self, plan: list[tuple[str, list[Place]]], width: float, font: QFont) -> None:
        self.plan, self.width, self.font = plan, width, font
        self.bold, self.small = QFont(font), QFont(font)
        self.bold.setBold(True)
        self.small.setPointSizeF(font.pointSizeF() * 0.85)
        self.boxes: list[tuple[QRectF, str, list[tuple[QRectF, Place]]]] = []
        self.height = self._lay()

    def _lay(self) -> float:
        tall = QFontMetricsF(self.font).height()
        low = QFontMetricsF(self.small).height()
        box = tall + low + 2 * PAD
        top = 1.0
        for zone, places in self.plan:
            left, under = GAP, top + tall + PAD
            inside = []
            for place in places:
                wide = self._wide(place)
                if left + wide + GAP > self.width and left > GAP:
                    left, under = GAP, under + box + GAP
                inside.append((QRectF(left, under, min(wide, self.width - 2 * GAP), box), place))
                left += wide + GAP
            bottom = under + (box if places else 0) + GAP
            self.boxes.append((QRectF(0.5, top, self.width - 1, bottom - top), zone, inside))
            top = bottom + GAP
        return top

    def _wide(self, place: Place) -> float:
        names = QFontMetricsF(self.bold if place.should else self.font).horizontalAdvance(place.register)
        return max(names, QFontMetricsF(self.small).horizontalAdvance(_under(place))) + 2 * PAD

    def paint(self, painter: QPainter, text: QColor, soft: QColor, paper: QColor) -> None:
        """Draws at the painter's origin, in these colours."""
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        for outline, zone, inside in self.boxes:
            painter.setPen(QPen(soft, 1))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRoundedRect(outline, ROUND, ROUND)
            painter.setPen(text)
            painter.setFont(self.bold)
            heading = zone if zone in (NO_ZONE, NOT_SETTLED) else f"{zone} calls"
            said_at = outline.adjusted(GAP, 2, -GAP, 0)
            painter.drawText(said_at, Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignTop, heading)
            for where, place in inside:
                self._register(painter, where, place, text, paper)

    def _register(self, painter: QPainter, where: QRectF, place: Place, text: QColor, paper: QColor) -> None:
        pen = QPen(text, 3.0 if place.should else 1.2)
        if place.sure < SURE:
            pen.setStyle(Qt.PenStyle.DashLine)
        painter.setPen(pen)
        painter.setBrush(paper)
        painter.drawRoundedRect(where, ROUND, ROUND)
        painter.setPen(text)
        painter.setFont(self.bold if place.should else self.font)
        inside = where.adjusted(PAD, PAD, -PAD, -PAD)
        top = Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignTop
        painter.drawText(inside, top, place.register)
        painter.setFont(self.small)
        painter.drawText(inside, Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignBottom, _under(place))


def _under(place: Place) -> str:
    return f"should be of {place.should}, {percent(place.sure)}" if place.should else percent(place.sure)


def picture(plan: list[tuple[str, list[Place]]], width: int = 620) -> bytes:
    """The plan as PNG for a report, black on white. Raises CannotDrawError."""
    font = QFont(ready(), 12)
    draws = Draws(plan, width, font)
    scale = 2
    image = QImage(int(width * scale), int(draws.height * scale) + 2, QImage.Format.Format_RGB32)
    image.fill(Qt.GlobalColor.white)
    painter = QPainter(image)
    painter.scale(scale, scale)
    draws.paint(painter, QColor("#111111"), QColor("#777777"), QColor("#ffffff"))
    painter.end()
    buffer = QBuffer()
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    image.save(buffer, "PNG")
    return bytes(buffer.data())
