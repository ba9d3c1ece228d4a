"""Pictures taken up into the visit: kept under their hash, named in the trail by it."""

from __future__ import annotations

import json
from pathlib import Path

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QPushButton, QVBoxLayout, QWidget

from assistant.window import files, look
from assistant.window.refused import Refused
from assistant.window.session import Driver
from assistant.window.text import label, row_of


class Photos(QWidget):
    """`kept` is (hash, file name) of what was taken up; `trouble` carries a sentence."""

    changed = Signal()
    trouble = Signal(str)

    def __init__(self, driver: Driver, page: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.driver, self._key = driver, (page, "photos of the page")
        self.kept: list[tuple[str, str]] = _listed(driver.drafts.get(self._key, ""))
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        self.button = QPushButton("Add &pictures")
        self.button.setMinimumHeight(look.TARGET)
        self.button.clicked.connect(self.pick)
        column.addWidget(row_of(self.button))
        self.listed = label("", soft=True)
        column.addWidget(self.listed)
        self._show()

    def pick(self) -> None:
        for path in files.pick_pictures(self):
            self.take(path)

    def take(self, path: Path) -> None:
        """Keep one picture. A picture that can't be kept says why and hides no other."""
        try:
            self.kept.append((self.driver.keep_photo(files.read_picture(path), path.name), path.name))
        except (Refused, ValueError) as problem:
            self.trouble.emit(str(problem))
        except OSError as problem:
            self.trouble.emit(f"{path.name} can't be read ({problem.strerror or 'unknown reason'}).")
        self.driver.drafts[self._key] = json.dumps(self.kept)
        self._show()
        self.changed.emit()

    def saved(self, count: int | None = None) -> None:
        """The first `count` of them, or all, are in the trail."""
        del self.kept[:count]
        if self.kept:
            self.driver.drafts[self._key] = json.dumps(self.kept)
        else:
            self.driver.drafts.pop(self._key, None)
        self._show()

    def _show(self) -> None:
        self.listed.setText("Kept: " + ", ".join(name for _, name in self.kept) if self.kept else "")


def _listed(text: str) -> list[tuple[str, str]]:
    """(hash, file name) of each picture in a draft; empty where it can't be read."""
    try:
        found = json.loads(text) if text else []
        return [(str(kept), str(name)) for kept, name in found]
    except (ValueError, TypeError):
        return []
