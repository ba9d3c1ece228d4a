"""The few words that the window adds to those of the trees: times, leads, the meter, power, names made
plain.
"""

from __future__ import annotations

import re
from datetime import datetime
from typing import TYPE_CHECKING

from assistant.report.notice import NOTICE

if TYPE_CHECKING:
    from assistant.house.model import Vocabulary
    from assistant.tree.library import Library
    from assistant.tree.model import Reading, Step
    from assistant.walk.ask import Ask
    from assistant.walk.past import Earlier

QUALIFIED = " ".join(NOTICE)

_POWER = {"live": "on", "off": "switched off", "dead": "off and proved dead", "unknown": "not known yet"}


def plain(name: str) -> str:
    """A vocabulary name as words: `pressure_switch.closes` -> "pressure switch closes"."""
    return name.replace("_", " ").replace(".", " ")


def fill(text: str, vocabulary: Vocabulary, circuit: str | None) -> str:
    """`text` with the procedure's circuit in place of $circuit."""
    if circuit is None:
        return text
    known = vocabulary.circuits.get(circuit)
    return text.replace("$circuit", known.title if known else plain(circuit))


def point(vocabulary: Vocabulary, name: str) -> str:
    """A point as the drawing labels it."""
    known = vocabulary.points.get(name)
    return known.label if known else plain(name)


def leads(vocabulary: Vocabulary, points: tuple[str, ...]) -> str:
    """Where the leads (or the one probe) go, numbered as on the drawing."""
    names = [point(vocabulary, name) for name in points]
    if len(names) < 2:
        return f"At: {names[0]}" if names else ""
    return "Leads: " + ", ".join(f"{number} to {name}" for number, name in enumerate(names, 1))


def meter(reading: Reading, instrument: str = "") -> str:
    """The meter's function, its impedance where it matters, and the shop's instrument where one is known."""
    said = _function(reading)
    return f"{said} ({instrument})" if instrument else said


def _function(reading: Reading) -> str:
    from assistant.quantity.kind import KINDS

    kind = KINDS.get(reading.kind)
    function = kind.title if kind else plain(reading.kind)
    if not reading.meter:
        return f"Meter: {function}"
    if "impedance" in reading.meter:
        return f"Meter: {function}, {reading.meter}"
    return f"With: {reading.meter}"


_SHOWN = {
    "ac_voltage": "AC volts",
    "dc_voltage": "DC volts",
    "ac_current": "AC amps",
    "dc_current": "DC amps",
    "resistance": "ohms",
}


def quantity(kind: str) -> str:
    """What is read, as it stands on a meter: "AC volts", "ohms", "DC amps"; else the quantity's title."""
    from assistant.quantity.kind import KINDS

    known = KINDS.get(kind)
    return _SHOWN.get(kind) or (known.words if known else plain(kind))


def power(vocabulary: Vocabulary, needs: dict[str, str], circuit: str | None = None) -> str:
    """What must be on, off or dead while this is done."""
    said = []
    for name, state in needs.items():
        real = circuit if name == "$circuit" and circuit else name
        known = vocabulary.circuits.get(real)
        said.append(f"{known.title if known else plain(real)} {_POWER.get(state, state)}")
    return "Power: " + ", ".join(said) if said else ""


def state(word: str) -> str:
    """A circuit's power state as a person says it."""
    return _POWER.get(word, word)


def parse_time(at: str) -> datetime | None:
    """A recorded time; None where it is none."""
    try:
        return datetime.fromisoformat(at)
    except ValueError:
        return None


def clock(at: str) -> str:
    """The local hour and minute of a recorded time: "9:14"."""
    when = parse_time(at)
    return f"{when.hour}:{when.minute:02d}" if when else at


def day(at: str) -> str:
    """The local day and minute of a recorded time."""
    when = parse_time(at)
    return f"{when.day} {when:%b} {when.year}, {when.hour}:{when.minute:02d}" if when else at


def lasting(seconds: float) -> str:
    """A duration: "45 s", "2 min 10 s", "1 h 5 min"."""
    whole = max(0, round(seconds))
    if whole < 60:
        return f"{whole} s"
    minutes, rest = divmod(whole, 60)
    if minutes < 60:
        return f"{minutes} min {rest} s" if rest else f"{minutes} min"
    hours, minutes = divmod(minutes, 60)
    return f"{hours} h {minutes} min" if minutes else f"{hours} h"


def ago(at: str, now: str) -> str:
    """How long before `now` something was recorded: "just now", "12 min ago"."""
    then, here = parse_time(at), parse_time(now)
    if then is None or here is None:
        return ""
    try:
        seconds = (here - then).total_seconds()
    except TypeError:
        return ""
    return "just now" if seconds < 60 else f"{lasting(seconds - seconds % 60)} ago"


def question(step: Step) -> str:
    """What a step asks or says, for the list of steps taken."""
    from assistant.tree.model import Compute, HandOver

    asked = getattr(step, "ask", None) or getattr(step, "title", None) or getattr(step, "finding", None)
    if asked:
        return asked.replace("$circuit", "the circuit")
    if isinstance(step, Compute):
        return f"Work out: {plain(step.function)}"
    if isinstance(step, HandOver):
        return f"Hand over to: {plain(step.complaint)}"
    return plain(step.common.name)


def question_at(library: Library, address: str) -> str:
    """The question of the step at `tree.step`; the address made plain where the tree has changed since."""
    kind, _, name = address.partition(".")
    if kind == "act" and name in library.vocabulary.acts:
        return library.vocabulary.acts[name].say
    if kind == "cause":
        return _cause(library, name)
    try:
        return question(library.step(address)[1])
    except (KeyError, ValueError):
        return plain(address)


def _cause(library: Library, finding: str) -> str:
    """The conclusion about a finding's cause, which no tree asks; trees may use one name for two findings."""
    from assistant.tree.model import Finding

    steps = [tree.steps[finding] for tree in library.trees.values() if finding in tree.steps]
    titles = {step.title for step in steps if isinstance(step, Finding)}
    said = f" of: {titles.pop()}" if len(titles) == 1 else ""
    return f"What you concluded about the cause{said}"


def spoken(ask: Ask, vocabulary: Vocabulary) -> str:
    """Ask's own words with the circuit's name put in."""
    return fill(ask.say or (question(ask.body) if ask.body is not None else ""), vocabulary, ask.circuit)


def plain_answer(answer: str) -> str:
    """An answer as the walk wrote it down, for a margin: names made plain, and without what a zero or an
    OL may be at most (the step itself says it).
    """
    short = re.sub(r": at most [^:;]+(?=[:;]|$)|: the top of the range is not known", "", answer)
    return short.replace("_", " ")


def earlier(found: Earlier) -> str:
    """The reading of an earlier visit, for today's page: what, when, and what this unit should show."""
    from assistant.walk.past import expected_words

    more = expected_words(found)
    meant = f" ({found.reading.words})" if found.reading.words else ""
    when = day(found.reading.at or found.visit.began)
    said = f"Earlier here: {plain_answer(found.reading.text)}{meant}, {when}"
    return f"{said}; {more}" if more else said
