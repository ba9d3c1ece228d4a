"""The page for the customer: what was wrong, how we know, why it failed, what was done, what is still to do.

Results only, in the words that the trees have for customers; kind, without a trade word of our own and
without a list of anybody's slips.
"""

from __future__ import annotations

from collections.abc import Callable

from assistant.report.beside import before_of
from assistant.report.standing import held, in_full, latest, sentence, standing, works
from assistant.report.story import ComplaintForCustomer, CustomerPage, FoundForCustomer, Measured
from assistant.report.zones import places_for_customer
from assistant.tree.model import Finding
from assistant.walk.ask import Cause, Found, OpenPoint, Record
from assistant.walk.state import Visit

GO_ON = {
    "open": "Find out what is wrong",
    "walking": "Go on finding out what is wrong",
    "stopped": "Clear what we stopped for",
}
"""What is to do about a complaint that is not settled. Where something was found, the points of its repair
say it."""
FIND_WHY = "Find out why it failed, so that it does not fail again."
PROVE = "Show by measuring that the repair works."
PROVE_AGAIN = "Find out why the repair did not hold: measured afterwards, it does not work as it should."
STAYS = "What we switched off, closed or opened stays so until what we stopped for is cleared."
WORN = "It had worn out with use. We looked for anything that could have damaged it and found nothing."
NOT_FOUND = "We looked for a reason and found none this time."
LOOKED_AT = "The technician's part names what we looked at and ruled out."

Told = Callable[[Record], Measured]


def customer_page(
    visit: Visit, person: tuple[tuple[str, str], ...], points: tuple[OpenPoint, ...], tell: Told
) -> CustomerPage:
    """`tell` puts a reading in words; `points` are the open points of the visit."""
    complaints = tuple(
        ComplaintForCustomer(
            state.words,
            standing(visit, state).customer,
            tuple(_found(visit, found, tell) for found in latest(visit, state.name)),
        )
        for state in visit.complaints
    )
    to_do = tuple(dict.fromkeys(filter(None, (_to_do(point, visit) for point in points))))
    return CustomerPage(person, complaints, to_do, _cautions(visit))


def _found(visit: Visit, found: Found, tell: Told) -> FoundForCustomer:
    finding = found.finding
    how = tuple(tell(record) for record in found.facts)
    if not isinstance(finding, Finding):
        return FoundForCustomer(
            sentence(finding.customer or finding.finding or ""), how, (), (), (), "", False
        )
    acts = visit.vocabulary.acts
    done = tuple(acts[act].say if act in acts else act for act in found.repaired)
    shown = [record for record in found.proof_records if record.verdict and record.verdict.bands]
    proof = tuple(tell(record) for record in shown)
    before = tuple(tell(old) if (old := before_of(visit, record)) else None for record in shown)
    return FoundForCustomer(
        sentence(finding.customer),
        how,
        _why(found, finding),
        done,
        proof,
        _proved(found),
        works(found),
        finding.fault,
        before,
        places_for_customer(visit, found),
    )


def _why(found: Found, finding: Finding) -> tuple[str, ...]:
    if not finding.fault:
        return (sentence(finding.reason),) if finding.reason else ()
    said = [sentence(_cause_words(cause)) for cause in found.causes if cause.outcome == "found"]
    if not said and found.concluded:
        said.append(WORN if found.concluded == "worn" else NOT_FOUND)
        if any(cause.outcome == "ruled_out" for cause in found.causes):
            said.append(LOOKED_AT)
    return tuple(said)


def _cause_words(cause: Cause) -> str:
    back = cause.back
    return (back.customer or back.says if back else None) or cause.title


def _proved(found: Found) -> str:
    if found.proof == "proved":
        return "After the repair we measured again:"
    if found.proof == "not_proved":
        return "After the repair we measured again, and it does not work as it should yet:"
    return ""


def _to_do(point: OpenPoint, visit: Visit) -> str:
    """An open point as a thing to do; empty where other points say it already."""
    if point.kind == "complaint":
        state = visit.state_of(point.key.removeprefix("complaint."))
        if state is None or state.status not in GO_ON:
            return ""
        words = f"{GO_ON[state.status]}: \u201c{state.words}\u201d"
        return f"{words}. Left open because: {sentence(point.left)}" if point.left else words
    if point.kind == "power" and not _is_supply(visit, point.key.removeprefix("power.")):
        return ""
    if point.kind in ("undo", "power") and held(visit):
        return STAYS  # a page for people who live there never tells them to open a gas cock
    words = _in_plain_words(point, visit)
    return f"{words} Left open because: {sentence(point.left)}" if point.left else words


def _in_plain_words(point: OpenPoint, visit: Visit) -> str:
    """A point of a repair for somebody who knows no trade word: what the trees call a cause or a proof stands
    in the technician's part.
    """
    if point.kind == "proof":
        short = [f for f in visit.found if point.key == f"proof.{f.step}.wait"]
        if short:
            return " ".join(in_full(short[-1]))
        return PROVE_AGAIN if point.words.endswith(": failed") else PROVE
    return {
        "cause": FIND_WHY,
        "power": "Switch the power back on when the work is finished.",
    }.get(point.kind, sentence(point.words))


def _cautions(visit: Visit) -> tuple[str, ...]:
    said = [
        f"\u201c{state.words}\u201d: please do not switch it on until this is cleared."
        for state in visit.complaints
        if state.status == "stopped"
    ]
    position = visit.position
    if position is not None and position.stage == "stop" and visit.complaint is None:
        page = visit.vocabulary.stops.get(position.page or "")
        if page:
            said += [page.title, *page.lines]
    for hazard in visit.hazards:
        page = visit.vocabulary.stops.get(visit.vocabulary.hazards.get(hazard.name, ""))
        if page:
            said.append(f"During this visit we met a danger: {page.title}")
    if any(
        state in ("off", "dead") and _is_supply(visit, name) for name, state in visit.house.circuits.items()
    ):
        said.append("We left the power to the heater off.")
    return tuple(dict.fromkeys(said))


def _is_supply(visit: Visit, circuit: str) -> bool:
    """A circuit that is switched on again; a capacitor that was bled is none."""
    known = visit.vocabulary.circuits.get(circuit)
    return known is not None and known.restore is not None
