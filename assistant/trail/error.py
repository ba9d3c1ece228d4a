"""What can go wrong with a trail, as sentences that are safe to show to a technician."""

from __future__ import annotations

import errno
from pathlib import Path

from assistant.errors import UserError


class TrailError(UserError):
    """Its text is one or two sentences: what happened, what it means for the answers, what to do now."""


class LockedError(TrailError):
    """The visit is open in another window. `here`: it is one of this very program."""

    def __init__(self, message: str, here: bool = False) -> None:
        super().__init__(message)
        self.here = here


class ReadOnlyError(TrailError):
    """The visit can be read but nothing can be added to it."""


_FULL = (errno.ENOSPC, getattr(errno, "EDQUOT", errno.ENOSPC), errno.EFBIG)
_SHUT = (errno.EROFS, errno.EACCES, errno.EPERM)


def not_saved(problem: OSError, folder: Path) -> TrailError:
    """The sentence for an answer that did not reach the disk. Nothing saved before it is touched."""
    kept = "This answer is not saved yet; everything before it is."
    if problem.errno in _FULL:
        return TrailError(
            f"The disk is full. {kept} Free some space and save it again: what you typed stays."
        )
    if problem.errno in _SHUT:
        return TrailError(
            f"The folder {folder} can't be written to. {kept} Make it writable (or put the stick's "
            "switch back) and save it again: what you typed stays."
        )
    if problem.errno == errno.ENOENT:
        return TrailError(
            f"The folder {folder} is gone. {kept} Put the stick or drive back and save it again: "
            "what you typed stays."
        )
    return TrailError(
        f"The disk did not take it ({_reason(problem)}). {kept} Save it again; if that fails too, "
        "write the reading down on paper, and open the visit again."
    )


def not_read(problem: OSError, what: object) -> TrailError:
    """The sentence for a file or folder that can't be read."""
    if problem.errno == errno.ENOENT:
        return TrailError(f"{what} is not there.")
    if problem.errno in (errno.EACCES, errno.EPERM):
        return TrailError(f"{what} can't be read: this user may not open it.")
    return TrailError(f"{what} can't be read ({_reason(problem)}).")


def _reason(problem: OSError) -> str:
    return problem.strerror or type(problem).__name__
