"""A disk in memory that writes down every call, forgets what was not synced, and fails where it is told to.

The model is the usual one of a journaling file system: a file's bytes are safe after a sync of the file,
its name after a sync of its folder; what was not synced may be there whole, in part, with sectors of zeros,
or not at all.
"""

from __future__ import annotations

import errno
from dataclasses import dataclass, field
from itertools import combinations, pairwise
from pathlib import Path

from assistant.trail.files import Files

SECTOR = 512


class PowerCut(BaseException):
    """The machine stops between two calls."""


@dataclass
class Content:
    """A file's bytes: `now` is what a reader sees, `safe` what is on the medium."""

    now: bytes = b""
    safe: bytes = b""


@dataclass
class NoLock:
    """For a disk in memory, which no second window can see."""

    def release(self) -> None:
        pass


def no_lock(folder, take_over=False):
    return NoLock()


@dataclass
class RecordingDisk(Files):
    """`calls` holds every call in order; `cut_before` and `fail_at` count writing calls from 0."""

    calls: list[tuple] = field(default_factory=list)
    cut_before: int | None = None
    fail_at: dict[int, OSError] = field(default_factory=dict)
    part_written: int = 0
    """How many bytes of a failing write reach the file all the same."""

    def __post_init__(self):
        self.names_now: dict[Path, Content] = {}
        self.names_safe: dict[Path, Content] = {}
        self.folders: set[Path] = set()
        self.open: dict[int, tuple[Path, Content]] = {}

    # reading
    def is_folder(self, path):
        return path in self.folders

    def names(self, folder):
        if folder not in self.folders:
            raise FileNotFoundError(errno.ENOENT, "no such folder", str(folder))
        return sorted(path.name for path in self.names_now if path.parent == folder)

    def read(self, path):
        if path not in self.names_now:
            raise FileNotFoundError(errno.ENOENT, "no such file", str(path))
        return self.names_now[path].now

    # writing
    def make_folder(self, path):
        self._call("make_folder", path)
        self.folders.add(path)

    def create(self, path):
        self._call("create", path)
        if path in self.names_now:
            raise FileExistsError(errno.EEXIST, "exists", str(path))
        self.names_now[path] = Content()
        return self._handle(path)

    def reopen(self, path):
        self._call("reopen", path)
        return self._handle(path)

    def write(self, handle, data):
        path, content = self.open[handle]
        try:
            self._call("write", path, bytes(data))
        except OSError:
            content.now += bytes(data)[: self.part_written]
            raise
        content.now += bytes(data)

    def sync(self, handle):
        path, content = self.open[handle]
        self._call("sync", path)
        content.safe = content.now

    def sync_folder(self, folder):
        self._call("sync_folder", folder)
        kept = {path: content for path, content in self.names_safe.items() if path.parent != folder}
        self.names_safe = kept | {p: content for p, content in self.names_now.items() if p.parent == folder}

    def cut(self, handle, size):
        path, content = self.open[handle]
        self._call("cut", path, size)
        content.now = content.now[:size]

    def still_there(self, handle, path):
        return self.names_now.get(path) is self.open[handle][1]

    def close(self, handle):
        self.open.pop(handle, None)

    def rename(self, old, new):
        self._call("rename", old, new)
        self.names_now[new] = self.names_now.pop(old)

    def remove(self, path):
        self._call("remove", path)
        del self.names_now[path]

    def acknowledge(self, what):
        """The test's own mark: here the program was told that the answer is saved."""
        self.calls.append(("acknowledged", what))

    # what a power cut leaves
    def after_power_cut(self, torn_step: int = 1):
        """Every state that the medium can be in now, as (words, disk)."""
        yield "only what was synced", self._state(self.names_safe, lambda content: content.safe)
        yield "everything", self._state(self.names_now, lambda content: content.now)
        yield "names without bytes", self._state(self.names_now, lambda content: content.safe)
        unsafe = [content for content in self.names_now.values() if content.now != content.safe]
        for file in unsafe:
            if not file.now.startswith(file.safe):
                continue  # a cut that was not synced: both ends are covered above
            for size in range(len(file.safe), len(file.now), torn_step):
                yield f"torn at {size}", self._with(file, file.now[:size])
            for holes in _holes(len(file.safe), len(file.now)):
                data = bytearray(file.now)
                for start, end in holes:
                    data[start:end] = bytes(end - start)
                yield f"zeros in {holes}", self._with(file, bytes(data))

    def _with(self, file, data):
        return self._state(self.names_now, lambda content: data if content is file else content.now)

    def _state(self, names, bytes_of):
        out = RecordingDisk()
        out.folders = set(self.folders)
        out.names_now = {path: Content(bytes_of(c), bytes_of(c)) for path, c in names.items()}
        out.names_safe = dict(out.names_now)
        return out

    def _handle(self, path):
        handle = max(self.open, default=2) + 1
        self.open[handle] = (path, self.names_now[path])
        return handle

    def _call(self, *what):
        number = sum(call[0] != "acknowledged" for call in self.calls)
        if self.cut_before is not None and number >= self.cut_before:
            raise PowerCut
        self.calls.append(what)
        if number in self.fail_at:
            raise self.fail_at[number]


def _holes(start, end):
    """Every choice of one or more of the sectors that bytes start..end lie in, as spans inside them."""
    edges = sorted({start, end, *range((start // SECTOR + 1) * SECTOR, end, SECTOR)})
    spans = list(pairwise(edges))
    for count in range(1, len(spans) + 1):
        yield from combinations(spans, count)
