"""Drives a visit for the tests of the shipped trees: by a recorded list, or by a furnace that answers."""

from __future__ import annotations

from dataclasses import dataclass, field
from functools import cache
from pathlib import Path

import yaml

from assistant.house.reader import read
from assistant.tree.library import Library, read_folder
from assistant.walk.ask import Ask
from assistant.walk.entries import events_of, read_entries
from assistant.walk.event import Concluded, Did, Event, GoOn, Opened, PlateRead, Read, Saw, Typed, Watched
from assistant.walk.state import Visit
from assistant.walk.visit import asked, begin, fold

TREES = Path(__file__).parents[2] / "trees"
WALKS = Path(__file__).parent / "walks"
HEALTHY = sorted(Path(__file__).parent.glob("healthy*.yaml"))
"""The furnace, and a file for each complaint whose tree looks at more than the furnace."""
AT = "2026-01-14T09:00:00-05:00"
MOST_STEPS = 400
ENDS = ("finding", "stop", "handed_over", "choose", "leave")


@cache
def shipped() -> Library:
    return read_folder(TREES)


def walked() -> dict[str, Path]:
    """Folder of recorded walks for each complaint's tree that has one."""
    return {path.name: path for path in sorted(WALKS.iterdir()) if path.is_dir()}


def complaint_of(tree: str) -> str:
    """The complaint that a tree is for."""
    return next(one.name for one in shipped().vocabulary.complaints.values() if one.tree == tree)


@cache
def healthy() -> dict:
    """Everything that a sound house shows; where two files say the same thing, they agree."""
    files = [yaml.safe_load(path.read_text(encoding="utf-8")) for path in HEALTHY]
    merged = {section: {} for section in files[0]}
    for path, one in zip(HEALTHY, files, strict=True):
        for section, known in one.items():
            clash = {name for name in known if merged[section].get(name, known[name]) != known[name]}
            assert not clash, f"{path.name} says otherwise: {', '.join(sorted(clash))}"
            merged[section].update(known)
    return merged


def opened(complaint: str = "no_heat") -> Visit:
    """A visit just opened with one complaint."""
    visit = begin(shipped())
    return fold(visit, Opened(AT, ((complaint, shipped().vocabulary.complaints[complaint].words),)))


def replayed(path: Path) -> Visit:
    """The visit after every entry of a replay file, which lies in the folder of its tree. Raises what the
    walk raises on a wrong entry."""
    entries, problems = read_entries(read(path.read_bytes(), path.name))
    assert not problems, "\n".join(map(str, problems))
    visit = opened(complaint_of(path.parent.name))
    for entry in entries:
        for make in events_of(entry, AT):
            event = make(visit)
            if event is not None:
                visit = fold(visit, event)
    return visit


@dataclass
class Furnace:
    """A furnace that answers every step: sound, but for what `odd` says by step, reading or event name."""

    odd: dict[str, str] = field(default_factory=dict)

    def event(self, ask: Ask) -> Event:
        """What a person in front of this furnace would answer."""
        tree, _, step = ask.step.partition(".")
        if ask.kind == "plate":
            return PlateRead(AT, ask.plate, self.odd.get(ask.plate) or healthy()["plate"][ask.plate])
        if ask.kind == "look":
            return Saw(AT, ask.step, self.odd.get(step) or self._known("seen", tree, ask.body.sees))
        if ask.kind == "measure":
            return Read(AT, ask.step, self._typed(ask, tree, step))
        if ask.kind == "watch":
            events = {}
            for name in ask.body.events:
                if self.odd.get(f"{step}.{name}") == "no":
                    break
                events[name] = float(healthy()["happens"][name].split()[0])
            return Watched(AT, ask.step, events, self._typed(ask, tree, step))
        if ask.kind == "do":
            wait = getattr(ask.body, "wait", None)
            return Did(AT, ask.step, wait)
        if ask.kind == "conclude":
            return Concluded(AT, ask.step, "worn")
        return GoOn(AT, ask.step)

    def _typed(self, ask: Ask, tree: str, step: str) -> dict[str, Typed]:
        names = [reading.name or step for reading in ask.readings]
        return {name: Typed(self._reading(tree, name)) for name in names}

    def _reading(self, tree: str, name: str) -> str:
        return self.odd.get(f"{tree}.{name}") or self.odd.get(name) or self._known("readings", tree, name)

    def _known(self, section: str, tree: str, name: str) -> str:
        known = healthy()[section]
        return known.get(f"{tree}.{name}") or known[name]


def driven(visit: Visit, furnace: Furnace, until: tuple[str, ...]) -> Visit:
    """The visit answered by a furnace until something of `until` is asked."""
    for _ in range(MOST_STEPS):
        ask = asked(visit)
        if ask.kind in until:
            return visit
        visit = fold(visit, furnace.event(ask))
    raise AssertionError(f"no end after {MOST_STEPS} answers; asked is {asked(visit).step}")
