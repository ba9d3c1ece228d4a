"""What a debrief needs, kept while it is not ready: a program that was closed meanwhile goes on with it."""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping
from dataclasses import asdict, dataclass, fields
from pathlib import Path

from assistant.drill.kit import PERFECT, STATED
from assistant.drill.practice.calls import Call
from assistant.drill.practice.drill import Drill
from assistant.drill.practice.entry import Entry, Log, Unsafe
from assistant.errors import UserError
from assistant.quantity.instrument import Instrument

FILE = "unfinished.json"


@dataclass(frozen=True)
class _House:
    """What the debrief asks of the house: whether a fault that comes and goes was there at the end."""

    present: bool


@dataclass(frozen=True)
class _Noted:
    """Everything that was done to the house."""

    rig: _House
    calls: list[Call]


@dataclass(frozen=True)
class Ended:
    """A drill that was ended, as its debrief sees it."""

    drill: Drill
    way: str
    log: Log
    rig: _Noted
    minutes: float
    wall_minutes: float
    apprentice: str
    began: str


def keep_unfinished(folder: Path, apprentice: str, began: str, work) -> None:
    """Write down what the debrief of `work` needs. Raises UserError."""
    page = {
        "practice": True,
        "apprentice": apprentice,
        "began": began,
        "drill": work.drill.name,
        "way": work.way,
        "minutes": work.minutes,
        "wall_minutes": work.wall_minutes,
        "present": work.rig.rig.present,
        "log": asdict(work.log),
        "calls": [[call.kind, _plain(call.what), _plain(call.gave)] for call in work.rig.calls],
    }
    try:
        folder.mkdir(parents=True, exist_ok=True)
        beside = folder / f"{FILE}.part"
        beside.write_text(json.dumps(page, ensure_ascii=False), encoding="utf-8")
        beside.replace(folder / FILE)
    except OSError as problem:
        raise UserError(f"The debrief can't be kept in {folder} ({problem.strerror}).") from problem


def finished(folder: Path) -> None:
    """The debrief is there: what it needed is not needed any more."""
    (folder / FILE).unlink(missing_ok=True)


def unfinished(root: Path, drills: Mapping[str, Drill]) -> Iterator[tuple[Path, Ended]]:
    """The drills whose debrief is still to be worked out, each with its folder. What can't be read, and a
    drill that is not there any more, is passed over.
    """
    for path in sorted(root.glob(f"*/*/{FILE}")):
        try:
            page = json.loads(path.read_text(encoding="utf-8"))
            drill = drills[page["drill"]]
            yield path.parent, _ended(page, drill)
        except (OSError, ValueError, KeyError, TypeError, AttributeError):
            continue


def _ended(page: Mapping, drill: Drill) -> Ended:
    known = page["log"]
    log = Log(
        [_entry(one) for one in known["entries"]],
        [Unsafe(**one) for one in known["unsafe"]],
        known["finding"],
        known["first_finding"],
        known["cause"],
        known["sentence"],
    )
    calls = [Call(kind, _what(what), _tuples(gave)) for kind, what, gave in page["calls"]]
    return Ended(
        drill,
        page["way"],
        log,
        _Noted(_House(bool(page["present"])), calls),
        float(page["minutes"]),
        float(page["wall_minutes"]),
        page["apprentice"],
        page["began"],
    )


def _entry(one: Mapping) -> Entry:
    lists = ("points", "told")
    return Entry(
        **{each.name: _tuples(one[each.name]) for each in fields(Entry) if each.name not in lists},
        **{name: tuple(one[name]) for name in lists},
    )


def _plain(value: object) -> object:
    """Instruments by their names, everything else as it is."""
    if isinstance(value, Instrument):
        return {"instrument": value.name, "stated": STATED.get(value.name) == value}
    if isinstance(value, (tuple, list)):
        return [_plain(one) for one in value]
    return value


def _what(value: object) -> object:
    if isinstance(value, dict):
        return (STATED if value["stated"] else PERFECT)[value["instrument"]]
    return tuple(_what(one) for one in value) if isinstance(value, list) else value


def _tuples(value: object) -> object:
    return tuple(_tuples(one) for one in value) if isinstance(value, list) else value
