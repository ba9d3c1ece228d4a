"""What the report tells of everything around the walk: before starting, the unit, as found and as left, what
is waited for, recommendations, our earlier visits, the night without heat.
"""

from __future__ import annotations

from collections.abc import Iterable

from assistant.house.model import Sheet
from assistant.quantity.kind import KINDS
from assistant.report.around import Beside, Setting, SheetTold, Warranty
from assistant.report.fitted import fitted
from assistant.report.measured import plain_name
from assistant.report.standing import with_caution
from assistant.report.times import day
from assistant.tree.model import Finding
from assistant.walk.ask import Found, Record
from assistant.walk.event import AsFound, AsLeft, Event
from assistant.walk.outlook import facts
from assistant.walk.past import dead_volts, earlier_of, expected_words, fitted_before, said_today, told_apart
from assistant.walk.points import open_points
from assistant.walk.reading import same_spot
from assistant.walk.state import Visit
from assistant.walk.waiting import next_time, wanted

CALL, NIGHT = "triage", "tonight"
"""The sheets of the telephone and of a night without heat."""
OF_THE_NIGHT = ("most", "cold", "water")
"""What the telephone asks that matters where the heat stays off."""


def beside(visit: Visit, events: Iterable[Event]) -> Beside:
    """Folded from the visit and its events. Never raises on what a trail can hold."""
    told_sheets = tuple(
        told for name in (CALL, "before") if (told := _sheet(visit, name)) is not None and told.answers
    )
    waits = wanted(visit)
    cold, healthy = cold_tonight(visit), is_healthy(visit)
    found, left = _photos(events)
    return Beside(
        told_sheets,
        answered(visit, "unit"),
        settings(visit),
        found,
        left,
        waits,
        visit.vocabulary.marks.get("parts", ""),
        answered(visit, "order"),
        _next_time(visit) if waits and visit.signed is None else (),
        visit.advice,
        facts(visit) if answered(visit, "outlook") or visit.advice else (),
        answered(visit, "outlook"),
        visit.past,
        twice(visit),
        _warranty(visit),
        compared(visit),
        visit.vocabulary.tonight if cold else None,
        _tonight(visit) if cold or visit.sheets.get(NIGHT) else (),
        healthy,
        tuple((_where(visit, record), record.echo) for record, _ in told_apart(visit)) if healthy else (),
    )


def is_healthy(visit: Visit) -> bool:
    """Whether somebody said that the unit is healthy as it stands."""
    return visit.sheets.get("healthy", {}).get("healthy") == "yes"


def _next_time(visit: Visit) -> tuple[str, ...]:
    said = {point.words: with_caution(visit, point) for point in open_points(visit)}
    return tuple(said.get(words, words) for words in next_time(visit))


def _tonight(visit: Visit) -> tuple[tuple[str, str], ...]:
    """What was agreed for a night without heat, and what the telephone told of it."""
    told = {name: visit.sheets.get(CALL, {}).get(name, "") for name in OF_THE_NIGHT}
    called = in_words({k: v for k, v in told.items() if v}, visit.vocabulary.sheets.get(CALL))
    return (*answered(visit, NIGHT), *called)


def _where(visit: Visit, record: Record) -> str:
    """Quantity and place of a reading: "AC voltage, R to C"."""
    points = visit.vocabulary.points
    where = " to ".join(points[p].label if p in points else p for p in record.points)
    return f"{KINDS[record.kind].title}, {where}" if record.kind in KINDS else where


def answered(visit: Visit, sheet: str) -> tuple[tuple[str, str], ...]:
    """(question, answer) of a sheet, in the order of its page."""
    return in_words(visit.sheets.get(sheet, {}), visit.vocabulary.sheets.get(sheet))


def in_words(answers: dict[str, str], sheet: Sheet | None) -> tuple[tuple[str, str], ...]:
    """(question, answer) for each that was answered, in the order of the sheet's page."""
    asked = sheet.questions if sheet else {}
    return tuple(
        (asked[name].words if name in asked else plain_name(name), answers[name])
        for name in in_order(answers, sheet)
        if answers[name]
    )


def in_order(names: Iterable[str], sheet: Sheet | None) -> list[str]:
    """Names as the sheet's page has them, then those that it doesn't know: a trail keeps them by letter."""
    asked = list(sheet.questions) if sheet else []
    names = list(names)
    return [name for name in asked if name in names] + [name for name in names if name not in asked]


def settings(visit: Visit) -> tuple[Setting, ...]:
    """Everything that was written down as found or as left, side by side."""
    found = visit.as_found.seen if visit.as_found else {}
    left = visit.as_left.seen if visit.as_left else {}
    return tuple(
        Setting(thing_words(visit, name), found.get(name, ""), left.get(name, ""))
        for name in in_order(dict.fromkeys([*found, *left]), visit.vocabulary.sheets.get("settings"))
    )


def thing_words(visit: Visit, name: str) -> str:
    """A setting in words: as the sheet asks for it, or its own name."""
    known = visit.vocabulary.sheets.get("settings")
    if known and name in known.questions:
        return known.questions[name].words
    seen = visit.vocabulary.seen
    return seen[name].title if name in seen else plain_name(name)


def before_of(visit: Visit, record: Record) -> Record | None:
    """The reading to lay beside one of a proof of repair: the last one of the same quantity between the same
    points that was taken before the repair was proved. None where there is none. Where a page reads one spot
    several times (all zones open, then one alone) only the reading of the same name is the same.
    """
    several = _read_several_times(visit)
    proofs = [proof for found in visit.found for proof in found.proof_records]
    dead = dead_volts(visit)
    place = next((i for i, each in enumerate(visit.readings) if each is record), len(visit.readings))
    for earlier in reversed(visit.readings[:place]):
        if earlier in visit.slips or id(earlier) in dead or any(earlier is proof for proof in proofs):
            continue
        if record.computed is not None or earlier.computed is not None:
            alike = record.name == earlier.name and bool(record.computed) == bool(earlier.computed)
        else:
            alike = bool(record.points) and same_spot(record.kind, earlier.points, record.points)
            alike = alike and (record.name == earlier.name or not {id(record), id(earlier)} & several)
        if alike and earlier.kind == record.kind:
            return earlier
    return None


def _read_several_times(visit: Visit) -> set[int]:
    """The identity (id) of each record whose page read the same spot more than once."""
    return {
        id(one)
        for taken in visit.history
        for one in taken.records
        if sum(one.kind == other.kind and one.points == other.points for other in taken.records) > 1
    }


def cold_tonight(visit: Visit) -> bool:
    """Whether the house is left without heat: a stop page that leaves it off, or a part waited for."""
    page = visit.position.page if visit.position else None
    stops = visit.vocabulary.stops
    if page in stops and stops[page].no_heat and visit.position and visit.position.stage == "stop":
        return True
    stopped = any(state.status == "stopped" for state in visit.complaints)
    return stopped or bool(visit.paused is not None and wanted(visit))


def compared(visit: Visit) -> tuple[tuple[str, str, str, str], ...]:
    """Today's last reading of each place beside the one of an earlier visit, with the change."""
    out = []
    for record, asked in told_apart(visit):
        earlier = earlier_of(visit, record.kind, record.points, asked)
        if earlier is None:
            continue
        meant = expected_words(earlier)
        before = f"{earlier.reading.text}, {day(earlier.reading.at or earlier.visit.began)}"
        out.append(
            (
                _where(visit, record),
                f"{before} ({meant})" if meant else before,
                record.echo,
                said_today(earlier, record.value),
            )
        )
    return tuple(out)


def twice(visit: Visit) -> tuple[str, ...]:
    """Parts that were fitted here before and are fitted or wanted again, in sentences."""
    names = [name for name, _ in visit.house.fitted] + [each.part for each in wanted(visit)]
    said = []
    for name in dict.fromkeys(names):
        before = fitted_before(visit, name)
        if before:
            title = visit.vocabulary.parts[name].title if name in visit.vocabulary.parts else plain_name(name)
            times = ", ".join(day(at) for _, at in before)
            said.append(f"{title[:1].upper()}{title[1:]}: we fitted one here before ({times}).")
    return tuple(said)


def _sheet(visit: Visit, name: str) -> SheetTold | None:
    known = visit.vocabulary.sheets.get(name)
    if known is None:
        return None
    answers = visit.sheets.get(name, {})
    skipped = tuple(q.words for key, q in known.questions.items() if not answers.get(key))
    return SheetTold(known.title, answered(visit, name), skipped)


def _photos(events: Iterable[Event]) -> tuple[tuple[str, ...], tuple[str, ...]]:
    found: list[str] = []
    left: list[str] = []
    for event in events:
        if isinstance(event, AsFound):
            found += event.photos
        elif isinstance(event, AsLeft):
            left += event.photos
    return tuple(dict.fromkeys(found)), tuple(dict.fromkeys(left))


def _warranty(visit: Visit) -> tuple[Warranty, ...]:
    """The parts that cost money, fitted or wanted, with what was ruled out for each."""
    parts, out = visit.vocabulary.parts, []
    order = visit.sheets.get("order", {})
    ordered = ", from ".join(filter(None, (order.get("number", ""), order.get("supplier", ""))))
    for found in {f.step: f for f in visit.found}.values():
        finding = found.finding
        if not isinstance(finding, Finding) or not finding.condemns or finding.condemns not in parts:
            continue
        part = parts[finding.condemns]
        if not part.costs:
            continue
        since = [each for each in fitted(visit) if each.part == part.name and each.at >= found.at]
        ruled = tuple(cause.title for cause in found.causes if cause.outcome == "ruled_out")
        again = tuple(at for _, at in fitted_before(visit, part.name))
        at, number = (since[-1].at, since[-1].number) if since else ("", "")
        out.append(Warranty(part.title, finding.title, at, ruled, _conclusion(found), again, number, ordered))
    return tuple(out)


def _conclusion(found: Found) -> str:
    causes = [
        cause.back.says or cause.title for cause in found.causes if cause.outcome == "found" and cause.back
    ]
    if causes:
        return "; ".join(causes)
    return {
        "worn": "worn, the causes above ruled out",
        "not found": "no cause found, those above ruled out",
    }.get(found.concluded or "", "not answered yet")
