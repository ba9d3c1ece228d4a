"""A diagram as a PDF for the shop's wall: a page for each sheet, A3 or tabloid, A4 or Letter, on its side."""

from __future__ import annotations

from assistant.report.drawing import ready
from assistant.report.pdf import with_spaces
from assistant.tree.chart.marks import Chart

RESOLUTION = 600


def to_pdf(chart: Chart, paper: str) -> bytes:
    """The PDF's bytes, drawn in ink on white. Raises CannotDrawError where QtGui can't draw."""
    family = ready()
    from PySide6.QtCore import QBuffer, QIODevice, QMarginsF
    from PySide6.QtGui import QColor, QPageLayout, QPageSize, QPainter, QPdfWriter

    from assistant.report.chart_paint import paint
    from assistant.report.chart_svg import INKS

    sizes = {"a3": QPageSize.PageSizeId.A3, "a4": QPageSize.PageSizeId.A4,
             "letter": QPageSize.PageSizeId.Letter, "tabloid": QPageSize.PageSizeId.Tabloid}
    buffer = QBuffer()
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    writer = QPdfWriter(buffer)
    writer.setResolution(RESOLUTION)
    writer.setPageSize(QPageSize(sizes[paper]))
    writer.setPageOrientation(QPageLayout.Orientation.Landscape)
    writer.setPageMargins(QMarginsF(0, 0, 0, 0))
    writer.setTitle(chart.title)
    writer.setCreator("Fault Trail")
    painter = QPainter(writer)
    scale = min(writer.width() / chart.width, writer.height() / chart.height)
    inks = {name: QColor(value) for name, value in INKS.items()}
    for sheet in chart.sheets:
        if sheet is not chart.sheets[0]:
            writer.newPage()
        painter.save()
        painter.scale(scale, scale)
        paint(painter, sheet, family, inks)
        painter.restore()
    painter.end()
    buffer.close()
    return with_spaces(bytes(buffer.data()))
