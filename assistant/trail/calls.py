"""Telephone calls that are no visit yet: a folder for each beside the visits, so that a program that is
killed loses no answer. Gone as soon as a visit has it, or somebody throws it away.
"""

from __future__ import annotations

import contextlib
import shutil
from pathlib import Path

from assistant.trail.draft import NAME, drafts_of, keep_drafts
from assistant.trail.error import TrailError, not_saved
from assistant.trail.lock import Lock, take
from assistant.trail.names import folder_name

FOLDER = "calls"
PAGE = "call"


class Call:
    """One call. `texts`: question, or name, address and phone -> what was written down. It has no folder on
    disk before something was written down.
    """

    def __init__(self, root: Path, at: str, folder: Path | None = None) -> None:
        self.root, self.at, self.folder = Path(root), at, folder
        self.texts: dict[str, str] = {}
        self._lock: Lock | None = None
        self._kept: set[str] = set()

    @staticmethod
    def open(folder: Path) -> Call:
        """A call that was interrupted. Raises TrailError where another window has it, or it is gone."""
        call = Call(folder.parent, folder.name, folder)
        call._lock = take(folder)
        call.texts = _texts(folder)
        call._kept = set(call.texts)
        return call

    def keep(self) -> str:
        """Writes it down; a sentence where the disk does not take it, and everything is still here."""
        if self.folder is None:
            if not any(text.strip() for text in self.texts.values()):
                return ""
            folder = self.root / folder_name(self.at, (PAGE,))
            try:
                folder.mkdir(parents=True, exist_ok=True)
                self._lock = take(folder)
            except OSError as problem:
                return str(not_saved(problem, folder))
            except TrailError as problem:
                return str(problem)
            self.folder = folder
        texts = {**dict.fromkeys(self._kept, ""), **self.texts}
        if not keep_drafts(self.folder, {(PAGE, name): text for name, text in texts.items()}):
            return f"The call can't be kept on disk in {self.folder}. It is kept here while the program runs."
        self._kept = set(self.texts)
        return ""

    def let_go(self) -> None:
        """Another window may have it now; one in which nothing stands goes."""
        if self._lock is not None:
            self._lock.release()
            self._lock = None
        if self.folder is not None and not (self.folder / NAME).exists():
            self.drop()

    def drop(self) -> None:
        """A visit has it now, or it is thrown away."""
        if self._lock is not None:
            self._lock.release()
            self._lock = None
        if self.folder is not None:
            shutil.rmtree(self.folder, ignore_errors=True)
            self.folder = None
        self.texts = {}


def interrupted(root: Path, but: Path | None = None) -> list[tuple[Path, dict[str, str]]]:
    """Calls that no window has open, the latest first, with what was written down. Never raises."""
    found = []
    with contextlib.suppress(OSError):
        for folder in sorted(Path(root).iterdir(), reverse=True):
            if folder == but or not folder.is_dir() or not (texts := _texts(folder)):
                continue
            with contextlib.suppress(TrailError):
                take(folder).release()
                found.append((folder, texts))
    return found


def _texts(folder: Path) -> dict[str, str]:
    return {name: text for (page, name), text in drafts_of(folder).items() if page == PAGE}
