"""What can still be the fault: the findings that can be reached from here. Always at hand, never a
percentage.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QFrame, QScrollArea, QVBoxLayout, QWidget

from assistant.window import look
from assistant.window.text import label

if TYPE_CHECKING:
    from assistant.window.session import Driver


def titles(driver: Driver) -> list[str]:
    """The findings' titles, nearest first; a stop that is a finding says so."""
    from assistant.tree.model import Finding
    from assistant.walk.reach import still_unproved

    out = []
    for _, step in still_unproved(driver.visit):
        out.append(step.title if isinstance(step, Finding) else f"{step.finding} (stop)")
    return list(dict.fromkeys(out))


class UnprovedList(QWidget):
    """The list, in small type, for the side of a wide window."""

    def __init__(self, driver: Driver, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 8, 0, 0)
        names = titles(driver)
        column.addWidget(label(f"Still unproved: {len(names)}" if names else "", look.BODY, bold=True))
        scroll = QScrollArea()
        scroll.setFrameShape(QFrame.Shape.NoFrame)
        scroll.setWidgetResizable(True)
        scroll.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        scroll.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        inside = QWidget()
        inside.setObjectName("side")
        rows = QVBoxLayout(inside)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.addWidget(label("\n".join(f"– {name}" for name in names), look.SMALL, soft=True))
        rows.addStretch(1)
        scroll.setWidget(inside)
        column.addWidget(scroll, 1)
