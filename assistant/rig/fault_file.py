"""From a file of faults to Faults, every mistake at its place."""

from __future__ import annotations

from collections.abc import Iterable

from assistant.house.entries_file import named_entries
from assistant.house.fields import Form, Problems, good_name
from assistant.house.nearest import suggestion
from assistant.house.place import Place, Problem
from assistant.house.reader import Fields, Items, Text, Unreadable
from assistant.quantity.entry import Understood, understand
from assistant.resources import resources_folder
from assistant.rig.fault import NOMINAL, ComesAndGoes, Consequence, Deed, Fault
from assistant.rig.part import DEGREES
from assistant.rig.parts import COMPONENTS
from assistant.rig.unit import FEATURES

HOUSE_OF = {"zone_spillover": {"zone_panel": "yes"}}
"""A complaint that only a certain house can make: air in rooms that should get none needs zones."""


def load_faults(data: bytes, file: str) -> tuple[dict[str, Fault], list[Problem]]:
    """The faults that a file writes, by name, and what is wrong in it. Never raises.

    A fault with a problem is left out.
    """
    written, broken, problems = faults_as_written(data, file)
    return {name: fault for name, fault in written.items() if name not in broken}, problems


def faults_as_written(data: bytes, file: str) -> tuple[dict[str, Fault], set[str], list[Problem]]:
    """Every fault with whatever of it could be read, the names of those with a problem, and what is wrong: so
    that the names which a faulty fault gives can be held to the trees in the same round. Never raises.
    """
    problems, found, broken = Problems(), {}, set()
    holds = "title, complaint, finding, change"
    try:
        for name, form in named_entries(data, file, "faults", "fault", holds, problems):
            before = len(problems.found) + problems.left_out
            found[name] = _fault(name, form)
            if len(problems.found) + problems.left_out > before:
                broken.add(name)
    except Unreadable as unreadable:
        return {}, set(), unreadable.problems
    return found, broken, problems.sorted()


def shipped() -> tuple[dict[str, Fault], list[Problem]]:
    """All faults of resources/faults, and what is wrong in those files."""
    found: dict[str, Fault] = {}
    problems: list[Problem] = []
    for path in sorted((resources_folder() / "faults").glob("*.yaml")):
        faults, wrong = load_faults(path.read_bytes(), f"faults/{path.name}")
        problems += wrong
        problems += [
            Problem.at(fault.place, "name", f"there is a fault '{name}' in {found[name].place.file} already")
            for name, fault in faults.items()
            if name in found
        ]
        found = {**faults, **found}
    return found, problems


def _fault(name: str, form: Form) -> Fault:
    """What is missing is empty, and noted."""
    problems = form.problems
    title = form.words("title", need=True)
    complaint = form.words("complaint", need=True)
    finding = form.text("finding", need=True)
    cause = form.text("cause")
    absent = form.text("absent")
    places = {complaint: form.node.entries["complaint"].place} if complaint else {}
    also = _also(form, complaint or "", places)
    for text in (finding, cause, absent):
        if text:
            _bare(text, problems)
            places[text.value] = text.place
    deeds = _deeds(form, f"fault '{name}'")
    house = {**HOUSE_OF.get(complaint or "", {}), **_with_part(deeds), **_house(form)}
    turns = _turns(form)
    consequence = _consequence(form, name)
    found = _deeds(form, f"fault '{name}'", "found")
    degrees = _degrees(form, deeds)
    form.close()
    if turns and not absent:
        problems.add(
            form.place("intermittent"),
            "missing",
            f"fault '{name}' comes and goes: it needs 'absent', what is right to say while it is away",
        )
    return Fault(
        name,
        title or "",
        complaint or "",
        finding.value if finding else "",
        cause.value if cause else None,
        deeds,
        degrees,
        form.node.place,
        also.pop(complaint or "", ()),
        also,
        house,
        turns,
        absent.value if absent else None,
        consequence,
        found,
        places,
    )


def _also(form: Form, complaint: str, places: dict[str, Place]) -> dict[str, tuple[str, ...]]:
    """Other right findings by complaint. A plain list is for the fault's own. Notes where each is written."""
    node = form.get("also")
    if node is None:
        return {}
    if isinstance(node, Fields):
        inner = Form(node, f"'also' of {form.what}", form.problems)
        listed = {name: inner.texts(name, single=True) for name in node.entries}
        for name, place in node.keys.items():
            good_name(name, place, "a complaint", form.problems)
            places.setdefault(name, place)
    else:
        listed = {complaint: form.texts("also", single=True)}
    for text in (text for texts in listed.values() for text in texts):
        _bare(text, form.problems)
        places.setdefault(text.value, text.place)
    return {name: tuple(text.value for text in texts) for name, texts in listed.items()}


def _bare(text: Text, problems: Problems) -> None:
    """A finding or cause is named without its tree."""
    tree, dot, step = text.value.rpartition(".")
    if dot and tree and step:
        problems.add(text.place, "name", f"'{text.value[:60]}' names its tree too; write '{step[:60]}' alone")
    else:
        good_name(text.value, text.place, "a finding or cause", problems)


def _deeds(form: Form, what: str, field: str = "change") -> tuple[Deed, ...]:
    node = form.get(field, need=field == "change")
    if node is None:
        return ()
    if not isinstance(node, Items) or not node.items:
        form.problems.add(
            node.place, "type", f"'{field}' of {what} is a list such as [{{part: igniter, change: open}}]"
        )
        return ()
    deeds = []
    for item in node.items:
        if not isinstance(item, Fields):
            form.problems.add(item.place, "type", "a change is fields: part, change and sometimes degree")
            continue
        one = Form(item, f"a change of {what}", form.problems)
        part, change, degree = one.text("part", need=True), one.text("change", need=True), one.text("degree")
        one.close()
        if part is None or change is None or not _known(part, "component", COMPONENTS, form.problems):
            continue
        changes = COMPONENTS[part.value].changes
        if not _known(change, f"change of {part.value}", changes, form.problems):
            continue
        if degree and not _known(
            degree, f"degree of '{change.value}'", changes[change.value].degrees, form.problems
        ):
            continue
        deeds.append(Deed(part.value, change.value, degree.value if degree else None))
    return tuple(deeds)


def _known(text: Text, what: str, names: Iterable[str], problems: Problems) -> bool:
    if text.value in names:
        return True
    problems.unknown(text, what, list(names))
    return False


def _degrees(form: Form, deeds: tuple[Deed, ...]) -> tuple[str, ...]:
    """Those that are written, or all that any of its changes has."""
    written = form.texts("degrees", single=True)
    if written:
        return tuple(t.value for t in written if _known(t, "degree", DEGREES, form.problems))
    has = {NOMINAL}
    for deed in deeds:
        if deed.degree is None:
            has |= set(COMPONENTS[deed.part].changes[deed.change].degrees)
    return tuple(degree for degree in DEGREES if degree in has)


def _with_part(deeds: tuple[Deed, ...]) -> dict[str, str]:
    """Features of a house that has these parts at all."""
    return {name: value for deed in deeds for name, value in COMPONENTS[deed.part].house.items()}


def _house(form: Form) -> dict[str, str]:
    node = form.fields("house")
    house: dict[str, str] = {}
    for name, value in (node.entries if node else {}).items():
        key = Text(name, node.keys[name], False)
        if name not in FEATURES:
            known = suggestion(name, FEATURES) or f"; there is {', '.join(FEATURES)}"
            form.problems.add(key.place, "name", f"'{name[:60]}' is no feature of a house{known}")
            continue
        if not isinstance(value, Text):
            form.problems.add(value.place, "type", f"'{name}' is one of {', '.join(FEATURES[name])}")
        elif _known(value, f"value of '{name}'", FEATURES[name], form.problems):
            house[name] = value.value
    return house


def _seconds(form: Form, name: str) -> float | None:
    text = form.text(name, need=True)
    if text is None:
        return None
    meaning = understand(text.value, "duration", "s")
    bare = text.value.strip()[:40]
    if bare.replace(".", "", 1).isdecimal():
        form.problems.add(text.place, "number", f"'{bare}' has no unit; write {bare} min or {bare} s")
        return None
    if isinstance(meaning, Understood) and 0 < meaning.interval.lo == meaning.interval.hi <= 1e6:
        return meaning.interval.lo
    form.problems.add(text.place, "number", f"'{text.value[:40]}' is no time; write one such as 20 min")
    return None


def _turns(form: Form) -> ComesAndGoes | None:
    inner = form.form("intermittent")
    if inner is None:
        return None
    there, away = _seconds(inner, "there"), _seconds(inner, "away")
    inner.close()
    return ComesAndGoes(there, away) if there and away else None


def _consequence(form: Form, name: str) -> Consequence | None:
    inner = form.form("consequence")
    if inner is None:
        return None
    after = _seconds(inner, "after")
    deeds = _deeds(inner, f"the consequence of '{name}'")
    inner.close()
    return Consequence(after, deeds) if after and deeds else None
