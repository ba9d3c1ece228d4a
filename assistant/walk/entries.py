"""A replay file: a list of entries in order, all values text, each turned into the event it stands for.

`TREE.STEP: text` answers a step (several readings or watched events: a map); `act.NAME` and `cause.STEP`
answer what follows a finding. Besides: `complaints`, `complaint`, `plate.NAME`, `reading`, `hazard`,
`cannot`, `still_true`, `instrument`, `back`, `pause`, `resume`, `note`, `as_found`, `settle`, `left`, `sign`,
`cleared` (who said that people may go back in after a stop),
and what is written around the walk (assistant/walk/entries_around.py).
"""

from __future__ import annotations

import difflib
from collections.abc import Callable
from dataclasses import dataclass

from assistant.house.place import Place, Problem
from assistant.house.reader import Fields, Items, Node, Text
from assistant.quantity.entry import Understood, understand
from assistant.tree.model import Measure, Watch
from assistant.walk.asked import asked
from assistant.walk.bench import BENCH
from assistant.walk.entries_around import AROUND
from assistant.walk.event import (
    AsFound,
    Back,
    Cannot,
    Concluded,
    Did,
    Event,
    GoOn,
    Hazard,
    InstrumentUsed,
    LeftOpen,
    Note,
    Paused,
    PlateRead,
    PutDown,
    Read,
    Resumed,
    Saw,
    Settled,
    Signed,
    StillTrue,
    TakeUp,
    Typed,
    Watched,
)
from assistant.walk.state import BadAnswer, Visit

WORDS = (
    "complaints",
    "complaint",
    "reading",
    "hazard",
    "cannot",
    "still_true",
    "instrument",
    "back",
    "pause",
    "resume",
    "note",
    "as_found",
    "settle",
    "left",
    "sign",
    "cleared",
    *AROUND,
    *BENCH,
)
REASONS = ("slip", "changed", "look")
GO_ON = "go on"
"""Leaves a page that asks nothing; any entry for what comes after does the same."""


@dataclass(frozen=True)
class Entry:
    """One line of a replay file: its key, its value and where it stands."""

    key: str
    value: Node
    place: Place

    @property
    def tree(self) -> str | None:
        """The tree that the entry speaks of, or None."""
        key = (
            self.value.value
            if self.key in ("cannot", "still_true", "back") and isinstance(self.value, Text)
            else self.key
        )
        return key.split(".", 1)[0] if "." in key else None


def read_entries(node: Node) -> tuple[list[Entry], list[Problem]]:
    """The entries of a replay file, and everything that is wrong with its shape."""
    if not isinstance(node, Items):
        return [], [
            Problem.at(node.place, "entries", "a replay file is a list; write each entry as `- key: text`")
        ]
    entries: list[Entry] = []
    problems: list[Problem] = []
    for item in node.items:
        if not isinstance(item, Fields) or len(item.entries) != 1:
            problems.append(
                Problem.at(item.place, "entries", "an entry has one key; write `- TREE.STEP: text`")
            )
            continue
        ((key, value),) = item.entries.items()
        if "." not in key and key not in WORDS:
            near = difflib.get_close_matches(key, WORDS, 1)
            hint = f"; did you mean '{near[0]}'?" if near else f"; there are: {', '.join(WORDS)}"
            problems.append(Problem.at(item.keys[key], "entries", f"'{key}' is no entry{hint}"))
            continue
        entries.append(Entry(key, value, item.keys[key]))
    return entries, problems


def complaints_of(entries: list[Entry], trees: dict[str, str]) -> tuple[str, ...]:
    """The complaints of the visit, as listed or as their trees are answered. `trees`: tree -> complaint."""
    for entry in entries:
        if entry.key == "complaints":
            return tuple(_texts(entry.value))
    named = [trees[entry.tree] for entry in entries if entry.tree in trees]
    return tuple(dict.fromkeys(named))


Make = Callable[[Visit], Event | None]
"""Makes an event from the visit as it is when its turn comes; None where there is nothing to do."""


def events_of(entry: Entry, at: str) -> list[Make]:
    """The events that an entry stands for. Each raises BadAnswer with a sentence when it can't be an answer.

    Pages that ask nothing are left, and a complaint is taken up, where the entry speaks of what comes after.
    """
    if entry.key == "complaints":
        return []
    ahead: list[Make] = []
    if entry.tree is not None and entry.key != "back" and not entry.key.startswith("plate."):
        ahead = [lambda now: _leave_page(now, entry, at), lambda now: _take_up(now, entry, at)]
    return [*ahead, lambda now: _event(now, entry, at)]


def _leave_page(visit: Visit, entry: Entry, at: str) -> Event | None:
    ask = asked(visit)
    if ask.kind not in ("finding", "handed_over", "stop"):
        return None
    itself = ask.step == _address(entry) and isinstance(entry.value, Text) and entry.value.value == GO_ON
    return None if itself else GoOn(at, ask.step)


def _take_up(visit: Visit, entry: Entry, at: str) -> Event | None:
    names = [c.name for c in visit.vocabulary.complaints.values() if c.tree == entry.tree]
    return TakeUp(at, names[0]) if names and asked(visit).kind in ("choose", "leave") else None


def _address(entry: Entry) -> str:
    return (
        entry.value.value
        if entry.key in ("cannot", "still_true") and isinstance(entry.value, Text)
        else entry.key
    )


def _event(visit: Visit, entry: Entry, at: str) -> Event:
    key, value = entry.key, entry.value
    if key.startswith("plate."):
        return PlateRead(at, key.split(".", 1)[1], _text(value))
    if "." in key:
        return _answer(visit, key, value, at)
    if key == "cleared":  # who said that people may go back in, and on
        return GoOn(at, asked(visit).step, _text(value))
    return SPECIAL[key](value, at)


def _answer(visit: Visit, address: str, value: Node, at: str) -> Event:
    """The answer to the step asked now; a step that is not asked is refused."""
    ask = asked(visit)
    if ask.kind == "plate":
        raise BadAnswer(
            f"{ask.step} first needs the plate value: write `- plate.{ask.plate}: ...` (or 'not readable')"
        )
    if ask.step != address:
        raise BadAnswer(f"{address} is not asked here; asked is: {ask.kind} {ask.step}".rstrip())
    if ask.kind == "look":
        return Saw(at, address, _text(value))
    if ask.kind == "do":
        return _did(ask.choices, address, value, at)
    if ask.kind == "conclude":
        return Concluded(at, address, _text(value))
    if ask.kind == "watch":
        assert isinstance(ask.body, Watch)
        return _watched(ask.body, address, value, at)
    if ask.kind == "measure":
        own = address.split(".", 1)[1]
        names = [reading.name or own for reading in ask.readings]
        if isinstance(ask.body, Measure) and ask.body.survey and isinstance(value, Fields):
            return Read(at, address, {name: _typed(node) for name, node in value.entries.items()})
        if isinstance(value, Fields) and not set(value.entries) <= {
            "text",
            "ago",
            "sure",
            "instrument",
            "chosen",
        }:
            return Read(at, address, {name: _typed(node) for name, node in value.entries.items()})
        return Read(at, address, {names[0]: _typed(value)})
    return GoOn(at, address)


def _did(results: tuple[str, ...], address: str, value: Node, at: str) -> Did:
    """`done`, `waited 5 min`, what it showed (a leak check), or a map of these with `number:` of a part."""
    if isinstance(value, Fields):
        waited = value.entries.get("waited")
        said = {name: _text(node) for name, node in value.entries.items()}
        seconds = _seconds(waited) if waited is not None else None
        return Did(at, address, seconds, said.get("saw", ""), said.get("number", ""))
    text = _text(value)
    return Did(at, address, _seconds(value), text if text in results else "")


def _watched(step: Watch, address: str, value: Node, at: str) -> Watched:
    if not isinstance(value, Fields):
        raise BadAnswer(
            f"{address} is a watch: write a map of events with their seconds, such as `inducer.runs: 3 s`"
        )
    events: dict[str, float] = {}
    readings: dict[str, Typed] = {}
    for name, node in value.entries.items():
        if name not in step.events:
            readings[name] = _typed(node)
        elif _text(node).strip().lower() not in ("", "no", "missing"):
            seconds = _seconds(node)
            if seconds is None:
                raise BadAnswer(f"'{_text(node)}' is no time for {name}: write seconds, such as 3 s, or 'no'")
            events[name] = seconds
    return Watched(at, address, events, readings)


def _typed(node: Node) -> Typed:
    """A typed reading: text, or a map of text, ago (minutes), sure, instrument, chosen."""
    if isinstance(node, Text):
        return Typed(node.value)
    if not isinstance(node, Fields) or "text" not in node.entries:
        raise BadAnswer("a reading is a text, or a map with `text:`")
    fields = {name: _text(value) for name, value in node.entries.items()}
    ago = fields.get("ago")
    return Typed(
        fields["text"],
        fields.get("instrument"),
        _minutes(ago) if ago else None,
        fields.get("sure", "").lower() in ("yes", "true"),
        fields.get("chosen"),
    )


def _minutes(text: str) -> float:
    got = understand(text, "duration", "min")
    if not isinstance(got, Understood):
        raise BadAnswer(f"'{text}' is no time: write minutes, such as 20 min")
    return got.interval.middle / 60


def _seconds(node: Node) -> float | None:
    """The seconds in a text such as `3 s`, `5 min` or `waited 2 min`; None where it holds no time."""
    got = understand(_text(node).lower().removeprefix("waited").strip(), "duration", "s")
    return got.interval.middle if isinstance(got, Understood) else None


def _text(node: Node) -> str:
    if not isinstance(node, Text):
        raise BadAnswer("this value is a text")
    return node.value


def _texts(node: Node) -> list[str]:
    return [_text(item) for item in node.items] if isinstance(node, Items) else [_text(node)]


def _field(node: Node, name: str) -> str:
    if not isinstance(node, Fields) or name not in node.entries:
        raise BadAnswer(f"this entry is a map and needs `{name}:`")
    return _text(node.entries[name])


def _put_down(node: Node, at: str) -> PutDown:
    if not isinstance(node, Fields) or "at" not in node.entries:
        raise BadAnswer("a reading needs `quantity:`, `at:` and `text:`")
    return PutDown(
        at,
        _field(node, "quantity"),
        tuple(_texts(node.entries["at"])),
        _typed(
            Fields(
                {name: value for name, value in node.entries.items() if name not in ("quantity", "at")},
                node.keys,
                node.place,
            )
        ),
    )


def _back(node: Node, at: str) -> Back:
    if isinstance(node, Text):
        return Back(at, node.value)
    why = _field(node, "why")
    if why not in REASONS:
        raise BadAnswer(f"'{why}' is not why one goes back: {', '.join(REASONS)}")
    return Back(at, _field(node, "step"), why)


SPECIAL: dict[str, Callable[[Node, str], Event]] = {
    "complaint": lambda node, at: TakeUp(at, _text(node)),
    "reading": _put_down,
    "hazard": lambda node, at: Hazard(at, _text(node)),
    "cannot": lambda node, at: (
        Cannot(at, _text(node))
        if isinstance(node, Text)
        else Cannot(at, _field(node, "step"), _field(node, "why"))
    ),
    "still_true": lambda node, at: StillTrue(at, _text(node)),
    "instrument": lambda node, at: InstrumentUsed(at, _text(node)),
    "back": _back,
    "pause": lambda node, at: Paused(at, _text(node)),
    "resume": lambda node, at: Resumed(at, _text(node)),
    "note": lambda node, at: Note(at, _text(node)),
    "as_found": lambda node, at: AsFound(
        at,
        {name: _text(value) for name, value in node.entries.items()}
        if isinstance(node, Fields)
        else {"seen": _text(node)},
    ),
    "settle": lambda node, at: Settled(at, _field(node, "complaint"), _field(node, "note")),
    "left": lambda node, at: LeftOpen(at, _field(node, "point"), _field(node, "why")),
    "sign": lambda node, at: Signed(at, _text(node)),
    **AROUND,
    **BENCH,
}
