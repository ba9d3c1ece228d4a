"""Debriefs that nobody waits for: made ready a bit at a time while no drill is under way."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from contextlib import suppress
from pathlib import Path

from PySide6.QtCore import QObject, QTimer

from assistant.drill.practice import record
from assistant.drill.practice.debrief import Debrief, Soon, debrief
from assistant.drill.practice.drill import Drill
from assistant.drill.practice.unfinished import finished, unfinished
from assistant.errors import UserError
from assistant.rig.fault import Fault
from assistant.tree.library import Library

Keep = Callable[[Debrief | Soon], None]


class Later(QObject):
    """`busy` says whether somebody works on a drill: nothing goes on then."""

    def __init__(self, busy: Callable[[], bool], parent: QObject) -> None:
        super().__init__(parent)
        self.busy = busy
        self.unready: list[tuple[Iterator, Keep]] = []
        self.looked = False
        self.timer = QTimer(self)
        self.timer.setInterval(50)
        self.timer.timeout.connect(self._on)

    def add(self, steps: Iterator, keep: Keep) -> None:
        """Go on with this one."""
        self.unready.append((steps, keep))
        self.timer.start()

    def take_up(self, library: Library, faults: Mapping[str, Fault], drills: Mapping[str, Drill]) -> None:
        """Those that the program was closed over, once a window."""
        if self.looked:
            return
        self.looked = True
        for folder, ended in unfinished(record.practice_folder(), drills):
            self.add(debrief(ended, library, faults), keeps(folder, ended.apprentice, ended.began, ended))

    def stop(self) -> None:
        """The window closes."""
        self.timer.stop()

    def _on(self) -> None:
        if self.busy():
            return
        if not self.unready:
            self.timer.stop()
            return
        steps, keep = self.unready[0]
        step = next(steps, None)
        if step is None or isinstance(step, Debrief):
            self.unready.pop(0)
        if isinstance(step, Debrief):
            with suppress(UserError):  # what was kept at once stays
                keep(step)


def keeps(folder: Path, who: str, began: str, work) -> Keep:
    """Keeps a debrief in its folder; once it is whole, what it needed is done with."""

    def keep(told: Debrief | Soon) -> None:
        record.keep(folder, who, began, work, told)
        if isinstance(told, Debrief):
            finished(folder)

    return keep
