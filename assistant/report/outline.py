"""A story laid out as headings, paragraphs, lists, tables and photos, in the order that every format writes
them.

What stands where is decided here once; how it looks is for html.py, text.py and pdf.py.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Union

from assistant.report.story import (
    ComplaintForCustomer,
    FindingTold,
    FoundForCustomer,
    Measured,
    Photo,
    Row,
    Story,
)
from assistant.report.times import clock, day, full
from assistant.trail.fingerprint import short

PHOTO_LENGTH = 12
"""Hex digits by which a kept photo is named on paper."""


@dataclass(frozen=True)
class Heading:
    """`level` 1 begins a part on a page of its own, 2 a section, 3 what belongs to one thing."""

    text: str
    level: int = 2


@dataclass(frozen=True)
class Words:
    """A paragraph. `weight`: plain, strong, small, notice (framed) or quote (somebody's own words)."""

    text: str
    weight: str = "plain"


@dataclass(frozen=True)
class Points:
    """A list. `mark`: dot, done (a tick) or open (an empty box)."""

    items: tuple[str, ...]
    mark: str = "dot"


@dataclass(frozen=True)
class Pairs:
    """Names and their values, one beside the other."""

    items: tuple[tuple[str, str], ...]


@dataclass(frozen=True)
class Cell:
    """Lines of a table cell; `struck` for what was taken back, `small` for what stands beside it."""

    text: str
    small: tuple[str, ...] = ()
    struck: bool = False

    @property
    def empty(self) -> bool:
        return not self.text and not self.small


@dataclass(frozen=True)
class Table:
    """`widths` are shares of the page's width, together 100. An empty last cell leaves its room to the one
    before."""

    heads: tuple[str, ...]
    rows: tuple[tuple[Cell, ...], ...]
    widths: tuple[int, ...]


@dataclass(frozen=True)
class Picture:
    """A photo with the words below it."""

    photo: Photo
    caption: str


Block = Union[Heading, Words, Points, Pairs, Table, Picture]


def foot(story: Story) -> str:
    """What stands at the foot of every page."""
    return f"Fingerprint {short(story.fingerprint)}"


def outline(story: Story) -> Iterator[Block]:
    """All blocks of the report: the customer's page, then the trail."""
    yield from _customer(story)
    yield from _trail(story)


def _customer(story: Story) -> Iterator[Block]:
    yield Heading("Your heating: what we found and what we did", 1)
    if story.practice:
        yield Words("PRACTICE. No house was visited.", "strong")
    page = story.customer
    if page.person:
        yield Pairs(tuple((name[:1].upper() + name[1:], value) for name, value in page.person))
    yield Words(f"Visit of {day(story.began)}. {story.standing}", "small")
    yield Words(" ".join(story.notice), "small")
    for caution in page.cautions:
        yield Words(caution, "notice")
    for complaint in page.complaints:
        yield from _complaint(complaint)
    yield Heading("What is still to do", 2)
    if page.still_to_do:
        yield Points(page.still_to_do, "open")
    else:
        yield Words("Nothing that we know of.")


def _complaint(complaint: ComplaintForCustomer) -> Iterator[Block]:
    yield Heading(f"\u201c{complaint.words}\u201d", 2)
    yield Words(complaint.standing, "strong")
    for found in complaint.found:
        yield from _found(found)


def _found(found: FoundForCustomer) -> Iterator[Block]:
    yield Heading("What was wrong" if found.failed else "What we found", 3)
    yield Words(found.what)
    if found.how:
        yield Heading("How we know", 3)
        yield _results(found.how)
    if found.why:
        yield Heading("Why", 3)
        yield from (Words(why) for why in found.why)
    if found.done:
        yield Heading("What was done", 3)
        yield Points(found.done, "done")
    if found.proof:
        yield Heading("How we know that it works" if found.works else "Measured after the repair", 3)
        yield Words(found.proved)
        yield _results(found.proof)


def _results(measured: tuple[Measured, ...]) -> Table:
    """Results with what they should be, and the plate beside them."""
    rows = tuple(
        (
            Cell(each.what),
            Cell(each.understood.partition(": ")[0], (each.verdict,) if each.verdict else ()),
            Cell(each.should, (f"rating plate: {each.plate}",) if each.plate else ()),
        )
        for each in measured
    )
    return Table(("Measured", "Result", "Should be"), rows, (46, 26, 28))


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
    yield Pairs(story.complaints)
    if story.open_points:
        yield Heading("Open points", 2)
        yield Points(
            tuple(f"{what} (left open: {why})" if why else what for what, why in story.open_points), "open"
        )
    if story.still_unproved:
        yield Heading("Still unproved", 2)
        yield Words("The walk was not finished. These could still be found:")
        yield Points(story.still_unproved)
    for finding in story.findings:
        yield from _finding(finding)
    for stop in story.stops:
        yield Heading(f"Stop page: {stop.title}", 2)
        yield Words(" \u00b7 ".join(part for part in (full(stop.at), stop.where) if part), "small")
        yield Points((*stop.lines, *stop.also))
    if story.hand_overs:
        yield Heading("Handed over", 2)
        yield Points(story.hand_overs)
    yield from _facts(story)
    yield Heading("Step by step", 2)
    yield steps(story.rows)
    yield from _photos(story)
    if story.trees:
        yield Heading("Walked with these texts", 2)
        yield Words("Their SHA-256 stand in the trail's first entry, which the fingerprint covers.", "small")
        yield Words(", ".join(file for file, _ in story.trees), "small")


def _finding(finding: FindingTold) -> Iterator[Block]:
    kinds = {"part": "Finding", "no fault": "Finding without a fault", "stop": "Finding that stops the work"}
    yield Heading(f"{kinds[finding.kind]}: {finding.title}", 2)
    yield Words(f"{full(finding.at)} \u00b7 {finding.complaint} \u00b7 {finding.where}", "small")
    told = [
        ("Part", finding.part),
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


def readings(title: str, measured: tuple[Measured, ...]) -> Table:
    """A small table of readings as typed and as understood."""
    rows = tuple((Cell(each.what, _beside(each)), _typed(each), _judged(each)) for each in measured)
    return Table((title, "As typed", "Verdict and limit"), rows, (40, 28, 32))


def _facts(story: Story) -> Iterator[Block]:
    groups = (
        ("As found", story.as_found),
        ("Rating plate", story.plate),
        ("Parts fitted", tuple((part, full(at)) for part, at in story.parts_fitted)),
        ("Instruments", tuple((name, "") for name in story.instruments)),
    )
    for title, pairs in groups:
        if pairs:
            yield Heading(title, 2)
            yield Pairs(tuple((name[:1].upper() + name[1:], value) for name, value in pairs))


def steps(rows: tuple[Row, ...]) -> Table:
    """The whole trail as one table."""
    out: list[tuple[Cell, ...]] = []
    for row in rows:
        gone = bool(row.taken_back)
        notes = ([f"TAKEN BACK: {row.taken_back}"] if gone else []) + list(row.remarks)
        notes += [f"photo {name[:PHOTO_LENGTH]}" for name in row.photos]
        first = Cell(row.asked, tuple(part for part in (row.where, *notes) if part), gone)
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
                else Cell(row.asked, (*first.small, *_beside(each)), gone)
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
    return Cell(each.verdict, tuple(part for part in (each.limit, plate, known) if part))


def _beside(each: Measured) -> tuple[str, ...]:
    meter = f"with: {each.instrument}" if each.instrument else ""
    return tuple(part for part in (meter, each.remark) if part)


def _photos(story: Story) -> Iterator[Block]:
    if story.photos:
        yield Heading("Photos", 2)
    for photo in story.photos:
        gone = "" if photo.data is not None else " (no longer kept)"
        yield Picture(
            photo, f"{photo.caption}{gone} \u00b7 {full(photo.at)} \u00b7 photo {photo.name[:PHOTO_LENGTH]}"
        )
