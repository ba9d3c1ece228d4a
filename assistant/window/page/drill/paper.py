"""A debrief and a look back on paper: PDF pages, each of them marked as practice."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QBuffer, QIODevice, QMarginsF, QRectF, Qt
from PySide6.QtGui import QFont, QPageSize, QPainter, QPdfWriter

from assistant.drill.practice.debrief import Debrief
from assistant.drill.practice.drill import Drill
from assistant.drill.practice.record import Done
from assistant.report.pdf import with_spaces
from assistant.trail.practice import WORDS
from assistant.window import look
from assistant.window.page.drill.plot import draw

RESOLUTION = 300
POINT = RESOLUTION / 72
MARGIN, FOOT = 51.0, 36.0
"""In points: 18 mm at the sides, for a binder's holes."""
BODY, HEAD, TITLE, SMALL = 10.0, 12.0, 18.0, 8.5


class Sheet:
    """Lines down a page, and on to the next one."""

    def __init__(self, title: str) -> None:
        self.buffer = QBuffer()
        self.buffer.open(QIODevice.OpenModeFlag.WriteOnly)
        self.writer = QPdfWriter(self.buffer)
        self.writer.setResolution(RESOLUTION)
        self.writer.setPageSize(QPageSize(QPageSize.PageSizeId.Letter))
        self.writer.setPageMargins(QMarginsF(0, 0, 0, 0))
        self.writer.setTitle(title)
        self.writer.setCreator("Fault Trail")
        self.paint = QPainter(self.writer)
        self.left = MARGIN * POINT
        self.width = self.writer.width() - 2 * self.left
        self.bottom = self.writer.height() - (MARGIN + FOOT) * POINT
        self.page = 0
        self._new_page()

    def line(self, words: str, size: float = BODY, bold: bool = False, before: float = 2.0) -> None:
        """A paragraph."""
        self.paint.setFont(font(size, bold))
        flags = int(Qt.AlignmentFlag.AlignLeft | Qt.TextFlag.TextWordWrap)
        room = QRectF(self.left, 0, self.width, 100_000)
        tall = self.paint.boundingRect(room, flags, words).height()
        self.y += before * POINT
        if self.y + tall > self.bottom:
            self.next_page()
            self.paint.setFont(font(size, bold))
        self.paint.drawText(QRectF(self.left, self.y, self.width, tall + POINT), flags, words)
        self.y += tall

    def room(self, tall: float) -> QRectF:
        """A box of so many points for a picture."""
        if self.y + tall * POINT > self.bottom:
            self.next_page()
        box = QRectF(self.left, self.y + 4 * POINT, self.width, (tall - 8) * POINT)
        self.y += tall * POINT
        return box

    def next_page(self) -> None:
        """On to another page."""
        self.writer.newPage()
        self._new_page()

    def _new_page(self) -> None:
        """The mark stands at the head and at the foot of every page."""
        self.page += 1
        self.paint.setPen(look.on_paper().text)
        self.paint.setFont(font(SMALL, True))
        line = QRectF(self.left, MARGIN * POINT * 0.6, self.width, 14 * POINT)
        self.paint.drawText(line, Qt.AlignmentFlag.AlignLeft, WORDS)
        foot = QRectF(self.left, self.bottom + 12 * POINT, self.width, 14 * POINT)
        self.paint.drawText(foot, Qt.AlignmentFlag.AlignLeft, "PRACTICE. No house was visited.")
        self.paint.drawText(foot, Qt.AlignmentFlag.AlignRight, f"Page {self.page}")
        self.y = MARGIN * POINT * 0.6 + 22 * POINT

    def data(self) -> bytes:
        """The file's bytes."""
        self.paint.end()
        self.buffer.close()
        return with_spaces(bytes(self.buffer.data()))


def font(size: float, bold: bool = False) -> QFont:
    """The program's own font, in points of paper."""
    made = look.font(size, bold)
    made.setPointSizeF(size)
    return made


def debrief_pdf(drill: Drill, who: str, began: str, told: Debrief) -> bytes:
    """One drill."""
    sheet = Sheet("Practice drill")
    sheet.line(f"Drill of {who}", TITLE, True, 0)
    sheet.line(f"{began[:16].replace('T', ' ')} \u00b7 The customer says: \u201c{drill.words}\u201d", SMALL)
    for section in told.sections:
        sheet.line(section.title, HEAD, True, 9)
        for line in section.lines:
            sheet.line(line)
    for title, path in (
        ("The path taken", told.own_path),
        (f"The shortest good path ({told.best_by})", told.best_path),
    ):
        if path:
            sheet.line(title, HEAD, True, 9)
            for n, line in enumerate(path, 1):
                sheet.line(f"{n}. {line}", SMALL)
    return sheet.data()


def history_pdf(who: str, done: Sequence[Done]) -> bytes:
    """All drills of one apprentice: the plot, then a line each."""
    from assistant.window.page.drill.history import line

    sheet = Sheet("Practice, looking back")
    sheet.line(f"Drills of {who}" if who else "Drills", TITLE, True, 0)
    draw(sheet.paint, sheet.room(300), done, look.on_paper(), font(SMALL), POINT / 2)
    for one in reversed(done):
        sheet.line(line(one), SMALL, before=5)
    return sheet.data()
