"""The customer's part of the report: what was wrong, how we know, why, what was done, what is still to do,
what was agreed and recommended, and a line to sign on.
"""

from __future__ import annotations

from collections.abc import Iterator

from assistant.report.around import Beside
from assistant.report.blocks import Block, Cell, Heading, Pairs, Points, Table, ToSign, Words
from assistant.report.outline_beside import QUESTIONS, before_and_after, capital
from assistant.report.story import PRACTICE, ComplaintForCustomer, FoundForCustomer, Measured, Story
from assistant.report.times import day
from assistant.report.zones import zone_blocks

LABELS = {"make": "Furnace make", "model": "Furnace model", "serial": "Furnace serial number"}
BY_WHOM = "By us, or by another qualified person:"
MOST_RESULTS = 6
"""Readings of a proof on the customer's page; a proof of a whole house has twenty and more."""
NO_HEAT = "The night without heat"
ANSWERED = {
    "accepted": "You said yes.",
    "declined": "You said no.",
    "thinks about it": "You are thinking about it.",
    "": "Not answered yet.",
}


def customer(story: Story) -> Iterator[Block]:
    """Everything on the first pages, down to the line to sign on."""
    yield Heading("Your heating: what we found and what we did", 1)
    if story.practice:
        yield Words(f"{PRACTICE}.", "strong")
    page = story.customer
    if page.person:
        labels = [LABELS.get(name, capital(name)) for name, _ in page.person]
        yield Pairs(tuple(zip(labels, (value for _, value in page.person), strict=True)))
    yield Words(f"Visit of {day(story.began)}. {story.standing}", "small")
    yield Words(" ".join(story.notice), "small")
    for caution in page.cautions:
        yield Words(caution, "notice")
    for complaint in page.complaints:
        yield from _complaint(complaint)
    if parts := [each for each in story.parts_fitted if each.costs]:
        yield Heading("Parts fitted", 2)
        yield Pairs(tuple((capital(each.title), each.number_words) for each in parts))
    yield from zone_blocks(story)
    yield from _healthy(story.beside)
    yield Heading("What is still to do", 2)
    if page.still_to_do:
        yield Words(BY_WHOM, "small")
        yield Points(page.still_to_do, "open")
    else:
        yield Words("Nothing that we know of.")
    yield from _agreed(story)
    yield ToSign(("Customer's signature", "Date"))


def _complaint(complaint: ComplaintForCustomer) -> Iterator[Block]:
    yield Heading(f"\u201c{complaint.words}\u201d", 2)
    yield Words(complaint.standing, "strong")
    for found in complaint.found:
        yield from _found(found)


def _found(found: FoundForCustomer) -> Iterator[Block]:
    yield Heading("What was wrong" if found.failed else "What we found", 3)
    yield Words(found.what)
    if found.places:
        yield Words(found.places)
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
        yield from _shown(found)


def _shown(found: FoundForCustomer) -> Iterator[Block]:
    """The readings of a proof, those first that were read before the repair or stand against the plate."""
    weight = [(old is None, not each.plate) for each, old in zip(found.proof, found.before, strict=True)]
    chosen = sorted(sorted(range(len(weight)), key=lambda place: weight[place])[:MOST_RESULTS])
    proof, before = (tuple(side[place] for place in chosen) for side in (found.proof, found.before))
    yield before_and_after(proof, before) if any(before) else _results(proof)
    if rest := len(found.proof) - len(chosen):
        yield Words(f"And {rest} more reading{'s' * (rest > 1)}, in the technician's part.", "small")


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


def _healthy(told: Beside) -> Iterator[Block]:
    """The unit that nobody complained of, and its numbers."""
    if not told.baseline:
        return
    yield Heading("Your heater is healthy today", 2)
    yield Words("What we measured is kept as the numbers of this very unit: a later visit sees what changed.")
    if told.healthy:
        rows = tuple((Cell(what), Cell(value)) for what, value in told.healthy)
        yield Table(("Measured", "Result"), rows, (70, 30))


def _agreed(story: Story) -> Iterator[Block]:
    """The night without heat, recommendations and options."""
    told = story.beside
    if told.tonight is not None or told.tonight_said:
        yield from _no_heat(told)
    if told.advice:
        yield Heading("What we recommend", 2)
        for each in told.advice:
            number = f" ({each.number})" if each.number else ""
            mark = {"accepted": "done", "": "open"}.get(each.answer, "dot")
            yield Points(
                (f"{each.what}: {each.why}{number}. {ANSWERED.get(each.answer, each.answer)}",), mark
            )
    if told.options:
        yield Heading("Repair or replace", 2)
        yield Words("The facts:", "small")
        yield Pairs(told.outlook)
        yield Words("What you can choose:", "small")
        yield Pairs(told.options)


def _no_heat(told: Beside) -> Iterator[Block]:
    """What was agreed for the night, and the plan."""
    plan = told.tonight
    yield Heading(plan.title if plan else NO_HEAT, 2)
    if told.tonight_said:
        yield Pairs(told.tonight_said, QUESTIONS)
    if plan is None:
        return
    for title, lines in plan.parts:
        yield Heading(title, 3)
        yield Points(lines)
