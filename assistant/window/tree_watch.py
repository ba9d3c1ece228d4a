"""Keeps an eye on a folder of trees, and reads and checks it anew, beside the window, when a file changes."""

from __future__ import annotations

import threading
from pathlib import Path

from PySide6.QtCore import QObject, QTimer, Signal

from assistant.house.place import Problem
from assistant.tree.check import check
from assistant.tree.library import Library, read_folder

EVERY = 1000
"""Milliseconds between two looks. Times and sizes are compared, as file systems in a network tell of no
changes."""
AWAITED = 5
"""Milliseconds between two looks for the answer of the thread that reads."""


class TreeWatch(QObject):
    """`read` carries the library and its problems, first for the folder as it is, then after each change."""

    read = Signal(object, object)

    def __init__(self, folder: Path, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.folder = folder
        self._seen: dict[str, tuple[int, int]] | None = None
        self._answers: list[tuple[Library, list[Problem]]] = []
        self._timer, self._wait = QTimer(self), QTimer(self)
        self._timer.setInterval(EVERY)
        self._timer.timeout.connect(self.look)
        self._wait.setInterval(AWAITED)
        self._wait.timeout.connect(self._told)

    def start(self) -> None:
        """Reads the folder, and looks again from time to time."""
        self.look()
        self._timer.start()

    def stop(self) -> None:
        self._timer.stop()
        self._wait.stop()

    @property
    def reading(self) -> bool:
        """Whether an answer is awaited."""
        return self._wait.isActive()

    def look(self) -> None:
        """Reads the folder where a file of it changed since it was read."""
        if self.reading:
            return
        now = stamps(self.folder)
        if now == self._seen:
            return
        self._seen, self._answers = now, []
        threading.Thread(target=_work, args=(self.folder, self._answers), daemon=True).start()
        self._wait.start()

    def _told(self) -> None:
        """The answer, once it is there: fetched on the window's own thread."""
        if self._answers:
            self._wait.stop()
            self.read.emit(*self._answers.pop())


def _work(folder: Path, answers: list[tuple[Library, list[Problem]]]) -> None:
    """On a thread that knows no window: the page may be closed and gone before this ends."""
    answers.append(read_and_check(folder))


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
