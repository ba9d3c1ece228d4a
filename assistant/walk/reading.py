"""From what was typed to a reading that counts: understood, confirmed where implausible, judged, identified.

A reading's identity is its quantity, its points and the epoch of each circuit they lie on. Two leads of an
alternating voltage can be swapped without changing it; a direct voltage's can't.
"""

from __future__ import annotations

from dataclasses import replace

from assistant.quantity.entry import Blank, Doubt, NotUnderstood, Understood, understand
from assistant.quantity.interval import Interval
from assistant.quantity.kind import KINDS, from_si, show, to_si
from assistant.tree.model import Reading
from assistant.walk.ask import Record
from assistant.walk.event import Typed
from assistant.walk.judge import judge
from assistant.walk.state import BadAnswer, Visit


def take(
    visit: Visit, reading: Reading, name: str, typed: Typed, env: dict[str, Interval], at: str
) -> Record:
    """The reading as it counts. Raises BadAnswer with a sentence when the text can't be taken as it is."""
    got = _understood(typed, reading.kind, reading.unit)
    if not typed.sure and (doubt := implausible(reading, got)):
        raise BadAnswer(doubt)
    verdict = judge(got.interval, reading.bands, env, reading.unit, reading.safe, got.top_known)
    return Record(
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
    )


def _understood(typed: Typed, kind: str, unit: str) -> Understood:
    got = understand(typed.chosen or typed.text, kind, unit)
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
    for record in reversed(visit.readings):
        if (
            record.computed is None
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
    return replace(taken, epochs=record.epochs)
