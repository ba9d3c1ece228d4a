"""From what was typed to a reading that counts: understood, confirmed where implausible, judged, identified.

A reading's identity is its quantity, its points and the epoch of each circuit they lie on. Two leads of an
alternating voltage can be swapped without changing it; a direct voltage's can't.
"""

from __future__ import annotations

from dataclasses import replace

from assistant.quantity.chance import standard_uncertainty
from assistant.quantity.entry import Blank, Doubt, NotUnderstood, Understood, understand
from assistant.quantity.interval import Interval
from assistant.quantity.kind import KINDS, from_si, show, to_si
from assistant.tree.model import Reading
from assistant.walk.ask import Record
from assistant.walk.event import Typed
from assistant.walk.judge import judge
from assistant.walk.settling import settled_by
from assistant.walk.state import BadAnswer, Visit


def take(
    visit: Visit, reading: Reading, name: str, typed: Typed, env: dict[str, Interval], at: str, ahead: int = 0
) -> Record:
    """The reading as it counts: as wide as its instrument's accuracy makes it. `ahead` is how many readings
    of the same page stand before it. Raises BadAnswer with a sentence when the text can't be taken as it is.
    """
    got, typed = understood(visit, typed, reading.kind, reading.unit)
    if not typed.sure and (doubt := implausible(reading, got)):
        raise BadAnswer(doubt)
    value = widened(visit, typed, got)
    verdict = judge(value, reading.bands, env, reading.unit, reading.safe, got.top_known)
    record = Record(
        name,
        reading.kind,
        reading.unit,
        reading.at,
        identity_epochs(visit, reading.at),
        typed,
        verdict.value,
        got.echo,
        verdict,
        at,
        parts=own_part(verdict.value, len(visit.readings) + ahead),
        exact=value == got.interval,
    )
    frame = visit.position.top if visit.position is not None and visit.position.stack else None
    return replace(record, settles=settled_by(visit, record, got, frame))


def widened(visit: Visit, typed: Typed, got: Understood) -> Interval:
    """What was typed, with the accuracy of its instrument where the shop has stated one."""
    instrument = visit.shop.instrument(got.kind, typed.instrument)
    return got.interval if instrument is None else instrument.widen(got)


def own_part(value: Interval, index: int) -> tuple[tuple[int, float], ...]:
    """A reading's own contribution to what is computed from it; none where it is exact or has no end."""
    return ((index, standard_uncertainty(value)),) if value.width and value.finite else ()


def understood(visit: Visit, typed: Typed, kind: str, unit: str) -> tuple[Understood, Typed]:
    """What was typed, with the instrument that it was read on. Raises BadAnswer with a sentence."""
    instrument = visit.shop.instrument(kind, typed.instrument or visit.instrument)
    if instrument is not None:
        typed = replace(typed, instrument=instrument.name)
    elif typed.instrument is None and visit.instrument is not None:
        typed = replace(typed, instrument=visit.instrument)
    top = instrument.range_top.get(kind) if instrument else None
    return _understood(typed, kind, unit, top), typed


def _understood(typed: Typed, kind: str, unit: str, top: float | None) -> Understood:
    got = understand(typed.chosen or typed.text, kind, unit, top)
    if isinstance(got, Understood):
        return got
    if isinstance(got, Blank):
        raise BadAnswer("No reading was typed. Type what the meter shows, or choose that it can't be taken.")
    if isinstance(got, Doubt):
        raise BadAnswer(f"{got.message} Choose one of: {', '.join(got.choices)}.")
    assert isinstance(got, NotUnderstood)
    raise BadAnswer(got.message)


def implausible(reading: Reading, got: Understood) -> str | None:
    """A sentence when the value lies outside what this reading can plausibly be; None otherwise."""
    if reading.plausible is None or got.over_range:
        return None
    low, high = (to_si(end, reading.unit) for end in reading.plausible)
    if low <= got.interval.lo and got.interval.hi <= high:
        return None
    span = f"{show(low, reading.unit)} to {show(high, reading.unit)}"
    return f"{got.echo} is outside what this reading can be ({span}). Is it a slip of the key?"


def meant(reading: Reading, got: Understood) -> tuple[str, ...]:
    """Values near what was typed that would be plausible: a decimal mark slipped, a prefix forgotten."""
    if reading.plausible is None or not got.interval.finite:
        return ()
    low, high = reading.plausible
    value = from_si(got.interval.middle, reading.unit)
    nearby = [value / 10, value * 10, value / 100, value * 100, value / 1000, value * 1000, -value]
    return tuple(f"{number:.6g}" for number in nearby if low <= number <= high)[:3]


def identity_epochs(visit: Visit, points: tuple[str, ...]) -> tuple[tuple[str, int], ...]:
    """(circuit, epoch) for each circuit that the points lie on, as the house is now."""
    circuits = {visit.vocabulary.points[p].circuit for p in points if p in visit.vocabulary.points}
    return tuple(sorted((c, visit.house.epochs[c]) for c in circuits if c is not None))


def same_spot(kind: str, one: tuple[str, ...], other: tuple[str, ...]) -> bool:
    """Whether two readings of `kind` were taken between the same points, leads swapped where that is no
    matter.
    """
    return one == other or (KINDS[kind].symmetric and sorted(one) == sorted(other))


def earlier(visit: Visit, reading: Reading) -> Record | None:
    """The latest reading on record with this reading's identity in the present epochs, or None."""
    epochs = identity_epochs(visit, reading.at)
    for record in reversed(visit.readings[visit.fresh :]):
        if (
            record.computed is None
            and record not in visit.slips
            and record.kind == reading.kind
            and reading.at
            and record.epochs == epochs
            and same_spot(record.kind, record.points, reading.at)
        ):
            return record
    return None


def reused(visit: Visit, reading: Reading, name: str, record: Record, env: dict[str, Interval]) -> Record:
    """An earlier reading, judged by this step's limits; it keeps its own time and typed text."""
    taken = take(visit, reading, name, replace(record.typed, sure=True), env, record.at)
    return replace(taken, epochs=record.epochs, parts=record.parts)
