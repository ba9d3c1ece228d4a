"""A visit played from replay entries on the shipped trees, without a disk: for tests of what is around the
walk."""

from __future__ import annotations

from datetime import datetime, timedelta
from functools import cache
from pathlib import Path

from assistant.house.reader import read
from assistant.tree.library import Library, read_folder
from assistant.walk.entries import complaints_of, events_of, read_entries
from assistant.walk.event import Opened
from assistant.walk.state import Visit
from assistant.walk.visit import begin, fold

ROOT = Path(__file__).parents[1]
BEGAN = datetime.fromisoformat("2026-11-25T09:00:00-05:00")
DEMO = (ROOT / "resources" / "demo" / "visit.yaml").read_text(encoding="utf-8")


@cache
def shipped() -> Library:
    """The shipped trees, loaded once."""
    made = read_folder(ROOT / "trees")
    assert not made.problems, "\n".join(map(str, made.problems))
    return made


def at(minute: int) -> str:
    return (BEGAN + timedelta(minutes=minute)).isoformat()


def play(text: str, visit: Visit | None = None, *complaints: str) -> Visit:
    """The visit after these entries, each a minute after the one before. Raises what fold raises."""
    library = shipped()
    entries, problems = read_entries(read(text.encode(), "entries.yaml"))
    assert not problems, problems
    if visit is None:
        trees = {c.tree: c.name for c in library.vocabulary.complaints.values() if c.tree}
        names = complaints or complaints_of(entries, trees)
        words = library.vocabulary.complaints
        opened = Opened(at(0), tuple((name, words[name].words) for name in names))
        visit = fold(begin(library), opened)
    for entry in entries:
        for make in events_of(entry, at(len(visit.events))):
            event = make(visit)
            if event is not None:
                visit = fold(visit, event)
    return visit


def demo_until(words: str) -> str:
    """The demo visit's entries up to and with the line that begins with these words."""
    lines = DEMO.splitlines()
    last = max(number for number, line in enumerate(lines) if line.startswith(words))
    while last + 1 < len(lines) and lines[last + 1].startswith("    "):
        last += 1
    return "\n".join(lines[: last + 1]) + "\n"
