"""What a visit asks now, and what it has worked out so far: the records that drivers and reports read."""

from __future__ import annotations

from dataclasses import dataclass, field

from assistant.quantity.interval import Interval
from assistant.tree.model import Band, Finding, Reading, Return, Step, Stop, Tree
from assistant.walk.event import Typed


@dataclass(frozen=True)
class Verdict:
    """The first and last band that an interval allows. Decided when they are the same band."""

    value: Interval
    bands: tuple[Band, ...]
    edges: tuple[Interval | None, ...]
    """Each band's limit in SI, as an interval (an unread plate value is its whole range); None: no limit."""
    first: int
    last: int
    unsafe: bool = False
    safe_over: Interval | None = None
    safe_under: Interval | None = None
    chances: tuple[float, ...] = ()
    """The chance of each band, kept for the trail; it decides nothing."""

    @property
    def decided(self) -> bool:
        return bool(self.bands) and self.first == self.last and not self.unsafe

    @property
    def band(self) -> Band | None:
        return self.bands[self.first] if self.decided else None

    @property
    def words(self) -> str:
        """The verdict in words: the band's, 'unsafe', 'too close to call' or 'recorded' (no bands)."""
        if self.unsafe:
            return "unsafe"
        if not self.bands:
            return "recorded"
        if self.decided:
            return self.bands[self.first].label
        return "too close to call"


@dataclass(frozen=True)
class Record:
    """One reading as it counts in the visit: typed, understood, judged."""

    name: str
    kind: str
    unit: str
    points: tuple[str, ...]
    epochs: tuple[tuple[str, int], ...]
    typed: Typed
    value: Interval
    echo: str
    verdict: Verdict | None
    at: str
    computed: str | None = None
    """For a compute: the formula with the numbers in it."""
    parts: tuple[tuple[int, float], ...] = ()
    """(index of a reading in the visit, its signed standard-uncertainty contribution in SI)."""
    exact: bool = True
    """False where an instrument's accuracy or a computed uncertainty widened the value."""
    settles: str = ""
    """Where it is too close to call: what would settle it, in words."""


@dataclass(frozen=True)
class Taken:
    """A step that was answered, on the effective path. `answer` in words; `way` the step it led to."""

    step: str
    verb: str
    answer: str
    way: str | None
    at: str
    records: tuple[Record, ...] = ()
    inserted: bool = False
    passed: bool = False
    """True where a reading put down earlier answered it without asking."""
    undecided: bool = False
    number: int = 0


@dataclass(frozen=True)
class OpenPoint:
    """Something that is not closed yet. `kind`: complaint, cause, part, proof, undo, power, note."""

    key: str
    kind: str
    words: str
    left: str | None = None


@dataclass(frozen=True)
class Cause:
    """What a cause tree came back with: 'found' or 'ruled_out'; or the person's conclusion 'worn'/'not
    found'.
    """

    tree: str
    title: str
    outcome: str
    back: Return | None = None


@dataclass(frozen=True)
class Found:
    """A finding reached on a walk, with everything that follows it."""

    step: str
    complaint: str
    finding: Finding | Stop
    facts: tuple[Record, ...]
    at: str
    causes: tuple[Cause, ...] = ()
    concluded: str | None = None
    repaired: tuple[str, ...] = ()
    proof: str | None = None
    """None: not walked yet; 'proved'; 'not_proved'; 'none' where the finding needs no proof."""
    proof_records: tuple[Record, ...] = ()
    cut_short: tuple[str, ...] = ()
    """Waits of the proof that were shorter than asked, as sentences: it is then not fully shown."""


@dataclass(frozen=True)
class Ask:
    """What is asked now.

    kind: 'choose' (which complaint next), 'plate', 'look', 'watch', 'measure', 'do', 'finding', 'conclude'
    (why did it fail), 'stop', 'handed_over', 'notes' (a complaint without a tree), 'paused', 'leave' (nothing
    is left to ask; hand over), 'signed'.
    """

    kind: str
    step: str = ""
    tree: Tree | None = None
    body: Step | None = None
    circuit: str | None = None
    """What $circuit stands for in this procedure."""
    in_front: str | None = None
    """Why this procedure stands in front: "the next reading needs the line circuit proved dead"."""
    readings: tuple[Reading, ...] = ()
    """The readings to take, with $circuit replaced."""
    offer: tuple[Record, ...] = ()
    """Earlier readings of this very step's identity: "24.6 V at 9:14: still true?"."""
    retake: bool = False
    """Too close to call: take it once more."""
    plate: str | None = None
    page: str | None = None
    """The stop page's name."""
    finding: Found | None = None
    say: str = ""
    """The question or instruction, ready to show."""
    choices: tuple[str, ...] = ()
    complaint: str | None = None
    untold: tuple[str, ...] = ()
    """What this step opens and nobody has said yet whether the shop's people may."""
    env: dict[str, Interval] = field(default_factory=dict)
    """Values that this step's limits can use (SI)."""
    act: str | None = None
    """Of something to do: the act of the house that it is."""
