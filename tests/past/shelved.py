"""Visits on a shelf for the tests of what all visits say: walks of the shipped trees, at chosen hours."""

from datetime import datetime, timedelta
from pathlib import Path

from assistant.house.reader import read
from assistant.past.refresh import refresh
from assistant.resources import trees_folder
from assistant.trail.live import LiveVisit
from assistant.tree.library import read_folder
from assistant.walk.entries import complaints_of, events_of, read_entries
from assistant.walk.event import Opened, Person, Signed
from assistant.walk.visit import begin, fold

LIBRARY = read_folder(trees_folder())
WALKS = Path(__file__).resolve().parents[1] / "trees" / "walks"
TREES = {known.tree: name for name, known in LIBRARY.vocabulary.complaints.items() if known.tree}
BEGUN = datetime.fromisoformat("2026-01-14T09:00:00-05:00")


def entries_of(walk):
    file = WALKS / f"{walk}.yaml"
    entries, problems = read_entries(read(file.read_bytes(), file.name))
    assert not problems
    return entries, tuple((each, "it is as it was") for each in complaints_of(entries, TREES))


def walked(walk):
    """The same without a disk: the visit after each answer of the walk."""
    *_, last = visits_of(walk)
    return last


def visits_of(walk):
    entries, complaints = entries_of(walk)
    visit = fold(begin(LIBRARY), Opened(BEGUN.isoformat(), complaints))
    yield visit
    for entry in entries:
        for make in events_of(entry, BEGUN.isoformat()):
            event = make(visit)
            if event is not None:
                visit = fold(visit, event)
                yield visit


def put(shelf, name, walk, day=0, minutes=2, person=None, sign=False, **more):
    """A visit whose answers are those of a walk such as "no_heat/igniter_open", `minutes` apart."""
    entries, complaints = entries_of(walk)
    when = BEGUN + timedelta(days=day)
    live = LiveVisit.start(shelf / name, LIBRARY, complaints, at=when.isoformat(), **more)
    if person:
        live.send(Person(when.isoformat(), live.recorder.keep_person(person)))
    for entry in entries:
        when += timedelta(minutes=minutes)
        for make in events_of(entry, when.isoformat()):
            event = make(live.visit)
            if event is not None:
                live.send(event)
    if sign:
        live.send(Signed(when.isoformat(), "A. Technician"))
    live.close()
    return shelf / name


def brought_up(store, shelf):
    """The index made as the disk is; how many visits had to be read for it (each is looked at as well)."""
    return len(list(refresh(store, shelf))) - sum(path.is_dir() for path in shelf.iterdir())
