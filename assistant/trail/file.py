"""One writer's own trail file: a line goes to the disk and is synced, and only then counts as saved."""

from __future__ import annotations

import contextlib
import errno
import secrets
from pathlib import Path

from assistant.trail.chain import FORMAT, START, seal
from assistant.trail.error import TrailError, not_saved
from assistant.trail.files import Files


def new_name(ordinal: int) -> str:
    """A file name that no other writer takes, on this computer or another: trail-003-9f31c2.jsonl."""
    return f"trail-{ordinal:03d}-{secrets.token_hex(3)}.jsonl"


class TrailFile:
    """Appends lines to a file of its own, begun with a line that names the tip it continues.

    The file is made at the first line, so that looking at a visit leaves nothing behind. After a failed
    write the file is cut back to the last saved line, at the latest before the next line is written. `mark`
    stands in every line.
    """

    def __init__(
        self,
        files: Files,
        folder: Path,
        visit: str,
        ordinal: int,
        tip: str = START,
        n: int = 0,
        beside: tuple[str, ...] = (),
        program: str = "",
        mark: dict | None = None,
    ) -> None:
        self.files, self.folder, self.visit, self.ordinal = files, folder, visit, ordinal
        self._mark = mark or {}
        self.tip, self.n = tip, n
        self._beside, self._program = beside, program
        self.name: str | None = None
        self._handle: int | None = None
        self._size = 0
        self._unsure = False

    def append(self, fields: dict) -> str:
        """Writes `fields` as the next line and syncs it; its hash is the new tip.

        Raises TrailError when the disk doesn't take it; what was saved before stays saved.
        """
        try:
            if self._handle is None:
                self._begin()
            self._put(fields)
        except OSError as problem:
            raise not_saved(problem, self.folder) from problem
        return self.tip

    def close(self) -> None:
        if self._handle is not None:
            handle, self._handle = self._handle, None
            try:
                if self._unsure:
                    self._cut_back(handle)
            except OSError:
                pass  # the next opening finds the torn line and cuts it
            self.files.close(handle)
            self._unsure = False

    def _begin(self) -> None:
        name = new_name(self.ordinal)
        handle = self.files.create(self.folder / name)
        header = {**self._mark, "kind": "trail", "format": FORMAT, "visit": self.visit, "n": self.n + 1}
        if self._program:
            header["program"] = self._program
        if self.tip != START:
            header["continues"] = self.tip
        if self._beside:
            header["beside"] = sorted(self._beside)
        line, tip = seal(self.tip, header)
        try:
            self.files.write(handle, line)
            self.files.sync(handle)
            self.files.sync_folder(self.folder)
        except OSError:
            self._discard(handle, name)
            raise
        self._handle, self.name, self._size = handle, name, len(line)
        self.tip, self.n = tip, self.n + 1

    def _discard(self, handle: int, name: str) -> None:
        """A file that could not be begun holds no answer; where it can't be removed it stays as a torn
        one."""
        self.files.close(handle)
        with contextlib.suppress(OSError):
            self.files.remove(self.folder / name)

    def _put(self, fields: dict) -> None:
        handle = self._handle
        if handle is None:
            raise TrailError("This visit's trail is closed.")
        if self._unsure:
            self._cut_back(handle)
        line, tip = seal(self.tip, {**self._mark, **fields, "n": self.n + 1})
        self._unsure = True
        try:
            self.files.write(handle, line)
            self.files.sync(handle)
        except OSError:
            with contextlib.suppress(OSError):  # tried again before the next line
                self._cut_back(handle)
            raise
        self._unsure = False
        if not self.files.still_there(handle, self.folder / (self.name or "")):
            self._handle = None  # with the stick put back, a new file goes on from the last saved line
            self.files.close(handle)
            raise FileNotFoundError(errno.ENOENT, "the file was taken away", str(self.folder))
        self._size += len(line)
        self.tip, self.n = tip, self.n + 1

    def _cut_back(self, handle: int) -> None:
        self.files.cut(handle, self._size)
        self.files.sync(handle)
        self._unsure = False
