"""Going back in after everybody had to leave: who may say so, and what does not count any more."""

from __future__ import annotations

from dataclasses import replace

from assistant.house.model import Vocabulary
from assistant.walk.event import Back, Event, GoOn, Read, TakeUp, Watched
from assistant.walk.state import BadAnswer, Visit

LEAVE = ("gas_smell", "carbon_monoxide", "unwell_people")
"""The hazards from which everybody leaves, in houses written before a stop page said who clears it."""
OUTSIDERS = ("the gas supplier", "the fire service")


def who_clears(vocabulary: Vocabulary, page: str | None) -> tuple[str, ...]:
    """Who may say that people may go back in after this stop page; empty where it sends nobody out."""
    told = vocabulary.stops.get(page or "")
    if told is not None and told.cleared_by:
        return told.cleared_by
    out = {vocabulary.hazards.get(name) for name in LEAVE} - {None}
    return OUTSIDERS if page in out else ()


def may_go_on(visit: Visit, event: Event) -> None:
    """Raises BadAnswer where a stop is left from which everybody went out and nobody has said who cleared it:
    on, back, or to another complaint, whatever else stopped the work meanwhile. A reading that was a slip of
    the key is mended. Asked of who leaves it now: a visit of an older version still opens.
    """
    slip = isinstance(event, Back) and event.why == "slip" and isinstance(visit.events[-1], (Read, Watched))
    if not visit.out or slip or not isinstance(event, (GoOn, Back, TakeUp)):
        return
    if not (isinstance(event, GoOn) and event.cleared.strip()):
        asked = " or ".join(who_clears(visit.vocabulary, visit.out))
        raise BadAnswer(f"Nobody goes back in before it is cleared. Write down who said so: {asked}.")


def cleared(visit: Visit) -> Visit:
    """Nothing read before it is taken for granted: the air of the house is not what it was. Numbers of a
    sheet are asked anew; the trail and the readings keep what they were.
    """
    sheets = visit.vocabulary.sheets
    numbers = {
        (sheet, name) for sheet in sheets for name, question in sheets[sheet].questions.items() if question.at
    }
    left = {
        sheet: {name: text for name, text in answers.items() if (sheet, name) not in numbers}
        for sheet, answers in visit.sheets.items()
    }
    return replace(visit, out="", fresh=len(visit.readings), put_down=(), sheets=left)


def said_cleared(visit: Visit) -> str:
    """Who cleared the house last, as it was written down; empty where nobody had to."""
    said = [event.cleared for event in visit.events if isinstance(event, GoOn) and event.cleared]
    return said[-1] if said else ""
