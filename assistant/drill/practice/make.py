"""What a foreman makes drills of: a fault of their own, or one of the shop's own finished visits."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass

from assistant.drill.practice.drill import FAULT, NOTHING, USUAL, Drill, takes_plate
from assistant.drill.practice.drills import good
from assistant.errors import UserError
from assistant.house.model import Vocabulary
from assistant.rig.fault import NOMINAL, Fault
from assistant.rig.fault_file import load_faults
from assistant.rig.parts import COMPONENTS
from assistant.walk.ask import Record
from assistant.walk.state import Visit

SHORTEST_NAME = 3
"""Words of a person's data shorter than this are not looked for in the customer's words."""


@dataclass(frozen=True)
class Own:
    """A fault that a foreman hides: which component, what happened to it, how badly, and what is right."""

    part: str
    change: str
    degree: str
    complaint: str
    finding: str
    cause: str = ""

    @property
    def title(self) -> str:
        """In words, for the foreman and the debrief."""
        component = COMPONENTS[self.part]
        return f"{component.title[:1].upper()}{component.title[1:]}: {component.changes[self.change].words}"


def components() -> dict[str, str]:
    """Every component that something can happen to, in words."""
    return {name: component.title for name, component in COMPONENTS.items() if component.changes}


def changes(part: str) -> dict[str, str]:
    """What can happen to it, in words."""
    return {name: change.words for name, change in COMPONENTS[part].changes.items()}


def degrees(part: str, change: str) -> tuple[str, ...]:
    """How badly."""
    return tuple(COMPONENTS[part].changes[change].degrees)


def own_fault(own: Own) -> tuple[Fault, str]:
    """The fault, and its file's text, which `prove --faults` takes too. Raises UserError for what is none."""
    name = good(f"own {own.part} {own.change} {own.finding}")
    lines = [
        "format: 1",
        "faults:",
        f"  {name}:",
        f'    title: "{own.title}"',
        f"    complaint: {own.complaint}",
        f"    finding: {own.finding}",
        *([f"    cause: {own.cause}"] if own.cause else []),
        f"    degrees: [{own.degree}]",
        f'    change: [{{part: {own.part}, change: "{own.change}"}}]',
    ]
    text = "\n".join(lines) + "\n"
    faults, problems = load_faults(text.encode(), f"{name}.yaml")
    if problems or name not in faults:
        raise UserError(f"This makes no fault: {problems[0].message if problems else name}.")
    return faults[name], text


def of_own(own: Own, words: str, difficulty: str = USUAL) -> tuple[Drill, str]:
    """A drill with the foreman's own fault, and the text of that fault's file."""
    fault, text = own_fault(own)
    drill = Drill(
        good(f"{own.part} {own.change}"),
        own.title,
        own.complaint,
        words.strip() or own.title,
        difficulty,
        FAULT,
        fault,
        own.degree if own.degree != NOMINAL else "",
        origin="made here",
    )
    return drill, text


def faults_for(finding: str, complaint: str, faults: Mapping[str, Fault], cause: str = "") -> list[Fault]:
    """Faults that a good technician tells as this finding, those with the same cause first."""
    found = [
        fault
        for fault in faults.values()
        if fault.complaint == complaint and finding in fault.right(complaint)
    ]
    return sorted(found, key=lambda fault: (fault.cause != (cause or None), fault.finding != finding))


def of_visit(
    visit: Visit, faults: Mapping[str, Fault], person: Mapping[str, str], difficulty: str = USUAL
) -> Drill:
    """A finished visit as a drill: its complaint's words, its plate, and a fault that reaches its finding. No
    name, address, date, note or photo comes along. Raises UserError where no drill can be made of it.
    """
    vocabulary = visit.vocabulary
    if not visit.found:
        raise UserError("Nothing was found on this visit, so there is nothing to hide in a drill.")
    last = visit.found[-1]
    finding = last.step.partition(".")[2]
    words = next((one.words for one in visit.complaints if one.name == last.complaint), "")
    words = without_person(words, person) or vocabulary.complaints[last.complaint].words
    title = str(getattr(last.finding, "title", None) or getattr(last.finding, "finding", finding))
    plate = _plate(visit, vocabulary)
    made = {"name": good(f"as seen {finding}"), "title": title, "complaint": last.complaint, "words": words}
    if getattr(last.finding, "fault", True) is False:
        return Drill(**made, difficulty=difficulty, ending=NOTHING, plate=plate, origin="from a visit")
    cause = next((one.tree for one in last.causes if one.outcome == "found"), "")
    fitting = faults_for(finding, last.complaint, faults, cause)
    if not fitting:
        raise UserError(f"The simulated house knows no fault that ends in \u201c{title}\u201d.")
    return Drill(
        **made, difficulty=difficulty, ending=FAULT, fault=fitting[0], plate=plate, origin="from a visit"
    )


def without_person(words: str, person: Mapping[str, str]) -> str:
    """The customer's words without what names them: name, address, telephone and the like, word by word."""
    parts = {
        part.lower()
        for value in person.values()
        for part in re.findall(r"[\w'\u2019-]+", value)
        if len(part) >= SHORTEST_NAME
    }
    kept = [word for word in words.split() if not _names(word, parts)]
    return " ".join(word for word in kept if not re.search(r"\d{3}.*\d|@", word))


def _names(word: str, parts: set[str]) -> bool:
    plain = word.lower().strip(".,;:!?\u201c\u201d\"'()")
    return plain in parts or plain.removesuffix("'s").removesuffix("\u2019s") in parts


def _plate(visit: Visit, vocabulary: Vocabulary) -> dict[str, float]:
    """The plate values that were read and that a house can be given."""
    plate = {}
    for name, known in visit.plate.items():
        if takes_plate(name) and name in vocabulary.plate and isinstance(known, Record):
            span = vocabulary.plate[name].span
            if span.lo <= known.value.lo <= span.hi:
                plate[name] = known.value.lo
    return plate
