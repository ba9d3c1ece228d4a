"""The one place where colours, sizes and line widths are decided; everything else asks here.

Every colour comes from a role of the palette that the system gives, so that dark and high-contrast settings
need nothing of their own. One accent is added, the ink of the margin line, and bent until it can be read.
"""

from __future__ import annotations

from dataclasses import dataclass

from PySide6.QtGui import QColor, QFont, QPalette
from PySide6.QtWidgets import QApplication

from assistant.window.legible import OUTLINE, TEXT, mix, ratio, readable

TARGET = 44
"""The least side of anything that is pressed with a cold finger, in device-independent pixels."""
WIDE = 1180
"""From this width on, the margin and the drawing stand beside the question."""
TINY = (640, 440)
"""Below this width or height only the question, the field, the verdict and Next are left standing."""

BODY, SMALL, LEAD, QUESTION, WRITTEN, FAR = 12.0, 10.5, 14.0, 24.0, 24.0, 38.0
"""Type sizes in points. FAR: capital height of at least 9 mm at 96 dots an inch, for reading from two metres
(a letter a three-hundredth of the distance high is the usual rule for signs: common practice)."""

_INK_ON_LIGHT, _INK_ON_DARK = QColor(0x2E, 0x3F, 0x8F), QColor(0xA9, 0xB8, 0xFF)


@dataclass(frozen=True)
class Inks:
    """The colours of one palette. `soft` is for lesser text, `rule` for lines that carry no meaning alone,
    `edge` for the outline of what can be pressed."""

    text: QColor
    soft: QColor
    rule: QColor
    edge: QColor
    paper: QColor
    ground: QColor
    accent: QColor
    on_accent: QColor
    wash: QColor


def on_paper() -> Inks:
    """Black on white, for what is printed, whatever the window's palette is."""
    palette = QPalette(QColor("white"), QColor("white"))
    for role in (QPalette.ColorRole.Text, QPalette.ColorRole.WindowText):
        palette.setColor(role, QColor("black"))
    palette.setColor(QPalette.ColorRole.Base, QColor("white"))
    return inks(palette)


def inks(palette: QPalette | None = None) -> Inks:
    """Work out the colours from a palette (the application's own when none is given)."""
    palette = palette or QApplication.palette()
    paper, ground = palette.color(QPalette.ColorRole.Base), palette.color(QPalette.ColorRole.Window)
    text = readable(palette.color(QPalette.ColorRole.Text), paper, _opposite(paper))
    worst = paper if ratio(text, paper) < ratio(text, ground) else ground
    accent = readable(_INK_ON_LIGHT if _light(paper) else _INK_ON_DARK, worst, text)
    return Inks(
        text=text,
        soft=readable(mix(text, paper, 0.66), worst, text),
        rule=mix(text, paper, 0.22),
        edge=readable(mix(text, paper, 0.5), worst, text, OUTLINE),
        paper=paper,
        ground=ground,
        accent=accent,
        on_accent=readable(paper, accent, _opposite(accent)),
        wash=_wash(accent, paper, text),
    )


def is_dark(palette: QPalette | None = None) -> bool:
    """Whether light text stands on dark paper."""
    return not _light((palette or QApplication.palette()).color(QPalette.ColorRole.Base))


def font(points: float = BODY, bold: bool = False) -> QFont:
    """The application's family at this size."""
    made = QFont(QApplication.font())
    made.setPointSizeF(points)
    made.setBold(bold)
    return made


def dark_palette() -> QPalette:
    """A plain dark palette, for pictures and tests: the screen-less platform ignores the colour scheme."""
    palette = QPalette(QColor(0x2B, 0x2D, 0x31), QColor(0x24, 0x26, 0x2A))
    for role, colour in (
        (QPalette.ColorRole.Base, 0x1C1E21),
        (QPalette.ColorRole.AlternateBase, 0x26282C),
        (QPalette.ColorRole.Text, 0xE8E6E1),
        (QPalette.ColorRole.WindowText, 0xE8E6E1),
        (QPalette.ColorRole.ButtonText, 0xE8E6E1),
        (QPalette.ColorRole.Button, 0x2F3136),
        (QPalette.ColorRole.PlaceholderText, 0xA0A0A0),
        (QPalette.ColorRole.Highlight, 0x5566AA),
        (QPalette.ColorRole.HighlightedText, 0xFFFFFF),
    ):
        palette.setColor(role, QColor(colour))
    return palette


def sheet(ink: Inks) -> str:
    """The application's style sheet, written from the inks."""
    name = {field: getattr(ink, field).name() for field in Inks.__dataclass_fields__}
    return _SHEET % name


def follow_palette() -> None:
    """Write the application's style sheet anew where the palette's inks have changed since."""
    app = QApplication.instance()
    wanted = sheet(inks(app.palette()))
    if app.styleSheet() != wanted:
        app.setStyleSheet(wanted)


def _light(colour: QColor) -> bool:
    return ratio(colour, QColor("black")) > ratio(colour, QColor("white"))


def _wash(accent: QColor, paper: QColor, text: QColor) -> QColor:
    """A breath of accent on the paper, less of it where the text is already hard to read."""
    tints = [mix(accent, paper, share / 100) for share in (9, 6, 3)]
    return next((tint for tint in tints if ratio(text, tint) >= TEXT), paper)


def _opposite(colour: QColor) -> QColor:
    return QColor("black") if _light(colour) else QColor("white")


_SHEET = """
QWidget { color: %(text)s; }
QWidget#paper, QScrollArea, QScrollArea > QWidget > QWidget#paper { background: %(paper)s; border: none; }
QWidget#head, QWidget#margin, QWidget#side { background: %(ground)s; }
QWidget#foot { background: %(paper)s; border-top: 1px solid %(rule)s; }
QLabel { background: transparent; }
QLabel[soft="true"] { color: %(soft)s; }
QLabel[stop="true"] { background: %(text)s; color: %(paper)s; padding: 6px 12px; }
QLabel[accent="true"] { color: %(accent)s; }
QFrame#line { background: %(rule)s; border: none; max-height: 1px; min-height: 1px; }
QFrame#banner { background: %(wash)s; border: none; border-left: 4px solid %(accent)s; }
QLineEdit { background: %(paper)s; border: none; border-bottom: 2px solid %(edge)s; padding: 2px 4px;
            selection-background-color: %(accent)s; selection-color: %(on_accent)s;
            placeholder-text-color: %(soft)s; }
QLineEdit:focus, QPlainTextEdit:focus { border-bottom: 3px solid %(accent)s; }
QLineEdit:read-only { border-bottom: 2px dotted %(edge)s; }
QPlainTextEdit, QListWidget { background: %(paper)s; border: 1px solid %(edge)s; padding: 4px; }
QListWidget#notes { background: %(ground)s; border: none; padding: 0; }
QListWidget#notes::item { border: none; padding: 0; }
QListWidget:focus { border: 2px solid %(accent)s; }
QListWidget::item { min-height: 44px; padding: 2px 6px; border-bottom: 1px solid %(rule)s; color: %(text)s; }
QListWidget::item:selected { background: %(accent)s; color: %(on_accent)s; }
QCheckBox { spacing: 10px; min-height: 44px; }
QCheckBox:focus { color: %(accent)s; text-decoration: underline; }
QPushButton { background: %(paper)s; border: 1px solid %(edge)s; border-radius: 4px; padding: 6px 14px;
              min-height: 30px; }
QPushButton:focus { border: 2px solid %(accent)s; padding: 5px 13px; }
QPushButton:pressed { background: %(wash)s; }
QPushButton:checked { background: %(accent)s; color: %(on_accent)s; border-color: %(accent)s; }
QPushButton:disabled { color: %(soft)s; border: 1px dashed %(rule)s; }
QPushButton#next { background: %(accent)s; color: %(on_accent)s; border: 1px solid %(accent)s;
                   font-weight: bold; }
QPushButton#next:focus { border: 3px double %(on_accent)s; }
QPushButton#next:disabled { background: %(paper)s; color: %(soft)s; border: 1px dashed %(edge)s; }
QPushButton#hazard { border: 2px solid %(text)s; font-weight: bold; }
QPushButton#hazard:focus { border: 3px solid %(accent)s; }
QScrollBar:vertical { background: %(ground)s; width: 16px; margin: 0; }
QScrollBar::handle:vertical { background: %(edge)s; min-height: 44px; margin: 3px; border-radius: 4px; }
QScrollBar::add-line, QScrollBar::sub-line { height: 0; }
QProgressBar { background: %(paper)s; border: 1px solid %(edge)s; border-radius: 3px; }
QProgressBar::chunk { background: %(accent)s; }
"""
