"""Erasing a customer: name, address, photos and reports of the chosen visits go; the trails stay whole.

What was typed into the trail as free words (the complaint, notes) is part of its chain and stays; how many
such lines there are is said, so that nobody believes more was erased than was.
"""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from assistant.trail.draft import NAME as DRAFT
from assistant.trail.erased import Erased, note_erased
from assistant.trail.error import TrailError
from assistant.trail.files import DISK, Files
from assistant.trail.keep import erase
from assistant.trail.lock import take
from assistant.trail.photos import photos_of
from assistant.trail.read import Trail, read_trail
from assistant.walk.event import Advised, Filled, Note, Opened, Person, Settled

REPORTS = (".pdf", ".html", ".txt", ".csv")
PARTS = "parts.json"


@dataclass(frozen=True)
class Gone:
    """What went of one visit; `stays` counts the lines of the trail that hold somebody's free words."""

    folder: Path
    gone: tuple[Erased, ...]
    stays: int


def erase_customer(folder: Path, at: str, by: str, photos: bool = True, files: Files = DISK) -> Gone:
    """Raises TrailError where the visit is open in a window, can't be read or can't be written to.

    Done again it erases what is left and says only that.
    """
    folder = Path(folder)
    trail = read_trail(folder, files)
    lock = take(folder)
    try:
        there = set(files.names(folder / "kept")) if files.is_folder(folder / "kept") else set()
        gone = [
            Erased(at, by, what, name)
            for what, name in _kept(trail, photos)
            if name in there and _erased(folder, name, files)
        ]
        for name in sorted(files.names(folder)):
            if Path(name).suffix in REPORTS or name == PARTS:
                _remove(folder / name, files)
                gone.append(Erased(at, by, "report", name))
            elif name == DRAFT:  # a name or an address may stand in it that was never saved
                _remove(folder / name, files)
                gone.append(Erased(at, by, "draft", name))
        if gone:
            note_erased(folder, gone, files)
    finally:
        lock.release()
    return Gone(folder, tuple(gone), _free_words(trail))


def _kept(trail: Trail, photos: bool) -> list[tuple[str, str]]:
    out = [("customer's data", event.kept) for event in trail.events if isinstance(event, Person)]
    if photos:
        out += [("photo", name) for event in trail.events for name in photos_of(event)]
    return list(dict.fromkeys(out))


def _erased(folder: Path, name: str, files: Files) -> bool:
    erase(folder, name, files)
    return True


def _remove(path: Path, files: Files) -> None:
    try:
        files.remove(path)
    except OSError as problem:
        raise TrailError(
            f"{path} could not be erased ({problem.strerror}). Close it elsewhere, then try again."
        ) from problem


def _free_words(trail: Trail) -> int:
    opened = [words for event in trail.events if isinstance(event, Opened) for _, words in event.complaints]
    notes = [event for event in trail.events if isinstance(event, (Note, Settled, Filled, Advised))]
    return sum(bool(words.strip()) for words in opened) + len(notes)
