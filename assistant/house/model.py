"""The vocabulary: the names that trees, drawings, checker, walker and rig share.

Read from house.yaml, cautions.yaml and sources.yaml; see assistant/house/load.py.
Numbers with a unit are kept as intervals in SI beside the unit they were written in.
"""

from __future__ import annotations

from dataclasses import dataclass, field

from assistant.house.place import Place
from assistant.quantity.interval import Interval


@dataclass(frozen=True)
class Circuit:
    """A circuit whose power state the walk keeps; `pairs` are the readings that prove it dead."""

    name: str
    title: str
    make_dead: str
    restore: str | None
    fed_by: str | None
    pairs: tuple[tuple[str, str], ...]
    place: Place
    caution: str | None = None
    """The caution of every reading that is taken on it live."""
    up_to: dict[str, float] = field(default_factory=dict)
    """Quantity -> the highest value (SI) that a fault can put there, so that it is no slip of the key."""
    loads: tuple[str, ...] = ()
    """The spots at which each of its loads is measured before what had tripped is closed."""


@dataclass(frozen=True)
class Around:
    """What goes with something that is read or watched: the power state in which alone it tells anything,
    its cautions, and `up_to`, the highest value (SI) that a fault can bring there."""

    needs: dict[str, str] = field(default_factory=dict)
    caution: tuple[str, ...] = ()
    up_to: float | None = None


@dataclass(frozen=True)
class Point:
    """A spot where a lead, hose or probe goes. `circuit` is None where `of` names another medium."""

    name: str
    label: str
    circuit: str | None
    of: str | None
    drawing: str
    place: Place
    caution: str | None = None
    """The caution of every reading that is taken there."""
    opens: str | None = None
    """What is opened to read there that not every shop's people may."""
    words: tuple[str, ...] = ()
    """What a page that reads there says of it, all of them; one may be a choice, as in "hot|black"."""
    reads: dict[str, Around] = field(default_factory=dict)
    """Quantity that can be read there -> what goes with it. Empty: any."""


@dataclass(frozen=True)
class Thing:
    """Something that is seen, heard or smelled, with the words it can be described by."""

    name: str
    title: str
    values: tuple[str, ...]
    drawing: str | None
    place: Place
    needs: dict[str, str] = field(default_factory=dict)
    """The power state in which alone it can be looked at: with a hand in it, or only while it runs."""
    caution: tuple[str, ...] = ()
    hidden: bool = False
    """It can't always be got at: behind a panel, on a roof, in another house's history."""
    good: tuple[str, ...] = ()
    """Those of `values` that show nothing wrong by themselves."""


@dataclass(frozen=True)
class Act:
    """Something a person does. `sets` gives circuits their new state; `undo` names the act that must follow
    before signing; `fits` the part put in; `counts` a tally the trail keeps (such as breaker resets)."""

    name: str
    say: str
    sets: dict[str, str]
    undo: str | None
    fits: str | None
    counts: str | None
    place: Place
    needs: dict[str, str] = field(default_factory=dict)
    """Power state that the act itself asks for, such as {line: dead} for fitting a part."""
    opens: str | None = None
    """What it opens that not every shop's people may."""
    plate: tuple[str, ...] = ()
    """Values of the rating plate that are printed on the part: read anew once another is in."""
    caution: tuple[str, ...] = ()
    words: tuple[str, ...] = ()
    """What a step that has it done says, as in Point."""
    sees: str | None = None
    """What it shows when it is done: a thing of `seen`. It counts as done only where that is `good`."""
    good: str | None = None
    stop: str | None = None
    """The stop page where it is not good and can't be put right."""
    settings: tuple[str, ...] = ()
    """What was written down as found that it puts back: shown beside it."""
    rests: bool = False
    """True for one that is safe to stay so while the work is interrupted, though it must be undone."""
    warns: tuple[str, ...] = ()
    """Cautions shown to whoever does it, which a step need not carry."""


@dataclass(frozen=True)
class Part:
    """A part that can be condemned. A safety guards a condition that must be shown normal first. One that
    does not `costs` (a hose off, a bracket) is corrected on sight.
    """

    name: str
    title: str
    safety: bool
    guards: str | None
    place: Place
    costs: bool = True
    matches: tuple[str, ...] = ()
    """What a substitute must not differ in."""
    plate: tuple[str, ...] = ()
    """The plate values that it is chosen by."""
    together: tuple[str, ...] = ()
    """What is ordered with it."""
    dies_of: tuple[str, ...] = ()
    """Cause trees that every finding which condemns it walks."""


@dataclass(frozen=True)
class PlateValue:
    """A number on the rating plate. `span` is every value it can have (SI); `choices` where only some exist.
    """

    name: str
    title: str
    kind: str
    unit: str
    span: Interval
    choices: tuple[float, ...]
    over: str | None
    by: Interval | None
    where: str
    place: Place
    unreadable: str | None = None
    """What to look at where the plate can't be read."""


@dataclass(frozen=True)
class Caution:
    """A safety message with its signal word (ANSI Z535.6, ISO 3864): danger, warning, caution or notice."""

    name: str
    word: str
    short: str
    full: str
    place: Place


@dataclass(frozen=True)
class StopPage:
    """What to do now: at most three lines, readable from two metres; `also` for the write-up from the van."""

    name: str
    title: str
    lines: tuple[str, ...]
    also: tuple[str, ...]
    place: Place
    no_heat: bool = False
    """True where the heater stays off, so that the house needs a plan for the night."""
    cleared_by: tuple[str, ...] = ()
    """Who alone may say that people may go back in; empty where leaving the page needs nobody."""


@dataclass(frozen=True)
class Tonight:
    """A house left without heat: against freezing, safe heat until then, the people. `mark` as in Source."""

    title: str
    freeze: tuple[str, ...]
    heat: tuple[str, ...]
    people: tuple[str, ...]
    mark: str

    @property
    def parts(self) -> tuple[tuple[str, tuple[str, ...]], ...]:
        """(heading, lines), the people first."""
        return (
            ("The people", self.people),
            ("Safe heat until we are back", self.heat),
            ("Against freezing", self.freeze),
        )


@dataclass(frozen=True)
class Question:
    """One line of a sheet: free words, one of `choices`, or a number of `kind` in `unit`. `leave` gives
    the stop page of an answer; a number above `over` (SI) leads to `over_page`. A number with points `at`
    counts as a reading.
    """

    name: str
    words: str
    hint: str
    choices: tuple[str, ...]
    leave: dict[str, str]
    kind: str | None
    unit: str | None
    at: tuple[str, ...]
    over: float | None
    over_page: str | None
    place: Place | None = None


@dataclass(frozen=True)
class Sheet:
    """What is asked on one page around the walk; every line may stay empty."""

    name: str
    title: str
    say: str
    questions: dict[str, Question]
    mark: str
    place: Place


@dataclass(frozen=True)
class Known:
    """A reading that a visit to a healthy unit takes."""

    name: str
    words: str
    kind: str
    unit: str
    at: tuple[str, ...]
    hint: str
    caution: tuple[str, ...]
    place: Place


@dataclass(frozen=True)
class Source:
    """What a limit cites, and how it is known (`mark`)."""

    name: str
    title: str
    number: str
    year: str
    where: str
    mark: str
    place: Place
    limits: tuple[str, ...] = ()
    """The quantities that its numbers are about. Empty: any."""


MARKS = ("read", "computed", "reasoned", "common practice", "from memory")


@dataclass(frozen=True)
class Complaint:
    """What the customer says. `tree` is the complaint tree's name, or None where there is none yet."""

    name: str
    title: str
    words: str
    tree: str | None
    place: Place


@dataclass(frozen=True)
class Vocabulary:
    """Everything that has a fixed name."""

    circuits: dict[str, Circuit] = field(default_factory=dict)
    points: dict[str, Point] = field(default_factory=dict)
    seen: dict[str, Thing] = field(default_factory=dict)
    happens: dict[str, str] = field(default_factory=dict)
    watched: dict[str, Around] = field(default_factory=dict)
    """What goes with watching an event, for those that have something."""
    openings: dict[str, str] = field(default_factory=dict)
    """What only some shops' people may open, such as the breaker panel, each with its label."""
    acts: dict[str, Act] = field(default_factory=dict)
    conditions: dict[str, tuple[str, ...]] = field(default_factory=dict)
    parts: dict[str, Part] = field(default_factory=dict)
    plate: dict[str, PlateValue] = field(default_factory=dict)
    hazards: dict[str, str] = field(default_factory=dict)
    complaints: dict[str, Complaint] = field(default_factory=dict)
    cautions: dict[str, Caution] = field(default_factory=dict)
    stops: dict[str, StopPage] = field(default_factory=dict)
    sources: dict[str, Source] = field(default_factory=dict)
    sheets: dict[str, Sheet] = field(default_factory=dict)
    baseline: dict[str, Known] = field(default_factory=dict)
    spread: dict[str, float] = field(default_factory=dict)
    """Quantity -> by what share a healthy unit's reading may differ another day."""
    spread_mark: str = ""
    marks: dict[str, str] = field(default_factory=dict)
    """Section of house.yaml -> how well its facts are known, where one mark stands for all of them."""
    tonight: Tonight | None = None
