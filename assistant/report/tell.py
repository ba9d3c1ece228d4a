"""Tells the story of a visit from its events and the trees it was walked with."""

from __future__ import annotations

from collections.abc import Iterable

from assistant.report.asked import step_of
from assistant.report.beside import before_of, beside
from assistant.report.customer import customer_page
from assistant.report.fitted import fitted
from assistant.report.measured import measured, plain_name
from assistant.report.notice import NOTICE
from assistant.report.rows import Reached, Told, told
from assistant.report.standing import proof_words, standing, with_caution
from assistant.report.story import FindingTold, Measured, Photo, StopTold, Story
from assistant.report.times import clock, day, full
from assistant.report.zones import places_for_technician, zones_of
from assistant.trail.photos import photos_of
from assistant.tree.model import Finding
from assistant.walk.ask import Cause, Found, Record
from assistant.walk.event import (
    AsFound,
    AsLeft,
    Event,
    Exported,
    Filled,
    InstrumentUsed,
    Note,
    Opened,
    Recovered,
    Signed,
)
from assistant.walk.points import open_points
from assistant.walk.reach import still_unproved
from assistant.walk.state import Visit

CAPTIONS = {AsFound: "As found", AsLeft: "As left", Filled: "The unit"}
"""Below the photos of an event that has no words of its own."""
FINISHED = ("settled", "proved", "handed_over")


def tell(
    events: list[Event],
    library,
    fingerprint: str,
    person: dict[str, str] | None = None,
    photos: dict[str, bytes] | None = None,
    remarks: Iterable[str] = (),
) -> Story:
    """The story that all formats write.

    `library` is the one that the visit was begun with; `fingerprint` the hash of the trail's last line;
    `person` and `photos` (by hash) are what is still kept of them; `remarks` are about the trail itself.
    Never raises on events that a trail can hold: what can't be followed is shown as it stands.
    """
    out = told(library, events)
    visit = out.visit
    opened = next((event for event in events if isinstance(event, Opened)), None)
    points = open_points(visit)
    pictures = _photos(events, photos or {})

    def say(record: Record) -> Measured:
        return _say(record, out)

    return Story(
        began=opened.at if opened else "",
        last=events[-1].at if events else "",
        standing=_standing(visit, events),
        practice=bool(opened and opened.practice),
        fingerprint=fingerprint,
        notice=NOTICE,
        customer=customer_page(visit, tuple((person or {}).items()), points, say),
        complaints=tuple((_title(visit, c.name), standing(visit, c).trade) for c in visit.complaints),
        plate=tuple(
            (visit.vocabulary.plate[name].title if name in visit.vocabulary.plate else name, value)
            for name, value in out.plate.items()
        ),
        findings=tuple(_finding(visit, found, say) for found in visit.found),
        stops=tuple(_stop(visit, reached) for reached in out.stops),
        hand_overs=tuple(
            f"{full(each.at)}: {_title(visit, each.complaint)} handed over to {_title(visit, each.to)}"
            + (f" (taken back: {each.taken_back})" if each.taken_back else "")
            for each in out.hand_overs
        ),
        still_unproved=_unproved(visit),
        open_points=tuple((with_caution(visit, point), point.left or "") for point in points),
        parts_fitted=fitted(visit),
        instruments=_instruments(visit, events),
        rows=tuple(out.rows),
        photos=pictures,
        remarks=(*remarks, *out.remarks),
        trees=tuple(sorted(opened.files.items())) if opened else (),
        zones=zones_of(visit),
        beside=beside(visit, events),
    )


def _say(record: Record, out: Told) -> Measured:
    visit = out.visit
    taken = next((t for t in reversed(visit.history) if any(r is record for r in t.records)), None)
    step = step_of(visit, taken.step)[0] if taken else None
    return measured(record, step, visit.vocabulary, out.plate)


def _standing(visit: Visit, events: list[Event]) -> str:
    place = next((i for i in range(len(events) - 1, -1, -1) if isinstance(events[i], Signed)), None)
    if place is not None:
        signed = events[place]
        hour, date = clock(signed.at)
        said = f"Signed by {signed.name} on {day(signed.at)}, {hour} {date.partition(' ')[2]}".rstrip() + "."
        more = any(not isinstance(event, (Exported, Recovered)) for event in events[place + 1 :])
        return f"{said} More was written after that, which is not signed." if more else said
    if visit.paused is not None:
        return f"Paused: {visit.paused}. Not signed yet."
    return "Not signed yet."


def _title(visit: Visit, complaint: str) -> str:
    known = visit.vocabulary.complaints.get(complaint)
    return known.title if known else plain_name(complaint)


def _finding(visit: Visit, found: Found, say) -> FindingTold:
    finding = found.finding
    facts = tuple(say(record) for record in found.facts)
    place = step_of(visit, found.step)[1]
    if not isinstance(finding, Finding):
        return FindingTold(
            finding.finding or "",
            _title(visit, found.complaint),
            found.at,
            place,
            "stop",
            "",
            facts,
            (),
            (),
            "",
            (),
        )
    parts, acts = visit.vocabulary.parts, visit.vocabulary.acts
    part = parts[finding.condemns].title if finding.condemns in parts else finding.condemns or ""
    causes = [(cause.title, _cause(cause)) for cause in found.causes]
    if found.concluded:
        causes.append(("Conclusion", found.concluded))
    return FindingTold(
        finding.title,
        _title(visit, found.complaint),
        found.at,
        place,
        "part" if finding.fault else "no fault",
        part,
        facts,
        tuple(causes),
        tuple(acts[act].say if act in acts else act for act in found.repaired),
        proof_words(found),
        tuple(say(record) for record in found.proof_records),
        finding.reason or "",
        finding.advice or "",
        tuple(say(old) if (old := before_of(visit, record)) else None for record in found.proof_records),
        places_for_technician(visit, found),
    )


def _cause(cause: Cause) -> str:
    words = {"found": "found", "ruled_out": "ruled out"}.get(cause.outcome, cause.outcome)
    return f"{words}: {cause.back.says}" if cause.back and cause.back.says else words


def _stop(visit: Visit, reached: Reached) -> StopTold:
    known = visit.vocabulary.stops.get(reached.to)
    place = step_of(visit, reached.step)[1] if reached.step else ""
    title = known.title if known else plain_name(reached.to)
    lines, also = (known.lines, known.also) if known else ((), ())
    return StopTold(title, reached.at, place, lines, also, reached.taken_back)


def _unproved(visit: Visit) -> tuple[str, ...]:
    """The findings that could still be reached, where the walk is not finished."""
    state = visit.state_of(visit.complaint or "")
    if state is None or state.status in FINISHED:
        return ()
    return tuple(
        step.title if isinstance(step, Finding) else step.finding or "" for _, step in still_unproved(visit)
    )


def _instruments(visit: Visit, events: list[Event]) -> tuple[str, ...]:
    named = [event.name for event in events if isinstance(event, InstrumentUsed)]
    named += [record.typed.instrument for record in visit.readings if record.typed.instrument]
    return tuple(dict.fromkeys(named))


def _photos(events: list[Event], data: dict[str, bytes]) -> tuple[Photo, ...]:
    out: dict[str, Photo] = {}
    for event in events:
        caption = (event.text if isinstance(event, Note) else "") or CAPTIONS.get(type(event), "Photo")
        for name in photos_of(event):
            out.setdefault(name, Photo(name, caption, event.at, data.get(name)))
    return tuple(out.values())
