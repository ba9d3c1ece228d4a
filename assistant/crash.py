"""The note that is left for whoever looks after the program when it meets a mistake of its own."""

from __future__ import annotations

import platform
import sys
import tempfile
import traceback
from datetime import datetime, timezone
from pathlib import Path

from assistant import __version__
from assistant.folders import user_folder


def crash_sentence(error: BaseException, doing: str) -> str:
    """Writes the note and gives the one sentence to show; never raises.

    `doing` is the command's word, not its arguments: a path may hold a customer's name.
    """
    what = type(error).__name__
    if isinstance(error, OSError) and error.strerror:  # a full disk, a folder that is not theirs to write
        what += f": {error.strerror}"
    met = f"Fault Trail met something it was not made for in {doing} ({what})"
    path = write_note(error, doing)
    if path is None:
        return f"{met}, and no note about it could be written."
    return f"{met} and stopped; what happened is written in {path}."


def write_note(error: BaseException, doing: str) -> Path | None:
    """Writes what happened into the user's folder, or else the temporary one; None where neither takes it."""
    now = datetime.now(timezone.utc)
    lines = [
        "Fault Trail stopped on a mistake of its own.",
        "Please hand this file to whoever looks after the program.",
        "No reading and no address is put into it; the error's own text may still quote a file's name.",
        "",
        f"time     {now.isoformat(timespec='seconds')}",
        f"version  {__version__}",
        f"doing    {doing}",
        f"python   {sys.version.split()[0]} on {platform.platform()}",
        "",
        "".join(traceback.format_exception(type(error), error, error.__traceback__)),
    ]
    # Colons are not allowed in a file's name on Windows.
    name = f"crash-{now.strftime('%Y%m%dT%H%M%S%fZ')}.txt"
    for folder in (user_folder() / "notes", Path(tempfile.gettempdir())):
        try:
            folder.mkdir(parents=True, exist_ok=True)
            path = folder / name
            path.write_text("\n".join(lines), encoding="utf-8", errors="backslashreplace")
        except OSError:
            continue
        return path
    return None
