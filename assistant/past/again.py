"""Walks a past visit again on edited trees, with the answers it had: by reading identity, not by step names.

A reading answers whatever step asks for its quantity at its points; what was seen answers whatever look asks
for that thing. Where the edited tree asks what nobody read, the walk ends there and says so.
"""

from __future__ import annotations

from collections import defaultdict, deque
from collections.abc import Iterable
from dataclasses import dataclass, replace
from pathlib import Path

from assistant.past.extract import Extractor
from assistant.trail.error import TrailError
from assistant.trail.read import read_trail
from assistant.tree.library import Library
from assistant.tree.model import Finding, Look, Watch
from assistant.walk.ask import Ask
from assistant.walk.event import (
    Cannot,
    Concluded,
    Did,
    Event,
    GoOn,
    Opened,
    PlateRead,
    Read,
    Saw,
    Settled,
    TakeUp,
    Typed,
    Watched,
)
from assistant.walk.state import BadAnswer, OutOfOrder, Visit, begin
from assistant.walk.visit import asked, fold

MOST = 2000
"""Answers of one walk: more is a walk that does not end."""


@dataclass(frozen=True)
class Again:
    """How a visit ended then and would end now, in words. `differs` is what a tree's editor looks for;
    `unread` is the step that nobody's reading answers, or empty.
    """

    folder: Path
    then: tuple[str, ...]
    now: tuple[str, ...]
    unread: str = ""

    @property
    def differs(self) -> bool:
        return self.then != self.now and not self.unread


def walked_again(folders: Iterable[Path], library: Library) -> Iterable[Again | tuple[Path, str]]:
    """Each visit on `library`; (folder, sentence) for one that can't be read. Practice is passed over."""
    extractor = Extractor()
    for folder in folders:
        try:
            events = read_trail(folder).events
        except TrailError as problem:
            yield folder, str(problem)
            continue
        opened = next((event for event in events if isinstance(event, Opened)), None)
        if opened is None or opened.practice:
            continue
        visit, stopped = extractor.followed(folder, events, opened)
        if visit is None:
            yield folder, stopped
            continue
        yield walk_again(folder, visit, library)


def walk_again(folder: Path, then: Visit, library: Library) -> Again:
    """One visit that was followed on its own trees, walked on `library`."""
    answers = _Answers(then)
    opened = next(event for event in then.events if isinstance(event, Opened))
    known = tuple(pair for pair in opened.complaints if pair[0] in library.vocabulary.complaints)
    visit = fold(begin(library), replace(opened, complaints=known, files={}))
    unread = ""
    for event in then.events:
        if isinstance(event, PlateRead) and event.name in library.vocabulary.plate:
            visit = _tried(visit, event) or visit
    for _ in range(MOST):
        event = answers.event(asked(visit))
        if event is None:
            break
        moved = _tried(visit, event)
        if moved is None:
            unread = asked(visit).step
            break
        visit = moved
    else:
        unread = asked(visit).step
    if answers.unread:
        unread = answers.unread
    return Again(folder, _ends(then), _ends(visit), unread)


def _tried(visit: Visit, event: Event) -> Visit | None:
    for sure in (False, True):
        try:
            return fold(visit, _insisted(event) if sure else event)
        except BadAnswer:
            continue
        except OutOfOrder:
            return None
    return None


def _insisted(event: Event) -> Event:
    if isinstance(event, (Read, Watched)):
        return replace(
            event, readings={name: replace(typed, sure=True) for name, typed in event.readings.items()}
        )
    return event


def _ends(visit: Visit) -> tuple[str, ...]:
    """Each finding by its title and each complaint's state, in order: how a visit ended, in words."""
    found = [
        f.finding.title if isinstance(f.finding, Finding) else f.finding.finding or "" for f in visit.found
    ]
    return (*dict.fromkeys(found), *(f"{c.name}: {c.status}" for c in visit.complaints))


class _Answers:
    """What was read, seen, watched and done on a visit, ready to answer another tree's questions."""

    def __init__(self, visit: Visit) -> None:
        self.at = visit.events[0].at
        self.unread = ""
        self.pages = sum(isinstance(event, GoOn) for event in visit.events)
        """How many findings, stops and hand-overs were left for what comes next."""
        self.readings: dict[tuple, deque[Typed]] = defaultdict(deque)
        self.seen: dict[str, deque[str]] = defaultdict(deque)
        self.happened: dict[str, deque[float]] = defaultdict(deque)
        self.concluded = deque(event.answer for event in visit.events if isinstance(event, Concluded))
        self.settled = {event.complaint: event for event in visit.events if isinstance(event, Settled)}
        self.waited = {event.step: event.waited for event in visit.events if isinstance(event, Did)}
        taken = {event.step for event in visit.events if isinstance(event, (Read, Saw, Watched))}
        self.could_not = {event.step for event in visit.events if isinstance(event, Cannot)} - taken
        self.taken_up = deque(event.complaint for event in visit.events if isinstance(event, TakeUp))
        for record in visit.readings:
            if record.computed is None and record not in visit.slips:
                self.readings[_identity(record.kind, record.points)].append(record.typed)
        for event in visit.events:
            if isinstance(event, Saw) and (thing := _thing(visit, event.step)):
                self.seen[thing].append(event.value)
            elif isinstance(event, Watched):
                for name, after in event.events.items():
                    self.happened[name].append(after)

    def event(self, ask: Ask) -> Event | None:
        """The answer to what is asked, or None where the visit had none or is at its end."""
        at, step = self.at, ask.step
        if ask.kind in ("finding", "stop", "handed_over"):
            if not self.pages:
                return None  # so far this visit came, and no further
            self.pages -= 1
            return GoOn(at, step)
        if ask.kind == "conclude":
            return Concluded(at, step, self.concluded.popleft() if self.concluded else "not found")
        if ask.kind == "do":
            return Did(at, step, self.waited.get(step, getattr(ask.body, "wait", None)))
        if ask.kind == "plate":
            return PlateRead(at, ask.plate or "", "not readable")
        if ask.kind == "notes":
            return self.settled.get(ask.complaint or "")
        if ask.step in self.could_not:
            return Cannot(at, ask.step)
        if ask.kind == "look" and isinstance(ask.body, Look):
            return self._look(ask, ask.body)
        if ask.kind in ("measure", "watch"):
            return self._read(ask)
        if ask.kind == "choose" and self.taken_up:
            return TakeUp(at, self.taken_up.popleft())
        return None

    def _look(self, ask: Ask, body: Look) -> Event | None:
        seen = self.seen[body.sees]
        if not seen:
            return self._missing(ask)
        value = seen.popleft() if len(seen) > 1 else seen[0]
        return Saw(self.at, ask.step, value) if value in body.choices else self._missing(ask)

    def _read(self, ask: Ask) -> Event | None:
        typed = {}
        own = ask.body.common.name if ask.body else ""
        for reading in ask.readings:
            points = () if getattr(ask.body, "survey", ()) else reading.at  # a survey is of all registers
            known = self.readings[_identity(reading.kind, points)]
            if known:
                typed[reading.name or own] = replace(
                    known.popleft() if len(known) > 1 else known[0], chosen=None
                )
        body = ask.body
        if isinstance(body, Watch):
            events = {}
            for name in body.events:
                times = self.happened[name]
                if times:
                    events[name] = times.popleft() if len(times) > 1 else times[0]
            return Watched(self.at, ask.step, events, typed)
        if len(typed) < len(ask.readings):
            return self._missing(ask)
        return Read(self.at, ask.step, typed)

    def _missing(self, ask: Ask) -> None:
        """This is what nobody read."""
        self.unread = ask.step


def _identity(kind: str, points: tuple[str, ...]) -> tuple:
    return (kind, points if kind == "dc_voltage" else tuple(sorted(points)))


def _thing(visit: Visit, address: str) -> str | None:
    try:
        step = visit.step(address)[1]
    except KeyError:
        return None
    return step.sees if isinstance(step, Look) else None
