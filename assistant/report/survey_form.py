"""The zone survey as a paper form: to be filled in while walking the house and typed in later."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import QBuffer, QIODevice, QMarginsF, QRectF, Qt
from PySide6.QtGui import QFont, QPageLayout, QPageSize, QPainter, QPdfWriter, QPen

from assistant.plain import one_line
from assistant.report.drawing import ready
from assistant.trade.zone.survey import NOBODY
from assistant.walk.survey_sheet import MODE_WORDS, Sheet

BLANK_THERMOSTATS, BLANK_REGISTERS = 4, 18
LONGEST_NAME = 60
DOTS = 100
"""Dots an inch of the page's own units."""
HOW = (
    "One thermostat calls alone, the others are satisfied. Wait two minutes, then go round all registers. "
    "Write the air in cfm (vane at the middle of the grille times its free area), or none, some or full "
    "where there is no meter. Leave out what you do not reach. A sheet for each kind of call."
)


def write_form(file: Path, sheet: Sheet, paper: str = "letter") -> None:
    """Writes the PDF, with the names where they are known. Raises CannotDrawError, OSError."""
    family = ready()
    buffer = QBuffer()
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    writer = QPdfWriter(buffer)
    size = QPageSize.PageSizeId.A4 if paper == "a4" else QPageSize.PageSizeId.Letter
    writer.setPageSize(QPageSize(size))
    writer.setPageOrientation(QPageLayout.Orientation.Landscape)
    writer.setPageMargins(QMarginsF(12, 12, 12, 12), QPageLayout.Unit.Millimeter)
    writer.setResolution(DOTS)
    writer.setTitle("Zone survey")
    painter = QPainter(writer)
    registers = sheet.registers or [""] * BLANK_REGISTERS
    each = BLANK_REGISTERS
    sheets = [registers[start : start + each] for start in range(0, len(registers), each)]
    for number, rows in enumerate(sheets):
        if number:
            writer.newPage()
        _page(painter, writer.width(), writer.height(), sheet, rows, QFont(family))
    painter.end()
    file.write_bytes(bytes(buffer.data()))


def _short(name: str) -> str:
    """A name as its cell holds it: one that goes on for ever is cut."""
    line = one_line(name)
    return line if len(line) <= LONGEST_NAME else f"{line[: LONGEST_NAME - 1]}\u2026"


def _page(
    painter: QPainter, wide: float, tall: float, sheet: Sheet, registers: list[str], font: QFont
) -> None:
    font.setPointSizeF(16)
    font.setBold(True)
    painter.setFont(font)
    painter.drawText(QRectF(0, 0, wide, 30), Qt.AlignmentFlag.AlignLeft, "Zone survey: who blows where")
    font.setPointSizeF(9)
    font.setBold(False)
    painter.setFont(font)
    wrap = Qt.AlignmentFlag.AlignLeft | Qt.TextFlag.TextWordWrap
    painter.drawText(QRectF(0, 34, wide, 44), wrap, HOW)
    modes = "   ".join(f"☐ {words}" for words in MODE_WORDS.values())
    font.setPointSizeF(11)
    painter.setFont(font)
    painter.drawText(
        QRectF(0, 84, wide, 22), Qt.AlignmentFlag.AlignLeft, f"This sheet: {modes}      Date and name:"
    )
    callers = [*(sheet.thermostats or [""] * BLANK_THERMOSTATS), NOBODY]
    heads = ["Register", "Should be of", *(f"{name} calls" if name else "" for name in callers)]
    first, second = 170.0, 110.0
    rest = (wide - first - second) / len(callers)
    widths = [first, second, *[rest] * len(callers)]
    top, row = 112.0, (tall - 112.0 - 4) / (len(registers) + 1)
    row = min(row, 40.0)
    painter.setPen(QPen(Qt.GlobalColor.black, 1))
    for number, words in enumerate([heads, *([name, sheet.drawn.get(name, "")] for name in registers)]):
        left = 0.0
        for place, width in enumerate(widths):
            cell = QRectF(left, top + number * row, width, row)
            painter.drawRect(cell)
            said = words[place] if place < len(words) else ""
            font.setBold(number == 0)
            font.setPointSizeF(10)
            painter.setFont(font)
            painter.drawText(
                cell.adjusted(5, 0, -3, 0),
                Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignLeft | Qt.TextFlag.TextWordWrap,
                _short(said),
            )
            left += width
