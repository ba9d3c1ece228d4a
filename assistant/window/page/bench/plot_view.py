"""A computation's plot in the window, in the palette's own inks; its words are what a screen reader says."""

from __future__ import annotations

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from assistant.report.plot import Pens, paint
from assistant.trade.plotted import Plot
from assistant.window import look

TALLEST = 300
"""Taller than this it would run below what can be seen at once beside its fields."""


class PlotView(QWidget):
    """Hidden while there is nothing to draw."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.plot: Plot | None = None
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.show_plot(None)

    def show_plot(self, plot: Plot | None) -> None:
        self.plot = plot
        self.setAccessibleName(plot.spoken if plot is not None else "No plot yet")
        self.setVisible(plot is not None)
        self.update()

    def sizeHint(self) -> QSize:
        return QSize(380, 300)

    def minimumSizeHint(self) -> QSize:
        return QSize(240, 210)

    def paintEvent(self, _event: QPaintEvent) -> None:
        if self.plot is None:
            return
        ink = look.inks(self.palette())
        pens = Pens(
            ink.text, ink.soft, ink.rule, ink.paper, ink.accent, lambda bold: look.font(look.SMALL, bold)
        )
        painter = QPainter(self)
        tall = min(self.height(), max(self.minimumSizeHint().height(), TALLEST))
        box = QRectF(0, 0, self.width(), tall).adjusted(2, 2, -2, -2)
        painter.fillRect(self.rect(), ink.paper)
        paint(painter, box, self.plot, pens)
