"""What is needed to draw without a screen: Qt's application object and a font. The only door to QtGui
here."""

from __future__ import annotations

import os
import sys

from assistant.errors import UserError
from assistant.resources import resources_folder

SHIPPED = ("DejaVuSans.ttf", "DejaVuSans-Bold.ttf")
_held: list[object] = []
"""The application object, which must outlive every font and picture, and the family that is drawn with."""


class CannotDrawError(UserError):
    """QtGui can't be loaded or there is no font; its text is the sentence to show."""


def ready() -> str:
    """Makes sure that QtGui can draw; the name of the font family to draw with.

    Raises CannotDrawError. Uses the application object that is there already, a window's for example.
    """
    if _held:
        return str(_held[1])
    try:
        from PySide6.QtCore import QCoreApplication
        from PySide6.QtGui import QFont, QFontDatabase, QFontMetricsF, QGuiApplication
    except ImportError as problem:
        raise CannotDrawError(
            f"PDF and photos need QtGui, which does not load here ({problem}). HTML, text and CSV do without."
        ) from problem
    app = QCoreApplication.instance()
    if app is None:
        if sys.platform.startswith(
            "linux"
        ):  # a report needs no screen, and Qt would end the program without one
            os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
        app = QGuiApplication(["fault-trail"])
    elif not isinstance(app, QGuiApplication):
        raise CannotDrawError(
            "PDF and photos need a program that was started able to draw; this one was not."
        )
    family = _shipped_family(QFontDatabase) or QGuiApplication.font().family()
    if not QFontMetricsF(QFont(family)).inFont("A"):  # families are listed even where there is no font file
        raise CannotDrawError(
            "There is no font on this computer and the program's own is gone: a PDF would show empty boxes, "
            "so none is written. HTML, text and CSV do without. Install the program again, or a font (on "
            "Debian: apt-get install fonts-dejavu-core)."
        )
    _held.extend([app, family])
    return family


def _shipped_family(database) -> str:
    """The font that comes with the program, so that a report looks the same on every computer."""
    found = ""
    try:
        folder = resources_folder() / "font"
    except UserError:
        return ""
    for name in SHIPPED:
        if (folder / name).is_file():
            families = database.applicationFontFamilies(database.addApplicationFont(str(folder / name)))
            found = found or (families[0] if families else "")
    return found
