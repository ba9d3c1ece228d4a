"""What every page has: one column of attention, a foot that never scrolls, and a place for a drawing.

The foot holds the verdict, the page's own field and Next. The drawing stands at the side of a wide window and
folds in under the question in a narrow one.
"""

from __future__ import annotations

import time
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt, QTimer, Signal
from PySide6.QtGui import QHideEvent, QKeyEvent, QKeySequence, QShortcut, QShowEvent
from PySide6.QtWidgets import (
    QBoxLayout,
    QHBoxLayout,
    QPushButton,
    QScrollArea,
    QSizePolicy,
    QVBoxLayout,
    QWidget,
)
from shiboken6 import isValid

from assistant.window import look
from assistant.window.refused import Refused
from assistant.window.text import label

if TYPE_CHECKING:
    from assistant.walk.event import Event
    from assistant.window.session import Driver

WIDE, NARROW, TINY = "wide", "narrow", "tiny"


SETTLE = 0.2
"""Seconds after a page came up in which a digit or the space bar chooses nothing: it was meant for the page
before. An estimate of how long a person takes to see a new page."""
WRITING = 1.0
"""Seconds after a letter that no field took in which the same holds: somebody is writing to no field."""

_SCROLL = {Qt.Key.Key_PageDown: 1, Qt.Key.Key_PageUp: -1}


_PLAIN = Qt.KeyboardModifier.NoModifier


class Page(QWidget):
    """`left` asks for what comes next; `opens` asks for another page by name; `status` is told after a
    change.
    """

    left = Signal()
    opens = Signal(str)
    next_words = "&Next"
    takes_digits = True
    looked_at = False
    """Whether this page is only looked at, so that what lies beneath it waits."""
    keeps_line = False
    """Whether the verdict line keeps its height while it is empty, so that nothing jumps while typing."""

    def __init__(self, driver: Driver | None, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.driver = driver
        self.picture: QWidget | None = None
        self.mode = NARROW
        self._focused: QWidget | None = None
        self._last: QWidget | None = None
        self._shown_at = self._stray_at = float("-inf")
        self.next_key = QShortcut(
            QKeySequence("Alt+N"), self, context=Qt.ShortcutContext.WidgetWithChildrenShortcut
        )
        self.next_key.activated.connect(self._next_by_key)
        across = QHBoxLayout(self)
        across.setContentsMargins(0, 0, 0, 0)
        across.setSpacing(0)
        centre = QVBoxLayout()
        centre.setSpacing(0)
        across.addLayout(centre, 1)
        self.side = QWidget()
        self.side.setObjectName("side")
        self.side.setFixedWidth(400)
        self.side_column = QVBoxLayout(self.side)
        self.side_column.setContentsMargins(14, 16, 14, 14)
        self.side.hide()
        across.addWidget(self.side)
        self.scroll = QScrollArea()
        self.scroll.setWidgetResizable(True)
        self.scroll.setMinimumHeight(1)
        self.scroll.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.scroll.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        paper = QWidget()
        paper.setObjectName("paper")
        self.column = QVBoxLayout(paper)
        self.column.setContentsMargins(24, 14, 24, 14)
        self.column.setSpacing(10)
        self.scroll.setWidget(paper)
        centre.addWidget(self.scroll, 1)
        centre.addWidget(self._make_foot())
        self.beside = QBoxLayout(QBoxLayout.Direction.LeftToRight)
        self.beside.setSpacing(18)
        self.words = QVBoxLayout()
        self.words.setSpacing(8)
        self.beside.addLayout(self.words, 3)

    def _make_foot(self) -> QWidget:
        foot = QWidget()
        foot.setObjectName("foot")
        foot.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Minimum)
        self.foot_column = QVBoxLayout(foot)
        self.foot_column.setContentsMargins(24, 8, 16, 10)
        self.foot_column.setSpacing(4)
        self.verdict = label("", look.LEAD, bold=True)
        self.verdict.setObjectName("verdict")
        self.foot_row = QHBoxLayout()
        self.foot_row.setSpacing(12)
        self.own = QVBoxLayout()
        self.foot_row.addLayout(self.own, 1)
        self.next_button = QPushButton(self.next_words)
        self.next_button.setObjectName("next")
        self.next_button.setFont(look.font(look.LEAD, bold=True))
        self.next_button.setMinimumSize(132, 56)
        self.next_button.clicked.connect(self.enter)
        self.foot_row.addWidget(self.next_button, 0, Qt.AlignmentFlag.AlignBottom)
        self.foot_column.addWidget(self.verdict)
        self.foot_column.addLayout(self.foot_row)
        self.say("")
        return foot

    # what a page overrides

    def enter(self) -> None:
        """Enter, or the big button."""
        self.left.emit()

    def choose(self, digit: int) -> None:
        """A digit that no field took."""

    def first_focus(self) -> QWidget:
        return self.next_button

    # what a page uses

    def record(self, event: Event) -> bool:
        """Send an answer; False and a sentence in the foot where it was not taken."""
        try:
            self.driver.send(event)
        except Refused as refused:
            self.say(str(refused))
            return False
        return True

    def say(self, words: str, sure: bool = True) -> None:
        """The verdict line: bold once it counts, plain while it only echoes what is being typed."""
        self.verdict.setText(words)
        self.verdict.setFont(look.font(look.LEAD, sure))
        self.verdict.setAccessibleName(f"Verdict: {words}" if words else "No verdict yet")
        self.verdict.setVisible(bool(words) or self.keeps_line)

    def say_stop(self, title: str) -> None:
        """STOP in place of the verdict, light on dark across the whole foot; the button says what comes."""
        self.say(f"STOP: {title}")
        self.verdict.setProperty("stop", True)
        self.verdict.setFont(look.font(look.LEAD + 6, bold=True))
        self.verdict.style().unpolish(self.verdict)
        self.verdict.style().polish(self.verdict)
        self.verdict.setMinimumHeight(look.TARGET)
        self.set_next("What to do &now")

    def set_next(self, words: str, on: bool = True) -> None:
        self.next_button.setText(words)
        self.next_button.setAccessibleName(words.replace("&", ""))
        self.next_button.setEnabled(on)
        self.next_key.setEnabled("&n" not in words.lower())  # where N is the button's own letter it does it

    def button_after(self, last: QWidget) -> None:
        """Tab comes from the last thing of the page to the big button, which was made before it."""
        self._last = last

    def _next_by_key(self) -> None:
        self.next_button.click()

    def add(self, thing: QWidget) -> QWidget:
        self.column.addWidget(thing)
        return thing

    def place_picture(self, picture: QWidget | None) -> None:
        self.picture = picture
        self.fold(self.mode)

    def fold(self, mode: str) -> None:
        """Lay the page out for a wide, a narrow or a tiny window."""
        self.mode = mode
        picture = self.picture
        edge = 12 if mode == TINY else 24
        self.column.setContentsMargins(edge, 10 if mode == TINY else 14, edge, 10)
        self.foot_column.setContentsMargins(edge, 6, 12, 6 if mode == TINY else 12)
        self.next_button.setMinimumSize(96 if mode == TINY else 132, look.TARGET if mode == TINY else 56)
        across = mode != TINY
        self.beside.setDirection(
            QBoxLayout.Direction.LeftToRight if across else QBoxLayout.Direction.TopToBottom
        )
        if picture is not None:
            if mode == WIDE:
                self.beside.removeWidget(picture)
                self.side_column.insertWidget(0, picture)
            elif self.beside.indexOf(picture) < 0:
                self.side_column.removeWidget(picture)
                self.beside.addWidget(picture, 2)
            picture.show()
        self.side.setVisible(mode == WIDE and self.side_column.count() > 0)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        key = event.key()
        if key in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.next_button.click()
        elif self.takes_digits and Qt.Key.Key_1 <= key <= Qt.Key.Key_9:
            if not self.hasty():
                self.choose(key - Qt.Key.Key_0)
        elif key in _SCROLL:
            bar = self.scroll.verticalScrollBar()
            bar.setValue(bar.value() + _SCROLL[key] * (bar.pageStep() - 40))
        else:
            if event.text().isalpha() and event.modifiers() in (_PLAIN, Qt.KeyboardModifier.ShiftModifier):
                self._stray_at = time.monotonic()
            super().keyPressEvent(event)

    def hasty(self) -> bool:
        """Whether a digit or the space bar pressed now was hardly meant to choose anything here: the page has
        only just come up, or letters are being typed at it. While that goes on, the wait begins anew.
        """
        now = time.monotonic()
        writing = now - self._stray_at < WRITING
        if writing:
            self._stray_at = now
        return writing or now - self._shown_at < SETTLE

    def hideEvent(self, event: QHideEvent) -> None:
        self._focused = self.focusWidget()
        super().hideEvent(event)

    def showEvent(self, event: QShowEvent) -> None:
        super().showEvent(event)
        if self._last is not None and isValid(self._last):  # in the window's own order, not before it has one
            QWidget.setTabOrder(self._last, self.next_button)
        self._shown_at = time.monotonic()
        QTimer.singleShot(0, self, self._focus)

    def _focus(self) -> None:
        """The first thing of the page when it is new; what had the focus when one comes back to it."""
        if not self.isVisible():
            return
        known = self._focused
        still = known is not None and isValid(known) and known.isVisible()
        here = known if still else self.first_focus()
        here.setFocus(Qt.FocusReason.OtherFocusReason)
