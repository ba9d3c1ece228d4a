"""A fault tree as it stands after loading: frozen, with the place of everything kept for error messages.

A step has one verb, which is its class here. Ways on are step names of the same tree. Limits are expressions
(assistant/tree/limits.py); everything else is plain data.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Union

from assistant.house.place import Place
from assistant.tree.limits import Limit


@dataclass(frozen=True)
class Way:
    """A way on to another step of the same tree."""

    to: str
    place: Place


@dataclass(frozen=True)
class Band:
    """Readings strictly under `under` (None: everything left) are `label` and go `then`."""

    under: Limit | None
    label: str
    then: Way | None
    normal: bool
    source: str | None
    place: Place


@dataclass(frozen=True)
class Safe:
    """Outside these limits the work stops on the page `stop`."""

    over: Limit | None
    under: Limit | None
    stop: str | None
    source: str | None
    place: Place


@dataclass(frozen=True)
class Reading:
    """One thing read with an instrument: what, where, how, and what its value means.

    `plausible` is in `unit` as written; `name` is how limits, computes and findings refer to it.
    """

    name: str | None
    ask: str
    kind: str
    unit: str
    at: tuple[str, ...]
    meter: str | None
    plausible: tuple[float, float] | None
    safe: Safe | None
    bands: tuple[Band, ...]
    known_live: bool
    source: str | None
    place: Place


@dataclass(frozen=True)
class Common:
    """What every step may carry."""

    name: str
    place: Place
    why: str | None = None
    teach: str | None = None
    how: tuple[str, ...] = ()
    caution: tuple[str, ...] = ()
    needs: dict[str, str] = field(default_factory=dict)
    at: tuple[str, ...] = ()
    minutes: float | None = None
    hint: str | None = None
    opens: tuple[str, ...] = ()
    """What it opens that not every shop's people may; where they may not, it goes its `cannot` way."""


@dataclass(frozen=True)
class Look:
    """A question answered by eye, ear or nose: one of the thing's words."""

    common: Common
    ask: str
    sees: str
    choices: dict[str, Way]
    cannot: Way | None


@dataclass(frozen=True)
class Watch:
    """A start watched as it happens: `events` tapped in order, readings filled in afterwards."""

    common: Common
    ask: str
    within: float
    """Seconds in which all events should have happened."""
    events: tuple[str, ...]
    missing: dict[str, Way]
    readings: tuple[Reading, ...]
    then: Way
    close: Way | None
    cannot: Way | None


@dataclass(frozen=True)
class Measure:
    """One reading, or several of one act on one page (`group`). `verifies` names the circuits it proves
    dead. `survey`: the columns of a zone survey that are to be filled; its one reading then stands for every
    cell of thermostat by register.
    """

    common: Common
    ask: str
    readings: tuple[Reading, ...]
    group: bool
    then: Way | None
    close: Way | None
    cannot: Way | None
    verifies: tuple[str, ...]
    survey: tuple[str, ...] = ()


@dataclass(frozen=True)
class Compute:
    """`arguments` maps the registry function's argument to a reading, a plate value, a number with its unit
    or one of its words; to several of them where it takes a list. `gives` names one of several results.

    `results`: the named results of a function that gives several, each judged like a reading; `result`,
    `kind`, `unit` and `bands` are then empty.
    """

    common: Common
    function: str
    arguments: dict[str, str | tuple[str, ...]]
    result: str
    kind: str
    unit: str
    bands: tuple[Band, ...]
    then: Way | None
    close: Way | None
    cannot: Way | None
    source: str | None
    gives: str | None = None
    results: tuple[Reading, ...] = ()

    @property
    def texts(self) -> list[str]:
        """Everything that the arguments name, lists taken apart."""
        out: list[str] = []
        for given in self.arguments.values():
            out += [given] if isinstance(given, str) else given
        return out

    @property
    def page(self) -> tuple[tuple[str, Reading | Compute], ...]:
        """Every value that it gives, by name, in the order in which they decide."""
        return tuple((one.name or "", one) for one in self.results) or ((self.result, self),)


@dataclass(frozen=True)
class Do:
    """Something to do, perhaps an act of the vocabulary, perhaps with a wait."""

    common: Common
    ask: str
    act: str | None
    wait: float | None
    """Seconds to wait after the act, or None."""
    then: Way
    cannot: Way | None = None
    notes: str = ""
    """What is written down while it is done; empty where nothing is."""


@dataclass(frozen=True)
class Call:
    """A procedure, cause or proof, which comes back by a named return."""

    common: Common
    tree: str
    circuit: str | None
    then: dict[str, Way]
    cannot: Way | None = None
    """Where to go when what it opens is not the shop's to open."""


@dataclass(frozen=True)
class Return:
    """How a procedure, cause or proof comes back. Cause trees say why in two sets of words and what removes
    it.
    """

    common: Common
    outcome: str
    says: str | None
    customer: str | None
    repair: tuple[str, ...]


@dataclass(frozen=True)
class HandOver:
    """The end of this walk: another complaint takes over."""

    common: Common
    complaint: str


@dataclass(frozen=True)
class Finding:
    """What failed, proved. `fault` is False for 'fault: none' (then `reason` says why nothing is wrong)."""

    common: Common
    title: str
    fault: bool
    condemns: str | None
    shows: tuple[str, ...]
    causes: tuple[str, ...]
    repair: tuple[str, ...]
    proof: str | None
    customer: str
    reason: str | None
    advice: str | None


@dataclass(frozen=True)
class Stop:
    """The work stops on a stop page; `finding` where the stop is itself something found."""

    common: Common
    page: str
    finding: str | None
    shows: tuple[str, ...]
    customer: str | None


Step = Union[Look, Watch, Measure, Compute, Do, Call, Return, HandOver, Finding, Stop]

VERBS: dict[str, type] = {
    "look": Look, "watch": Watch, "measure": Measure, "compute": Compute, "do": Do, "call": Call,
    "return": Return, "hand_over": HandOver, "finding": Finding, "stop": Stop,
}

PURPOSES = ("complaint", "procedure", "cause", "proof")


@dataclass(frozen=True)
class Tree:
    """A fault tree file, loaded. `name` is the file's stem and unique over all folders."""

    name: str
    file: str
    purpose: str
    title: str
    covers: str | None
    takes: tuple[str, ...]
    start: str
    steps: dict[str, Step]
    place: Place


def question_of(step: Step) -> str:
    """What a step says in a line: its question, what is done there, or how the walk ends."""
    if isinstance(step, Compute):
        return f"worked out: {step.function.replace('_', ' ')}"
    if isinstance(step, Call):
        return f"part of it: {step.tree.replace('_', ' ')}"
    if isinstance(step, Return):
        return step.says or f"comes back: {step.outcome.replace('_', ' ')}"
    if isinstance(step, HandOver):
        return f"goes on with: {step.complaint.replace('_', ' ')}"
    if isinstance(step, Finding):
        return step.title
    if isinstance(step, Stop):
        return step.finding or f"stop: {step.page.replace('_', ' ')}"
    return step.ask


def readings_of(step: Step) -> tuple[Reading, ...]:
    """The readings that a step takes, in the order of its page."""
    return step.readings if isinstance(step, (Measure, Watch)) else ()


def bands_of(step: Step) -> tuple[Band, ...]:
    """All bands of a step, its readings' and its own."""
    own = tuple(b for _, one in step.page for b in one.bands) if isinstance(step, Compute) else ()
    return tuple(b for r in readings_of(step) for b in r.bands) + own


def ways_of(step: Step) -> list[tuple[str, Way]]:
    """Every way on that is written in the step, as (words of the answer, way)."""
    out: list[tuple[str, Way]] = []
    if isinstance(step, Look):
        out += [(value, way) for value, way in step.choices.items()]
    if isinstance(step, Watch):
        out += [(f"{event} missing", way) for event, way in step.missing.items()]
    if isinstance(step, Call):
        out += list(step.then.items())
    out += [(band.label, band.then) for band in bands_of(step) if band.then]
    for word in ("then", "close", "cannot"):
        way = getattr(step, word, None)
        if isinstance(way, Way):
            out.append((word, way))
    return out
