"""A diagram on the screen: its sheets one under the other, larger and smaller, moved by keys or a finger."""

from __future__ import annotations

from PySide6.QtCore import QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QColor, QMouseEvent, QPainter, QPaintEvent, QPen, QResizeEvent, QWheelEvent
from PySide6.QtWidgets import QApplication, QSizePolicy, QWidget

from assistant.report.chart_paint import paint
from assistant.tree.chart.marks import Chart
from assistant.window import look

GAP = 24.0
"""Between sheets, in points."""
SMALLEST, LARGEST, STEP = 0.2, 4.0, 1.25
READABLE = 1.3
"""The size at which the diagram opens: its questions are then as large as the window's smaller text."""


class ChartView(QWidget):
    """`picked` carries the step whose box was pressed."""

    picked = Signal(str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.chart = Chart("", 1.0, 1.0, ())
        self.scale = READABLE
        self.corner = QPointF(0, 0)
        """What lies at the top left of the widget, in points of the diagram."""
        self.marked: tuple[str, ...] = ()
        """Steps with a frame round their box: what was searched for, the one gone to first."""
        self.kept = ""
        """The step gone to last: while it is in sight, keys make the diagram larger about it."""
        self._pressed: QPointF | None = None
        self._moved = False
        self.setAccessibleName("Diagram")
        self.setMinimumSize(160, 90)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)

    def sizeHint(self) -> QSize:
        return QSize(600, 400)

    def show_chart(self, chart: Chart) -> None:
        """Another diagram in the place of this one; size and place stay, and so does the step in the middle,
        wherever it lies now."""
        step, before = self._middle()
        self.chart = chart
        self.setAccessibleName(f"Diagram of {chart.title}, {len(chart.sheets)} sheets")
        after = self.place(step) if step else None
        if before is not None and after is not None:
            self.corner += after.center() - before.center()
        self._hold()

    def mark(self, steps: tuple[str, ...]) -> None:
        """Frames round the boxes of these steps."""
        self.marked = steps
        self.update()

    def place(self, step: str) -> QRectF | None:
        """Where a step's box lies, in points of the whole diagram; None where it is not drawn."""
        sheet = self.chart.sheet_of(step)
        if sheet is None:
            return None
        x, y, width, height = sheet.places[step]
        return QRectF(x, y + (sheet.number - 1) * (self.chart.height + GAP), width, height)

    def _middle(self) -> tuple[str | None, QRectF | None]:
        """The step whose box lies nearest to the middle of what is seen, and where."""
        middle = self.corner + QPointF(self.width(), self.height()) / 2 / self.scale
        places = [(step, self.place(step)) for sheet in self.chart.sheets for step in sheet.places]
        known = [(step, place) for step, place in places if place is not None]
        return min(known, key=lambda one: (one[1].center() - middle).manhattanLength(), default=(None, None))

    def go_to(self, step: str) -> bool:
        """Bring a step's box into the middle; False where it is not drawn."""
        place = self.place(step)
        if place is None:
            return False
        room = QPointF(self.width() / self.scale, self.height() / self.scale)
        self.corner = QPointF(place.center().x() - room.x() / 2, place.center().y() - room.y() / 2)
        self.kept = step
        self._hold()
        return True

    def zoom(self, factor: float, about: QPointF | None = None) -> None:
        """Larger or smaller by a factor; what lies at `about` stays where it is: the step gone to last, or
        the middle where that is out of sight."""
        place = self.place(self.kept)
        spot = (place.center() - self.corner) * self.scale if place is not None else QPointF(-1, -1)
        middle = QPointF(self.width() / 2, self.height() / 2)
        about_step = about is None and QRectF(self.rect()).contains(spot)
        at = spot if about_step else about or middle
        fixed = self.corner + at / self.scale
        self.scale = min(max(self.scale * factor, SMALLEST), LARGEST)
        self.corner = fixed - at / self.scale
        if about_step and place is not None:
            self._whole_in_sight(place)
        self._hold()

    def _whole_in_sight(self, place: QRectF) -> None:
        """Moves as little as shows the whole of a box, its left and top where it is larger than the view."""
        box, wide, tall = place.adjusted(-9, -9, 9, 9), self.width() / self.scale, self.height() / self.scale
        x = min(max(self.corner.x(), box.right() - wide), box.left())
        y = min(max(self.corner.y(), box.bottom() - tall), box.top())
        self.corner = QPointF(x, y)

    def fit(self) -> None:
        """A whole sheet's width in the window."""
        self.scale = min(max(self.width() / self.chart.width, SMALLEST), LARGEST)
        self.corner = QPointF(0, self.corner.y())
        self._hold()

    def move_by(self, across: float, down: float) -> None:
        """Move by these shares of what is seen."""
        self.corner += QPointF(across * self.width(), down * self.height()) / self.scale
        self._hold()

    @property
    def whole(self) -> QRectF:
        sheets = max(1, len(self.chart.sheets))
        return QRectF(0, 0, self.chart.width, sheets * self.chart.height + (sheets - 1) * GAP)

    def _hold(self) -> None:
        """Keep the diagram in sight, and draw."""
        whole, wide, tall = self.whole, self.width() / self.scale, self.height() / self.scale
        x = (whole.width() - wide) / 2 if whole.width() < wide else min(max(self.corner.x(), 0),
                                                                       whole.width() - wide)
        y = 0 if whole.height() < tall else min(max(self.corner.y(), 0), whole.height() - tall)
        self.corner = QPointF(x, y)
        self.update()

    def step_at(self, at: QPointF) -> str | None:
        """The step whose box lies at a spot of the widget."""
        spot = self.corner + at / self.scale
        for sheet in self.chart.sheets:
            y = spot.y() - (sheet.number - 1) * (self.chart.height + GAP)
            for step, (left, top, width, height) in sheet.places.items():
                if left <= spot.x() <= left + width and top <= y <= top + height:
                    return step
        return None

    def paintEvent(self, _event: QPaintEvent) -> None:
        ink = look.inks(self.palette())
        inks = {"ink": ink.text, "quiet": ink.soft, "paper": ink.paper, "soft": ink.rule}
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.fillRect(self.rect(), ink.ground)
        painter.scale(self.scale, self.scale)
        painter.translate(-self.corner)
        seen = QRectF(self.corner, self.corner + QPointF(self.width(), self.height()) / self.scale)
        for sheet in self.chart.sheets:
            top = (sheet.number - 1) * (self.chart.height + GAP)
            area = QRectF(0, top, self.chart.width, self.chart.height)
            if area.intersects(seen):
                painter.fillRect(area, ink.paper)
                painter.save()
                painter.translate(area.topLeft())
                paint(painter, sheet, QApplication.font().family(), inks)
                painter.restore()
        self._frames(painter, ink.accent)
        if self.hasFocus():
            painter.resetTransform()
            painter.setPen(QPen(ink.accent, 3))
            painter.drawRect(QRectF(self.rect()).adjusted(1.5, 1.5, -1.5, -1.5))

    def _frames(self, painter: QPainter, colour: QColor) -> None:
        first, other = QPen(colour, 4), QPen(colour, 1.5)
        other.setDashPattern([4, 3])
        painter.setBrush(Qt.BrushStyle.NoBrush)
        for number, step in enumerate(self.marked):
            place = self.place(step)
            if place is not None:
                painter.setPen(other if number else first)
                painter.drawRect(place.adjusted(-7, -7, 7, 7))

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        if event.oldSize().isValid():  # what was in the middle stays there: the step that was gone to
            lost = event.oldSize() - event.size()
            self.corner += QPointF(lost.width(), lost.height()) / 2 / self.scale
        self._hold()

    def wheelEvent(self, event: QWheelEvent) -> None:
        turned = event.angleDelta()
        if event.modifiers() & Qt.KeyboardModifier.ControlModifier:
            self.zoom(STEP if turned.y() > 0 else 1 / STEP, event.position())
        else:
            self.corner -= QPointF(turned) / 2 / self.scale
            self._hold()
        event.accept()

    def mousePressEvent(self, event: QMouseEvent) -> None:
        self._pressed, self._moved = event.position(), False

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        if self._pressed is None:
            return
        way = event.position() - self._pressed
        if self._moved or way.manhattanLength() > QApplication.startDragDistance():
            self._moved = True
            self.corner -= way / self.scale
            self._pressed = event.position()
            self._hold()

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        step = None if self._moved else self.step_at(event.position())
        self._pressed = None
        if step is not None:
            self.picked.emit(step)
