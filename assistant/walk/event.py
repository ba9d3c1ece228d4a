"""Everything that can happen in a visit, as frozen records. A visit is the fold of these, nothing else.

Events carry inputs only: the typed text, who measured with what, when. What they mean is worked out again
each time (assistant/walk/visit.py). `at` is a time with its offset from UTC, given by the driver: nothing in
walk/ reads a clock. Step addresses are `tree.step`.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Union

from assistant.walk.earlier_visit import Past


@dataclass(frozen=True)
class Typed:
    """What was typed for one reading. `ago` is minutes before `at` that it was taken; `sure` confirms an
    implausible value; `chosen` is the reading of an ambiguous text ("1,200") that the person picked."""

    text: str
    instrument: str | None = None
    ago: float | None = None
    sure: bool = False
    chosen: str | None = None


@dataclass(frozen=True)
class Opened:
    """The visit begins."""

    at: str
    complaints: tuple[tuple[str, str], ...]
    """(complaint name, the customer's own words), in the order to take them up."""
    files: dict[str, str] = field(default_factory=dict)
    """Tree file -> sha256 of the text it is walked with."""
    shop: dict = field(default_factory=dict)
    program: str = ""
    practice: bool = False


@dataclass(frozen=True)
class TakeUp:
    """Begin (or begin again) the walk of a complaint."""

    at: str
    complaint: str


@dataclass(frozen=True)
class Read:
    """The readings of a measure step."""

    at: str
    step: str
    readings: dict[str, Typed]
    """Reading name (the step name where a single reading has none) -> what was typed."""


@dataclass(frozen=True)
class Saw:
    """The answer of a look step."""

    at: str
    step: str
    value: str


@dataclass(frozen=True)
class Watched:
    """A start that was watched, and the readings filled in after it."""

    at: str
    step: str
    events: dict[str, float]
    """Event -> seconds from the start of the watch; an event that did not happen is left out."""
    readings: dict[str, Typed] = field(default_factory=dict)


@dataclass(frozen=True)
class Did:
    """A do step done. `waited` in seconds; `saw`: what it showed (a leak check); `number`: of a part."""

    at: str
    step: str
    waited: float | None = None
    saw: str = ""
    number: str = ""


@dataclass(frozen=True)
class Cannot:
    """The step asked can't be taken."""

    at: str
    step: str
    why: str = ""


@dataclass(frozen=True)
class StillTrue:
    """The earlier readings of this step, offered again, still hold."""

    at: str
    step: str


@dataclass(frozen=True)
class GoOn:
    """Leave a page that asks nothing for what comes next. `cleared`: who said that people may go back in."""

    at: str
    step: str
    cleared: str = ""


@dataclass(frozen=True)
class Concluded:
    """Why it failed when no cause was found: 'worn' or 'not found', with the causes ruled out."""

    at: str
    step: str
    answer: str


@dataclass(frozen=True)
class PutDown:
    """A reading already taken, put down out of order."""

    at: str
    kind: str
    points: tuple[str, ...]
    typed: Typed


@dataclass(frozen=True)
class PlateRead:
    """`text` is the value as typed, or 'not readable'."""

    at: str
    name: str
    text: str
    equipment: str = "as found"


@dataclass(frozen=True)
class Hazard:
    """Something that stops the work at once, from any step."""

    at: str
    name: str


@dataclass(frozen=True)
class Back:
    """Position goes back to `step`; the house does not. `why`: 'slip' (of the key), 'changed' (my mind) or
    'look'.
    """

    at: str
    step: str
    why: str = "look"


@dataclass(frozen=True)
class Paused:
    """The visit is interrupted, with the reason."""

    at: str
    why: str


@dataclass(frozen=True)
class Resumed:
    """The visit is taken up again, perhaps by somebody else."""

    at: str
    by: str = ""


@dataclass(frozen=True)
class ShopMay:
    """What the shop's people may open, asked once where its file says nothing: opening -> 'yes' or 'no'."""

    at: str
    may: dict[str, str]


@dataclass(frozen=True)
class Note:
    """Free words or a photo, fixed to a step where there is one."""

    at: str
    text: str
    step: str | None = None
    photo: str | None = None
    """sha256 of the kept file, where the note is a picture."""


@dataclass(frozen=True)
class AsFound:
    """What was found before anything was touched: thing -> words (code light, switch, thermostat, ...)."""

    at: str
    seen: dict[str, str]
    photos: tuple[str, ...] = ()


@dataclass(frozen=True)
class Person:
    """Customer data lie in kept/ under this sha256, so that they can be erased and the chain stays whole."""

    at: str
    kept: str


@dataclass(frozen=True)
class Settled:
    """A complaint without a tree, or one closed with words, is settled with a note."""

    at: str
    complaint: str
    note: str


@dataclass(frozen=True)
class LeftOpen:
    """An open point that stays open when leaving, with the reason."""

    at: str
    point: str
    why: str


@dataclass(frozen=True)
class InstrumentUsed:
    """The instrument used from here on, unless a reading names another."""

    at: str
    name: str


@dataclass(frozen=True)
class Filled:
    """A sheet around the walk (house.yaml): question -> what was written or chosen. A later one adds."""

    at: str
    sheet: str
    answers: dict[str, str]
    photos: tuple[str, ...] = ()


@dataclass(frozen=True)
class AsLeft:
    """How it is left, set beside how it was found: thing -> words."""

    at: str
    seen: dict[str, str]
    photos: tuple[str, ...] = ()


@dataclass(frozen=True)
class Advised:
    """A recommendation with its reason and the number that shows it. `answer`: '' (not asked yet),
    'accepted', 'declined' or 'thinks about it'; a later one for the same `what` takes its place.
    """

    at: str
    what: str
    why: str
    number: str = ""
    answer: str = ""


@dataclass(frozen=True)
class WorkedOut:
    """A computation worked out by hand on the workbench. `given`: argument -> what was typed, with its unit.
    The rest are copies of what came out, for a reader without the program.
    """

    at: str
    function: str
    given: dict[str, str]
    result: str
    formula: str = ""
    source: str = ""


@dataclass(frozen=True)
class Recalled:
    """Our earlier visits, the latest first, as they were when this one was recorded."""

    at: str
    visits: tuple[Past, ...]


@dataclass(frozen=True)
class Exported:
    """A report was made; `fingerprint` is the trail's tip before this event."""

    at: str
    file: str
    fingerprint: str


@dataclass(frozen=True)
class Signed:
    """The visit is closed and signed."""

    at: str
    name: str


@dataclass(frozen=True)
class Recovered:
    """A torn last line was copied aside and cut: `bytes` of it, into the file `aside`."""

    at: str
    bytes: int
    aside: str


@dataclass(frozen=True)
class Unknown:
    """A kind that this version doesn't know: kept as it is and shown."""

    at: str
    kind: str
    fields: dict


Event = Union[
    Opened,
    TakeUp,
    Read,
    Saw,
    Watched,
    Did,
    Cannot,
    StillTrue,
    GoOn,
    Concluded,
    PutDown,
    PlateRead,
    Hazard,
    Back,
    Paused,
    Resumed,
    Note,
    AsFound,
    Person,
    Settled,
    LeftOpen,
    InstrumentUsed,
    ShopMay,
    Filled,
    AsLeft,
    Advised,
    Recalled,
    WorkedOut,
    Exported,
    Signed,
    Recovered,
    Unknown,
]

KINDS: dict[str, type] = {
    "opened": Opened,
    "take_up": TakeUp,
    "read": Read,
    "saw": Saw,
    "watched": Watched,
    "did": Did,
    "cannot": Cannot,
    "still_true": StillTrue,
    "go_on": GoOn,
    "concluded": Concluded,
    "put_down": PutDown,
    "plate": PlateRead,
    "hazard": Hazard,
    "back": Back,
    "paused": Paused,
    "resumed": Resumed,
    "note": Note,
    "as_found": AsFound,
    "person": Person,
    "settled": Settled,
    "left_open": LeftOpen,
    "instrument": InstrumentUsed,
    "shop_may": ShopMay,
    "filled": Filled,
    "as_left": AsLeft,
    "advised": Advised,
    "recalled": Recalled,
    "worked_out": WorkedOut,
    "exported": Exported,
    "signed": Signed,
    "recovered": Recovered,
}
