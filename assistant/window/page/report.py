"""Saving the report: PDF, HTML, text and CSV into a folder that the person picks."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QPushButton, QVBoxLayout, QWidget

from assistant.window import files, look
from assistant.window.flow import Flow
from assistant.window.session import Driver
from assistant.window.text import label

PAPERS = (("letter", "Save the report, &Letter"), ("a4", "Save the report, &A4"))


class ReportSaver(QWidget):
    """`said` carries the sentence that tells what became of it."""

    said = Signal(str)

    def __init__(self, driver: Driver, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.driver = driver
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(
            label(
                "The report has a first page for the customer and the whole trail behind it: PDF, "
                "HTML, text and CSV.",
                soft=True,
            )
        )
        ways = Flow()
        for paper, words in PAPERS:
            button = QPushButton(words)
            button.setMinimumHeight(look.TARGET)
            button.clicked.connect(lambda _=False, paper=paper: self.save(paper))
            ways.addWidget(button)
        column.addLayout(ways)

    def save(self, paper: str) -> None:
        folder = files.pick_folder(self, str(self.driver.folder or ""))
        if folder is not None:
            self.said.emit(self.driver.export(folder, paper))
