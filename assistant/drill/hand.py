"""A person in front of the simulated house: answers whatever a walk asks, by looking, measuring and doing.

The hand knows no step and no finding. It reads the page, takes the rating plate's values from the house,
types what the display shows, does what it is told, and follows the walk wherever that leads.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace

from assistant.drill.kit import named_for
from assistant.drill.moment import moments
from assistant.drill.page_acts import beside, instead, none_if_opened, on_at_once
from assistant.drill.taking import Taking, Wanted
from assistant.drill.zone_hand import ZoneHand
from assistant.quantity.instrument import Instrument
from assistant.rig.house import CannotMeasure, NotDone, Rig, plate_text
from assistant.tree.model import Do, Look, Measure, Watch
from assistant.walk.ask import Ask
from assistant.walk.event import Cannot, Concluded, Did, Event, GoOn, PlateRead, Read, Saw, Typed, Watched
from assistant.walk.state import BadAnswer, Visit
from assistant.walk.visit import asked, fold

AT = "2026-01-14T09:00:00-05:00"
SEEN_IN_FLAME = ("flame.look", "flame.at_blower")
"""What a look at a flame tells is seen while there is one."""
FLAME_LOOKED_AT = 10
WATCH_EVERY = 3
"""Seconds between looks at the meter while a start is watched."""


LOOKS = ("look", "measure", "watch")


class Stuck(Exception):
    """The walk asks for something that can't be done in this house and has no way on for that. `visit` is as
    far as it came.
    """

    def __init__(self, words: str, visit: Visit) -> None:
        super().__init__(words)
        self.visit = visit


@dataclass
class Hand:
    """`stated`: type each reading with its instrument's name, so that the walk counts its accuracy.
    `pace`: how much of a step's minutes really go by, beside what waits and readings take.
    """

    rig: Rig
    instruments: Mapping[str, Instrument]
    stated: bool = False
    pace: float = 1.0
    undone: list[str] = field(default_factory=list)
    """Acts that nobody could do here, and readings that could not be taken, in words."""

    def __post_init__(self) -> None:
        self.taking = Taking(self.rig, self.instruments)
        self.zones: ZoneHand | None = None
        self.met = self.rig.present
        """Whether the fault was there when the complaint's own tree last looked or measured."""

    def answer(self, visit: Visit) -> Visit:
        """The visit after the thing that is asked now. Raises Stuck."""
        ask = asked(visit)
        event = self.event(visit)
        if ask.kind in LOOKS and ask.tree is not None and ask.tree.purpose == "complaint":
            self.met = self.rig.present
        try:
            try:
                return fold(visit, event)
            except BadAnswer:
                return fold(visit, insisted(event))
        except BadAnswer as problem:
            if isinstance(event, Read):  # a display that the page does not take
                self.undone.append(f"{ask.step}: {problem}")
                return self._cannot(visit, ask, str(problem))
            raise Stuck(f"{ask.step}: {problem}", visit) from None

    @staticmethod
    def _cannot(visit: Visit, ask: Ask, words: str) -> Visit:
        try:
            return fold(visit, Cannot(AT, ask.step, words))
        except BadAnswer as problem:
            raise Stuck(f"{ask.step}: {problem}", visit) from None

    def event(self, visit: Visit) -> Event:
        """What is done on the house and answered now, without taking the walk on."""
        ask = asked(visit)
        others = beside(texts_of(ask))
        for name in others.before:
            self.rig.act(name)
        if not (self.rig.registers() and zoned(visit)):
            self.zones = None  # another complaint's walk: its thermostat is the one that calls
            if self.rig.registers() and isinstance(ask.body, (Do, Look, Measure, Watch)):
                ZoneHand(self.taking).wires(ask.body)
        elif self.zones is None:
            self.zones = ZoneHand(self.taking)
        event = self._event(visit, ask)
        for name in others.after:
            self.rig.act(name)
        return event

    def _event(self, visit: Visit, ask: Ask) -> Event:
        if ask.kind == "plate":
            assert ask.plate is not None
            unit = visit.vocabulary.plate[ask.plate].unit
            return PlateRead(AT, ask.plate, plate_text(self.rig, ask.plate, unit))
        if ask.kind == "do":
            return self._do(ask)
        if ask.kind == "conclude":
            return Concluded(AT, ask.step, "worn" if _condemns(ask) else "not found")
        if ask.kind in LOOKS:
            try:
                return {"look": self._look, "measure": self._measure, "watch": self._watch}[ask.kind](ask)
            except (CannotMeasure, KeyError) as problem:
                self.undone.append(f"{ask.step}: {problem}")
                return Cannot(AT, ask.step, str(problem))
        return GoOn(AT, ask.step)

    def _do(self, ask: Ask) -> Event:
        step = ask.body
        if self.zones and isinstance(step, Do):
            self.zones.before(step)
        begun = self.rig.time
        act = ask.step.removeprefix("act.") if ask.step.startswith("act.") else None
        wait = None
        if isinstance(step, Do):
            act, wait = step.act, step.wait
        if act:
            try:
                self.taking.act(instead(act, texts_of(ask), self.taking.w_off))
            except NotDone as problem:
                self.undone.append(f"{ask.step}: {problem}")
            if self.taking.fresh_call():  # nobody lets a start go by that is to be watched
                return Did(AT, ask.step, self._waited(wait))
        left = max(wait or 0.0, self._minutes(step) * 60 - (self.rig.time - begun))
        if wait and on_at_once(texts_of(ask)):
            self.taking.until(self.taking.opened, left)
        else:
            self._waited(left)
        return Did(AT, ask.step, wait)

    def _waited(self, seconds: float | None) -> float | None:
        if seconds and seconds > 0:
            self.rig.wait(seconds)
        return seconds

    def _look(self, ask: Ask) -> Event:
        step = ask.body
        assert isinstance(step, Look)
        begun = self.rig.time
        if self.zones:
            self.zones.before(step)
        if step.sees in SEEN_IN_FLAME:
            seen = self._in_flame(step.sees)
        else:
            self._pace(step, begun)
            seen = self.rig.see(step.sees)
        return Saw(AT, ask.step, seen)

    def _in_flame(self, thing: str) -> str:
        """What the flame looks like while it is there, from a new start where there is none."""
        taking = self.taking
        if not taking.lit():
            taking.new_call()
            if not taking.until(taking.lit, 300):
                return self.rig.see(thing)
        seen = self.rig.see(thing)
        for _ in range(FLAME_LOOKED_AT):
            self.rig.wait(1.0)
            if not taking.lit():
                break
            seen = self.rig.see(thing)
        return seen

    def _measure(self, ask: Ask) -> Event:
        step = ask.body
        assert isinstance(step, Measure)
        if self.zones and step.survey:
            return Read(AT, ask.step, {name: Typed(text) for name, text in self.zones.survey(step).items()})
        if self.zones:
            self.zones.before(step)
        self._pace(step, self.rig.time)
        if none_if_opened(texts_of(ask)) and self.rig.see("breaker.closed") == "opens":
            raise CannotMeasure("it has opened")
        if self.zones and self.zones.works(step):
            return Read(AT, ask.step, self._typed(ask, self.zones.page(step, self._wanted(ask, step))))
        shown = self.taking.page(self._wanted(ask, step), (step.common.minutes or 1.0) * 60)
        return Read(AT, ask.step, self._typed(ask, shown))

    def _wanted(self, ask: Ask, step: Measure | Watch) -> list[Wanted]:
        names = [reading.name or step.common.name for reading in ask.readings]
        return [Wanted(*three) for three in zip(names, ask.readings, moments(step), strict=True)]

    def _typed(self, ask: Ask, shown: Mapping[str, str]) -> dict[str, Typed]:
        own = ask.body.common.name if ask.body else ""
        named = {one.name or own: named_for(one.kind, one.meter) for one in ask.readings}
        return {name: Typed(text, named[name] if self.stated else None) for name, text in shown.items()}

    def _watch(self, ask: Ask) -> Event:
        step = ask.body
        assert isinstance(step, Watch)
        taking, rig = self.taking, self.rig
        if self.zones:
            return Watched(AT, ask.step, self.zones.call(step))
        if not taking.fresh_call():
            taking.new_call()
        begun = taking.called_at if taking.called_at is not None else rig.time
        events: dict[str, float] = {}
        shown: dict[str, str] = {}
        wanted = self._wanted(ask, step)
        looked = begun
        while rig.time - begun < step.within and len(events) < len(step.events):
            if wanted:
                taking.round(wanted, shown)
            for name, after in rig.wait(max(WATCH_EVERY - len(wanted), 1)):
                if name in step.events:
                    events.setdefault(name, round(looked + after - begun, 1))
            looked = rig.time
        return Watched(AT, ask.step, events, self._typed(ask, shown))

    def _pace(self, step, begun: float) -> None:
        """Half of the step's time goes by before the answer: walking there, clips on, covers off."""
        self._waited(self._minutes(step) * 30 - (self.rig.time - begun))

    def _minutes(self, step) -> float:
        return self.pace * (step.common.minutes or 0.0) if step is not None else 0.0


def texts_of(ask: Ask) -> list[str]:
    """The words of a page that say what to do."""
    step = ask.body
    if not isinstance(step, (Do, Look, Measure, Watch)):
        return []
    return [step.ask, *step.common.how, *(one.ask for one in ask.readings if one.ask != step.ask)]


def zoned(visit: Visit) -> bool:
    """Whether the walk's own tree asks how the house is zoned."""
    if visit.position is None or not visit.position.stack:
        return False
    tree = visit.library.trees[visit.position.stack[0].tree]
    return any(isinstance(step, Look) and step.sees == "zoning.kind" for step in tree.steps.values())


def insisted(event: Event) -> Event:
    """The same answer once more, its readings confirmed where the walk called one implausible."""
    if not isinstance(event, (Read, Watched)):
        return event
    return replace(event, readings={name: replace(one, sure=True) for name, one in event.readings.items()})


def _condemns(ask: Ask) -> bool:
    return ask.finding is not None and getattr(ask.finding.finding, "condemns", None) is not None
