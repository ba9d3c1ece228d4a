"""What would settle a value that is too close to call, in plain words: what to read better, with what, or
what to read first.

Derived from the reading, its limit and the shop's instruments; it decides nothing.
"""

from __future__ import annotations

import math

from assistant.quantity.chance import COVERAGE
from assistant.quantity.interval import Interval
from assistant.quantity.kind import show, show_interval
from assistant.quantity.meaning import Understood
from assistant.tree.model import readings_of
from assistant.walk.ask import Record, Verdict
from assistant.walk.env import NOT_READABLE
from assistant.walk.nearer import gap_words, good_enough, good_to, one_of_the_shop
from assistant.walk.state import Frame, Visit

ON_IT = "It stands on the limit as near as any instrument in the field can tell."
SHARE = 0.25
"""Share of the uncertainty from which a reading is worth taking again."""


def settled_by(
    visit: Visit, record: Record, got: Understood | None = None, frame: Frame | None = None
) -> str:
    """What would settle `record`, as one to three sentences; empty where nothing is too close to call.

    `got` is what was understood of a reading; `frame` is where a computed value belongs.
    """
    verdict = record.verdict
    if verdict is None or verdict.unsafe or not verdict.bands or verdict.decided:
        return ""
    near = [
        (band.under, edge)
        for band, edge in zip(verdict.bands, verdict.edges, strict=True)
        if edge is not None and band.under is not None
    ][verdict.first : verdict.last]
    limit, edge = min(near, key=lambda each: _distance(verdict, each[1]))
    if edge.width > verdict.value.width:
        return _limit_first(visit, limit.names, edge, record.unit, frame)
    if record.computed is not None:
        return _computed(visit, record, edge)
    return _read(visit, record, got, [each for _, each in near], edge) if got is not None else ""


def _distance(verdict: Verdict, edge: Interval) -> float:
    """From the middle of the value to the limit, zero where it lies inside the limit's own width."""
    middle = verdict.value.middle
    return max(edge.lo - middle, middle - edge.hi, 0.0)


def _limit_first(visit: Visit, names, edge: Interval, unit: str, frame: Frame | None) -> str:
    """The limit is less sure than the value: the plate, or the reading that the limit is made of."""
    plate = [name for name in names if name in visit.vocabulary.plate]
    unread = next((name for name in plate if visit.plate.get(name, NOT_READABLE) == NOT_READABLE), None)
    if unread is not None:
        value = visit.vocabulary.plate[unread]
        where = f" ({value.where})" if value.where else ""
        return (
            f"Read the plate first: {value.title}{where}. Without it the limit may lie anywhere from "
            f"{show_interval(edge, unit)}."
        )
    known = frame.names if frame is not None else {}
    named = [spoken(visit, known[name]) for name in names if name in known] or [
        name.replace("_", " ") for name in names if name not in plate
    ]
    return (
        f"The limit itself is only known from {show_interval(edge, unit)}: it rests on "
        f"{' and '.join(named)}. Take that again, with a better instrument."
    )


def _read(visit: Visit, record: Record, got: Understood, edges: list[Interval], edge: Interval) -> str:
    verdict, unit = record.verdict, record.unit
    assert verdict is not None
    said = show(edge.middle, unit)
    if got.over_range:
        return f"Take it on a range that reaches past the limit of {said}."
    step = got.resolution_si or 0.0
    if got.interval.width and got.interval.lo == 0 and got.interval.hi < step:
        return f"A display of nought may hide {show(got.interval.hi, unit)}. Take it on a lower range."
    if got.interval.width:
        return (
            f"It wandered from {show_interval(got.interval, unit)}, with the limit of {said} in between. Let "
            "it settle, or watch it for a minute and take the middle."
        )
    distance, allowance = _distance(verdict, edge), verdict.value.width / 2
    used = record.typed.instrument
    meter = used or "this instrument"
    short = gap_words(allowance - distance, unit)
    nearer = f"It is {short} nearer to the limit of {said} than {meter} can tell"
    other = one_of_the_shop(visit.shop, got, used, edges)
    if other is not None:
        return f"{nearer}. Take it with {other}."
    better = good_enough(got, distance, unit)
    if better is None:
        return f"{nearer}. {ON_IT} Let it settle and take the middle; if it stays there, nothing here tells."
    return f"{nearer}. Take it with {better}."


def _computed(visit: Visit, record: Record, edge: Interval) -> str:
    verdict = record.verdict
    assert verdict is not None
    said = show(edge.middle, record.unit)
    if not record.parts:
        return (
            f"It may lie on either side of {said}: read what it is worked out from as one value, not a span."
        )
    distance = _distance(verdict, edge)
    parts = sorted(record.parts, key=lambda part: -abs(part[1]))
    total = math.hypot(*(part for _, part in parts))
    short = gap_words(verdict.value.width / 2 - distance, record.unit)
    nearer = f"It is {short} nearer to the limit of {said} than what it is worked out from can tell"
    heavy = [index for index, part in parts if (part / total) ** 2 >= SHARE]
    if len(heavy) > 1 and len({visit_kind(visit, index) for index in heavy}) == 1:
        names = " and ".join(spoken(visit, index) for index in heavy[:3])
        return f"{nearer}. Read these again at once, with one instrument and the same hand: {names}."
    index, part = parts[0]
    name = spoken(visit, index)
    rest = math.hypot(*(other for _, other in parts[1:]))
    room = (distance / COVERAGE) ** 2 - rest**2
    share = f"{100 * (part / total) ** 2:.0f} % of the doubt is in {name}"
    if room <= 0:
        after = f" and {spoken(visit, parts[1][0])}" if len(parts) > 1 else ""
        return f"{nearer}; {share}. Take {name}{after} again with better instruments."
    own = visit.readings[index] if index < len(visit.readings) else None
    if own is None:
        return f"{nearer}; {share}. Take it again with a better instrument."
    width = own.value.width / 2 * math.sqrt(room) / abs(part)
    how = " or over a longer time" if own.kind == "duration" else ""
    return f"{nearer}; {share}. Take it again to within {good_to(width, own.unit)}{how}."


def visit_kind(visit: Visit, index: int) -> str:
    """The quantity of a reading on record."""
    return visit.readings[index].kind if index < len(visit.readings) else ""


def spoken(visit: Visit, index: int) -> str:
    """A reading on record as its step asks for it: "Supply air temperature"."""
    record = visit.readings[index] if index < len(visit.readings) else None
    if record is None:
        return "a reading"
    for taken in reversed(visit.history):
        if any(each is record for each in taken.records):
            _, step = visit.step(taken.step)
            own = step.common.name
            asked = next((r.ask for r in readings_of(step) if (r.name or own) == record.name), "")
            return asked or record.name.replace("_", " ")
    return record.name.replace("_", " ")
