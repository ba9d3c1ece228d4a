"""Keeps an eye on a folder of trees, and reads and checks it anew, beside the window, when a file changes."""

from __future__ import annotations

import contextlib
import threading
from pathlib import Path

from PySide6.QtCore import QObject, QTimer, Signal

from assistant.house.place import Problem
from assistant.tree.check import check
from assistant.tree.library import Library, read_folder

EVERY = 1000
"""Milliseconds between two looks. Times and sizes are compared, as file systems in a network tell of no
changes."""


class TreeWatch(QObject):
    """`read` carries the library and its problems, first for the folder as it is, then after each change."""

    read = Signal(object, object)

    def __init__(self, folder: Path, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.folder = folder
        self._seen: dict[str, tuple[int, int]] | None = None
        self._busy = False
        self._timer = QTimer(self)
        self._timer.setInterval(EVERY)
        self._timer.timeout.connect(self.look)

    def start(self) -> None:
        """Reads the folder, and looks again from time to time."""
        self.look()
        self._timer.start()

    def stop(self) -> None:
        self._timer.stop()

    def look(self) -> None:
        """Reads the folder where a file of it changed since it was read."""
        if self._busy:
            return
        now = stamps(self.folder)
        if now == self._seen:
            return
        self._seen, self._busy = now, True
        threading.Thread(target=self._work, daemon=True).start()

    def _work(self) -> None:
        """On its own thread; the signal brings the answer over to the window's."""
        library, problems = read_and_check(self.folder)
        self._busy = False
        with contextlib.suppress(RuntimeError):  # the page was closed meanwhile
            self.read.emit(library, problems)


def read_and_check(folder: Path) -> tuple[Library, list[Problem]]:
    """The folder's trees with everything that is wrong in them."""
    library = read_folder(folder)
    return library, check(library)


def stamps(folder: Path) -> dict[str, tuple[int, int]]:
    """Time and size of every tree file below a folder; what can't be looked at is left out."""
    found: dict[str, tuple[int, int]] = {}
    for path in sorted(folder.rglob("*.yaml")):
        try:
            known = path.stat()
        except OSError:
            continue
        found[str(path)] = (known.st_mtime_ns, known.st_size)
    return found
