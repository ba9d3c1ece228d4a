"""The blocks of what is around the walk: in the trail, and for the warranty desk."""

from __future__ import annotations

from collections.abc import Iterator

from assistant.report.around import Beside, Warranty
from assistant.report.blocks import (
    Block,
    Cell,
    Heading,
    Pairs,
    Picture,
    Pictures,
    Points,
    Table,
    ToSign,
    Words,
)
from assistant.report.story import NO_NUMBER, FindingTold, Measured, Story
from assistant.report.times import day, full
from assistant.walk.earlier_visit import Past
from assistant.walk.waiting import Wanted

QUESTIONS = 46
"""Share of the width for the questions of a sheet, which are whole sentences."""
NOT_BEFORE = "\u2013"
"""Stands where a reading was not taken before the repair."""


def before_and_after(
    measured: tuple[Measured, ...], before: tuple[Measured | None, ...], both: bool = False
) -> Table:
    """The readings of a proof with the same ones before the repair, against what they should be; with `both`
    only those that were read before, too.
    """
    rows = []
    for each, old in zip(measured, before, strict=True):
        if both and old is None:
            continue
        earlier = Cell(_value(old), (old.verdict,) if old.verdict else ()) if old else Cell(NOT_BEFORE)
        rows.append(
            (
                Cell(each.what),
                earlier,
                Cell(_value(each), (each.verdict,) if each.verdict else ()),
                Cell(each.should or each.limit, (f"rating plate: {each.plate}",) if each.plate else ()),
            )
        )
    return Table(("Measured", "Before", "After", "Should be"), tuple(rows), (34, 21, 21, 24))


def for_trail(story: Story) -> Iterator[Block]:
    """Earlier visits first, then what was asked before starting, unit, settings, and what is waited for."""
    told = story.beside
    if told.past:
        yield Heading("Our earlier visits here", 2)
        if told.twice:
            yield Words(" ".join(told.twice), "notice")
        for past in told.past:
            yield from _past(past)
    if told.compared:
        yield Heading("Today's readings beside the earlier ones", 3)
        yield Table(
            ("Measured", "Earlier", "Today", "Change"),
            tuple(tuple(Cell(words) for words in row) for row in told.compared),
            (38, 24, 16, 22),
        )
    for sheet in told.sheets:
        yield Heading(sheet.title, 2)
        yield Pairs(sheet.answers, QUESTIONS)
        if sheet.skipped:
            yield Words(f"Not filled in: {'; '.join(sheet.skipped)}.", "faint")
    if told.unit:
        yield Heading("The unit", 2)
        yield Pairs(told.unit)
    if any(each.left for each in told.settings):
        yield Heading("As found and as left", 2)
        yield _settings(told)
        yield from _photo_pairs(story)
    elif told.settings:
        yield Heading("As found", 2)
        yield Pairs(tuple((capital(each.what), each.found) for each in told.settings))
    if told.wanted:
        yield Heading("Waiting for", 2)
        if told.order:
            yield Pairs(told.order)
        for each in told.wanted:
            yield from _wanted(each)
        if told.wanted_mark:
            yield Words(f"What must not differ and what is ordered with it: {told.wanted_mark}.", "faint")
        if told.next_time:
            yield Heading("Next time, in this order", 3)
            yield Points(told.next_time, "open")
    if told.advice:
        yield Heading("Recommendations", 2)
        yield Table(
            ("What", "Why", "Number", "Answer"),
            tuple(
                (Cell(a.what), Cell(a.why), Cell(a.number), Cell(a.answer or "not answered"))
                for a in told.advice
            ),
            (30, 36, 17, 17),
        )


def warranty(story: Story) -> Iterator[Block]:
    """A page of its own where a part that costs money failed."""
    told = story.beside
    if not told.warranty:
        return
    yield Heading("For the warranty desk", 1)
    yield Words(
        "The unit, the part, the readings that show it failed, and what was ruled out as the reason.", "small"
    )
    yield Pairs(
        tuple((capital(name), value) for name, value in (*told.unit, *story.plate))
        or (("Unit", "make, model and serial number not read"),)
    )
    if not any(name == "Serial number" for name, _ in told.unit):
        yield Words("The serial number was not read. Most claims need it.", "notice")
    findings = {finding.title: finding for finding in story.findings}
    for each in told.warranty:
        yield from _warranty(each, findings.get(each.finding))
    yield Words(f"Fingerprint {story.fingerprint}", "faint")
    yield ToSign(("Technician's signature", "Date"))


def _warranty(each: Warranty, finding: FindingTold | None) -> Iterator[Block]:
    yield Heading(f"{capital(each.part)}: {each.finding}", 2)
    yield Pairs(
        tuple(
            (name, words)
            for name, words in (
                ("Fitted", _fitted(each)),
                ("Ordered", each.ordered),
                ("Ruled out", "; ".join(each.ruled_out)),
                ("Why it failed", each.conclusion),
                ("Fitted here before", ", ".join(day(at) for at in each.again)),
                ("Proof of repair", finding.proof if finding else ""),
            )
            if words
        )
    )
    if finding is not None and finding.facts:
        yield Table(
            ("Readings that show it", "Result", "Limit"),
            tuple((Cell(f.what), Cell(_value(f), (f.verdict,)), Cell(f.limit)) for f in finding.facts),
            (44, 28, 28),
        )


def _fitted(each: Warranty) -> str:
    if not each.fitted:
        return "not fitted yet"
    return f"{full(each.fitted)}, {f'part number {each.number}' if each.number else NO_NUMBER}"


def _past(past: Past) -> Iterator[Block]:
    began = day(past.began)
    yield Heading(f"{began}: {', '.join(past.complaints) or 'no complaint'}", 3)
    said = (
        ("Found", past.found),
        ("Touched", past.touched),
        ("Left open", past.left),
        ("In doubt", past.doubted),
    )
    pairs = tuple((name, "; ".join(words)) for name, words in said if words)
    signed = past.signed.partition(",")[0] or "not signed"
    yield Pairs((*pairs, ("Signed", signed)))


def _settings(told: Beside) -> Table:
    rows = tuple(
        (
            Cell(capital(each.what), ("changed",) if each.differs else ()),
            Cell(each.found or "not written down"),
            Cell(each.left or "not written down"),
        )
        for each in told.settings
    )
    return Table(("Setting", "As found", "As left"), rows, (34, 33, 33))


def _photo_pairs(story: Story) -> Iterator[Block]:
    """Photos found and left, in the order they were taken, two by two."""
    photos = {photo.name: photo for photo in story.photos}
    found = [photos[name] for name in story.beside.photos_found if name in photos]
    left = [photos[name] for name in story.beside.photos_left if name in photos]
    if not left:
        return
    for place in range(max(len(found), len(left))):
        pair = [photo[place] if place < len(photo) else None for photo in (found, left)]
        yield Pictures(tuple(Picture(p, f"{p.caption}, {full(p.at)}") if p else None for p in pair))


def _wanted(each: Wanted) -> Iterator[Block]:
    yield Heading(f"{capital(each.title)} ({each.finding})", 3)
    pairs = [
        ("Must not differ in", "; ".join(each.matches)),
        ("Ordered with it", "; ".join(each.together)),
        *((f"Plate, {name}", value) for name, value in each.plate),
        ("Fitted here before", ", ".join(day(at) for at in each.before)),
        ("Still open", "why the old one failed" if each.causes_open else ""),
    ]
    yield Pairs(tuple((name, words) for name, words in pairs if words))


def capital(words: str) -> str:
    """With a capital letter, as the name of a row."""
    return words[:1].upper() + words[1:]


def _value(each: Measured) -> str:
    return each.understood.partition(": ")[0] or each.typed
