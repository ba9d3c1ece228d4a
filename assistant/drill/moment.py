"""When a reading is taken, and which value of many: what the words of its page ask of a person.

Nothing but the page's own words is known here: the question, how to take it, and the note beside the meter.
A page that does not say when leaves the hand to read as things stand, as it would leave an apprentice.
"""

from __future__ import annotations

import re
from dataclasses import dataclass

from assistant.tree.model import Measure, Reading, Watch

NOW = "now"
REST = "rest"
START = "start"
RUNNING = "running"
FIRE = "fire"
HEATING = "fire and blower"
BEFORE_BLOWER = "before the blower"
AFTER_BLOWER = "after the blower"
LOSS = "as the flame goes out"
AFTER_CALL = "after the call"
HELD = "held by a clamp that was left on"
LAST = "as it ran before it opened"

WORDS: tuple[tuple[str, str], ...] = (
    (LAST, r"before it opened"),
    (HELD, r"\bthat the (?:clamp|meter) held\b"),
    (LOSS, r"as the flame goes out|while the flame goes out"),
    (AFTER_CALL, r"after the call has ended|after the inducer has stopped"),
    (REST, r"\bat rest\b|valve shut|standing still|no trial under way"),
    (HEATING, r"burning with the blower running"),
    (BEFORE_BLOWER, r"before the blower (starts|runs|comes)"),
    (AFTER_BLOWER, r"after it started|with the blower running|blower at the heating speed"),
    (
        START,
        r"in th(e|is) trial|during the trial|first trial|second trial|of the trial|warm-up|whole try"
        r"|first try|second try|first start|second start|in one start|during the start|from the call\b"
        r"|as it starts",
    ),
    (FIRE, r"burner on|burning|of fire|flame is there"),
    (RUNNING, r"inducer running|while it runs|while the inducer runs|inducer only|on a call"),
)
"""The first that fits decides; the order puts what is said more closely before what is said loosely."""

LOWEST, HIGHEST = r"\blowest\b", r"\bhighest\b"


@dataclass(frozen=True)
class Moment:
    """`when` is one of the names above; `hold` is "lowest", "highest" or "" for what the display shows."""

    when: str
    hold: str = ""


def moments(step: Measure | Watch) -> tuple[Moment, ...]:
    """The moment of each of a page's readings, in their order."""
    return tuple(_moment(step, reading) for reading in step.readings)


def _moment(step: Measure | Watch, reading: Reading) -> Moment:
    own = f"{reading.ask if reading.ask != step.ask else ''} {reading.meter or ''}".lower()
    page = [step.ask.lower(), *(text.lower() for text in step.common.how)]
    when = _first(own) or next((found for text in page if (found := _first(text))), NOW)
    return Moment(when, _hold(own) or _hold_of_page(page, when))


def _first(text: str) -> str | None:
    return next((name for name, words in WORDS if re.search(words, text)), None)


def _hold(text: str) -> str:
    if re.search(LOWEST, text):
        return "lowest"
    return "highest" if re.search(HIGHEST, text) else ""


def _hold_of_page(page: list[str], when: str) -> str:
    """What the page says of all its readings. In a start the display is watched for what it reaches."""
    if when in (HELD, LAST, REST, BEFORE_BLOWER, AFTER_BLOWER, AFTER_CALL):
        return ""
    said = next((found for text in page if (found := _hold(text))), "")
    return said or ("highest" if when == START else "")
