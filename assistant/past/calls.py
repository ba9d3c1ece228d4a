"""What our own calls say: findings per complaint and how often they held, steps that cost most, readings that
never changed anything. Counts of the shop's visits, no more; practice is not among them.
"""

from __future__ import annotations

import csv
import io
from bisect import bisect_right
from dataclasses import astuple, dataclass, fields
from datetime import datetime, timedelta

from assistant.past.store import Store
from assistant.plain import harmless
from assistant.trail.clock import moment

CALL_BACK_DAYS = 60
FEW = 5
"""A reading has to be taken so many times before "it never changed anything" is said of it."""


@dataclass(frozen=True)
class FindingCount:
    """A finding of one complaint. Of the visits it was reached in: `held` had no call from that address for
    60 days, `came_back` had one, `too_early` ended less than 60 days ago, `unknown` have no address.
    """

    complaint: str
    step: str
    title: str
    visits: int
    held: int
    came_back: int
    too_early: int
    unknown: int


@dataclass(frozen=True)
class StepCost:
    """Minutes between the answer before a step and its own."""

    complaint: str
    step: str
    times: int
    mean_minutes: float
    total_minutes: float


@dataclass(frozen=True)
class NeverChanged:
    """A step that was answered often and always led the same way."""

    complaint: str
    step: str
    times: int
    way: str
    minutes: float


def findings(store: Store, today: str) -> list[FindingCount]:
    """The most frequent first. `today` is a time with its offset."""
    now = moment(today)
    assert now is not None, f"{today!r} is no time"
    calls = _calls(store)
    counts: dict[tuple[str, str], dict] = {}
    rows = store.base.execute(
        "select found.complaint, found.step, found.title, visit.id, visit.place, visit.last"
        " from found join visit on visit.id = found.visit order by found.visit, found.rowid"
    )
    # One finding counts once in a visit, however often it was walked to.
    for (complaint, step, visit), (title, place, last) in {
        (complaint, step, visit): (title, place, last) for complaint, step, title, visit, place, last in rows
    }.items():
        count = counts.setdefault(
            (complaint, step), {"title": title, "held": 0, "back": 0, "early": 0, "unknown": 0}
        )
        ended = moment(last)
        if not place or ended is None:
            count["unknown"] += 1
            continue
        until = ended + timedelta(days=CALL_BACK_DAYS)
        if _called_back(calls.get(place, []), visit, ended, until):
            count["back"] += 1
        elif now < until:
            count["early"] += 1
        else:
            count["held"] += 1
    out = [
        FindingCount(
            complaint,
            step,
            c["title"],
            c["held"] + c["back"] + c["early"] + c["unknown"],
            c["held"],
            c["back"],
            c["early"],
            c["unknown"],
        )
        for (complaint, step), c in counts.items()
    ]
    return sorted(out, key=lambda each: (-each.visits, each.complaint, each.step))


def _called_back(calls: list[tuple[datetime, int]], visit: int, ended: datetime, until: datetime) -> bool:
    """Whether another visit to the address began after `ended` and not after `until`; `calls` in order."""
    place = bisect_right(calls, ended, key=lambda call: call[0])
    while place < len(calls) and calls[place][0] <= until:
        if calls[place][1] != visit:
            return True
        place += 1
    return False


def _calls(store: Store) -> dict[str, list[tuple[datetime, int]]]:
    """Address -> (when it began, visit) of each visit that was made for a complaint, in order."""
    out: dict[str, list[tuple[datetime, int]]] = {}
    for visit, place, began in store.base.execute(
        "select id, place, began from visit where place != '' and complaints != '[]' and not practice"
    ):
        when = moment(began)
        if when is not None:
            out.setdefault(place, []).append((when, visit))
    for calls in out.values():
        calls.sort()
    return out


def step_costs(store: Store) -> list[StepCost]:
    """Where the time goes: the step with the most minutes in all first."""
    rows = store.base.execute(
        "select complaint, step, count(*), avg(minutes), sum(minutes) from taken where minutes is not null"
        " group by complaint, step having sum(minutes) > 0 order by sum(minutes) desc, complaint, step"
    )
    return [StepCost(*row) for row in rows]


def never_changed(store: Store, few: int = FEW) -> list[NeverChanged]:
    """Looks and readings that led the same way every time, the dearest first."""
    rows = store.base.execute(
        "select complaint, step, count(*), min(way), coalesce(sum(minutes), 0) from taken"
        " where verb in ('look', 'measure', 'watch') and way != '' group by complaint, step"
        " having count(*) >= ? and count(distinct way) = 1 order by 5 desc, 3 desc, complaint, step",
        (few,),
    )
    return [NeverChanged(*row) for row in rows]


def as_csv(rows: list) -> str:
    """A table of one of the kinds above for a spreadsheet; no cell begins as a formula would."""
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\r\n")
    if rows:
        writer.writerow([field.name for field in fields(rows[0])])
    for row in rows:
        writer.writerow([_cell(value) for value in astuple(row)])
    return out.getvalue()


def _cell(value: object) -> object:
    if isinstance(value, float):
        return round(value, 2)
    return harmless(value) if isinstance(value, str) else value
