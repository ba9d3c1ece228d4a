"""The path so far: numbered notes in the margin of a wide window, one line at the top of a narrow one."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QModelIndex, QPersistentModelIndex, QRect, QSize, Qt, QTimer, Signal
from PySide6.QtGui import QFontMetrics, QPainter, QPaintEvent, QPen, QResizeEvent
from PySide6.QtWidgets import (
    QListWidget,
    QListWidgetItem,
    QPushButton,
    QSizePolicy,
    QStyledItemDelegate,
    QStyleOptionViewItem,
    QVBoxLayout,
    QWidget,
)

from assistant.window import look, words

if TYPE_CHECKING:
    from assistant.walk.ask import Taken
    from assistant.window.session import Driver

_STEP, _PARTS = 0x0100, 0x0101
_WRAP = int(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignTop | Qt.TextFlag.TextWordWrap)


class _NoteDelegate(QStyledItemDelegate):
    """A note: its number in the margin ink, what was asked in small type, what was answered in bold."""

    GUTTER, EDGE = 30, 6

    def sizeHint(self, _option: QStyleOptionViewItem, index: QModelIndex | QPersistentModelIndex) -> QSize:
        width = self.parent().viewport().width() or 230
        asked, answer = self._heights(index, width)
        return QSize(width, max(look.TARGET, asked + answer + 2 * self.EDGE + 2))

    def paint(
        self, paint: QPainter, option: QStyleOptionViewItem, index: QModelIndex | QPersistentModelIndex
    ) -> None:
        ink, box = look.inks(option.palette), option.rect
        asked, answer = self._heights(index, box.width())
        number, question, said = index.data(_PARTS)
        paint.save()
        paint.setPen(ink.accent)
        paint.setFont(look.font(look.SMALL, bold=True))
        paint.drawText(
            QRect(box.left(), box.top() + self.EDGE, self.GUTTER - 8, 20),
            int(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignTop),
            number,
        )
        room = QRect(box.left() + self.GUTTER, box.top() + self.EDGE, box.width() - self.GUTTER, asked)
        paint.setFont(look.font(look.SMALL))
        paint.setPen(ink.soft)
        paint.drawText(room, _WRAP, question)
        paint.setFont(look.font(look.SMALL, bold=True))
        paint.setPen(ink.text)
        paint.drawText(QRect(room.left(), room.bottom() + 3, room.width(), answer), _WRAP, said)
        paint.restore()

    def _heights(self, index: QModelIndex | QPersistentModelIndex, width: int) -> tuple[int, int]:
        room = QRect(0, 0, max(40, width - self.GUTTER), 10_000)
        _, question, said = index.data(_PARTS)
        return (
            QFontMetrics(look.font(look.SMALL)).boundingRect(room, _WRAP, question).height(),
            QFontMetrics(look.font(look.SMALL, bold=True)).boundingRect(room, _WRAP, said).height(),
        )


class Margin(QWidget):
    """`asked` carries the step of a note that was pressed: to go back there."""

    asked = Signal(str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName("margin")
        self.setAttribute(Qt.WidgetAttribute.WA_StyledBackground)
        self.setFixedWidth(252)
        column = QVBoxLayout(self)
        column.setContentsMargins(6, 16, 14, 12)
        self.notes = QListWidget()
        self.notes.setObjectName("notes")
        self.notes.setAccessibleName("The path so far")
        self.notes.setItemDelegate(_NoteDelegate(self.notes))
        self.notes.setResizeMode(QListWidget.ResizeMode.Adjust)
        self.notes.setVerticalScrollMode(QListWidget.ScrollMode.ScrollPerPixel)
        self.notes.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.notes.setSelectionMode(QListWidget.SelectionMode.NoSelection)
        self.notes.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.notes.itemClicked.connect(lambda item: self.asked.emit(item.data(_STEP)))
        column.addWidget(self.notes, 1)

    def show_path(self, driver: Driver) -> None:
        self.notes.clear()
        for taken in driver.visit.path:
            item = QListWidgetItem(note(driver, taken))
            item.setData(_STEP, taken.step)
            asked, _, answer = item.text().partition("\n")
            number, _, question = asked.partition(" ")
            item.setData(_PARTS, (number.rstrip("."), question, answer))
            self.notes.addItem(item)
        self.notes.scrollToBottom()

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        QTimer.singleShot(0, self.notes, self.notes.scrollToBottom)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """The margin line of a notebook page."""
        super().paintEvent(_event)
        paint = QPainter(self)
        paint.setPen(QPen(look.inks(self.palette()).accent, 1.2))
        for inset in (1, 4):
            paint.drawLine(self.width() - inset, 0, self.width() - inset, self.height())


class Strip(QPushButton):
    """The last note in one line, cut where there is no more room."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName("strip")
        self.setFont(look.font(look.SMALL))
        self.setMinimumHeight(look.TARGET)
        self.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Fixed)
        self._whole = ""

    def show_path(self, driver: Driver) -> None:
        path = driver.visit.path
        self._whole = " · ".join(note(driver, taken).replace("\n", ": ") for taken in reversed(path[-3:]))
        self._whole = self._whole or "no step taken yet"
        self.setAccessibleName(f"The path so far: {self._whole}")
        self._fit()

    def minimumSizeHint(self) -> QSize:
        return QSize(60, look.TARGET)

    def resizeEvent(self, event) -> None:
        super().resizeEvent(event)
        self._fit()

    def _fit(self) -> None:
        room = max(20, self.width() - 30)
        self.setText(
            QFontMetrics(self.font()).elidedText(
                self._whole.replace("&", "&&"), Qt.TextElideMode.ElideRight, room
            )
        )


def note(driver: Driver, taken: Taken) -> str:
    """One step of the path: its number, what was asked, what was answered."""
    asked = words.question_at(driver.library, taken.step)
    how = " (passed over)" if taken.passed else " (to make it safe)" if taken.inserted else ""
    return f"{taken.number}. {asked}{how}\n{words.plain_answer(taken.answer)}"
