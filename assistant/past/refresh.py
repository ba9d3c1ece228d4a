"""Brings the index up to date with the visits on disk, a visit at a time, so that a window stays alive."""

from __future__ import annotations

import os
from collections.abc import Generator, Iterator
from pathlib import Path

from assistant.past.page import Page
from assistant.past.store import Store
from assistant.trail.error import TrailError
from assistant.trail.shelf import kept_here, shelved

GLANCED = "glanced at: "
KEEP_EVERY = 200
"""Visits read between two times that the index is written down."""


Progress = Iterator[tuple[int, int]]
"""(done, to do), after each visit that was looked at or read."""


def refresh(store: Store, shelf: Path) -> Progress:
    """Look at the disk and read every visit whose trail has changed; then the index is as the disk is.

    Raises TrailError where the shelf can't be listed.
    """
    changed = yield from look(store, shelf)
    yield from read(store, shelf, changed)


def look(store: Store, shelf: Path) -> Generator[tuple[int, int], None, list[tuple[str, str]]]:
    """(folder's name, what it looks like) of each visit that is not in the index as it is now, the latest
    first: they are what somebody looks for. Visits that are gone are forgotten.
    """
    known, names = store.signatures(), _names(shelf)
    there = set(names)
    store.remove(name for name in known if name not in there)
    changed = []
    for number, name in enumerate(sorted(names, reverse=True), 1):
        signature = signature_of(Path(shelf) / name)
        if known.get(name) != signature:
            changed.append((name, signature))
        yield number, len(names)
    return changed


def glance(store: Store, shelf: Path, changed: list[tuple[str, str]]) -> Progress:
    """For the list only: who, when and how it stands, without following the walk."""
    for number, (name, signature) in enumerate(changed, 1):
        known = shelved(Path(shelf) / name)
        words = {"name": " ".join(value for _, value in known.person), "complaint": known.words}
        practice = known.state == "practice"
        store.put(Page(known, f"{GLANCED}{signature}", practice=practice, words=words))
        yield number, len(changed)
    store.commit()


def read(store: Store, shelf: Path, changed: list[tuple[str, str]]) -> Progress:
    """Each of these visits followed and written down whole."""
    if changed:
        from assistant.past.extract import Extractor  # a list of visits that did not change needs no walk

        extractor = Extractor()
    for number, (name, signature) in enumerate(changed, 1):
        store.put(extractor.page(Path(shelf) / name, signature))
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
