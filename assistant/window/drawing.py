"""The base drawing with this step's points marked on it, and the same in words.

A drawing is an SVG whose elements carry the vocabulary's point names as ids. It is drawn in two inks that are
replaced by the palette's, so that it is as plain on dark paper as on light. Leads are told apart by number
and shape (1 round, 2 square), never by colour.
"""

from __future__ import annotations

from functools import lru_cache
from pathlib import Path

from PySide6.QtCore import QByteArray, QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QImage, QMouseEvent, QPainter, QPaintEvent, QPen
from PySide6.QtSvg import QSvgRenderer
from PySide6.QtWidgets import QSizePolicy, QWidget

from assistant.house.model import Vocabulary
from assistant.resources import resources_folder
from assistant.window import flags, look

INK, PAPER, FAINT = "#111111", "#ffffff", "#777777"
"""The only colours used in the drawings."""


def folder() -> Path:
    """Where the drawings lie."""
    return resources_folder() / "drawing"


def choose(vocabulary: Vocabulary, points: tuple[str, ...]) -> str | None:
    """The drawing that shows most of these points (the first point's on a tie); None where none does."""
    names = [vocabulary.points[name].drawing for name in points if name in vocabulary.points]
    best = max(names, key=lambda name: sum(has(name, point) for point in points), default=None)
    return best if best and (folder() / f"{best}.svg").is_file() else None


def has(drawing: str, point: str) -> bool:
    """Whether this drawing has an element for the point."""
    renderer = _plain(drawing)
    return renderer is not None and renderer.elementExists(point)


class DrawingView(QWidget):
    """One drawing with its numbered points. Pressing it asks for the large one. `fits` keeps it inside its
    place; otherwise it takes the height that its width asks for.
    """

    pressed = Signal()

    def __init__(
        self,
        drawing: str,
        points: tuple[str, ...],
        caption: str,
        fits: bool = False,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self.drawing, self.points, self.caption = drawing, points, caption
        self.fits = fits
        self._renderer: QSvgRenderer | None = None
        self._inks: tuple[str, str, str] | None = None
        self._placed: tuple | None = None
        self.setAccessibleName(f"Drawing. {caption}" if caption else f"Drawing: {drawing.replace('_', ' ')}")
        policy = QSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Preferred)
        policy.setHeightForWidth(not fits)
        self.setSizePolicy(policy)
        self.setMinimumSize(180, 140)

    def mark(self, points: tuple[str, ...], caption: str) -> None:
        """Other points on the same drawing."""
        self.points, self.caption = points, caption
        self.setAccessibleName(f"Drawing. {caption}")
        self.update()

    def hasHeightForWidth(self) -> bool:
        return not self.fits

    def heightForWidth(self, width: int) -> int:
        size = self.renderer().defaultSize()
        return round(width * size.height() / max(1, size.width()))

    def sizeHint(self) -> QSize:
        return QSize(200, 150) if self.fits else QSize(380, self.heightForWidth(380))

    def renderer(self) -> QSvgRenderer:
        """The drawing in the palette's inks, loaded again when those change."""
        ink = look.inks(self.palette())
        wanted = (ink.text.name(), ink.paper.name(), ink.edge.name())
        if self._renderer is None or wanted != self._inks:
            text = read(self.drawing)
            for old, new in zip((INK, PAPER, FAINT), wanted, strict=True):
                text = text.replace(old, new)
            self._renderer = QSvgRenderer(QByteArray(text.encode("utf-8")))
            self._inks = wanted
        return self._renderer

    def frame(self) -> QRectF:
        """Where the drawing lies in the widget: as large as fits, in the middle of the width, at the top."""
        size = self.renderer().defaultSize()
        scale = min(self.width() / size.width(), self.height() / size.height())
        wide, tall = size.width() * scale, size.height() * scale
        return QRectF((self.width() - wide) / 2, 0, wide, tall)

    def spot(self, point: str) -> QPointF | None:
        """The middle of a point's element in the widget's units; None where the drawing lacks it."""
        renderer = self.renderer()
        if not renderer.elementExists(point):
            return None
        box, view, frame = bounds(renderer, point), renderer.viewBoxF(), self.frame()
        centre = box.center()
        return QPointF(
            frame.left() + (centre.x() - view.left()) * frame.width() / view.width(),
            frame.top() + (centre.y() - view.top()) * frame.height() / view.height(),
        )

    def mousePressEvent(self, _event: QMouseEvent) -> None:
        self.pressed.emit()

    def paintEvent(self, _event: QPaintEvent) -> None:
        paint = QPainter(self)
        paint.setRenderHint(QPainter.RenderHint.Antialiasing)
        self.renderer().render(paint, self.frame())
        spots = [(number, spot) for number, name in enumerate(self.points, 1) if (spot := self.spot(name))]
        for (number, spot), square in zip(spots, self._squares([spot for _, spot in spots]), strict=True):
            self._draw_flag(paint, number, spot, square)

    def _squares(self, spots: list[QPointF]) -> list[QRectF]:
        """The flags' places, worked out once for a size and a set of points."""
        key = (self.size(), self.points)
        if self._placed is None or self._placed[0] != key:
            grey = QImage(self.size(), QImage.Format.Format_Grayscale8)
            grey.fill(255)
            paint = QPainter(grey)
            QSvgRenderer(QByteArray(read(self.drawing).encode("utf-8"))).render(paint, self.frame())
            paint.end()
            self._placed = key, flags.places(spots, grey)
        return self._placed[1]

    def _draw_flag(self, paint: QPainter, number: int, spot: QPointF, square: QRectF) -> None:
        """A ring on the spot, a line, and the number: in a disc where it is odd, in a square where it is
        even.
        """
        ink = look.inks(self.palette())
        for colour, ring, line in ((ink.paper, 6, 6), (ink.accent, 3, 2)):
            paint.setBrush(Qt.BrushStyle.NoBrush)
            paint.setPen(QPen(colour, ring))
            paint.drawEllipse(spot, 7, 7)
            paint.setPen(QPen(colour, line))
            paint.drawLine(spot, square.center())
        filled = number % 2 == 1
        paint.setPen(QPen(ink.accent, 2.5))
        paint.setBrush(ink.accent if filled else ink.paper)
        if filled:
            paint.drawEllipse(square)
        else:
            paint.drawRect(square)
        paint.setPen(ink.on_accent if filled else ink.accent)
        paint.setFont(look.font(look.BODY, bold=True))
        paint.drawText(square, int(Qt.AlignmentFlag.AlignCenter), str(number))


def bounds(renderer: QSvgRenderer, point: str) -> QRectF:
    """An element's bounds in the drawing's own units, its parents' transforms included."""
    return renderer.transformForElement(point).mapRect(renderer.boundsOnElement(point))


@lru_cache(maxsize=16)
def read(drawing: str) -> str:
    """The SVG's text, read once."""
    return (folder() / f"{drawing}.svg").read_text(encoding="utf-8")


@lru_cache(maxsize=16)
def _plain(drawing: str) -> QSvgRenderer | None:
    path = folder() / f"{drawing}.svg"
    return QSvgRenderer(str(path)) if path.is_file() else None
