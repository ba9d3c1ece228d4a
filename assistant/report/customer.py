"""The page for the customer: what was wrong, how we know, why it failed, what was done, what is still to do.

Results only, in the words that the trees have for customers; kind, without a trade word of our own and
without a list of anybody's slips.
"""

from __future__ import annotations

from collections.abc import Callable

from assistant.report.beside import before_of
from assistant.report.story import ComplaintForCustomer, CustomerPage, FoundForCustomer, Measured
from assistant.tree.model import Finding
from assistant.walk.ask import Cause, Found, OpenPoint, Record
from assistant.walk.state import ComplaintState, Visit

STANDING = {
    "open": "Not finished yet.",
    "walking": "Not finished yet.",
    "found": "Found. The repair is not finished yet.",
    "stopped": "We stopped here for safety and left it off. Please leave it off until we, or another "
    "qualified person, say that it may run.",
    "handed_over": "This led us to another question; see below.",
    "settled": "Settled.",
    "proved": "Repaired, and shown to work by the readings below.",
}
CUT_SHORT = "Repaired. One wait of the proof was cut short, so it is not fully shown yet."
WAITS_CUT_SHORT = "Repaired. Some waits of the proof were cut short, so it is not fully shown yet."
GO_ON = {
    "open": "Find out what is wrong",
    "walking": "Go on finding out what is wrong",
    "stopped": "Clear what we stopped for",
}
"""What is to do about a complaint that is not settled. Where something was found, the points of its repair
say it."""
WORN = "It had worn out with use. We looked for anything that could have damaged it and found nothing."
NOT_FOUND = "We looked for a reason and found none this time."

Told = Callable[[Record], Measured]


def customer_page(
    visit: Visit, person: tuple[tuple[str, str], ...], points: tuple[OpenPoint, ...], tell: Told
) -> CustomerPage:
    """`tell` puts a reading in words; `points` are the open points of the visit."""
    latest = {found.step: found for found in visit.found}
    complaints = tuple(
        ComplaintForCustomer(
            state.words,
            _standing(visit, state),
            tuple(_found(visit, found, tell) for found in latest.values() if found.complaint == state.name),
        )
        for state in visit.complaints
    )
    to_do = tuple(dict.fromkeys(filter(None, (_to_do(point, visit) for point in points))))
    return CustomerPage(person, complaints, to_do, _cautions(visit))


def _standing(visit: Visit, state: ComplaintState) -> str:
    words = STANDING.get(state.status, state.status)
    if state.status == "proved":
        latest = {found.step: found for found in visit.found if found.complaint == state.name}
        short = [words for found in latest.values() for words in found.cut_short]
        if short:
            return CUT_SHORT if len(short) == 1 else WAITS_CUT_SHORT
    if state.status == "handed_over":
        known = visit.vocabulary.complaints.get(state.note)
        return f"{words} ({known.title})" if known else words
    if state.status == "settled" and state.note:
        return f"{words} {_sentence(state.note)}"
    return words


def _found(visit: Visit, found: Found, tell: Told) -> FoundForCustomer:
    finding = found.finding
    how = tuple(tell(record) for record in found.facts)
    if not isinstance(finding, Finding):
        return FoundForCustomer(
            _sentence(finding.customer or finding.finding or ""), how, (), (), (), "", False
        )
    acts = visit.vocabulary.acts
    done = tuple(acts[act].say if act in acts else act for act in found.repaired)
    shown = [record for record in found.proof_records if record.verdict and record.verdict.bands]
    proof = tuple(tell(record) for record in shown)
    before = tuple(tell(old) if (old := before_of(visit, record)) else None for record in shown)
    return FoundForCustomer(
        _sentence(finding.customer),
        how,
        _why(found, finding),
        done,
        proof,
        _proved(found),
        found.proof == "proved" and not found.cut_short,
        finding.fault,
        before,
    )


def _why(found: Found, finding: Finding) -> tuple[str, ...]:
    if not finding.fault:
        return (_sentence(finding.reason),) if finding.reason else ()
    said = [_sentence(_cause_words(cause)) for cause in found.causes if cause.outcome == "found"]
    if not said and found.concluded:
        said.append(WORN if found.concluded == "worn" else NOT_FOUND)
        looked = [cause.title for cause in found.causes if cause.outcome == "ruled_out"]
        if looked:
            said.append(f"Looked at and ruled out: {', '.join(looked)}.")
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
        return f"{words}. Left open because: {_sentence(point.left)}" if point.left else words
    if point.kind == "power" and not _is_supply(visit, point.key.removeprefix("power.")):
        return ""
    if point.kind == "proof" and point.key.endswith(".wait"):
        words = _sentence(point.words)
        return f"{words} Left open because: {_sentence(point.left)}" if point.left else words
    last = point.words.removesuffix(": failed").rpartition(": ")[2]
    words = {
        "cause": f"Look for the reason: {last[:1].lower()}{last[1:]}.",
        "proof": f"Show by measuring: {last[:1].lower()}{last[1:]}.",
        "power": "Switch the power back on when the work is finished.",
    }.get(point.kind, _sentence(point.words))
    return f"{words} Left open because: {_sentence(point.left)}" if point.left else words


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


def _sentence(words: str | None) -> str:
    """With a capital and a full stop."""
    text = (words or "").strip()
    if not text:
        return ""
    text = text[:1].upper() + text[1:]
    return text if text[-1] in ".!?:\u201d" else f"{text}."
