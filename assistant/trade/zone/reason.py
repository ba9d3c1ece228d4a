"""From a survey to its answer: who belongs where, what is wrong, how sure, and what would settle the rest."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from assistant.trade.zone.assign import NONE, Place, places
from assistant.trade.zone.callers import callers
from assistant.trade.zone.dampers import dampers
from assistant.trade.zone.settle import settle
from assistant.trade.zone.strangers import strangers
from assistant.trade.zone.survey import Finding, Survey
from assistant.trade.zone.thermostats import merged


@dataclass(frozen=True)
class Answer:
    """`places`: register -> zone and how sure. `findings`: surest first.

    `settle`: up to two readings, in words.
    """

    places: Mapping[str, Place]
    findings: tuple[Finding, ...]
    settle: tuple[str, ...]


def reason(survey: Survey) -> Answer:
    """What the survey says. Never raises on a Survey; an empty one says nothing."""
    groups, findings = merged(survey)
    where = places(survey, groups)
    odd = strangers(survey, where, groups)
    strange = {f.about[0]: f.confidence for f in odd if f.kind == "not of this system"}
    settled = {r: Place(NONE, strange[r], p.chances) if r in strange else p for r, p in where.items()}
    findings = [
        *findings,
        *odd,
        *dampers(survey, settled, groups),
        *callers(survey, settled, groups, set(strange)),
    ]
    findings.sort(key=lambda f: -f.confidence)
    return Answer(settled, tuple(findings), settle(survey, settled, findings))


def percent(chance: float) -> str:
    """A confidence as text; never 100 %: the anemometer is not the only thing that can be wrong."""
    return "over 99 %" if chance > 0.99 else f"{100 * chance:.0f} %"


def by_zone(answer: Answer) -> list[str]:
    """A line for each zone with its registers, each with how sure it is."""
    found: dict[str, list[str]] = {}
    for r, place in answer.places.items():
        key = "of no zone here" if place.zone == NONE else place.zone or "not settled"
        found.setdefault(key, []).append(f"{r} ({percent(place.confidence)})")
    return [f"{zone}: {', '.join(registers)}" for zone, registers in found.items()]


def in_words(answer: Answer) -> str:
    """The answer as lines: registers by zone, findings with their confidence, what to read next."""
    lines = by_zone(answer)
    lines += [f"{f.words} ({percent(f.confidence)})." for f in answer.findings]
    lines += [f"Read next: {text}." for text in answer.settle]
    return "\n".join(lines)
