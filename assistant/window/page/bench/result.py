"""What a sheet came to: its results, the formula with the numbers, where it comes from, and where the trees
draw the line.
"""

from __future__ import annotations

from collections.abc import Mapping

from PySide6.QtWidgets import QVBoxLayout, QWidget

from assistant.house.model import PlateValue
from assistant.trade.entry import Entry
from assistant.trade.sheet import PARAGRAPH, Shown, Worked
from assistant.window import look
from assistant.window.page.bench.limits import TreeLimit
from assistant.window.page.bench.plate import PlateFields
from assistant.window.scale import ScaleView
from assistant.window.text import label


class ResultView(QWidget):
    """Below the fields; a single result stands in the foot of the page, several stand here."""

    def __init__(self, entry: Entry, plate: Mapping[str, PlateValue], parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.entry = entry
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        self.results = label("", bold=True)
        self.formula = label("")
        self.source = label(f"Source: {entry.source}", look.SMALL, soft=True)
        for text in (self.results, self.formula, self.source):
            column.addWidget(text)
        self.plate = PlateFields(plate)
        column.addWidget(self.plate)
        self.limits = QVBoxLayout()
        self.views: list[tuple[QWidget, ScaleView]] = []
        column.addLayout(self.limits)

    def show_worked(self, worked: Worked, told: list[TreeLimit]) -> None:
        """Sentences first, then the values, each in its line; then the formula and the scales."""
        ordered = sorted(worked.results, key=lambda each: not _paragraph(each))
        said = [each.text if _paragraph(each) else f"{each.words}: {each.text}" for each in ordered]
        self.results.setText("\n".join(said))
        self.results.setVisible(len(said) > 1)
        self.formula.setText(worked.formula or self.entry.formula)
        while len(self.views) < len(told):
            words, scale = label("", look.SMALL), ScaleView()
            self.limits.addWidget(words)
            self.limits.addWidget(scale)
            self.views.append((words, scale))
        for place, (words, scale) in enumerate(self.views):
            words.setVisible(place < len(told))
            if place < len(told):
                words.setText(f"{told[place].words}: {told[place].verdict}")
                scale.show_scale(told[place].scale)
            else:
                scale.hide()


def _paragraph(result: Shown) -> bool:
    """Whether a result is sentences rather than a value."""
    return len(result.text) > PARAGRAPH and isinstance(result.value, str)
