"""Our own earlier visits here: what one of them comes to, and its readings beside today's.

A reading is the same reading when its quantity and its points are (assistant/walk/reading.py); the epochs of
another day say nothing today.
"""

from __future__ import annotations

from dataclasses import dataclass

from assistant.house.model import Vocabulary
from assistant.quantity.interval import Interval
from assistant.quantity.kind import from_si, show, show_interval, to_si
from assistant.tree.model import Finding, Look, Step
from assistant.walk.ask import Record
from assistant.walk.earlier_visit import Past, PastLook, PastReading
from assistant.walk.event import AsFound, Opened, Signed
from assistant.walk.points import open_points
from assistant.walk.reading import same_spot
from assistant.walk.state import Visit

MINUS = "\u2212"
VOLTS = ("ac_voltage", "dc_voltage")


@dataclass(frozen=True)
class Earlier:
    """A reading of an earlier visit beside today's place for it. `expected` is set where it is one of this
    unit's healthy numbers: what it should lie in today, as SI."""

    reading: PastReading
    visit: Past
    expected: Interval | None = None


def summed_up(visit: Visit, name: str) -> Past:
    """A whole visit as a later one at the same place needs it. `name` is its folder's."""
    opened = next((event for event in visit.events if isinstance(event, Opened)), None)
    signed = next((event for event in visit.events if isinstance(event, Signed)), None)
    complaints = visit.vocabulary.complaints
    healthy = visit.sheets.get("healthy", {}).get("healthy") == "yes"
    return Past(
        name,
        opened.at if opened else "",
        f"{signed.name}, {signed.at}" if signed else "",
        tuple(complaints[c.name].title if c.name in complaints else c.name for c in visit.complaints),
        tuple(_title(found.finding) for found in {f.step: f for f in visit.found}.values()),
        _touched(visit),
        tuple(f"{p.words} ({p.left})" if p.left else p.words for p in open_points(visit)),
        _doubted(visit),
        visit.house.fitted,
        tuple(_reading(record, asked) for record, asked in told_apart(visit)),
        healthy,
        _looks(visit),
    )


def look_before(visit: Visit, thing: str, step: str) -> tuple[Past, PastLook] | None:
    """What was seen of this on an earlier visit, on the same step before any other, the latest first."""
    seen = [(past, look) for past in visit.past for look in past.looks if look.thing == thing]
    return next((pair for pair in seen if pair[1].step == step), seen[0] if seen else None)


def _looks(visit: Visit) -> tuple[PastLook, ...]:
    """The last answer of each look, as it was seen."""
    latest: dict[str, PastLook] = {}
    for taken in visit.history:
        if taken.verb != "look" or taken.undecided or taken.passed:
            continue
        try:
            step = visit.step(taken.step)[1]
        except KeyError:
            continue
        if isinstance(step, Look) and taken.answer in step.choices:
            latest.pop(taken.step, None)
            latest[taken.step] = PastLook(taken.step, step.sees, taken.answer, taken.at)
    return tuple(reversed(latest.values()))


def earlier_of(visit: Visit, kind: str, points: tuple[str, ...], asked: str = "") -> Earlier | None:
    """The reading to lay beside one of `kind` between `points`: this unit's healthy number before any other,
    then one that the same step asked (with the same call on), then the latest. None where no earlier visit
    has one.
    """
    if not points:
        return None
    found = [
        (past, reading)
        for past in visit.past
        for reading in past.readings
        if reading.kind == kind and same_spot(kind, reading.points, points)
    ]
    if not found:
        return None
    alike = [pair for pair in found if asked and pair[1].asked == asked]
    past, reading = next((pair for pair in found if pair[0].healthy), (alike or found)[0])
    return Earlier(reading, past, expected(visit.vocabulary, reading) if past.healthy else None)


def expected(vocabulary: Vocabulary, reading: PastReading) -> Interval | None:
    """Where a healthy unit's reading may lie another day: that reading, wider by the spread that house.yaml
    states for its quantity. None where it states none. It judges nothing; the tree does.
    """
    share = vocabulary.spread.get(reading.kind)
    if share is None or reading.lo is None or reading.hi is None:
        return None
    room = share * max(abs(reading.lo), abs(reading.hi))
    return Interval(reading.lo - room, reading.hi + room)


def change(earlier: Earlier, now: Interval | None) -> str:
    """How today's value differs from the earlier one, in words: "+0.36 in. w.c. (+75 %)"; empty where one of
    them has no end.
    """
    reading = earlier.reading
    if now is None or reading.lo is None or reading.hi is None or not now.finite:
        return ""
    before = (reading.lo + reading.hi) / 2
    step = now.middle - before
    if now.lo <= reading.hi and reading.lo <= now.hi:
        return "as before"
    words = _difference(step, before, reading)
    if reading.kind != "temperature" and before:
        words += f" ({100 * step / abs(before):+.0f} %)".replace("-", MINUS)
    return words


def said_today(earlier: Earlier, now: Interval | None) -> str:
    """The same for a person: the change, and whether it lies where this healthy unit's number should."""
    words = change(earlier, now)
    if earlier.expected is None or now is None or not now.finite:
        return words
    inside = earlier.expected.lo <= now.lo and now.hi <= earlier.expected.hi
    outside = now.hi < earlier.expected.lo or now.lo > earlier.expected.hi
    where = "as expected of this unit" if inside else "outside what this unit had" if outside else ""
    return ", ".join(part for part in (words, where) if part)


def expected_words(earlier: Earlier) -> str:
    """ "expected of this unit 0.38 to 0.58 in. w.c." where the earlier reading is a healthy number."""
    if earlier.expected is None:
        return ""
    return f"expected of this unit {show_interval(earlier.expected, earlier.reading.unit)}"


def fitted_before(visit: Visit, part: str) -> tuple[tuple[str, str], ...]:
    """(visit, time) for each time that we fitted this part here before, the latest first."""
    return tuple((past.visit, at) for past in visit.past for name, at in past.fitted if name == part)


def part_of(visit: Visit, act: str) -> str | None:
    """The part that an act fits, or None."""
    known = visit.vocabulary.acts.get(act)
    return known.fits if known else None


def _difference(step: float, before: float, reading: PastReading) -> str:
    unit = reading.unit
    if reading.kind == "temperature":  # a difference of temperatures is no temperature
        amount = from_si(before + step, unit) - from_si(before, unit)
        return f"{amount:+.1f} degrees".replace("-", MINUS)
    words = show(to_si(float(f"{from_si(abs(step), unit):.3g}"), unit), unit)
    return f"+{words}" if step > 0 else f"{MINUS}{words}"


def _title(finding) -> str:
    return finding.title if isinstance(finding, Finding) else finding.finding or ""


def _touched(visit: Visit) -> tuple[str, ...]:
    """Repairs, what was set otherwise than found, and how often something was reset."""
    acts = visit.vocabulary.acts
    said = [acts[act].say for found in visit.found for act in found.repaired if act in acts]
    found = visit.as_found.seen if isinstance(visit.as_found, AsFound) else {}
    left = visit.as_left.seen if visit.as_left else {}
    questions = visit.vocabulary.sheets["settings"].questions if "settings" in visit.vocabulary.sheets else {}
    for thing, words in left.items():
        if thing in found and found[thing].strip() != words.strip():
            title = questions[thing].words if thing in questions else thing.replace("_", " ")
            said.append(f"{title}: {found[thing]} -> {words}")
    said += [f"{tally.replace('_', ' ')}: {count} times" for tally, count in visit.house.tallies.items()]
    return tuple(dict.fromkeys(said))


def _doubted(visit: Visit) -> tuple[str, ...]:
    """What we were not sure of ourselves: undecided steps, a cause not found, a proof cut short or failed."""
    said = []
    for found in {f.step: f for f in visit.found}.values():
        if found.concluded:
            words = "worn" if found.concluded == "worn" else "no cause found"
            said.append(f"{_title(found.finding)}: {words}, the listed ones ruled out")
        if found.proof == "not_proved":
            said.append(f"{_title(found.finding)}: the proof of repair failed")
        said += [f"{_title(found.finding)}: {words}" for words in found.cut_short]
    walks = [taken for walk in visit.walks for taken in walk.taken] + list(visit.path)
    for taken in walks:
        if taken.undecided and taken.verb != "compute":
            said.append(f"{_asked(visit, taken.step)}: {taken.answer}")
    return tuple(dict.fromkeys(said))


def _asked(visit: Visit, address: str) -> str:
    try:
        return getattr(visit.step(address)[1], "ask", address)
    except KeyError:
        return address


def told_apart(visit: Visit) -> list[tuple[Record, str]]:
    """The last reading of each place and step, with where it was asked; computed values, slips and volts of a
    circuit that was off are left out: what a dead circuit read says nothing beside a live one.
    """
    where = {id(record): f"{taken.step}.{record.name}" for taken in visit.history for record in taken.records}
    off = dead_volts(visit)
    latest: dict[tuple, tuple[Record, str]] = {}
    for record in visit.readings:
        if record.computed is not None or not record.points or record in visit.slips or id(record) in off:
            continue
        asked = where.get(id(record), "")
        latest[record.kind, record.points, asked] = (record, asked)
    return list(latest.values())


def dead_volts(visit: Visit) -> set[int]:
    """The identity (id) of each record of volts that was read on a circuit that was off."""
    return {
        id(record)
        for taken in visit.history
        for record in taken.records
        if record.kind in VOLTS and _asked_off(visit, taken.step)
    }


def asked_off(step: Step | None) -> bool:
    """Whether a step reads a circuit that is off: a dead-proof, or one that asks for it off or dead."""
    if step is None:
        return False
    return bool(getattr(step, "verifies", ())) or bool({"off", "dead"} & set(step.common.needs.values()))


def _asked_off(visit: Visit, address: str) -> bool:
    try:
        return asked_off(visit.step(address)[1])
    except KeyError:
        return False


def _reading(record: Record, asked: str) -> PastReading:
    ends = (record.value.lo, record.value.hi) if record.value.finite else (None, None)
    words = record.verdict.words if record.verdict and record.verdict.bands else ""
    return PastReading(record.kind, record.points, record.unit, record.echo, record.at, *ends, words, asked)
