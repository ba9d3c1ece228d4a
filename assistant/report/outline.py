"""A story laid out as headings, paragraphs, lists, tables and photos, in the order that every format writes
them.

What stands where is decided here once; how it looks is for html.py, text.py and pdf.py.
"""

from __future__ import annotations

import hashlib
from collections.abc import Iterator

from assistant.report.blocks import (
    Block,
    Cell,
    Heading,
    Pairs,
    Picture,
    Pictures,
    Points,
    Table,
    Words,
)
from assistant.report.outline_beside import before_and_after, for_trail, warranty
from assistant.report.outline_customer import customer
from assistant.report.story import (
    PRACTICE,
    SLIP,
    FindingTold,
    Measured,
    PartFitted,
    Photo,
    Row,
    StopTold,
    Story,
)
from assistant.report.times import clock, full
from assistant.trail.fingerprint import short

PHOTO_LENGTH = 12
"""Hex digits by which a kept photo is named on paper."""


def foot(story: Story) -> str:
    """What stands at the foot of every page."""
    mark = f"{PRACTICE} \u00b7 " if story.practice else ""
    return f"{mark}Fingerprint {short(story.fingerprint)}"


def outline(story: Story) -> Iterator[Block]:
    """All blocks of the report: the customer's page, then the trail."""
    yield from customer(story)
    yield from _trail(story)
    yield from warranty(story)


def texts_line(story: Story) -> str:
    """How many tree texts the visit was walked with, and a short hash that stands for all of them."""
    whole = "".join(f"{file} {digest}\n" for file, digest in story.trees)
    count = len(story.trees)
    return (
        f"Walked with {count} tree text{'s' * (count != 1)}, together "
        f"{short(hashlib.sha256(whole.encode()).hexdigest())}."
    )


def _trail(story: Story) -> Iterator[Block]:
    yield Heading("The trail: every step, for the next technician and the warranty desk", 1)
    yield Pairs(
        (
            ("Opened", full(story.began)),
            ("Last entry", full(story.last)),
            ("State", story.standing),
            ("Fingerprint", story.fingerprint),
        )
    )
    if story.remarks:
        yield Heading("About this trail", 2)
        yield Points(story.remarks)
    yield Heading("Complaints", 2)
    yield Pairs(story.complaints or (("None", "nobody complained of anything"),))
    if story.open_points:
        yield Heading("Open points", 2)
        yield Points(
            tuple(f"{what} (left open: {why})" if why else what for what, why in story.open_points), "open"
        )
    if story.still_unproved:
        yield Heading("Still unproved", 2)
        yield Words("The walk was not finished. These could still be found:")
        yield Points(story.still_unproved)
    yield from for_trail(story)
    for finding in story.findings:
        yield from _finding(finding)
    slips = tuple(f"Stop page: {stop.title} - taken back: {SLIP}" for stop in story.stops if _slipped(stop))
    if slips:
        yield Points(slips)
    for stop in story.stops:
        if _slipped(stop):
            continue
        yield Heading(f"Stop page: {stop.title}", 2)
        back = f"taken back: {stop.taken_back}" if stop.taken_back else ""
        yield Words(" \u00b7 ".join(part for part in (full(stop.at), stop.where, back) if part), "faint")
        yield Points((*stop.lines, *stop.also))
    if story.hand_overs:
        yield Heading("Handed over", 2)
        yield Points(story.hand_overs)
    yield from _facts(story)
    yield Heading("Step by step", 2)
    yield steps(story.rows)
    yield from _photos(story)
    if story.trees:
        yield Words(texts_line(story), "faint")


def _slipped(stop: StopTold) -> bool:
    return stop.taken_back == SLIP


def _finding(finding: FindingTold) -> Iterator[Block]:
    kinds = {"part": "Finding", "no fault": "Finding without a fault", "stop": "Finding that stops the work"}
    yield Heading(f"{kinds[finding.kind]}: {finding.title}", 2)
    yield Words(f"{full(finding.at)} \u00b7 {finding.complaint} \u00b7 {finding.where}", "faint")
    told = [
        ("Part", finding.part),
        *(("Where", place) for place in finding.places),
        ("Reason", finding.reason),
        *finding.causes,
        *(("Done", act) for act in finding.repaired),
        ("Proof", finding.proof),
        ("Advice", finding.advice),
    ]
    yield Pairs(tuple((name, words) for name, words in told if words))
    if finding.facts:
        yield readings("Facts that show it", finding.facts)
    if finding.proof_readings:
        yield readings("Readings that prove the repair", finding.proof_readings)
        if any(finding.before):
            yield before_and_after(finding.proof_readings, finding.before, both=True)


def readings(title: str, measured: tuple[Measured, ...]) -> Table:
    """A small table of readings as typed and as understood."""
    rows = tuple((Cell(each.what, _beside(each)), _typed(each), _judged(each)) for each in measured)
    return Table((title, "As typed", "Verdict and limit"), rows, (40, 28, 32))


def _facts(story: Story) -> Iterator[Block]:
    groups = (
        ("Rating plate", story.plate),
        ("Parts fitted", tuple((each.title, _fitted(each)) for each in story.parts_fitted)),
        ("Instruments", tuple((name, "") for name in story.instruments)),
    )
    for title, pairs in groups:
        if pairs:
            yield Heading(title, 2)
            yield Pairs(tuple((name[:1].upper() + name[1:], value) for name, value in pairs))


def _fitted(each: PartFitted) -> str:
    return ", ".join(filter(None, (full(each.at), each.number_words)))


def steps(rows: tuple[Row, ...]) -> Table:
    """The whole trail as one table."""
    out: list[tuple[Cell, ...]] = []
    for row in rows:
        gone = bool(row.taken_back)
        notes = ([f"TAKEN BACK: {row.taken_back}"] if gone else []) + list(row.remarks)
        notes += [f"photo {name[:PHOTO_LENGTH]}" for name in row.photos]
        where = (row.where,) if row.where else ()
        first = Cell(row.asked, tuple(part for part in notes if part), gone, where)
        hour, date = clock(row.at)
        when = Cell(hour, (date,) if date else ())
        if not row.measured:
            out.append((when, first, Cell(row.answer, struck=gone), Cell("")))
            continue
        whole_page = len(row.measured) > 1 or bool(row.answer)
        if whole_page:
            out.append((when, first, Cell(row.answer, struck=gone), Cell("")))
        for each in row.measured:
            asked = (
                Cell(each.what, _beside(each), gone)
                if whole_page
                else Cell(row.asked, (*first.small, *_beside(each)), gone, where)
            )
            typed = _typed(each)
            out.append(
                (Cell("") if whole_page else when, asked, Cell(typed.text, typed.small, gone), _judged(each))
            )
    return Table(("Time", "Asked", "Answer", "Verdict and limit"), tuple(out), (17, 36, 22, 25))


def _typed(each: Measured) -> Cell:
    if each.formula:
        return Cell(each.understood, (each.formula,))
    return Cell(each.typed, (f"understood: {each.understood}",) if each.understood else ())


def _judged(each: Measured) -> Cell:
    known = f"{each.source} [{each.mark}]" if each.source else ""
    plate = f"plate: {each.plate}" if each.plate else ""
    return Cell(each.verdict, tuple(part for part in (each.limit, plate, known, each.settles) if part))


def _beside(each: Measured) -> tuple[str, ...]:
    meter = f"with: {each.instrument}" if each.instrument else ""
    return tuple(part for part in (meter, each.remark) if part)


def _photos(story: Story) -> Iterator[Block]:
    beside = story.beside
    shown = {*beside.photos_found, *beside.photos_left} if beside.photos_left else set()
    rest = [photo for photo in story.photos if photo.name not in shown]
    if rest:
        yield Heading("Photos", 2)
    shown = [_photo(photo) for photo in rest]
    for pair in zip(shown[::2], [*shown[1::2], None], strict=False):
        yield Pictures(pair)


def _photo(photo: Photo) -> Picture:
    gone = "" if photo.data is not None else " (no longer kept)"
    return Picture(
        photo, f"{photo.caption}{gone} \u00b7 {full(photo.at)} \u00b7 photo {photo.name[:PHOTO_LENGTH]}"
    )
