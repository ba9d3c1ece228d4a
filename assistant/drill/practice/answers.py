"""What an apprentice can say at the end: findings, causes, hand-overs, and "everybody out"."""

from __future__ import annotations

from dataclasses import dataclass

from assistant.drill.practice.drill import ARRIVAL, NOTHING, OUT, Drill
from assistant.tree.library import Library
from assistant.tree.model import Finding, HandOver, Step, Stop, Tree

WORN, NOT_FOUND = "worn", "not_found"
OPEN_CAUSES = {
    WORN: "Worn out; nothing else was found that harmed it",
    NOT_FOUND: "Cause not found; this is what was ruled out",
}
HAZARD = "hazard."
OUT_WORDS = "Everybody out: "
AGAIN = "walk_again"
"""The stop page of what comes and goes: nothing is condemned; it is walked again from a start that fails."""


@dataclass(frozen=True)
class Answer:
    """`key` is a finding's bare step name or "hazard.NAME". `step` is None for a hazard."""

    key: str
    title: str
    step: Step | None = None


def tree_of(library: Library, complaint: str) -> Tree | None:
    """The tree that walks this complaint."""
    known = library.vocabulary.complaints.get(complaint)
    return library.trees.get(known.tree or "") if known else None


def findings(library: Library, complaint: str) -> dict[str, Answer]:
    """Everything that can be found for this complaint, then the dangers, by key."""
    house, tree = library.vocabulary, tree_of(library, complaint)
    found: dict[str, Answer] = {}
    for name, step in (tree.steps if tree else {}).items():
        if isinstance(step, Finding) and (step.fault or step.shows):
            found[name] = Answer(name, step.title if step.fault else f"{step.title} (nothing wrong)", step)
        elif isinstance(step, Stop) and step.finding:
            found[name] = Answer(name, f"{step.finding} (stop)", step)
        elif isinstance(step, Stop) and step.page == AGAIN:
            said = f"{house.stops[AGAIN].title.rstrip('.')} (nothing condemned today)"
            found[name] = Answer(name, said, step)
        elif isinstance(step, HandOver):
            other = house.complaints.get(step.complaint)
            found[name] = Answer(
                name, f"Not this complaint: {other.title if other else step.complaint}", step
            )
    found = dict(sorted(found.items(), key=lambda one: one[1].title.lower()))
    for name, page in house.hazards.items():
        stop = house.stops.get(page)
        words = name.replace("_", " ")
        found[HAZARD + name] = Answer(HAZARD + name, f"{OUT_WORDS}{words} ({stop.title if stop else page})")
    return found


def causes(library: Library, finding: str = "", complaint: str = "") -> dict[str, str]:
    """Every cause by name, those that this finding asks for first, then the two open answers."""
    tree = tree_of(library, complaint)
    step = tree.steps.get(finding) if tree else None
    asked = [name for name in getattr(step, "causes", ()) if name in library.trees]
    others = sorted(
        (name for name, tree in library.trees.items() if tree.purpose == "cause" and name not in asked),
        key=lambda name: library.trees[name].title.lower(),
    )
    return {**{name: library.trees[name].title for name in (*asked, *others)}, **OPEN_CAUSES}


def title_of(library: Library, complaint: str, key: str) -> str:
    """An answer's words; the key where nobody knows it."""
    found = findings(library, complaint).get(key)
    return found.title if found else key.replace("_", " ")


def right_findings(drill: Drill, library: Library, present: bool = True) -> tuple[str, ...]:
    """The keys that are right for this drill, the best one first. `present`: a fault that comes and goes was
    there when the apprentice ended.
    """
    if drill.ending == OUT:
        own = (drill.fault.finding, *drill.fault.also) if drill.fault else ()
        return (HAZARD + drill.hazard, *own)
    if drill.ending == NOTHING or drill.fault is None:
        known = findings(library, drill.complaint).values()
        return tuple(one.key for one in known if isinstance(one.step, Finding) and not one.step.fault)
    fault = drill.fault
    own = (fault.finding, *fault.also)
    if fault.absent and (not present or drill.ending == ARRIVAL):
        own = (*own, fault.absent) if present else (fault.absent, *own)
    return (*own, *_again(drill, library)) if fault.absent else own


def _again(drill: Drill, library: Library) -> tuple[str, ...]:
    """What a tree says of a fault that shows itself now and then."""
    tree = tree_of(library, drill.complaint)
    steps = tree.steps.items() if tree else ()
    return tuple(name for name, step in steps if isinstance(step, Stop) and step.page == AGAIN)


def answerable(drill: Drill, library: Library) -> bool:
    """Whether what is right for it can be said: a fault's finding may belong to a tree not yet written so."""
    listed = findings(library, drill.complaint)
    return any(key in listed for key in right_findings(drill, library))


def cause_is_right(drill: Drill, library: Library, finding: str, cause: str) -> bool | None:
    """None where no cause is to be named: nothing is wrong, everybody had to leave, or nothing was condemned
    of what comes and goes.
    """
    if drill.ending in (NOTHING, OUT) or drill.fault is None:
        return None
    if drill.fault.absent and finding in (drill.fault.absent, *_again(drill, library)):
        return None
    return cause == drill.fault.cause if drill.fault.cause else cause in OPEN_CAUSES
