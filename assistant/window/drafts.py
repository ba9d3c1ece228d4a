"""What was typed and not sent yet. It survives the page, and what belongs to no step survives the program.

A reading that was typed and not saved is not kept on disk: another day it would stand in its field as if it
had been taken then.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from pathlib import Path

from PySide6.QtCore import QObject, QTimer

from assistant.trail.draft import drafts_of, keep_drafts

LATER = 250
"""Milliseconds after the last key before it is written down: not at every letter."""

SIGNATURE = "sign"
"""Whoever signs another day may be somebody else: the name is offered from who took the visit up."""
Key = tuple[str, str]


class Drafts(dict[Key, str]):
    """(page or step, name) -> text. `steps`: the trees' names; a key that begins with one stays here."""

    def __init__(self, folder: Path | None, steps: Iterable[str], owner: QObject) -> None:
        found = {} if folder is None else drafts_of(folder)
        self._steps = frozenset(steps)
        super().__init__({key: text for key, text in found.items() if self._lasts(key)})
        self.restored = frozenset(self)
        """What was there when the visit was opened: typed before, perhaps by somebody else."""
        self._folder, self._changed = folder, dict[Key, str]()
        self._later = QTimer(owner)
        self._later.setSingleShot(True)
        self._later.setInterval(LATER)
        self._later.timeout.connect(self.keep)

    def __setitem__(self, key: Key, text: str) -> None:
        if self.get(key) != text:
            super().__setitem__(key, text)
            self._note(key, text)

    def pop(self, key: Key, *default: str | None) -> str | None:
        """As of any dict; it goes from the disk as well."""
        if key in self:
            self._note(key, "")
        return super().pop(key, *default)

    def keep(self) -> bool:
        """Write it down now; False where the disk does not take it."""
        self._later.stop()
        if self._folder is None or not self._changed:
            return True
        if keep_drafts(self._folder, self._changed):
            self._changed = {}
            return True
        return False

    def _lasts(self, key: Key) -> bool:
        return key[0] != SIGNATURE and key[0].partition(".")[0] not in self._steps

    def _note(self, key: Key, text: str) -> None:
        if self._folder is not None and self._lasts(key):
            self._changed[key] = text
            self._later.start()


PAGES: dict[str, tuple[str, str]] = {
    "as_found": ("as_found", "As found"),
    "as_left": ("as_left", "As left"),
    "advise": ("advise", "Recommend"),
    "note": ("notes", "Note or photo"),
    "person": ("who", "For whom"),
    "baseline": ("baseline", "Healthy numbers"),
    "sheet.healthy": ("baseline", "Healthy numbers"),
}
"""First part of a key -> the page beside the walk and its title."""


def unsaved(drafts: Drafts, known: Callable[[str, str], str], title: Callable[[str], str]) -> list[str]:
    """The titles of the pages in which something stands that was typed and never saved. `known` gives what
    the trail has for a line of a sheet, `title` a sheet's title.
    """
    found = []
    for page, name in sorted(drafts):
        text = drafts.get((page, name), "").strip()
        if not text or known(page, name) == text:
            continue
        if page in PAGES:
            found.append(PAGES[page][1])
        elif page.startswith("sheet."):
            found.append(title(page.removeprefix("sheet.")))
    return list(dict.fromkeys(found))
