"""What is kept of drills: a trail marked as practice in every line, and a page of figures, by apprentice.

A folder for each apprentice, beside the visits and never among them.
"""

from __future__ import annotations

import csv
import hashlib
import io
import json
import re
from collections.abc import Iterable
from dataclasses import asdict, dataclass
from pathlib import Path

from assistant import __version__
from assistant.drill.practice.answers import tree_of
from assistant.drill.practice.debrief import Debrief, Soon
from assistant.drill.practice.drill import Drill
from assistant.drill.practice.drills import drills_folder
from assistant.drill.practice.entry import Entry
from assistant.errors import UserError
from assistant.plain import harmless
from assistant.trail.clock import now
from assistant.trail.error import TrailError
from assistant.trail.names import folder_name
from assistant.trail.practice import WORDS
from assistant.trail.record import Recorder
from assistant.tree.library import Library
from assistant.walk.event import Note, Opened

PAGE, WHO, SETTINGS = "drill.json", "apprentice.json", "settings.json"
PATHS = ("Your path", "The shortest good path")
HEADS = (
    "practice", "apprentice", "began", "drill", "complaint", "difficulty", "way", "right first time", "right",
    "cause", "looks and readings", "of the shortest good path", "beyond it", "told nothing new",
    "unsafe acts", "minutes in the house", "minutes on the wall", "finding said",
)  # fmt: skip


@dataclass(frozen=True)
class Done:
    """One drill that was ended."""

    apprentice: str
    began: str
    drill: str
    complaint: str
    difficulty: str
    way: str
    right_first: bool
    right: bool
    cause: bool | None
    asked: int
    best: int | None
    told_nothing: int | None
    unsafe: int
    minutes: float
    wall_minutes: float
    finding: str

    @property
    def beyond(self) -> int | None:
        """Looks and readings beyond the shortest good path."""
        return None if self.best is None else max(0, self.asked - self.best)


def practice_folder() -> Path:
    """Where the apprentices' folders lie."""
    return drills_folder() / "practice"


def apprentices(root: Path | None = None) -> list[str]:
    """Everybody who has a folder, by name."""
    found = [
        read.get("name")
        for path in sorted((root or practice_folder()).glob(f"*/{WHO}"))
        if isinstance(read := _read(path), dict)
    ]
    return sorted({name for name in found if isinstance(name, str) and name}, key=str.lower)


def folder_of(name: str, root: Path | None = None) -> Path:
    """An apprentice's folder, made where it isn't there. Raises UserError."""
    plain = " ".join(name.split())
    if not plain:
        raise UserError("Say who works on it: a name.")
    words = re.sub(r"[^a-z0-9]+", "-", plain.lower()).strip("-")[:30] or "apprentice"
    digest = hashlib.sha256(plain.lower().encode()).hexdigest()[:6]
    folder = (root or practice_folder()) / f"p-{words}-{digest}"
    try:
        folder.mkdir(parents=True, exist_ok=True)
        if not (folder / WHO).exists():
            (folder / WHO).write_text(json.dumps({"practice": True, "name": plain}), encoding="utf-8")
    except OSError as problem:
        raise UserError(f"Drills can't be kept in {folder} ({problem.strerror}).") from problem
    return folder


def new_folder(name: str, drill: Drill, root: Path | None = None) -> Path:
    """A folder for one drill of an apprentice; it is not made yet."""
    return folder_of(name, root) / folder_name(now(), ("practice", drill.complaint))


class PracticeTrail:
    """The trail of free work: each thing done is a line of words."""

    def __init__(self, folder: Path, library: Library, drill: Drill, at: str | None = None) -> None:
        tree = tree_of(library, drill.complaint)
        opened = Opened(
            at or now(),
            ((drill.complaint, drill.words),),
            library.closure([tree.name] if tree else []),
            program=__version__,
            practice=True,
        )
        self.folder = folder
        self.recorder = Recorder.create(folder, library, opened)

    def note(self, entry: Entry) -> None:
        """One thing that was done. Raises TrailError."""
        expected = f" (expected: {entry.expected})" if entry.expected else ""
        shown = f": {entry.shown}" if entry.shown else ""
        self.say(f"{entry.minute:.0f} min: {entry.words}{expected}{shown}")

    def say(self, words: str) -> None:
        """A line of words. Raises TrailError."""
        self.recorder.append(Note(now(), words))

    def close(self) -> None:
        """Let go of the folder."""
        self.recorder.close()


def keep(folder: Path, apprentice: str, began: str, sitting, told: Debrief | Soon) -> Done:
    """Keep what came of a drill in its folder; what is known at once first, the debrief over it. Raises
    UserError.
    """
    figures, drill = told.figures, sitting.drill
    done = Done(
        apprentice,
        began,
        drill.name,
        drill.complaint,
        drill.difficulty,
        sitting.way,
        figures.right_first,
        figures.right,
        figures.cause,
        figures.asked,
        figures.best,
        figures.told_nothing,
        figures.unsafe,
        figures.minutes,
        figures.wall_minutes,
        sitting.log.finding,
    )
    page = {
        "practice": True,
        "what": WORDS,
        "done": asdict(done),
        "debrief": [{"title": one.title, "lines": list(one.lines)} for one in told.sections],
        "path": list(told.own_path),
        "best_path": list(told.best_path),
    }
    try:
        folder.mkdir(parents=True, exist_ok=True)
        beside = folder / f"{PAGE}.part"
        beside.write_text(json.dumps(page, indent=1, ensure_ascii=False), encoding="utf-8")
        beside.replace(folder / PAGE)
    except OSError as problem:
        raise UserError(
            f"What came of the drill can't be kept in {folder} ({problem.strerror})."
        ) from problem
    return done


def history(apprentice: str, root: Path | None = None) -> list[Done]:
    """All drills that an apprentice ended, the earliest first. What can't be read is left out."""
    folder = folder_of(apprentice, root)
    found = []
    for path in folder.glob(f"*/{PAGE}"):
        page = _read(path)
        done = page.get("done") if isinstance(page, dict) else None
        if isinstance(done, dict):
            try:
                found.append(Done(**done))
            except TypeError:
                continue
    return sorted((one for one in found if isinstance(one.began, str)), key=lambda one: one.began)


def kept_debrief(done: Done, root: Path | None = None) -> list[tuple[str, tuple[str, ...]]]:
    """The debrief of a drill as it was kept, titles and lines, then the paths; nothing where none is."""
    for path in sorted(folder_of(done.apprentice, root).glob(f"*/{PAGE}")):
        page = _read(path)
        if isinstance(page, dict) and page.get("done") == asdict(done):
            told = page.get("debrief")
            found = [
                (str(one.get("title", "")), _lines(one.get("lines")))
                for one in (told if isinstance(told, list) else [])
                if isinstance(one, dict)
            ]
            found += [
                (PATHS[0], _lines(page.get("path"))),
                (PATHS[1], _lines(page.get("best_path"))),
            ]
            return [one for one in found if one[1]]
    return []


def _lines(value: object) -> tuple[str, ...]:
    return tuple(str(one) for one in value) if isinstance(value, list) else ()


def to_csv(done: Iterable[Done]) -> str:
    """One line a drill; every line says that it is practice."""
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\r\n")
    writer.writerow(HEADS)
    for one in done:
        writer.writerow(
            harmless(value) if isinstance(value, str) else value
            for value in (
                "practice", one.apprentice, one.began, one.drill, one.complaint, one.difficulty, one.way,
                _yes(one.right_first), _yes(one.right), _yes(one.cause), one.asked, one.best, one.beyond,
                one.told_nothing, one.unsafe, one.minutes, one.wall_minutes, one.finding,
            )
        )  # fmt: skip
    return out.getvalue()


def asks_to_predict(root: Path | None = None) -> bool:
    """Whether the foreman wants a prediction before each reading; yes where nothing was set."""
    found = _read((root or drills_folder()) / SETTINGS)
    return not (isinstance(found, dict) and found.get("predict") is False)


def set_predict(on: bool, root: Path | None = None) -> None:
    """The foreman's setting. Raises UserError."""
    place = (root or drills_folder()) / SETTINGS
    try:
        place.parent.mkdir(parents=True, exist_ok=True)
        place.write_text(json.dumps({"predict": on}), encoding="utf-8")
    except OSError as problem:
        raise UserError(f"The setting can't be kept in {place} ({problem.strerror}).") from problem


def _yes(value: bool | None) -> str:
    return "" if value is None else "yes" if value else "no"


def _read(path: Path) -> object:
    try:
        return json.loads(path.read_text(encoding="utf-8"))
    except (OSError, ValueError):
        return None


__all__ = ["Done", "PracticeTrail", "TrailError", "apprentices", "history", "keep", "to_csv"]
