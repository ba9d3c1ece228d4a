"""What a person does with a window: keys go where the focus is, taps land where something can be seen."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QObject, QPoint, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QAbstractButton, QApplication, QWidget

ENTER, ESCAPE, TAB = Qt.Key.Key_Return, Qt.Key.Key_Escape, Qt.Key.Key_Tab


class Hand:
    """Real key presses and real clicks on one window."""

    def __init__(self, qtbot, window) -> None:
        self.bot, self.window = qtbot, window

    @property
    def page(self):
        return self.window.page

    @property
    def driver(self):
        return self.window.driver

    @property
    def verdict(self) -> str:
        return self.page.verdict.text()

    @property
    def step(self) -> str:
        return self.driver.ask().step

    def rest(self) -> Hand:
        """Let queued events (focus, layout, deletion) come through."""
        for _ in range(3):
            QTest.qWait(1)
            QApplication.processEvents()
        return self

    def key(self, key, modifier=Qt.KeyboardModifier.NoModifier) -> Hand:
        """One key, where the focus is."""
        QTest.keyClick(QApplication.focusWidget() or self.window, key, modifier)
        return self.rest()

    def alt(self, letter: str) -> Hand:
        """A mnemonic; a button pressed by one stays down for a tenth of a second before it counts."""
        self.key(getattr(Qt.Key, f"Key_{letter.upper()}"), Qt.KeyboardModifier.AltModifier)
        QTest.qWait(130)
        return self.rest()

    def enter(self) -> Hand:
        return self.key(ENTER)

    def digit(self, digit: int) -> Hand:
        return self.key(Qt.Key(Qt.Key.Key_0.value + digit))

    def type(self, text: str) -> Hand:
        """Letters, where the focus is."""
        QTest.keyClicks(QApplication.focusWidget(), text)
        return self.rest()

    def tap(self, widget: QWidget) -> Hand:
        """A finger on the middle of a widget that is really there to be touched."""
        assert widget.isVisible() and widget.isEnabled(), f"{name(widget)} can't be touched"
        scroll = getattr(self.page, "scroll", None)
        if scroll is not None and scroll.widget().isAncestorOf(widget):
            scroll.ensureWidgetVisible(widget, 0, 20)
            self.rest()
        middle = widget.mapTo(self.window, QPoint(widget.width() // 2, widget.height() // 2))
        hit = self.window.childAt(middle)
        assert hit is widget or widget.isAncestorOf(hit), f"{name(hit)} lies over {name(widget)}"
        QTest.mouseClick(widget, Qt.MouseButton.LeftButton)
        return self.rest()

    def button(self, words: str) -> QAbstractButton:
        """The button in sight whose words begin so."""
        found = [
            button
            for button in self.window.findChildren(QAbstractButton)
            if button.isVisible() and button.text().replace("&", "").startswith(words)
        ]
        assert found, f"no button says {words!r}: {[b.text() for b in self.buttons()]}"
        return found[0]

    def buttons(self) -> list[QAbstractButton]:
        return [button for button in self.window.findChildren(QAbstractButton) if button.isVisible()]

    def press(self, words: str) -> Hand:
        return self.tap(self.button(words))


def name(widget: QWidget | None) -> str:
    """A widget as a person would call it."""
    if widget is None:
        return "nothing"
    return f"{type(widget).__name__} {widget.accessibleName() or widget.objectName()!r}"


class Flashes(QObject):
    """Notes every top-level widget of the program's that is shown and is not the window."""

    def __init__(self, app) -> None:
        super().__init__(app)
        self.seen: list[str] = []
        app.installEventFilter(self)

    def eventFilter(self, watched, event) -> bool:
        shown = event.type() == QEvent.Type.Show and isinstance(watched, QWidget) and watched.isWindow()
        if shown and type(watched).__name__ not in ("Window", "QTipLabel"):
            self.seen.append(name(watched))
        return False
