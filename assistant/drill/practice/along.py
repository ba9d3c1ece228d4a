"""Along the tree: the walk asks as on a visit, and every reading is taken from the simulated house."""

from __future__ import annotations

import time
from collections.abc import Callable
from typing import Any

from assistant.drill.hand import Hand
from assistant.drill.kit import STATED
from assistant.drill.practice.answers import findings
from assistant.drill.practice.calls import Call, NotedRig
from assistant.drill.practice.drill import Drill
from assistant.drill.practice.entry import ACT, LOOK, OTHER, READ, WATCH, Entry, Log
from assistant.drill.practice.expect import parted
from assistant.drill.practice.safety import KNOWN, LEAK, LEFT, OHMS, step_guards
from assistant.drill.practice.sitting import CantDo, warn_if_stayed
from assistant.rig.house import CannotMeasure, NotDone
from assistant.tree.library import Library
from assistant.tree.model import Stop
from assistant.walk.ask import Ask
from assistant.walk.event import Did, Event, Hazard, PlateRead, Read, Saw, Watched
from assistant.walk.state import Visit
from assistant.walk.visit import asked

TAKEN = ("plate", "look", "measure", "watch", "do")
KINDS = {"look": LOOK, "measure": READ, "watch": WATCH, "do": ACT, "plate": OTHER}
NOT_HERE = "In this house that can't be taken: there is nothing there to see or to measure."
NOT_TAKEN = "In a drill this comes from the house: press \u201cTake it\u201d first."


class Along:
    """One apprentice on one tree. `live` has `visit` and `send` (assistant/trail/live.py, or Loose here)."""

    way = "tree"

    def __init__(
        self, drill: Drill, library: Library, live: Any, clock: Callable[[], float] = time.monotonic
    ) -> None:
        self.drill, self.library, self.live, self.clock = drill, library, live, clock
        self.rig = NotedRig(drill.rig())
        self.hand = Hand(self.rig, STATED)
        self.log = Log()
        self.began = clock()
        self.ended: float | None = None
        self._taken: tuple[tuple, Event] | None = None

    @property
    def visit(self) -> Visit:
        """The walk as it stands."""
        return self.live.visit

    @property
    def minutes(self) -> float:
        """Simulated minutes so far."""
        return self.rig.minutes

    @property
    def wall_minutes(self) -> float:
        """Minutes by the clock on the wall."""
        return ((self.ended if self.ended is not None else self.clock()) - self.began) / 60

    @property
    def taken(self) -> Event | None:
        """What was taken for the page that is asked now; None where nothing was yet."""
        return self._taken[1] if self._taken and self._taken[0] == self._now(self.ask()) else None

    def ask(self) -> Ask:
        """What is asked now."""
        return asked(self.visit)

    def can_take(self) -> bool:
        """Whether the page that is asked now takes something from the house."""
        return self.ask().kind in TAKEN

    def take(self, expected: str = "") -> Event:
        """Do what the page asks on the house, once: the event that a person would send. Raises CantDo."""
        ask = self.ask()
        if ask.kind not in TAKEN:
            raise CantDo("This page takes nothing from the house.")
        if self.taken is not None:
            return self.taken
        first = len(self.rig.calls)
        try:
            event = self.hand.event(self.visit)
        except NotDone as problem:
            raise CantDo(f"{str(problem)[:1].upper()}{str(problem)[1:]}.") from None
        except (CannotMeasure, KeyError):
            raise CantDo(NOT_HERE) from None
        self._taken = self._now(ask), event
        self._note(ask, event, first, expected)
        return event

    def refuses(self, event: Event) -> str:
        """Why an event can't be sent in a drill: its reading was not taken from the house."""
        if isinstance(event, (Read, Saw, Watched, PlateRead)) and self.taken is None:
            return NOT_TAKEN
        return ""

    def before(self, event: Event) -> None:
        """What has to happen on the house before an event counts."""
        if isinstance(event, Did) and self.taken is None:
            self.take()
        self._compare(event)
        if isinstance(event, Hazard):
            self.log.entries.append(Entry(OTHER, f"Called out: {event.name.replace('_', ' ')}"))

    def conclude(self, finding: str, cause: str, sentence: str) -> None:
        """The apprentice's last word; what stands open in the house is unsafe."""
        self.log.first_finding = self.log.first_finding or finding
        self.log.finding, self.log.cause, self.log.sentence = finding, cause, sentence.strip()
        acts = self.library.vocabulary.acts
        for mishap in self.rig.rig.mishaps:
            self.log.mark_unsafe("ohms on live", mishap[:1].upper() + mishap[1:], OHMS)
        whole = self.over() and not self._stopped()  # who is told to stop is asked to put nothing back
        for entry in self.visit.house.undone if whole else ():
            rule, why = ("leak check missing", LEAK) if entry.undo == "leak_check" else ("left so", LEFT)
            words = f"Left so: {acts[entry.act].say}. Still to do: {acts[entry.undo].say}"
            self.log.mark_unsafe(rule, words, why)
        warn_if_stayed(self.drill, self.log)
        self.ended = self.clock()

    def over(self) -> bool:
        """Whether the walk came to its end, the proof of repair included."""
        position = self.visit.position
        return position is None or position.stage == "done"

    def found(self) -> tuple[str, str]:
        """Finding and cause as the walk has them, by their bare names; no cause where it found several."""
        visit = self.visit
        if visit.hazards:
            return f"hazard.{visit.hazards[-1].name}", ""
        if visit.found:
            last = visit.found[-1]
            named = self.causes()
            cause = (last.concluded or "").replace(" ", "_") if not named else named[0]
            return last.step.partition(".")[2], cause if len(named) < 2 else ""
        ask = asked(visit)
        if ask.kind == "stop" and (danger := self._danger(ask.page or "")):
            return f"hazard.{danger}", ""
        step = ask.step if ask.kind in ("handed_over", "finding", "stop") else self._left_at()
        name = step.partition(".")[2]
        return (name, "") if name in findings(self.library, self.drill.complaint) else ("", "")

    def causes(self) -> tuple[str, ...]:
        """The causes that the walk found for what it found last, by name."""
        found = self.visit.found
        return tuple(cause.tree for cause in found[-1].causes if cause.outcome == "found") if found else ()

    def _left_at(self) -> str:
        """Where a walk ended that is over."""
        position = self.visit.position
        if position is None or position.stage != "done" or not position.stack:
            return ""
        return f"{position.top.tree}.{position.top.step}"

    def _stopped(self) -> bool:
        """Whether the walk ended on a page that says stop."""
        tree, _, name = self._left_at().partition(".")
        known = self.library.trees.get(tree)
        return known is not None and isinstance(known.steps.get(name), Stop)

    def can_walk_again(self) -> bool:
        """Whether the complaint is open after a walk that ended: what comes and goes is walked again."""
        ask = self.ask()
        return ask.kind == "choose" and self.drill.complaint in ask.choices

    # -- inside

    def _compare(self, event: Event) -> None:
        """A reading that is written otherwise than the display showed it is said in the debrief's path."""
        taken = self.taken
        if not isinstance(event, Read) or not isinstance(taken, Read):
            return
        for name, typed in event.readings.items():
            shown = taken.readings[name].text if name in taken.readings else typed.text
            if not shown.startswith(typed.text.strip()):
                self.log.entries.append(Entry(OTHER, f"Wrote {typed.text} where the display showed {shown}"))

    def _aside(self, ask: Ask) -> bool:
        """Whether the page is no step towards the finding: a procedure's, a cause's or a proof's."""
        tree = self.library.trees.get(ask.step.partition(".")[0])
        return ask.kind == "plate" or tree is None or tree.purpose != "complaint"

    def _danger(self, page: str) -> str:
        """The hazard whose stop page this is, the drill's own first."""
        hazards = self.library.vocabulary.hazards
        return next((name for name in (self.drill.hazard, *hazards) if name and hazards[name] == page), "")

    def _now(self, ask: Ask) -> tuple:
        return (ask.kind, ask.step, ask.plate, ask.retake, len(self.visit.events))

    def _note(self, ask: Ask, event: Event, first: int, expected: str) -> None:
        told, shown = _told(event, self.rig.calls, first), _shown(event)
        entry = Entry(KINDS[ask.kind], ask.say, shown, expected, step=ask.step)
        entry.first, entry.last, entry.told = first, len(self.rig.calls), told
        entry.minute = self.minutes
        entry.aside = self._aside(ask)
        entry.guards = ask.body is not None and step_guards(ask.body)
        if isinstance(event, Saw):
            entry.parted = parted(expected, event.value)
        elif isinstance(event, Read) and ask.readings:
            entry.quantity, entry.points = ask.readings[0].kind, ask.readings[0].at
            entry.parted = _parted(expected, event, ask)
        self.log.entries.append(entry)


def _parted(expected: str, event: Read, ask: Ask) -> bool | None:
    """One expectation is for the first field that decides it, several are for the fields in their order.
    A field that only shows that the meter works is never meant.
    """
    fields = [
        (typed.text, reading)
        for typed, reading in zip(event.readings.values(), ask.readings, strict=False)
        if not (reading.known_live or set(reading.at) & set(KNOWN))
    ]
    said = expected.split(";")
    pairs = zip(said, fields, strict=False) if len(said) > 1 else ((expected, one) for one in fields)
    verdicts = [parted(words, text, one.kind, one.unit) for words, (text, one) in pairs]
    known = [one for one in verdicts if one is not None]
    if not known:
        return None
    return any(known) if len(said) > 1 else known[0]


def _shown(event: Event) -> str:
    if isinstance(event, Saw):
        return event.value
    if isinstance(event, (Read, Watched)):
        typed = ", ".join(one.text for one in event.readings.values())
        times = ", ".join(
            f"{name.replace('.', ' ')} {at:g} s" for name, at in getattr(event, "events", {}).items()
        )
        return "; ".join(part for part in (times, typed) if part)
    if isinstance(event, PlateRead):
        return event.text
    return ""


def _told(event: Event, calls: list[Call], first: int) -> tuple[int, ...]:
    """The calls whose answers are what the page was given."""
    made = range(first, len(calls))
    if isinstance(event, Saw):
        return tuple(n for n in made if calls[n].kind == "see" and calls[n].gave == event.value)[-1:]
    if not isinstance(event, (Read, Watched)):
        return ()
    told = [n for n in made if calls[n].kind == "wait"] if isinstance(event, Watched) else []
    for typed in event.readings.values():
        same = [
            n
            for n in made
            if calls[n].kind in ("measure", "held")
            and str(calls[n].gave).removeprefix("-") == typed.text.removeprefix("-")
        ]
        told += same[-1:]
    return tuple(sorted(told))


class Loose:
    """A walk that is written nowhere: for a scripted drill."""

    def __init__(self, visit: Visit) -> None:
        self.visit = visit

    def send(self, event: Event) -> None:
        """Take an answer. Raises BadAnswer or OutOfOrder."""
        from assistant.walk.visit import fold

        self.visit = fold(self.visit, event)
