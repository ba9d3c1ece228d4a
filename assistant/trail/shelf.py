"""All visits of this computer's user: a folder with a folder for each. Nothing here writes to a visit."""

from __future__ import annotations

import os
from dataclasses import dataclass
from pathlib import Path

from assistant.folders import user_folder
from assistant.trail.clock import sortable
from assistant.trail.error import TrailError, not_saved
from assistant.trail.keep import person
from assistant.trail.practice import WORDS
from assistant.trail.read import Trail, read_trail
from assistant.walk.event import Filled, Opened, Paused, Person

OPEN, PAUSED, SIGNED, BROKEN, PRACTICE = "open", "paused", "signed", "broken", "practice"


@dataclass(frozen=True)
class Shelved:
    """One visit in the list. `trouble` says in a sentence what is wrong with it, or is empty."""

    folder: Path
    state: str
    complaints: tuple[tuple[str, str], ...] = ()
    person: tuple[tuple[str, str], ...] = ()
    began: str = ""
    last: str = ""
    step: str = ""
    why_paused: str = ""
    trouble: str = ""
    unit: tuple[tuple[str, str], ...] = ()
    """What was written down about the unit: make, model, serial number."""

    @property
    def words(self) -> str:
        """Everything that a search looks at."""
        said = [part for pair in self.complaints for part in pair]
        said += [value for _, value in (*self.person, *self.unit)]
        return " ".join(
            [self.folder.name, *said, self.began, self.last, self.state, self.why_paused]
        ).casefold()


def shelf_folder() -> Path:
    """Where this user's visits are kept; it need not exist yet."""
    return user_folder() / "visits"


def make_shelf(root: Path) -> None:
    """Raises TrailError where the folder can't be made."""
    try:
        root.mkdir(parents=True, exist_ok=True)
    except OSError as problem:
        raise not_saved(problem, root) from problem


def visits(root: Path) -> list[Shelved]:
    """Every visit under `root`, the latest first; a broken one is listed with what is wrong and hides no
    other.

    Raises TrailError only where the list itself can't be read; a shelf that isn't there yet is empty.
    """
    try:
        folders = sorted(path for path in Path(root).iterdir() if kept_here(path))
    except FileNotFoundError:
        return []
    except OSError as problem:
        raise TrailError(f"The visits in {root} can't be listed ({problem.strerror}).") from problem
    return sorted(
        (shelved(folder) for folder in folders),
        key=lambda each: (sortable(each.last), each.folder.name),
        reverse=True,
    )


def kept_here(entry: os.DirEntry | Path) -> bool:
    """Whether something on the shelf is a visit's folder."""
    return entry.is_dir() and not entry.name.startswith(".")


def find(listed: list[Shelved], words: str) -> list[Shelved]:
    """Those that hold every one of the words, in any order and case."""
    asked = words.casefold().split()
    return [each for each in listed if all(word in each.words for word in asked)]


def shelved(folder: Path) -> Shelved:
    """One visit as the list shows it. Never raises."""
    try:
        trail = read_trail(folder)
        return line_of(folder, trail)
    except TrailError as problem:
        return Shelved(folder, BROKEN, trouble=str(problem))


def line_of(folder: Path, trail: Trail) -> Shelved:
    """A visit that was read as the list shows it. Never raises."""
    if trail.practice:  # a drill's folder that was put among the visits: named, and never opened or counted
        return Shelved(folder, PRACTICE, trouble=WORDS)
    opened = trail.last("opened")
    troubles = trail.remarks[:1] if trail.damage or trail.newer else []
    if opened is None or not isinstance(opened.event, Opened):
        trouble = troubles[0] if troubles else "Nothing was recorded here: it was never begun."
        return Shelved(folder, BROKEN, trouble=trouble)
    known = trail.last("person")
    data = None
    if known is not None and isinstance(known.event, Person):
        try:
            data = person(folder, known.event.kept)
        except TrailError as problem:
            troubles.append(str(problem))
    paused = trail.last("paused", "resumed")
    why = paused.event.why if paused and isinstance(paused.event, Paused) else None
    state = BROKEN if trail.damage else SIGNED if trail.signed else PAUSED if why is not None else OPEN
    steps = (line.fields.get("step") for line in reversed(trail.lines))
    times = (line.fields.get("at") for line in reversed(trail.lines))
    return Shelved(
        folder,
        state,
        opened.event.complaints,
        tuple(sorted((data or {}).items())),
        opened.event.at,
        next((at for at in times if isinstance(at, str) and at), opened.event.at),
        next((step for step in steps if isinstance(step, str) and step), ""),
        why or "",
        troubles[0] if troubles else "",
        _unit(trail),
    )


def _unit(trail: Trail) -> tuple[tuple[str, str], ...]:
    known: dict[str, str] = {}
    for event in trail.events:
        if isinstance(event, Filled) and event.sheet == "unit":
            known.update(event.answers)
    return tuple(sorted(known.items()))
