"""The state of a visit: position, house and readings, as frozen records.

Position is where the walk stands and is what Back rewinds. The house and the readings are never rewound.
"""

from __future__ import annotations

from dataclasses import dataclass, field, replace

from assistant.tree.library import Library
from assistant.walk.ask import Found, Record, Taken
from assistant.walk.earlier_visit import Past
from assistant.walk.event import Advised, AsFound, AsLeft, Event, Hazard, Note
from assistant.walk.house import House, as_met
from assistant.walk.shop import Shop


class BadAnswer(Exception):
    """The answer can't be taken; the text is a sentence for the person, and nothing has changed."""


class OutOfOrder(Exception):
    """An event that the visit does not ask for now: a mistake of the program that sent it."""


@dataclass(frozen=True)
class Frame:
    """One tree being walked. `why`: 'walk', 'call', 'front' (put in front by the walker), 'cause' or
    'proof'.
    """

    tree: str
    step: str
    why: str = "walk"
    circuit: str | None = None
    names: dict[str, int] = field(default_factory=dict)
    """Reading name -> index into Visit.readings, for this tree."""
    reason: str | None = None
    asked_for: tuple[str, str] | None = None
    """For a procedure put in front: the circuit and the state that was wanted."""
    tried: tuple[tuple[str, str], ...] = ()
    """Procedures that were already put in front of the present step."""

    @property
    def address(self) -> str:
        return f"{self.tree}.{self.step}"


@dataclass(frozen=True)
class Position:
    """Where the walk stands. `stage`: 'walking', or what follows the last finding: 'finding', 'cause',
    'conclude', 'repair', 'proof'; or an end: 'stop', 'handed_over', 'done'."""

    stack: tuple[Frame, ...] = ()
    stage: str = "walking"
    index: int = 0
    """Which cause or which act of the repair; in a proof, how long the path was when it began."""
    page: str | None = None
    """The stop page shown."""
    to: str | None = None
    """The complaint handed over to."""
    retaking: str | None = None
    """The step whose reading was too close to call and is taken once more."""
    hold: bool = False
    """True after Back: the step is asked again even where an earlier reading would answer it."""

    @property
    def top(self) -> Frame:
        return self.stack[-1]


@dataclass(frozen=True)
class ComplaintState:
    """`status`: open, walking, found, stopped, handed_over, settled or proved."""

    name: str
    words: str
    status: str = "open"
    note: str = ""


@dataclass(frozen=True)
class Mark:
    """What Back restores: the position before a step was answered, and the findings made up to then."""

    position: Position
    found: tuple[Found, ...]
    status: str


@dataclass(frozen=True)
class WalkRecord:
    """A walk of one complaint that has ended or was left."""

    complaint: str
    taken: tuple[Taken, ...]
    end: str


@dataclass(frozen=True)
class Visit:
    """One trip to one address: everything that the events so far amount to."""

    library: Library
    house: House
    events: tuple[Event, ...] = ()
    complaints: tuple[ComplaintState, ...] = ()
    complaint: str | None = None
    """The complaint being walked."""
    position: Position | None = None
    path: tuple[Taken, ...] = ()
    marks: tuple[Mark, ...] = ()
    walks: tuple[WalkRecord, ...] = ()
    history: tuple[Taken, ...] = ()
    readings: tuple[Record, ...] = ()
    slips: tuple[Record, ...] = ()
    """Readings taken back as a slip of the key: on record, and never offered again."""
    put_down: tuple[int, ...] = ()
    """Indices of readings put down out of order that no step has used yet."""
    plate: dict[str, Record | str] = field(default_factory=dict)
    found: tuple[Found, ...] = ()
    notes: tuple[Note, ...] = ()
    as_found: AsFound | None = None
    person: str | None = None
    paused: str | None = None
    signed: str | None = None
    left: dict[str, str] = field(default_factory=dict)
    hazards: tuple[Hazard, ...] = ()
    instrument: str | None = None
    shop: Shop = field(default_factory=Shop)
    sheets: dict[str, dict[str, str]] = field(default_factory=dict)
    """Sheet -> question -> answer, of what was filled in around the walk."""
    as_left: AsLeft | None = None
    advice: tuple[Advised, ...] = ()
    past: tuple[Past, ...] = ()
    """Our earlier visits here, the latest first."""
    numbers: dict[str, str] = field(default_factory=dict)
    """Part -> part number of what was fitted last, as typed."""
    out: str = ""
    """The stop page from which everybody left and that nobody has cleared yet."""
    fresh: int = 0
    """Readings before this one are not offered again: everybody had to leave since."""

    @property
    def vocabulary(self):
        return self.library.vocabulary

    def step(self, address: str):
        """(tree, step) at an address such as no_heat.volts."""
        return self.library.step(address)

    def state_of(self, complaint: str) -> ComplaintState | None:
        return next((c for c in self.complaints if c.name == complaint), None)

    def with_status(self, complaint: str | None, status: str, note: str | None = None) -> Visit:
        changed = tuple(
            replace(c, status=status, note=c.note if note is None else note) if c.name == complaint else c
            for c in self.complaints
        )
        return replace(self, complaints=changed)

    def at(self, position: Position | None) -> Visit:
        return replace(self, position=position)


def begin(library: Library) -> Visit:
    """A visit to which nothing has happened yet: every circuit unknown."""
    return Visit(library, as_met(library.vocabulary))
