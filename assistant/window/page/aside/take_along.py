"""The readings that may be asked next, on a page to take to the unit: the screen stays on the dryer."""

from __future__ import annotations

from html import escape

from PySide6.QtWidgets import QPushButton, QWidget

from assistant.tree.model import Reading
from assistant.walk.reach import next_readings
from assistant.window import files, look, words
from assistant.window.flow import Flow
from assistant.window.page.aside.base import AsidePage
from assistant.window.session import Driver
from assistant.window.text import label


def lines_of(driver: Driver, reading: Reading) -> tuple[str, str]:
    """(what to read, how) for one reading."""
    how = [words.leads(driver.vocabulary, reading.at), words.meter(reading)]
    return reading.ask, ". ".join(part for part in how if part)


class TakeAlongPage(AsidePage):
    """Listed on the screen; printed or saved as a PDF."""

    title = "Next readings"

    def __init__(self, driver: Driver, parent: QWidget | None = None) -> None:
        super().__init__(driver, parent)
        circuit = driver.ask().circuit
        self.lines = []
        for _, reading in next_readings(driver.visit):
            asked, how = lines_of(driver, reading)
            self.lines.append(
                (words.fill(asked, driver.vocabulary, circuit), words.fill(how, driver.vocabulary, circuit))
            )
        self.column.addWidget(
            label(
                "The nearest first; not all of them will be asked. Write the values down with the "
                "time, then put them down here (F2)."
                if self.lines
                else "No reading is waiting at the moment.",
                soft=True,
            )
        )
        for asked, how in self.lines:
            self.column.addWidget(label(f"▢ {asked}"))
            self.column.addWidget(label(f"    {how}", look.SMALL, soft=True))
        self.column.addStretch(1)
        ways = Flow()
        self.print_way = QPushButton("&Print")
        self.print_way.clicked.connect(self.print_it)
        self.save_way = QPushButton("Save as P&DF")
        self.save_way.clicked.connect(self.save)
        for way in (self.print_way, self.save_way):
            way.setMinimumHeight(look.TARGET)
            way.setEnabled(bool(self.lines))
            ways.addWidget(way)
        self.own.addLayout(ways)

    def html(self) -> str:
        """The list as a page: a box to tick, what to read, how, and a line to write on."""
        rows = "".join(
            f"<tr><td width='6%'>☐</td><td width='64%'><b>{escape(asked)}</b><br><small>{escape(how)}</small>"
            f"</td><td width='30%'>........................&nbsp;&nbsp;at&nbsp;.........</td></tr>"
            for asked, how in self.lines
        )
        return (
            f"<h2>Next readings</h2><p>{escape(words.day(self.driver.now()))}</p>"
            f"<table width='100%' cellpadding='6'>{rows}</table>"
            f"<p><small>{escape(words.QUALIFIED)}</small></p>"
        )

    def save(self) -> None:
        path = files.pick_file(self, "next-readings.pdf", "PDF (*.pdf)")
        if path is None:
            return
        from PySide6.QtCore import QBuffer, QIODevice
        from PySide6.QtGui import QPageSize, QPdfWriter

        buffer = QBuffer()
        buffer.open(QIODevice.OpenModeFlag.WriteOnly)
        writer = QPdfWriter(buffer)
        writer.setPageSize(QPageSize(QPageSize.PageSizeId.Letter))
        self._document().print_(writer)
        del writer  # ends the document
        try:
            path.write_bytes(buffer.data().data())
        except OSError as problem:
            self.say(f"{path.name} can't be written there ({problem.strerror}). Choose another place.")
        else:
            self.say(f"Saved: {path.name}")

    def print_it(self) -> None:
        from PySide6.QtPrintSupport import QPrintDialog, QPrinter, QPrinterInfo

        if not QPrinterInfo.availablePrinterNames():
            self.say("No printer is set up on this computer. Save it as a PDF instead.")
            return
        printer = QPrinter(QPrinter.PrinterMode.HighResolution)
        dialog = QPrintDialog(printer, self)
        dialog.accepted.connect(lambda: self._document().print_(printer))
        dialog.open()

    def _document(self):
        from PySide6.QtGui import QTextDocument

        document = QTextDocument()
        document.setHtml(self.html())
        return document
