"""A torn last line: copied aside, then cut, and both recorded by the next writer.

It was never shown as saved, because a line counts only once it is synced whole. It is kept all the same: a
person may want to see what was being written.
"""

from __future__ import annotations

import re
from pathlib import Path

from assistant.trail.error import not_saved
from assistant.trail.files import DISK, Files, write_whole
from assistant.trail.read import Trail
from assistant.walk.event import Recovered


def recover(folder: Path, trail: Trail, at: str, files: Files = DISK) -> list[Recovered]:
    """Sets aside and cuts every torn last line; the events to record.

    Done in an order that any interruption leaves safe: the copy is on the medium before the cut, and a copy
    that no event names yet (the program stopped in between) is found again by its name. Raises TrailError
    when the disk doesn't take it.
    """
    named = {entry.event.aside for entry in trail.entries if isinstance(entry.event, Recovered)}
    try:
        waiting = {
            name: files.read(folder / name)
            for name in files.names(folder)
            if name.startswith("torn-") and name.endswith(".part") and name not in named
        }
        for part in trail.torn:
            data = files.read(folder / part.name)
            tail = data[part.torn :]
            if tail not in waiting.values():
                name = _free_name(at, files.names(folder))
                write_whole(files, folder / name, tail)
                waiting[name] = tail
            _cut(files, folder / part.name, part.torn)
    except OSError as problem:
        raise not_saved(problem, folder) from problem
    return [Recovered(at, len(tail), name) for name, tail in sorted(waiting.items())]


def _cut(files: Files, path: Path, size: int) -> None:
    handle = files.reopen(path)
    try:
        files.cut(handle, size)
        files.sync(handle)
    finally:
        files.close(handle)


def _free_name(at: str, taken: list[str]) -> str:
    stem = "torn-" + re.sub("[^0-9]", "", at)[:14]
    name, count = f"{stem}.part", 1
    while name in taken:
        count += 1
        name = f"{stem}-{count}.part"
    return name
