"""The few things that a trail asks of a disk, so that tests can put another disk underneath.

A test's disk records the order of writes and syncs, forgets what was not synced, or fails at a chosen call.
"""

from __future__ import annotations

import os
import sys
from pathlib import Path

_BINARY = getattr(os, "O_BINARY", 0)


class Files:
    """The computer's own disk. Every method raises OSError as the system gives it."""

    def make_folder(self, path: Path) -> None:
        path.mkdir(parents=True)

    def is_folder(self, path: Path) -> bool:
        return path.is_dir()

    def names(self, folder: Path) -> list[str]:
        return sorted(path.name for path in folder.iterdir())

    def read(self, path: Path) -> bytes:
        return path.read_bytes()

    def create(self, path: Path) -> int:
        """A new file to append to; FileExistsError where there is one already."""
        return os.open(path, os.O_WRONLY | os.O_CREAT | os.O_EXCL | os.O_APPEND | _BINARY, 0o644)

    def reopen(self, path: Path) -> int:
        """An existing file, to be cut."""
        return os.open(path, os.O_RDWR | _BINARY)

    def write(self, handle: int, data: bytes) -> None:
        """All of `data`, in as many calls as the system takes."""
        rest = memoryview(data)
        while rest:
            rest = rest[os.write(handle, rest) :]

    def sync(self, handle: int) -> None:
        """Returns when the file's bytes are on the medium, as far as the system can promise.

        On macOS fsync only reaches the drive's own memory; F_FULLFSYNC goes through it.
        """
        if sys.platform == "darwin":
            import fcntl

            try:
                fcntl.fcntl(handle, fcntl.F_FULLFSYNC)
                return
            except OSError:  # a network or foreign file system that doesn't know it
                pass
        os.fsync(handle)

    def sync_folder(self, folder: Path) -> None:
        """Makes new, renamed and removed names last. Windows keeps names in its journal and has no such
        call."""
        if sys.platform == "win32":
            return
        handle = os.open(folder, os.O_RDONLY)
        try:
            os.fsync(handle)
        finally:
            os.close(handle)

    def still_there(self, handle: int, path: Path) -> bool:
        """False where the file was taken away meanwhile, with its folder or its stick: a write to it still
        succeeds, into nothing that anybody finds again. Some network disks know no count of links, so its
        name is looked for as well.
        """
        return os.fstat(handle).st_nlink > 0 or path.exists()

    def cut(self, handle: int, size: int) -> None:
        os.ftruncate(handle, size)

    def close(self, handle: int) -> None:
        os.close(handle)

    def rename(self, old: Path, new: Path) -> None:
        old.replace(new)

    def remove(self, path: Path) -> None:
        path.unlink()


DISK = Files()


def write_whole(files: Files, path: Path, data: bytes) -> None:
    """A new file that is either there whole or not there: written beside, synced, then given its name."""
    beside = path.with_name(path.name + ".part")
    if beside.name in files.names(path.parent):
        files.remove(beside)
    handle = files.create(beside)
    try:
        files.write(handle, data)
        files.sync(handle)
    finally:
        files.close(handle)
    files.rename(beside, path)
    files.sync_folder(path.parent)
