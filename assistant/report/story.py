"""The story of a visit, in plain texts: what every report tells, without a word about how it looks on a page.

Times are ISO 8601 with their offset from UTC, as the trail holds them. Everything here is ready to be read;
an empty text or tuple means that there is nothing to tell.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from assistant.report.around import Beside

if TYPE_CHECKING:
    from assistant.report.zones import Zones

NO_NUMBER = "part number not written down"
PRACTICE = "PRACTICE. No house was visited"
"""On every page of what a drill gives."""
SLIP = "slip of the key"
"""A step that was taken back because nobody meant it."""


@dataclass(frozen=True)
class Measured:
    """One reading. `limit` says where it had to lie, `source` and `mark` how that is known; `remark` holds
    what is unusual about it (taken earlier, typed twice, chosen)."""

    what: str
    typed: str
    understood: str
    verdict: str = ""
    limit: str = ""
    source: str = ""
    mark: str = ""
    instrument: str = ""
    remark: str = ""
    plate: str = ""
    """The plate values that its limit is made of: "supply voltage 120 V"."""
    formula: str = ""
    should: str = ""
    """Where a normal reading lies, where the tree says which band is normal."""
    settles: str = ""
    """Where it was too close to call: what would have settled it."""


@dataclass(frozen=True)
class Row:
    """One thing that happened. `kind` is the step's verb, or note, plate, back, pause and the like.

    `taken_back` is "slip of the key", "changed my mind" or "gone over again" for a step that was rewound
    later.
    """

    number: int
    at: str
    kind: str
    asked: str
    answer: str = ""
    where: str = ""
    measured: tuple[Measured, ...] = ()
    remarks: tuple[str, ...] = ()
    photos: tuple[str, ...] = ()
    taken_back: str = ""


@dataclass(frozen=True)
class Photo:
    """A picture kept with the visit. `data` is None where it was erased or lost."""

    name: str
    caption: str
    at: str
    data: bytes | None


@dataclass(frozen=True)
class FoundForCustomer:
    """A finding as the customer reads it."""

    what: str
    how: tuple[Measured, ...]
    why: tuple[str, ...]
    done: tuple[str, ...]
    proof: tuple[Measured, ...]
    proved: str
    works: bool
    failed: bool = True
    """False where nothing was at fault."""
    before: tuple[Measured | None, ...] = ()
    """For each reading of `proof`, the same one before the repair; None where there was none."""
    places: str = ""
    """Which grilles it concerned, where a survey of them was made."""


@dataclass(frozen=True)
class ComplaintForCustomer:
    """One complaint: the customer's own words, how it stands, what was found."""

    words: str
    standing: str
    found: tuple[FoundForCustomer, ...] = ()


@dataclass(frozen=True)
class CustomerPage:
    """Results, in plain and kind words; nothing of what was typed on the way."""

    person: tuple[tuple[str, str], ...]
    complaints: tuple[ComplaintForCustomer, ...]
    still_to_do: tuple[str, ...]
    cautions: tuple[str, ...]


@dataclass(frozen=True)
class FindingTold:
    """A finding with everything behind it, for the next technician and the warranty desk."""

    title: str
    complaint: str
    at: str
    where: str
    kind: str
    """"part" (something failed), "no fault" or "stop"."""
    part: str
    facts: tuple[Measured, ...]
    causes: tuple[tuple[str, str], ...]
    """(cause, what came of it)."""
    repaired: tuple[str, ...]
    proof: str
    proof_readings: tuple[Measured, ...]
    reason: str = ""
    advice: str = ""
    before: tuple[Measured | None, ...] = ()
    """As in FoundForCustomer, for `proof_readings`."""
    places: tuple[str, ...] = ()
    """Registers with air in the wrong call, where a survey of them was made, and what does not fit to the
    customer's words.
    """


@dataclass(frozen=True)
class PartFitted:
    """`part` is its name in house.yaml; `costs` is False for what is corrected on sight (a hose, a wire) and
    has no number.
    """

    part: str
    title: str
    at: str
    number: str = ""
    costs: bool = True

    @property
    def number_words(self) -> str:
        """The number, or that nobody wrote it down; empty for what has none."""
        if self.number:
            return f"part number {self.number}"
        return NO_NUMBER if self.costs else ""


@dataclass(frozen=True)
class StopTold:
    """A stop page that was reached: its lines are for the technician on the spot."""

    title: str
    at: str
    where: str
    lines: tuple[str, ...]
    also: tuple[str, ...]
    taken_back: str = ""
    """As in Row: the step that led here was rewound."""


@dataclass(frozen=True)
class Story:
    """A visit, told once; every format writes this and nothing else."""

    began: str
    last: str
    standing: str
    """Signed by whom and when, or what it still is."""
    practice: bool
    fingerprint: str
    notice: tuple[str, ...]
    customer: CustomerPage
    complaints: tuple[tuple[str, str], ...]
    """(complaint, how it stands) in the trade's words."""
    plate: tuple[tuple[str, str], ...]
    findings: tuple[FindingTold, ...]
    stops: tuple[StopTold, ...]
    hand_overs: tuple[str, ...]
    still_unproved: tuple[str, ...]
    open_points: tuple[tuple[str, str], ...]
    """(what, why it was left open)."""
    parts_fitted: tuple[PartFitted, ...]
    instruments: tuple[str, ...]
    rows: tuple[Row, ...]
    photos: tuple[Photo, ...]
    remarks: tuple[str, ...]
    """About the trail itself: a clock set back, a line set aside, lines that this version can't follow."""
    trees: tuple[tuple[str, str], ...]
    """(file, SHA-256) of the tree texts that the visit was walked with."""
    beside: Beside = field(default_factory=Beside)
    """Everything around the walk."""
    zones: Zones | None = None
    """What the last zone survey says, where one was made."""
    zone_picture: bytes | None = None
    """The same drawn, as PNG, where that can be done."""
