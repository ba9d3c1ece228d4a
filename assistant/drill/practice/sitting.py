"""Free work: the house is looked at, measured, switched and waited for, in any order, and nobody says how."""

from __future__ import annotations

import time
from collections.abc import Callable, Mapping
from random import Random

from assistant.drill.practice import meter as meters
from assistant.drill.practice.calls import NotedRig
from assistant.drill.practice.drill import OUT, Drill
from assistant.drill.practice.entry import ACT, LOOK, OTHER, READ, WAIT, Entry, Log
from assistant.drill.practice.expect import parted
from assistant.drill.practice.meter import FUNCTIONS, Meter
from assistant.drill.practice.safety import STAY, THERMOSTAT, Safety, guards
from assistant.rig.acts import known as acts_known
from assistant.rig.display_ranges import RANGES
from assistant.rig.house import CannotMeasure, NotDone
from assistant.rig.see import LOOKS
from assistant.tree.library import Library
from assistant.walk.house import already

STARTS = {"five_starts": "five starts, half an hour", "cycles": "two cycles, a quarter of an hour"}
METER_FUSE = "fit_meter_fuse"
SECONDS = 5.0
"""What picking a function and laying on two leads takes, beside the reading's own second."""
FIRST_STEPS = 2
"""Steps of a tree up to the reading that says what stands in the room."""
LOOKING = 10.0
LOOKS_EVERY = 5.0
"""Seconds between looks at flame and blower while a call of the apprentice's own runs."""
DOING = 20.0
"""Going there and doing it, before it takes effect (an estimate)."""
CLAIMS_SHOWN = {"blower.forced": "blower", "flame.at_blower": "flame when the blower starts"}


class CantDo(Exception):
    """A sentence for the apprentice; nothing was done."""


class Sitting:
    """One apprentice in front of one house, working free. `clock` gives wall seconds."""

    way = "free"

    def __init__(self, drill: Drill, library: Library, clock: Callable[[], float] = time.monotonic) -> None:
        self.drill, self.library, self.clock = drill, library, clock
        self.rig = NotedRig(drill.rig())
        self.log = Log()
        self.safety = Safety(library, self.rig, self.log)
        self.meter = Meter()
        self.random = Random(drill.seed)
        self.began = clock()
        self.ended: float | None = None
        self.told: Callable[[Entry], None] = lambda _entry: None
        """Called after each entry, to write it down."""

    # -- what there is

    def things(self) -> dict[str, str]:
        """Everything that can be looked at here, in words, by name."""
        seen = self.library.vocabulary.seen
        here = {name: CLAIMS_SHOWN.get(name, thing.title) for name, thing in seen.items() if name in LOOKS}
        return {**here, **{name: words for name, words in STARTS.items() if name in seen}}

    def points(self) -> dict[str, str]:
        """Every point that can be touched, in words, by name."""
        return {name: point.label for name, point in self.library.vocabulary.points.items()}

    def acts(self) -> dict[str, str]:
        """What can be done now, in words, by name: nothing that is so already, nothing to undo that was not
        done.
        """
        house, vocabulary = self.safety.house, self.library.vocabulary
        undone = {entry.undo for entry in house.undone}
        undos = {act.undo for act in vocabulary.acts.values() if act.undo}
        can = acts_known()
        found = {
            name: act.say
            for name, act in vocabulary.acts.items()
            if name in can
            and (name.startswith(THERMOSTAT) or not already(house, vocabulary, name))
            and (name not in undos or name in undone or act.sets)
        }
        return {**found, METER_FUSE: "Fit a new fuse in the meter"} if self.meter.fuse_blown else found

    @property
    def minutes(self) -> float:
        """Simulated minutes so far."""
        return self.rig.minutes

    @property
    def wall_minutes(self) -> float:
        """Minutes by the clock on the wall."""
        return ((self.ended if self.ended is not None else self.clock()) - self.began) / 60

    # -- what is done

    def look(self, thing: str, expected: str = "") -> str:
        """What it looks like. Raises CantDo."""
        title = self.things().get(thing)
        if title is None:
            raise CantDo(f"There is no '{thing}' to look at in this house.")
        first = len(self.rig.calls)
        self.rig.wait(LOOKING)
        try:
            shown = self.rig.see(thing)
        except KeyError:
            raise CantDo(f"There is nothing to see of that here: {title}.") from None
        entry = Entry(LOOK, f"Looked at {title}", shown, expected, parted=parted(expected, shown))
        entry.guards = guards(thing)
        self._add(entry, first, told=(len(self.rig.calls) - 1,))
        self.safety.look(thing, title)
        return shown

    def read(self, expected: str = "") -> list[tuple[float, str]]:
        """The display from the moment the leads touch. Raises CantDo."""
        function, points = self.meter.picked, self.meter.points()
        if missing := self.meter.missing():
            raise CantDo(missing)
        first = len(self.rig.calls)
        self.rig.wait(SECONDS)
        try:
            text = self.rig.measure(function.kind, points, meters.instrument_of(function))
        except CannotMeasure as problem:
            raise CantDo(f"{str(problem)[:1].upper()}{str(problem)[1:]}.") from None
        told = len(self.rig.calls) - 1
        shown = meters.through_fuse(function.kind, text, self.meter.fuse_blown) if text != "Err" else text
        blind = "the meter's fuse was blown" if shown != text or self._blown_alike(function.kind) else ""
        words = meters.in_words(function, points, self.library.vocabulary.points)
        entry = Entry(READ, words, shown, expected, function.kind, points, blind=blind)
        entry.parted = parted(expected, shown, function.kind, _unit(function.kind))
        entry.aside = function.kind == "ac_voltage" and self.safety.is_proof(points)
        entry.guards = entry.aside or guards(points=points)
        self._add(entry, first, told=() if blind else (told,))
        self.safety.read(function.kind, points, function.name == "low", shown)
        if text == "Err":
            self._fuse(points)
        return meters.frames(shown, function, self.random)

    def leads_together(self) -> str:
        """The two leads held together on ohms: it tells about the meter and nothing else."""
        shown = meters.leads_together(self.meter.fuse_blown)
        self._add(Entry(OTHER, "Held the two leads together on ohms", shown), len(self.rig.calls))
        return shown

    def act(self, name: str) -> list[tuple[str, float]]:
        """Do it; what happened in the seconds after. Raises CantDo."""
        said = self.acts().get(name)
        if said is None:
            raise CantDo("That can't be done now: it is so already, or there is nothing to undo.")
        first = len(self.rig.calls)
        if name == METER_FUSE:
            self.meter.fuse_blown = False
            self._add(Entry(ACT, said), first)
            return []
        self._add(Entry(ACT, said), first)
        self.safety.act(name)
        self.rig.wait(DOING)
        try:
            self.rig.act(name)
        except NotDone as problem:
            raise CantDo(f"{str(problem)[:1].upper()}{str(problem)[1:]}.") from None
        self.log.entries[-1].last = len(self.rig.calls)
        return self.rig.wait(0.0)

    def wait(self, seconds: float) -> list[tuple[str, float]]:
        """Let time pass; what was heard and seen to happen. Raises CantDo."""
        if not 0 < seconds <= 7200:
            raise CantDo("Wait for a second at least, and two hours at most.")
        first, left = len(self.rig.calls), seconds
        happened: list[tuple[str, float]] = []
        while left > 0:
            part = min(left, LOOKS_EVERY if self.safety.called else 60.0)
            happened += [(name, round(at + seconds - left, 1)) for name, at in self.rig.wait(part)]
            self.safety.waited(part)
            left -= part
        words = self.library.vocabulary.happens
        shown = "; ".join(f"{words.get(name, name)} after {at:.0f} s" for name, at in happened)
        entry = Entry(WAIT, f"Waited {_lasting(seconds)}", shown or "nothing happened")
        self._add(entry, first, told=tuple(range(first, len(self.rig.calls))))
        return happened

    def conclude(self, finding: str, cause: str, sentence: str) -> None:
        """The apprentice's last word."""
        self.log.first_finding = self.log.first_finding or finding
        self.log.finding, self.log.cause, self.log.sentence = finding, cause, sentence.strip()
        self.safety.at_end()
        warn_if_stayed(self.drill, self.log)
        self.ended = self.clock()

    # -- inside

    def _add(self, entry: Entry, first: int, told: tuple[int, ...] = ()) -> None:
        entry.first, entry.last, entry.told = first, len(self.rig.calls), told
        entry.minute = self.minutes
        self.log.entries.append(entry)
        self.told(entry)

    def _blown_alike(self, kind: str) -> bool:
        return self.meter.fuse_blown and kind in meters.FUSED

    def _fuse(self, points: tuple[str, ...]) -> None:
        """Whether those ohms took the meter's fuse: by the volts that stood there."""
        pairs = [points, *((point, "ground") for point in points if point != "ground")]
        for pair in pairs:
            try:
                text = self.rig.rig.measure("ac_voltage", pair, meters.instrument_of(FUNCTIONS["low"]))
            except CannotMeasure:
                continue
            from assistant.drill.practice.calls import number

            if (number("ac_voltage", text) or 0.0) >= meters.FUSE_GOES_AT:
                self.meter.fuse_blown = True


def warn_if_stayed(drill: Drill, log: Log) -> None:
    """In a house that everybody has to leave, every further thing done in it is unsafe."""
    if drill.ending != OUT:
        return
    asked = [entry for entry in log.entries if entry.kind != OTHER]
    if len(asked) > (FIRST_STEPS if any(entry.step for entry in asked) else 1):
        what = f"Went on working for {len(asked)} steps in a house that everybody has to leave"
        log.mark_unsafe("stayed inside", what, STAY)


def _unit(kind: str) -> str:
    """What a plain number means in a prediction: the display's usual unit."""
    if kind == "temperature":
        return "F"
    ranges = RANGES.get(kind)
    return ranges.steps[0][1] if ranges else ""


def _lasting(seconds: float) -> str:
    return f"{seconds / 60:g} min" if seconds >= 60 else f"{seconds:g} s"


def answers(things: Mapping[str, str], words: str) -> dict[str, str]:
    """Those whose words hold every word that is searched for, in the order they have."""
    asked = words.lower().split()
    return {name: said for name, said in things.items() if all(w in f"{said} {name}".lower() for w in asked)}
