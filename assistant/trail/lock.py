"""One window at a time: a lock file in the visit's folder, through Qt (QtCore only).

A lock left by a program that died on this computer is taken over by itself. One left on another computer
can't be told from a living one; `take_over` breaks it when a person says so, which harms nothing: every
writer has its own file.
"""

from __future__ import annotations

import os
import platform
from pathlib import Path

from assistant.trail.error import LockedError, ReadOnlyError, TrailError

NAME = "open.lock"


class Lock:
    """Held from `take` to `release`."""

    def __init__(self, held: object) -> None:
        self._held = held

    def release(self) -> None:
        self._held.unlock()


def take(folder: Path, take_over: bool = False) -> Lock:
    """Takes the visit's lock. Raises LockedError where another window holds it, ReadOnlyError where the
    folder can't be written to, TrailError where Qt can't be loaded."""
    try:
        from PySide6.QtCore import QLockFile
    except ImportError as problem:
        raise TrailError(
            f"The visit can't be opened for writing: QtCore does not load ({problem})."
        ) from problem
    path = folder / NAME
    lock = QLockFile(str(path))
    lock.setStaleLockTime(0)  # a walk may stand still for hours; only a dead program's lock is stale
    if lock.tryLock(0):
        return Lock(lock)
    if lock.error() != QLockFile.LockError.LockFailedError:
        raise ReadOnlyError(f"The folder {folder} can't be written to: the visit opens for reading only.")
    if take_over:
        try:
            path.unlink(missing_ok=True)
        except OSError as problem:
            raise LockedError(f"The lock {path} can't be removed ({problem.strerror}).") from problem
        if lock.tryLock(0):
            return Lock(lock)
    process, where = _holder(lock)
    raise LockedError(
        f"This visit is open in another window{where}. Close it there, or look at it here only.",
        here=process == os.getpid(),
    )


def _holder(lock: object) -> tuple[int, str]:
    """The number of the program that holds the lock on this computer (0: elsewhere or unknown), and where
    it is."""
    known = lock.getLockInfo()
    if not known or len(known) < 3 or not known[-3]:
        return 0, ""
    process, host, program = known[-3:]
    where = f" (program {program or 'unknown'}, number {process}, on computer {host or 'unknown'})"
    return (process if host == platform.node() else 0), where
