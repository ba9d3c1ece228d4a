"""The grid of a survey: a row for each register, a column for each thermostat that calls, and nobody.

It is looked at and tapped; what is written into the present cell stands in the page's one field. The register
is down and the thermostat across, since one walks from register to register while one thermostat calls.
"""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QAbstractButton, QAbstractItemView, QHeaderView, QTableWidget, QTableWidgetItem

from assistant.walk.survey_sheet import Sheet
from assistant.window import look

SHOULD = "should be of"


class SurveyGrid(QTableWidget):
    """`moved` is sent when another cell is the present one. Column 0 is whose each register should be."""

    moved = Signal()

    def __init__(self, sheet: Sheet) -> None:
        super().__init__()
        self.sheet, self.mode = sheet, "fan"
        self.setAccessibleName("The survey: registers down, thermostats across")
        self.setFont(look.font(look.BODY))
        self.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        self.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        self.setTabKeyNavigation(False)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)  # what is typed after a tap belongs in the field
        self.setMinimumHeight(110)
        self.verticalHeader().setDefaultSectionSize(look.TARGET)
        self.verticalHeader().setSectionResizeMode(QHeaderView.ResizeMode.Fixed)
        self.horizontalHeader().setMinimumSectionSize(96)
        self.horizontalHeader().setMinimumHeight(34)
        self.horizontalHeader().setFont(look.font(look.SMALL))
        self.setVerticalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.setHorizontalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        corner = self.findChild(QAbstractButton)
        corner.setAccessibleName("Corner of the grid")
        corner.setEnabled(False)
        self.currentCellChanged.connect(lambda *_: self.moved.emit())

    def lay(self) -> None:
        """Rows and columns as the sheet names them, and every cell's text."""
        here = (max(self.currentRow(), 0), max(self.currentColumn(), 1))
        self.blockSignals(True)
        self.setRowCount(len(self.sheet.registers))
        self.setColumnCount(1 + len(self.sheet.callers))
        self.setVerticalHeaderLabels(self.sheet.registers)
        self.setHorizontalHeaderLabels([SHOULD, *self.sheet.callers])
        across = QHeaderView.ResizeMode.Stretch if self.columnCount() <= 7 else QHeaderView.ResizeMode.Fixed
        self.horizontalHeader().setSectionResizeMode(across)
        for row in range(self.rowCount()):
            for column in range(self.columnCount()):
                self.fill(row, column)
        self.blockSignals(False)
        if self.rowCount():
            self.setCurrentCell(min(here[0], self.rowCount() - 1), min(here[1], self.columnCount() - 1))

    def fill(self, row: int, column: int, wrong: bool = False) -> None:
        """One cell's text; what can't be understood is marked with a question mark before it."""
        item = self.item(row, column)
        if item is None:
            item = QTableWidgetItem()
            item.setTextAlignment(Qt.AlignmentFlag.AlignCenter)
            self.setItem(row, column, item)
        text = self.text_at(row, column)
        item.setText(f"? {text}" if wrong else text)

    def text_at(self, row: int, column: int) -> str:
        """What stands on the sheet there."""
        register = self.sheet.registers[row]
        if column == 0:
            return self.sheet.drawn.get(register, "")
        return self.sheet.cells.get((self.mode, self.sheet.callers[column - 1], register), "")

    @property
    def here(self) -> tuple[str, str]:
        """(register, caller) of the present cell; the caller is empty in the first column."""
        row, column = self.currentRow(), self.currentColumn()
        if not 0 <= row < len(self.sheet.registers) or not 0 <= column <= len(self.sheet.callers):
            return "", ""
        return self.sheet.registers[row], self.sheet.callers[column - 1] if column else ""

    def step(self, down: int, across: int = 0) -> None:
        """To a neighbour; past the last register of a column to the first of the next."""
        row, column = self.currentRow() + down, self.currentColumn() + across
        if down > 0 and row >= self.rowCount():
            row, column = 0, column + 1
        if 0 <= column < self.columnCount() and row >= 0:
            self.setCurrentCell(min(row, self.rowCount() - 1), column)
