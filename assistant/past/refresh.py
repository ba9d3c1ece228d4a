"""Brings the index up to date with the visits on disk, a visit at a time, so that a window stays alive."""

from __future__ import annotations

import os
from collections.abc import Iterator
from pathlib import Path

from assistant.past.extract import Extractor
from assistant.past.store import Store
from assistant.trail.error import TrailError
from assistant.trail.shelf import kept_here

KEEP_EVERY = 200
"""Visits read between two times that the index is written down."""


def refresh(store: Store, shelf: Path) -> Iterator[tuple[int, int]]:
    """Yields (done, to do) after each visit that had to be read; ends when the index is as the disk is.

    Only visits whose trail has changed are read. Raises TrailError where the shelf can't be listed.
    """
    known = store.signatures()
    there = {name: signature_of(Path(shelf) / name) for name in _names(shelf)}
    store.remove(name for name in known if name not in there)
    changed = [name for name, signature in there.items() if known.get(name) != signature]
    changed.sort(reverse=True)  # the latest first: they are what somebody looks for
    extractor = Extractor()
    for number, name in enumerate(changed, 1):
        store.put(extractor.page(Path(shelf) / name, there[name]))
        if number % KEEP_EVERY == 0:
            store.commit()
        yield number, len(changed)
    store.commit()


def _names(shelf: Path) -> list[str]:
    try:
        with os.scandir(shelf) as entries:
            return [entry.name for entry in entries if kept_here(entry)]
    except FileNotFoundError:
        return []
    except OSError as problem:
        raise TrailError(f"The visits in {shelf} can't be listed ({problem.strerror}).") from problem


def signature_of(folder: Path) -> str:
    """Name, size and time of each trail file, and the folder's own time in `kept/` (what was erased)."""
    parts = []
    try:
        with os.scandir(folder) as entries:
            for entry in entries:
                if entry.name.startswith("trail-") or entry.name == "kept":
                    stat = entry.stat()
                    size = stat.st_size if entry.name != "kept" else 0
                    parts.append(f"{entry.name}:{size}:{stat.st_mtime_ns}")
    except OSError as problem:
        return f"unreadable: {problem.strerror}"
    return "|".join(sorted(parts))
