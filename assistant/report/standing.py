"""How a complaint and a repair stand, said once for the customer and once in the trade's words, from the same
facts: no page of a report may say more than another.
"""

from __future__ import annotations

import re
from dataclasses import dataclass

from assistant.report.measured import plain_name
from assistant.tree.model import Finding
from assistant.walk.ask import Found, OpenPoint
from assistant.walk.path import CUT_SHORT
from assistant.walk.state import ComplaintState, Visit

AFTER_CLEARING = "only when what we stopped for is cleared"
_WAIT = re.compile(rf"(?P<asked>.*): done[^:]*, waited (?P<had>[\d.]+) s of (?P<whole>[\d.]+) s: {CUT_SHORT}")
"""A wait that was cut short, as the walk writes it down."""


@dataclass(frozen=True)
class Standing:
    """The same state twice: `customer` as whole sentences, `trade` as a word or two."""

    customer: str
    trade: str


NOT_FINISHED = "Not finished yet."
STANDING = {
    "walking": Standing(NOT_FINISHED, "not finished"),
    "open": Standing(NOT_FINISHED, "not settled"),
    "found": Standing("Found. The repair is not finished yet.", "found, not yet proved repaired"),
    "stopped": Standing(
        "We stopped here for safety and left it off. Please leave it off until we, or another qualified "
        "person, say that it may run.",
        "stopped for safety",
    ),
    "handed_over": Standing("This led us to another question; see below.", "handed over"),
    "settled": Standing("Settled.", "settled"),
    "proved": Standing("Repaired, and shown to work by the readings below.", "repaired and proved"),
}
NOT_FULLY_SHOWN = Standing(
    "Repaired. It was not watched for as long as it should be; that is still to be done.",
    "repaired, not fully proved: a wait was cut short",
)
NOT_ALL_SHOWN = Standing(
    "It works, as the last readings below show. Something that was found before is not settled yet.",
    "repaired and proved, but for an earlier finding that is not proved",
)
NOT_FULLY_PROVED = "repair not fully proved, a wait was cut short"
PROOF = {
    "proved": "repair proved",
    "not_proved": "the proof of repair failed",
    "none": "needs no proof",
    None: "repair not proved yet",
}


def standing(visit: Visit, state: ComplaintState) -> Standing:
    """How a complaint stands. An unknown status of a newer trail is said as it is."""
    known = STANDING.get(state.status, Standing(f"{plain_name(state.status)}.", plain_name(state.status)))
    if state.status == "proved":
        found = latest(visit, state.name)
        if any(_not_proved(each) for each in found):
            known = NOT_ALL_SHOWN
        elif any(each.cut_short for each in found):
            known = NOT_FULLY_SHOWN
    if not state.note:
        return known
    if state.status == "handed_over":
        to = visit.vocabulary.complaints.get(state.note)
        title = to.title if to else plain_name(state.note)
        return Standing(f"{known.customer} ({title})", f"{known.trade}: {title}")
    if state.status == "settled":
        return Standing(f"{known.customer} {sentence(state.note)}", f"{known.trade}: {state.note}")
    return Standing(known.customer, f"{known.trade}: {state.note}")


def held(visit: Visit) -> bool:
    """Whether the work stands still for safety: nothing is put back or switched on before that is cleared."""
    stopped = any(state.status == "stopped" for state in visit.complaints)
    return stopped or (visit.position is not None and visit.position.stage == "stop")


def with_caution(visit: Visit, point: OpenPoint) -> str:
    """An open point for the technician; while a danger holds, what is put back or switched on waits."""
    waits = point.kind in ("undo", "power") and held(visit)
    return f"{point.words} ({AFTER_CLEARING})" if waits else point.words


def latest(visit: Visit, complaint: str) -> tuple[Found, ...]:
    """The findings of a complaint; of one that was walked to again the last."""
    return tuple({found.step: found for found in visit.found if found.complaint == complaint}.values())


def proof_words(found: Found) -> str:
    """How the repair of a finding stands, in the trade's words; empty where nothing was at fault."""
    if isinstance(found.finding, Finding) and not found.finding.fault:
        return ""
    if found.proof == "proved" and found.cut_short:
        return f"{NOT_FULLY_PROVED}: {'; '.join(found.cut_short)}"
    return PROOF.get(found.proof, found.proof or "")


def _not_proved(found: Found) -> bool:
    fault = not isinstance(found.finding, Finding) or found.finding.fault
    return fault and found.proof not in ("proved", "none")


def works(found: Found) -> bool:
    """Whether the repair is fully shown to work."""
    return found.proof == "proved" and not found.cut_short


def in_full(found: Found) -> tuple[str, ...]:
    """What the customer reads of each wait that was cut short: "Let it run: once more for the full 10 min;
    this time it had 1 min."
    """
    return tuple(_in_full(words) for words in found.cut_short)


def _in_full(words: str) -> str:
    wait = _WAIT.fullmatch(words)
    if wait is None:
        return sentence(f"Once more in full: {words}")
    asked = wait["asked"].rstrip(".")
    return f"{asked}: once more for the full {_long(wait['whole'])}; this time it had {_long(wait['had'])}."


def _long(seconds: str) -> str:
    """A time as people say it: 90 s, 10 min, 2.5 min."""
    whole = float(seconds)
    return f"{whole:g} s" if whole < 120 and whole % 60 else f"{whole / 60:.3g} min"


def sentence(words: str | None) -> str:
    """With a capital and a full stop."""
    text = (words or "").strip()
    if not text:
        return ""
    text = text[:1].upper() + text[1:]
    return text if text[-1] in ".!?:\u201d" else f"{text}."
