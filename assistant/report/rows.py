"""The trail row by row: what was asked, what was answered, what was taken back, in the order it happened.

The events are folded once more, one by one, so that each row has its place, its question as the tree asked
it and its limits as they were worked out.
"""

from __future__ import annotations

from dataclasses import dataclass, field, replace

from assistant.report.asked import asked_words, step_of
from assistant.report.measured import measured, over_range
from assistant.report.say import event_row
from assistant.report.story import SLIP, Row
from assistant.report.times import full
from assistant.tree.model import Finding
from assistant.walk.ask import Taken
from assistant.walk.event import Back, Event, Filled, Hazard, PlateRead, PutDown, Read, StillTrue, Watched
from assistant.walk.state import BadAnswer, OutOfOrder, Visit
from assistant.walk.visit import begin, fold

TAKEN_BACK = {"slip": SLIP, "changed": "changed my mind", "look": "gone over again"}
ENDS = ("finding", "stop", "hand over")
"""Kinds of the rows that say where the walk came to."""


@dataclass(frozen=True)
class Reached:
    """A stop page or a hand-over that the walk came to. `to` names the page or the complaint, `taken_back`
    says why the step before it was rewound."""

    to: str
    step: str
    at: str
    number: int
    complaint: str
    by_hazard: bool = False
    taken_back: str = ""


@dataclass
class Told:
    """The visit after its last event that could be followed, and its rows."""

    visit: Visit
    rows: list[Row] = field(default_factory=list)
    remarks: list[str] = field(default_factory=list)
    plate: dict[str, str] = field(default_factory=dict)
    stops: list[Reached] = field(default_factory=list)
    hand_overs: list[Reached] = field(default_factory=list)


def told(library, events: list[Event]) -> Told:
    """Every event as rows. Never raises: an event that can't be followed is shown as it stands and
    remarked."""
    out = Told(begin(library))
    for number, event in enumerate(events, start=1):
        before = out.visit
        try:
            out.visit = fold(before, event)
        except (BadAnswer, OutOfOrder, KeyError) as problem:
            out.rows.append(replace(event_row(event, before, out.plate), number=number, kind="not followed"))
            out.remarks.append(
                f"Entry {number} can't be followed by this version ({problem}); it is shown as it is."
            )
            continue
        ends = _note_ends(out, before, event, number)
        taken = out.visit.history[len(before.history) :]
        if isinstance(event, Back):
            _take_back(out, before, event)
        if isinstance(event, PlateRead):
            _note_plate(out, event)
        if not taken or isinstance(event, (PlateRead, PutDown)):
            out.rows.append(replace(event_row(event, out.visit, out.plate), number=number))
        out.rows += [_step_row(out, number, each, event) for each in taken]
        out.rows += [replace(row, number=number) for row in ends]
    return out


def _step_row(out: Told, number: int, taken: Taken, event: Event) -> Row:
    step, where = step_of(out.visit, taken.step)
    vocabulary = out.visit.vocabulary
    readings = tuple(measured(record, step, vocabulary, out.plate) for record in taken.records)
    remarks = []
    if taken.inserted:
        remarks.append("asked first, to have the power as the next step needs it")
    if taken.passed and taken.records:
        remarks.append("not asked: a reading put down before answers it")
    if isinstance(event, StillTrue) and taken.records:
        remarks.append(f"the reading of {full(taken.records[0].at)}: still true")
    if isinstance(event, (Read, Watched)) and not taken.passed:
        remarks += [
            f"'{typed.text}' confirmed, though unusual" for typed in event.readings.values() if typed.sure
        ]
    if taken.undecided and not taken.answer.startswith("can't be taken"):
        remarks.append("not decided")
    answer = taken.answer
    if readings and taken.verb != "watch":
        answer = "to be taken once more: too close to call" if answer.endswith("taken once more") else ""
    return Row(
        number,
        taken.at,
        taken.verb,
        asked_words(out.visit, taken.step),
        over_range(answer),
        where,
        readings,
        tuple(remarks),
    )


def _take_back(out: Told, before: Visit, event: Back) -> None:
    """Marks the rows of the steps that this Back rewound."""
    words = TAKEN_BACK.get(event.why, event.why)
    dropped = [(taken.step, taken.at) for taken in before.path[len(out.visit.path) :]]
    asked = [(asked_words(out.visit, step), at) for step, at in dropped]
    numbers: list[int] = []
    for place in range(len(out.rows) - 1, -1, -1):
        row = out.rows[place]
        if (row.asked, row.at) in asked and not row.taken_back:
            asked.remove((row.asked, row.at))
            out.rows[place] = replace(row, taken_back=words)
            numbers.append(row.number)
    if numbers:
        _take_back_ends(out, before.complaint or "", min(numbers), words)


def _take_back_ends(out: Told, complaint: str, since: int, words: str) -> None:
    """What the rewound steps led to is taken back with them. A hazard that was met stays."""

    def marked(reached: list[Reached]) -> list[Reached]:
        return [
            replace(each, taken_back=words)
            if each.number >= since
            and each.complaint == complaint
            and not each.by_hazard
            and not each.taken_back
            else each
            for each in reached
        ]

    kept = {each.number for each in out.stops if each.by_hazard or each.complaint != complaint}
    kept |= {each.number for each in out.hand_overs if each.complaint != complaint}
    out.stops, out.hand_overs = marked(out.stops), marked(out.hand_overs)
    out.rows = [
        replace(row, taken_back=words)
        if row.kind in ENDS and row.number >= since and row.number not in kept and not row.taken_back
        else row
        for row in out.rows
    ]


def _note_plate(out: Told, event: PlateRead) -> None:
    held = out.visit.plate.get(event.name)
    out.plate[event.name] = held if isinstance(held, str) else held.echo if held else event.text


def _note_ends(out: Told, before: Visit, event: Event, number: int) -> list[Row]:
    """Where the walk came to with this event: rows for a finding, a stop page, a hand-over."""
    visit, rows = out.visit, []
    for found in visit.found[len(before.found) :]:
        finding = found.finding
        title = finding.title if isinstance(finding, Finding) else finding.finding or ""
        rows.append(Row(0, event.at, "finding", "Finding", title, step_of(visit, found.step)[1]))
    now, then = visit.position, before.position
    if now is None or (then is not None and (now.stage, now.page) == (then.stage, then.page)):
        return rows
    step = now.stack[-1].address if now.stack else ""
    if now.stage == "stop" and now.page:
        by_hazard = isinstance(event, (Hazard, Filled))
        out.stops.append(Reached(now.page, step, event.at, number, visit.complaint or "", by_hazard))
        page = visit.vocabulary.stops.get(now.page)
        rows.append(Row(0, event.at, "stop", "Stop page", page.title if page else now.page))
    if now.stage == "handed_over" and now.to:
        out.hand_overs.append(Reached(now.to, step, event.at, number, visit.complaint or ""))
        known = visit.vocabulary.complaints.get(now.to)
        rows.append(Row(0, event.at, "hand over", "Handed over to", known.title if known else now.to))
    return rows
