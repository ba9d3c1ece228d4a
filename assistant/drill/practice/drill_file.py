"""From a file of drills to Drills, every mistake at its place. Faults are named; fault files write them."""

from __future__ import annotations

from collections.abc import Mapping

from assistant.drill.practice.drill import (
    ARRIVAL,
    DIFFICULTIES,
    ENDINGS,
    FAULT,
    NOTHING,
    OUT,
    USUAL,
    Drill,
    takes_plate,
)
from assistant.house.entries_file import named_entries
from assistant.house.fields import Form, Problems
from assistant.house.model import Vocabulary
from assistant.house.place import Problem
from assistant.house.reader import Text, Unreadable
from assistant.quantity.entry import Understood, understand
from assistant.rig.fault import Fault
from assistant.rig.unit import FEATURES

MOST_SEED = 1_000_000


def load_drills(
    data: bytes, file: str, faults: Mapping[str, Fault], vocabulary: Vocabulary, origin: str = "shipped"
) -> tuple[dict[str, Drill], list[Problem]]:
    """The drills that a file writes, by name, and what is wrong in it. Never raises; a drill with a problem
    is left out.
    """
    problems, found = Problems(), {}
    holds = "title, complaint, words, fault"
    try:
        for name, form in named_entries(data, file, "drills", "drill", holds, problems):
            before = len(problems.found) + problems.left_out
            drill = _drill(name, form, faults, vocabulary, origin)
            if drill and len(problems.found) + problems.left_out == before:
                found[name] = drill
    except Unreadable as unreadable:
        return {}, unreadable.problems
    return found, problems.sorted()


def _drill(
    name: str, form: Form, faults: Mapping[str, Fault], vocabulary: Vocabulary, origin: str
) -> Drill | None:
    problems = form.problems
    title, complaint = form.words("title", need=True), form.text("complaint", need=True)
    said = form.words("words", need=True)
    fault = form.text("fault")
    degree, ending = form.text("degree"), form.text("ending")
    difficulty, hazard = form.text("difficulty"), form.text("hazard")
    senses = form.words("senses") or ""
    house, plate = _house(form), _plate(form, vocabulary)
    another, seed = _number(form, "another"), _number(form, "seed")
    form.close()
    known = _one_of(fault, "fault", faults, problems)
    _one_of(complaint, "complaint", vocabulary.complaints, problems)
    _one_of(difficulty, "difficulty", DIFFICULTIES, problems)
    _one_of(ending, "ending of a drill", ENDINGS, problems)
    _one_of(hazard, "hazard", vocabulary.hazards, problems)
    if known and degree:
        _one_of(degree, f"degree of '{known}'", faults[known].degrees, problems)
    if title is None or complaint is None or said is None:
        return None
    wrong = faults.get(known or "")
    how = ending.value if ending else FAULT if wrong else NOTHING
    _fits(name, how, wrong, complaint, hazard, form)
    return Drill(
        name,
        title,
        complaint.value,
        said,
        difficulty.value if difficulty else USUAL,
        how,
        wrong,
        degree.value if degree else "",
        hazard.value if hazard else "",
        senses,
        house,
        plate,
        another or 0,
        seed or 1,
        origin,
    )


def _fits(name: str, how: str, fault: Fault | None, complaint: Text, hazard: Text | None, form: Form) -> None:
    """What an ending asks of the rest."""
    place, problems = form.node.place, form.problems
    if how == FAULT and fault is None:
        problems.add(
            place, "missing", f"drill '{name}' has no fault; write ending: {NOTHING} if that is meant"
        )
    if how == NOTHING and fault is not None:
        problems.add(place, "ending", f"drill '{name}' has a fault, so something is wrong")
    if how == ARRIVAL and (fault is None or fault.comes_and_goes is None):
        problems.add(place, "ending", f"drill '{name}' works on arrival: its fault has to come and go")
    if how == OUT and hazard is None:
        problems.add(place, "missing", f"drill '{name}' is for getting everybody out: name the hazard")
    if fault is not None and fault.complaint != complaint.value:
        problems.add(
            complaint.place, "complaint", f"fault '{fault.name}' makes the complaint '{fault.complaint}'"
        )


def _one_of(text: Text | None, what: str, names, problems: Problems) -> str | None:
    if text is None:
        return None
    if text.value not in names:
        problems.unknown(text, what, list(names))
        return None
    return text.value


def _house(form: Form) -> dict[str, str]:
    node = form.fields("house")
    house: dict[str, str] = {}
    for name, value in (node.entries if node else {}).items():
        key = Text(name, node.keys[name], False)
        known = _one_of(key, "feature of a house", FEATURES, form.problems) and isinstance(value, Text)
        if known and _one_of(value, f"value of '{name}'", FEATURES[name], form.problems):
            house[name] = value.value
    return house


def _plate(form: Form, vocabulary: Vocabulary) -> dict[str, float]:
    node = form.fields("plate")
    plate: dict[str, float] = {}
    for name, value in (node.entries if node else {}).items():
        key = Text(name, node.keys[name], False)
        if not takes_plate(name) or name not in vocabulary.plate:
            names = [known for known in vocabulary.plate if takes_plate(known)]
            form.problems.unknown(key, "plate value of this house", names)
            continue
        known = vocabulary.plate[name]
        text = value.value if isinstance(value, Text) else ""
        got = understand(text, known.kind, known.unit)
        inside = isinstance(got, Understood) and known.span.lo <= got.interval.lo <= known.span.hi
        if not inside:
            form.problems.add(value.place, "number", f"'{text[:40]}' is no {known.title} ({known.unit})")
            continue
        plate[name] = got.interval.lo
    return plate


def _number(form: Form, name: str) -> int | None:
    text = form.text(name)
    if text is None:
        return None
    if text.value.isascii() and text.value.isdigit() and len(text.value) < 8 and int(text.value) <= MOST_SEED:
        return int(text.value)
    form.problems.add(text.place, "number", f"'{text.value[:20]}' is no whole number up to {MOST_SEED}")
    return None
