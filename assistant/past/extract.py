"""A visit's folder read for the index: its trail followed once, on the trees it was walked with."""

from __future__ import annotations

from collections import OrderedDict
from collections.abc import Iterable
from pathlib import Path

from assistant.past.page import FoundRow, Page, ReadRow, StepRow
from assistant.trail.clock import moment
from assistant.trail.earlier import place
from assistant.trail.earlier import plain as run_together
from assistant.trail.error import TrailError
from assistant.trail.read import Trail, read_trail
from assistant.trail.record import kept_library
from assistant.trail.shelf import BROKEN, Shelved, line_of
from assistant.tree.library import Library
from assistant.tree.model import Finding
from assistant.walk.ask import Found, Record, Taken
from assistant.walk.event import (
    Advised,
    AsFound,
    AsLeft,
    Event,
    Filled,
    Note,
    Opened,
    Paused,
    Resumed,
    Settled,
)
from assistant.walk.state import BadAnswer, OutOfOrder, Visit, begin
from assistant.walk.visit import fold

LONGEST_STEP = 120.0
"""Minutes: what lies longer between two answers was no work on the step."""
MOST_LIBRARIES = 8


class Extractor:
    """Reads visits one after the other; libraries are kept, as most visits were walked on the same trees."""

    def __init__(self) -> None:
        self._libraries: OrderedDict[tuple, Library] = OrderedDict()

    def page(self, folder: Path, signature: str) -> Page:
        """Never raises: a visit that can't be read or followed is listed with what is wrong."""
        try:
            trail = read_trail(folder)
        except TrailError as problem:
            return Page(Shelved(folder, BROKEN, trouble=str(problem)), signature)
        shelved = line_of(folder, trail)
        if trail.practice:  # named in the list, and neither searched nor counted
            return Page(shelved, signature, practice=True)
        opened = next((event for event in trail.events if isinstance(event, Opened)), None)
        if opened is None:
            return Page(shelved, signature)
        visit, _ = self.followed(folder, trail.events, opened)
        return Page(
            shelved,
            signature,
            opened.practice,
            place(dict(shelved.person).get("address", "")),
            _words(shelved, trail, visit),
            tuple(_found(found) for found in visit.found) if visit else (),
            tuple(_steps(visit)) if visit else (),
            tuple(_readings(visit)) if visit else (),
            visit.house.fitted if visit else (),
        )

    def followed(self, folder: Path, events: list[Event], opened: Opened) -> tuple[Visit | None, str]:
        """As far as this version can follow it, and the sentence that says what stopped it."""
        try:
            visit = begin(self._library(folder, opened))
        except TrailError as problem:
            return None, str(problem)
        for number, event in enumerate(events, 1):
            try:
                visit = fold(visit, event)
            except (BadAnswer, OutOfOrder) as problem:
                return visit, f"Line {number} can't be followed ({problem})."
        return visit, ""

    def _library(self, folder: Path, opened: Opened) -> Library:
        key = tuple(sorted(opened.files.items()))
        if key not in self._libraries:
            self._libraries[key] = kept_library(folder, opened)
            while len(self._libraries) > MOST_LIBRARIES:
                self._libraries.popitem(last=False)
        self._libraries.move_to_end(key)
        return self._libraries[key]


def _around(event: Event) -> list[str]:
    """What was written around the walk: sheets, how it was left, recommendations."""
    if isinstance(event, Filled):
        return list(event.answers.values())
    if isinstance(event, AsLeft):
        return list(event.seen.values())
    return [event.what, event.why, event.number] if isinstance(event, Advised) else []


def _words(shelved: Shelved, trail: Trail, visit: Visit | None) -> dict[str, str]:
    notes = [event.text for event in trail.events if isinstance(event, Note)]
    notes += [event.why for event in trail.events if isinstance(event, Paused)]
    notes += [event.note for event in trail.events if isinstance(event, Settled)]
    notes += [value for event in trail.events if isinstance(event, AsFound) for value in event.seen.values()]
    notes += [words for event in trail.events for words in _around(event)]
    complaints = [part for pair in shelved.complaints for part in pair]
    out = {
        "name": [value for _, value in shelved.person] + [shelved.folder.name, shelved.began[:10]]
        + [value for _, value in shelved.unit]
        + [run_together(value) for name, value in shelved.unit if name == "serial"],
        "complaint": complaints,
        "note": notes,
    }
    if visit is not None:
        vocabulary = visit.vocabulary
        known = [
            vocabulary.complaints[name].title
            for name, _ in shelved.complaints
            if name in vocabulary.complaints
        ]
        condemned = [found.finding.condemns for found in visit.found if isinstance(found.finding, Finding)]
        parts = [*(part for part, _ in visit.house.fitted), *(part for part in condemned if part)]
        out["complaint"] = complaints + known
        out["part"] = [vocabulary.parts[part].title if part in vocabulary.parts else part for part in parts]
        out["finding"] = [_title(found) for found in visit.found]
        out["finding"] += [
            cause.back.says for f in visit.found for cause in f.causes if cause.back and cause.back.says
        ]
        out["reading"] = [record.echo for record in visit.readings if record.computed is None]
    return {section: " ".join(dict.fromkeys(words)) for section, words in out.items()}


def _title(found: Found) -> str:
    finding = found.finding
    return finding.title if isinstance(finding, Finding) else finding.finding or ""


def _found(found: Found) -> FoundRow:
    finding = found.finding
    real = isinstance(finding, Finding)
    return FoundRow(
        found.complaint,
        found.step,
        _title(found),
        finding.fault if real else True,
        (finding.condemns or "") if real else "",
        found.proof or "",
        found.at,
    )


def _steps(visit: Visit) -> Iterable[StepRow]:
    """Steps of the complaints' trees and what they called, with the time each took."""
    breaks = [event.at for event in visit.events if isinstance(event, (Paused, Resumed))]
    before: Taken | None = None
    complaint = _complaint_of(visit)
    for taken in visit.history:
        if not taken.passed:
            minutes = _minutes(before.at, taken.at, breaks) if before else None
            yield StepRow(complaint.get(id(taken), ""), taken.step, taken.verb, taken.way or "", minutes)
        before = taken


def _complaint_of(visit: Visit) -> dict[int, str]:
    walks = [(walk.complaint, walk.taken) for walk in visit.walks] + [(visit.complaint or "", visit.path)]
    return {id(taken): complaint for complaint, path in walks for taken in path}


def _minutes(before: str, after: str, breaks: list[str]) -> float | None:
    begun, ended = moment(before), moment(after)
    if begun is None or ended is None:
        return None
    paused = any((when := moment(at)) is not None and begun <= when <= ended for at in breaks)
    minutes = (ended - begun).total_seconds() / 60
    return None if paused or not 0 <= minutes <= LONGEST_STEP else minutes


def _readings(visit: Visit) -> Iterable[ReadRow]:
    step_of = {id(record): taken.step for taken in visit.history for record in taken.records}
    for record in visit.readings:
        if record.computed is None and record.points:
            yield ReadRow(
                record.kind,
                identity_points(record),
                record.echo,
                record.verdict.words if record.verdict else "",
                step_of.get(id(record), ""),
                record.at,
            )


def identity_points(record: Record) -> str:
    """The points of a reading in one order: the leads of most readings can be swapped."""
    points = record.points if record.kind == "dc_voltage" else tuple(sorted(record.points))
    return " ".join(points)
