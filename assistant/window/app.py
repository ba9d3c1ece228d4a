"""The program's window: font, style, palette, and the first page."""

from __future__ import annotations

import sys
from collections.abc import Callable, Sequence
from types import TracebackType

from PySide6.QtCore import QTimer
from PySide6.QtGui import QFontDatabase, QFontInfo, QPalette
from PySide6.QtWidgets import QApplication

from assistant.crash import write_note
from assistant.resources import resources_folder
from assistant.window import look
from assistant.window.desk import Desk
from assistant.window.frame import Window

FONT = "DejaVu Sans"
FONT_FILES = ("DejaVuSans.ttf", "DejaVuSans-Bold.ttf")


def run(argv: Sequence[str] | None = None) -> int:
    """Open the window and stay until it is closed; the exit code."""
    app = QApplication.instance() or QApplication(list(sys.argv if argv is None else argv))
    dress(app)
    window = Window(Desk())
    sys.excepthook = crashed(window)
    window.begin()
    room = app.primaryScreen().availableGeometry()
    window.resize(min(1360, room.width()), min(860, room.height()))
    if room.width() <= look.WIDE or room.height() <= 700:
        window.showMaximized()
    else:
        window.show()
    QTimer.singleShot(300, window, window.warm_up)
    return app.exec()


def crashed(window: Window) -> Callable[..., None]:
    """What happens to a mistake of the program's own in the middle of a visit: a sentence in the foot and
    a crash note on disk. Everything saved is saved, and the window stays.
    """

    def tell(kind: type[BaseException], error: BaseException, trace: TracebackType | None) -> None:
        if issubclass(kind, KeyboardInterrupt):
            window.close()
            return
        note = write_note(error.with_traceback(trace), "the window")
        where = f" What happened is written in {note}." if note else ""
        if window.page is not None:
            window.page.say(f"The program made a mistake ({kind.__name__}). What was saved is safe.{where}")

    return tell


def dress(app: QApplication, palette: QPalette | None = None) -> None:
    """Font, style and style sheet; `palette` replaces the system's (for pictures and tests)."""
    app.setApplicationName("Fault Trail")
    app.setDesktopFileName("fault-trail")
    app.setStyle("Fusion")
    load_font()
    font = app.font()
    font.setFamily(FONT)
    font.setPointSizeF(look.BODY)
    app.setFont(font)
    if palette is not None:
        app.setPalette(palette)
    look.follow_palette()


def load_font() -> str:
    """Make the shipped font known; its family's name. A machine without any font would draw boxes."""
    for name in FONT_FILES:
        QFontDatabase.addApplicationFont(str(resources_folder() / "font" / name))
    return QFontInfo(QApplication.font()).family()
