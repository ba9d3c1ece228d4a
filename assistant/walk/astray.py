"""Where a zone survey has air that nobody asked for there, in the names that were typed, and whether the
customer spoke of that.
"""

from __future__ import annotations

import re
from dataclasses import dataclass

from assistant.trade.entry import ArgumentError
from assistant.trade.zone.assign import NONE
from assistant.trade.zone.matrix import LOOK
from assistant.trade.zone.reason import Answer
from assistant.trade.zone.survey import NOBODY, Survey
from assistant.trade.zone_sheet import BadSheet, arguments_in
from assistant.trade.zone_survey import survey_of
from assistant.walk.state import Visit
from assistant.walk.survey_plan import survey_taken
from assistant.walk.survey_sheet import Sheet, from_line, said

WHILE = re.compile(r"\b(?:while|when|whenever|if|after|as soon)\b", re.IGNORECASE)
"""Behind one of these stands who calls."""
NOWHERE = "By the survey no register has air in another thermostat's call."


@dataclass(frozen=True)
class Astray:
    """A register with air in calls that are not its own. `of`: whose it should be, or else is; "" unknown."""

    register: str
    of: str
    callers: tuple[str, ...]


@dataclass(frozen=True)
class Spill:
    """What a survey says of air in the wrong place: every such register, and which of all were read in a call
    of another thermostat.
    """

    sheet: Sheet
    answer: Answer
    astray: tuple[Astray, ...]
    read: frozenset[str]


def spill_of(sheet: Sheet, share: float | None = None) -> Spill | None:
    """From a filled sheet; `share` is the instrument's accuracy. None where the sheet says nothing yet."""
    answer, _ = sheet.answer(share)
    if answer is None:
        return None
    try:
        survey = survey_of(**arguments_in(sheet.line()), **({} if share is None else {"accuracy": share}))
    except (BadSheet, ArgumentError):
        return None
    found, read = [], set()
    for register in survey.registers:
        name, place = said(register), answer.places.get(register)
        whose = sheet.drawn.get(name) or (
            said(place.zone) if place and place.zone not in (None, NONE) else ""
        )
        others = {said(c.caller) for c in survey.flows if c.register == register} - {whose}
        if others:
            read.add(name)
        callers = tuple(
            caller for caller in sheet.callers if caller in others and _blows(survey, register, caller)
        )
        if callers and (whose or len(callers) > 1):
            found.append(Astray(name, whose, callers))
    return Spill(sheet, answer, tuple(found), frozenset(read))


def _blows(survey: Survey, register: str, caller: str) -> bool:
    """Whether that call moves more air at the register than a shut damper passes."""
    cells = [cell for cell in survey.flows if cell.register == register]
    flows = {cell: survey.flow(cell.mode, cell.caller, register) for cell in cells}
    most = max((flow.value for flow in flows.values() if flow), default=0.0)
    least = max(survey.meter.floor, LOOK * most)
    return any(flow and said(cell.caller) == caller and flow.value >= least for cell, flow in flows.items())


def of_visit(visit: Visit, tree: str | None = None) -> Spill | None:
    """Of the last survey that a visit made, if `tree` is given only of one made on a walk of that tree."""
    taken = survey_taken(visit)
    if taken is None or (tree is not None and taken.step.partition(".")[0] != tree):
        return None
    instrument = visit.shop.instrument("airflow", taken.records[0].typed.instrument or visit.instrument)
    percent = instrument.percent.get("airflow") if instrument is not None else None
    try:
        return spill_of(from_line(taken.records[0].typed.text), percent / 100 if percent else None)
    except BadSheet:
        return None


def for_technician(spill: Spill) -> list[str]:
    """A line for each group of registers: "den (of bed) has air when hall calls"."""
    groups: dict[tuple[str, tuple[str, ...]], list[str]] = {}
    for one in spill.astray:
        groups.setdefault((one.of, one.callers), []).append(one.register)
    lines = []
    for (of, callers), registers in groups.items():
        has = "has" if len(registers) == 1 else "have"
        lines.append(f"{listed(registers)}{f' (of {of})' if of else ''} {has} air when {_when(callers)}")
    return lines or [NOWHERE]


def for_customer(spill: Spill) -> str:
    """One sentence without a trade word; empty where no air was found in the wrong place."""
    if not spill.astray:
        return ""
    return (
        "When we went round all grilles, air that was not asked for there came out of "
        f"{listed([one.register for one in spill.astray])}."
    )


def against_the_words(spill: Spill, words: str) -> str:
    """Where the customer's words and the survey disagree, a sentence that says so; empty where they agree or
    the survey did not read what they speak of.
    """
    blowing = [one.register for one in spill.astray]
    meant = _meant(spill, words)
    still = set(meant) & spill.read
    if still and not still & set(blowing):
        stays = f"on the survey {'it is' if len(meant) == 1 else 'they are'} still in every other call."
        instead = f" The survey has air at {listed(blowing)} instead." if blowing else ""
        again = "Read there once more, in the call and at the hour that they mean."
        return f"The customer speaks of {listed(meant)}, and {stays}{instead} {again}"
    if not meant and not blowing and spill.read and words:
        return (
            f"The customer says \u201c{words}\u201d, and the survey has no air in the wrong place. Ask which "
            "register, in which call and at what hour, and read that."
        )
    return ""


def _meant(spill: Spill, words: str) -> list[str]:
    """Registers that the words speak of: "bedroom 2 blows when the den heats" speaks of bedroom 2."""
    return _named(spill, WHILE.split(words)[0]) or _named(spill, words)


def _named(spill: Spill, words: str) -> list[str]:
    """Registers that the words name, themselves or by their thermostat, the longest name first."""
    left = f" {_plain(words)} "
    found: set[str] = set()
    sheet = spill.sheet
    for name in sorted({*sheet.registers, *sheet.thermostats}, key=len, reverse=True):
        spoken = f" {_plain(name)} "
        if len(spoken) > 3 and spoken in left:
            left = left.replace(spoken, " . ")
            named = [r for r in sheet.registers if r == name] or [
                r for r in sheet.registers if _of(spill, r) == name
            ]
            found |= set(named)
    return [register for register in sheet.registers if register in found]


def _of(spill: Spill, register: str) -> str:
    place = next((p for r, p in spill.answer.places.items() if said(r) == register), None)
    return spill.sheet.drawn.get(register) or (
        said(place.zone) if place and place.zone not in (None, NONE) else ""
    )


def _plain(words: str) -> str:
    return " ".join(re.findall(r"\w+", words.lower().replace("_", " ")))


def _when(callers: tuple[str, ...]) -> str:
    named = [caller for caller in callers if caller != NOBODY]
    said_so = [f"{listed(named, 'or')} calls"] if named else []
    return " and when ".join([*said_so, *(["nobody calls"] if NOBODY in callers else [])])


def listed(names: list[str], last: str = "and") -> str:
    """Names in a sentence: "a, b and c"."""
    return names[0] if len(names) == 1 else f"{', '.join(names[:-1])} {last} {names[-1]}"
