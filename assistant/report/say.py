"""Events that are no step of a tree, each said in a line: notes, plate values, pauses, going back,
signing."""

from __future__ import annotations

import json
from collections.abc import Callable

from assistant.quantity.kind import KINDS
from assistant.report.asked import WHY, asked_words
from assistant.report.beside import in_order, in_words, thing_words
from assistant.report.measured import measured, plain_name
from assistant.report.story import Row
from assistant.trade.registry import REGISTRY
from assistant.trail.photos import photos_of
from assistant.walk import event as events
from assistant.walk.event import Event
from assistant.walk.points import open_points
from assistant.walk.state import Visit

BACK = {
    "slip": "Went back: a slip of the key",
    "changed": "Went back: changed my mind",
    "look": "Went back to look again",
}


def event_row(event: Event, visit: Visit, plate: dict[str, str]) -> Row:
    """One row for an event; `visit` is what it has come to, `plate` the plate values in words."""
    if isinstance(event, events.PutDown):
        return _put_down(event, visit, plate)
    say = SAY.get(type(event))
    if say is None:
        fields = event.fields if isinstance(event, events.Unknown) else vars(event)
        kind = event.kind if isinstance(event, events.Unknown) else type(event).__name__.lower()
        shown = {name: value for name, value in fields.items() if name != "at"}
        return Row(0, event.at, kind, plain_name(kind), json.dumps(shown, ensure_ascii=False, default=vars))
    kind, asked, answer = say(event, visit)
    return Row(0, event.at, kind, asked, answer, photos=photos_of(event))


def _put_down(event: events.PutDown, visit: Visit, plate: dict[str, str]) -> Row:
    record = next((record for record in reversed(visit.readings) if record.typed is event.typed), None)
    readings = (measured(record, None, visit.vocabulary, plate),) if record else ()
    title = KINDS[event.kind].title if event.kind in KINDS else event.kind
    return Row(
        0,
        event.at,
        "put down",
        f"{title}, put down before it was asked",
        "" if readings else event.typed.text,
        measured=readings,
    )


def _opened(event: events.Opened, visit: Visit) -> tuple[str, str, str]:
    words = "; ".join(f"{_complaint(visit, name)}: \u201c{said}\u201d" for name, said in event.complaints)
    return "opened", "Visit opened", words + (" (practice)" if event.practice else "")


def _plate(event: events.PlateRead, visit: Visit) -> tuple[str, str, str]:
    known = visit.vocabulary.plate.get(event.name)
    held = visit.plate.get(event.name)
    echo = held if isinstance(held, str) or held is None else held.echo
    title = known.title if known else plain_name(event.name)
    more = "" if event.equipment == "as found" else f", {event.equipment}"
    understood = "" if echo in (None, event.text) else f" (understood: {echo})"
    return "plate", f"Rating plate{more}: {title}", f"{event.text}{understood}"


def _hazard(event: events.Hazard, visit: Visit) -> tuple[str, str, str]:
    page = visit.vocabulary.stops.get(visit.vocabulary.hazards.get(event.name, ""))
    return "hazard", f"Hazard: {plain_name(event.name).lower()}", page.title if page else ""


def _back(event: events.Back, visit: Visit) -> tuple[str, str, str]:
    return "back", BACK.get(event.why, f"Went back: {event.why}"), f"to: {asked_words(visit, event.step)}"


def _as_found(event: events.AsFound, visit: Visit) -> tuple[str, str, str]:
    return "as found", "As found, before anything was touched", _settings(event.seen, visit)


def _as_left(event: events.AsLeft, visit: Visit) -> tuple[str, str, str]:
    return "as left", "As left", _settings(event.seen, visit)


def _settings(seen: dict[str, str], visit: Visit) -> str:
    names = in_order(seen, visit.vocabulary.sheets.get("settings"))
    return "; ".join(f"{thing_words(visit, name)}: {seen[name]}" for name in names)


def _filled(event: events.Filled, visit: Visit) -> tuple[str, str, str]:
    sheet = visit.vocabulary.sheets.get(event.sheet)
    said = [f"{words}: {answer}" for words, answer in in_words(event.answers, sheet)]
    return "sheet", sheet.title if sheet else plain_name(event.sheet), "; ".join(said)


def _advised(event: events.Advised, _visit: Visit) -> tuple[str, str, str]:
    said = "; ".join(part for part in (event.why, event.number, event.answer) if part)
    return "advice", f"Recommended: {event.what}", said


def _recalled(event: events.Recalled, _visit: Visit) -> tuple[str, str, str]:
    said = "; ".join(f"{past.began[:10]}: {', '.join(past.complaints)}" for past in event.visits)
    return "recalled", "Our earlier visits here", said or "none"


def _left_open(event: events.LeftOpen, visit: Visit) -> tuple[str, str, str]:
    words = next((point.words for point in open_points(visit) if point.key == event.point), None)
    return "left open", f"Left open: {words or plain_name(event.point)}", event.why


def _worked_out(event: events.WorkedOut, _visit: Visit) -> tuple[str, str, str]:
    entry = REGISTRY.get(event.function)
    title = entry.title if entry is not None else plain_name(event.function)
    formula = f" \u2013 {event.formula}" if event.formula else ""
    source = f" Source: {event.source}." if event.source else ""
    return "worked out", f"Worked out by hand: {title}", f"{event.result}{formula}.{source}"


def _on(event: events.GoOn, visit: Visit) -> tuple[str, str, str]:
    cleared = f"; cleared to go back in by {event.cleared}" if event.cleared else ""
    return "on", "Read, and on", f"{asked_words(visit, event.step)}{cleared}"


def _complaint(visit: Visit, name: str) -> str:
    known = visit.vocabulary.complaints.get(name)
    return known.title if known else plain_name(name)


Said = tuple[str, str, str]
SAY: dict[type, Callable[[Event, Visit], Said]] = {
    events.Opened: _opened,
    events.TakeUp: lambda event, visit: ("take up", "Taken up", _complaint(visit, event.complaint)),
    events.GoOn: _on,
    events.Concluded: lambda event, _: ("concluded", WHY, event.answer),
    events.PlateRead: _plate,
    events.Hazard: _hazard,
    events.Back: _back,
    events.Paused: lambda event, _: ("paused", "Paused", event.why),
    events.Resumed: lambda event, _: ("resumed", "Taken up again", f"by {event.by}" if event.by else ""),
    events.Note: lambda event, _: (
        "photo" if event.photo else "note",
        "Photo" if event.photo else "Note",
        event.text,
    ),
    events.AsFound: _as_found,
    events.AsLeft: _as_left,
    events.Filled: _filled,
    events.Advised: _advised,
    events.Recalled: _recalled,
    events.Person: lambda _event, _visit: ("person", "Name and address recorded", ""),
    events.Settled: lambda event, visit: (
        "settled",
        f"Settled: {_complaint(visit, event.complaint)}",
        event.note,
    ),
    events.LeftOpen: _left_open,
    events.WorkedOut: _worked_out,
    events.InstrumentUsed: lambda event, _: ("instrument", "Instrument", event.name),
    events.ShopMay: lambda event, _: (
        "shop", "What the shop's people may open",
        ", ".join(f"{name}: {said}" for name, said in event.may.items()),
    ),
    events.Exported: lambda event, _: ("exported", "Report written", event.file),
    events.Signed: lambda event, _: ("signed", "Signed", event.name),
    events.Recovered: lambda event, _: (
        "recovered",
        "A line that was being written when the program stopped was set aside",
        f"{event.bytes} bytes, in {event.aside}",
    ),
}
