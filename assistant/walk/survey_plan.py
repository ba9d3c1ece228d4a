"""Who blows where, from a survey's answer: each thermostat with the registers that blow when it calls."""

from __future__ import annotations

from dataclasses import dataclass

from assistant.trade.zone.assign import NONE
from assistant.trade.zone.reason import Answer, percent
from assistant.trade.zone.settle import BY_LOOK
from assistant.tree.model import Measure
from assistant.walk.ask import Taken
from assistant.walk.state import Visit
from assistant.walk.survey_sheet import Sheet, from_line, said

NO_ZONE, NOT_SETTLED = "no zone of this system", "not settled yet"


@dataclass(frozen=True)
class Place:
    """One register of the plan. `should` is the thermostat that it should be of, where it is another."""

    register: str
    sure: float
    should: str = ""


def plan_of(answer: Answer, sheet: Sheet) -> list[tuple[str, list[Place]]]:
    """(thermostat, its registers), in the sheet's order; then what belongs to none, or is not settled."""
    found: dict[str, list[Place]] = {name: [] for name in sheet.thermostats}
    for register, place in answer.places.items():
        zone = NO_ZONE if place.zone == NONE else said(place.zone) if place.zone else NOT_SETTLED
        name = said(register)
        should = sheet.drawn.get(name, "")
        found.setdefault(zone, []).append(
            Place(name, place.confidence, "" if zone in (should, NOT_SETTLED) else should)
        )
    return list(found.items())


def plan_in_words(plan: list[tuple[str, list[Place]]]) -> list[tuple[str, str]]:
    """The same as (thermostat, registers in a line), for a table and for a screen reader."""
    return [(zone, ", ".join(_said(place) for place in places) or "none") for zone, places in plan]


def _said(place: Place) -> str:
    should = f", should be of {place.should}" if place.should else ""
    return f"{place.register} ({percent(place.sure)}{should})"


def last_survey(visit: Visit) -> Sheet | None:
    """The last zone survey of a visit; None where none was made."""
    taken = survey_taken(visit)
    return from_line(taken.records[0].typed.text) if taken else None


def survey_taken(visit: Visit) -> Taken | None:
    """The step at which the last zone survey of a visit was made."""
    for taken in reversed(visit.history):
        try:
            step = visit.step(taken.step)[1]
        except KeyError:
            continue
        if isinstance(step, Measure) and step.survey and taken.records:
            return taken
    return None


def conclusions(answer: Answer) -> list[str]:
    """What the survey says besides the plan, each with how sure it is."""
    return [f"{sentence(each.words)} ({percent(each.confidence)})" for each in answer.findings]


def with_readings(answer: Answer) -> list[tuple[str, str]]:
    """Each conclusion with how sure it is, and the reading that would settle it, or nothing."""
    return [
        (said, sentence(BY_LOOK[each.kind].format(*each.about)) if each.kind in BY_LOOK else "")
        for said, each in zip(conclusions(answer), answer.findings, strict=True)
    ]


def settles_the_rest(answer: Answer) -> list[str]:
    """What to read next, without what stands beside a conclusion already."""
    beside = {reading for _, reading in with_readings(answer)}
    return [said for each in answer.settle if (said := sentence(each)) not in beside]


def sentence(words: str) -> str:
    """With a capital, and names as they were typed."""
    words = words.replace("_", " ")
    return words[:1].upper() + words[1:]
