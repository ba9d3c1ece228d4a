"""How a drill went, in words that a foreman would use. Counts, never a mark out of anything."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

from assistant.drill.practice import answers
from assistant.drill.practice.best import BY_TREE, Shortest, shortest
from assistant.drill.practice.condemned import unproved
from assistant.drill.practice.drill import ARRIVAL, NOTHING, OUT, Drill
from assistant.drill.practice.entry import Entry, Log
from assistant.drill.practice.houses import Houses
from assistant.drill.practice.possible import Narrowing, narrowing
from assistant.rig.fault import Fault
from assistant.trail.practice import WORDS
from assistant.tree.check.customer_words import trade_words
from assistant.tree.library import Library

STILL = 6
"""Faults that are named as still possible at the end."""


@dataclass(frozen=True)
class Section:
    """A heading and its lines."""

    title: str
    lines: tuple[str, ...]


@dataclass(frozen=True)
class Figures:
    """What is kept of a drill for looking back. `asked`: looks and readings; `best`: of the shortest good
    path, None where there is none. `told_nothing` is None until other houses were gone through.
    """

    right: bool
    right_first: bool
    cause: bool | None
    unsafe: int
    asked: int
    best: int | None
    told_nothing: int | None
    minutes: float
    wall_minutes: float

    @property
    def beyond(self) -> int | None:
        """Looks and readings beyond the shortest good path; never below none."""
        return None if self.best is None else max(0, self.asked - self.best)


@dataclass(frozen=True)
class Debrief:
    """`paths`: the apprentice's own, and the shortest good one."""

    sections: tuple[Section, ...]
    own_path: tuple[str, ...]
    best_path: tuple[str, ...]
    best_by: str
    figures: Figures

    def text(self) -> str:
        """All of it as plain text."""
        lines = [WORDS]
        for section in self.sections:
            lines += ["", section.title, *(f"  {line}" for line in section.lines)]
        return "\n".join(lines)


@dataclass(frozen=True)
class Soon:
    """What needs no other house to be told. `own_path` is without what each reading told."""

    sections: tuple[Section, ...]
    figures: Figures
    own_path: tuple[str, ...] = ()
    best_path: tuple[str, ...] = ()


def debrief(
    sitting, library: Library, faults: Mapping[str, Fault], orders=None, houses: Houses | None = None
) -> Iterator[Soon | tuple[int, int] | Debrief]:
    """What can be told at once (Soon), then (done, of all) while other houses are gone through, and the
    Debrief last. `sitting` has ended; `houses` are those that were made meanwhile.
    """
    drill, log = sitting.drill, sitting.log
    present = sitting.rig.rig.present
    right = answers.right_findings(drill, library, present)
    proof = unproved(library, drill.complaint, log) if sitting.way == "free" else []
    cause = answers.cause_is_right(drill, library, log.finding, log.cause)
    at_once = [
        _found(drill, log, library, right),
        _cause(drill, log, library, cause),
        Section("Unsafe, and why", tuple(_unsafe(log)) or ("Nothing.",)),
        Section("Condemned without proof", tuple(proof)) if proof else None,
        _expected(log),
    ]
    asking = [entry for entry in log.entries if _counts(entry)]
    figures = Figures(
        log.finding in right,
        log.first_finding in right,
        cause,
        len(log.unsafe),
        sum(max(1, len(entry.told)) if entry.kind == "read" else 1 for entry in asking),
        None,
        None,
        round(sitting.minutes, 1),
        round(sitting.wall_minutes, 1),
    )
    yield Soon(
        tuple(section for section in (*at_once, _sentence(drill, log, library)) if section),
        figures,
        tuple(_said(entry) for entry in log.entries),
    )
    best = shortest(drill, library, faults, orders)
    narrowed = Narrowing((), ())
    for step in narrowing(drill, log.entries, sitting.rig.calls, faults, houses):
        if isinstance(step, Narrowing):
            narrowed = step
        else:
            yield step
    empty = [one.entry for one in narrowed.told if one.nothing and _counts(log.entries[one.entry])]
    figures = replace(figures, best=best.asked if best else None, told_nothing=len(empty))
    sections = [
        *at_once,
        _sentence(drill, log, library),
        _empty(log, empty, narrowed),
        _paths(figures, best),
    ]
    own = tuple(_line(n, entry, narrowed) for n, entry in enumerate(log.entries))
    yield Debrief(
        tuple(section for section in sections if section),
        own,
        best.tests if best else (),
        best.by if best else "",
        figures,
    )


def _found(drill: Drill, log: Log, library: Library, right: tuple[str, ...]) -> Section:
    said = answers.title_of(library, drill.complaint, log.finding) if log.finding else "nothing"
    true = answers.title_of(library, drill.complaint, right[0]) if right else ""
    was = {
        NOTHING: "Nothing was wrong with this house.",
        ARRIVAL: f"It worked when you came. What comes and goes: {drill.fault.title}." if drill.fault else "",
        OUT: "Everybody had to leave this house.",
    }.get(drill.ending, f"What was wrong: {drill.fault.title}." if drill.fault else "")
    if log.finding in right:
        lines = [f"You found it: {said}."]
        if log.first_finding and log.first_finding not in right:
            first = answers.title_of(library, drill.complaint, log.first_finding)
            lines.append(f"At first you said: {first}.")
    elif drill.ending == NOTHING:
        lines = [f"You said: {said}. A house can be sound; say so, and why the customer noticed something."]
    else:
        lines = [f"You said: {said}. It was: {true}."]
    return Section("What was wrong", (*lines, was) if was else tuple(lines))


def _cause(drill: Drill, log: Log, library: Library, right: bool | None) -> Section | None:
    if right is None:
        return None
    known = {key: f"\u201c{words}\u201d" for key, words in answers.causes(library).items()}
    said = known.get(log.cause, "") or "nothing"
    true = known.get(drill.fault.cause or "", "") if drill.fault else ""
    if right:
        line = (
            f"Why it failed, you named it: {said}."
            if true
            else "No cause was in this house, and you named none."
        )
    elif not true:
        line = f"Why it failed: you said {said}. No cause could be found here; say worn, or not found."
    else:
        line = f"Why it failed was missed: you said {said}; it was {true}. The new part fails again."
    return Section("The cause", (line,))


def _unsafe(log: Log) -> Iterator[str]:
    for one in log.unsafe:
        where = f" (line {one.entry + 1} of your path)" if one.entry >= 0 else ""
        yield f"{one.what}{where}. {one.why}"


def _expected(log: Log) -> Section | None:
    said = [(n, entry) for n, entry in enumerate(log.entries, 1) if entry.expected]
    if not said:
        return None
    lines = [
        f"{n}. {entry.words}: you expected {entry.expected}, it was {entry.shown}."
        for n, entry in said
        if entry.parted
    ]
    yours = [
        f"{n}. {entry.words}: you said \u201c{entry.expected}\u201d, it was {entry.shown}. Yours to judge."
        for n, entry in said
        if entry.parted is None
    ]
    held = sum(entry.parted is False for _, entry in said)
    lines.append(f"{held} of {len(said)} came as you said.")
    return Section("Where expectation and reading parted", (*lines[:-1], *yours, lines[-1]))


def _empty(log: Log, empty: list[int], narrowed: Narrowing) -> Section:
    lines = [
        f"{n + 1}. {_said(log.entries[n])}{f' - {log.entries[n].blind}' if log.entries[n].blind else ''}."
        + ("" if log.entries[n].blind else " Every fault still possible would have shown the same.")
        for n in empty
    ]
    if narrowed.left:
        more = len(narrowed.left) - STILL
        named = "; ".join(narrowed.left[:STILL]) + (f"; and {more} more" if more > 0 else "")
        lines.append(f"With what you had, these could still have been it: {named}.")
    return Section("Told nothing new", tuple(lines) or ("Everything you asked told something.",))


def _sentence(drill: Drill, log: Log, library: Library) -> Section:
    tree = answers.tree_of(library, drill.complaint)
    right = answers.right_findings(drill, library)
    step = tree.steps.get(right[0]) if tree and right else None
    own = getattr(step, "customer", None)
    lines = [f"You would say: \u201c{log.sentence}\u201d" if log.sentence else "You left it empty."]
    if words := trade_words(log.sentence):
        lines.append(f"Trade words that a customer need not know: {', '.join(words)}.")
    if own and log.finding == right[0]:
        lines.append(f"The tree says: \u201c{own}\u201d")
    return Section("The sentence for the customer", tuple(lines))


def _paths(figures: Figures, best: Shortest | None) -> Section:
    lines = [
        f"{figures.minutes:.0f} minutes in the house, {figures.wall_minutes:.0f} by the clock on the wall; "
        f"{_count(figures.asked, 'look or reading', 'looks and readings')}, "
        "what guards people not counted."
    ]
    if best is not None:
        by = "the tree's own walk" if best.by == BY_TREE else "the cheapest order of tests for all faults"
        lines.append(
            f"The shortest good path ({by}): {_count(best.asked, 'look or reading', 'looks and readings')}, "
            f"{best.minutes:.0f} minutes. {_beyond(figures.asked - best.asked)}"
        )
    return Section("Time and path", tuple(lines))


def _beyond(more: int) -> str:
    if more == 0:
        return "You took as many."
    return f"You took {more} more." if more > 0 else f"You took {-more} fewer: see what that left possible."


def _count(number: int, one: str, many: str) -> str:
    return f"{number} {one if number == 1 else many}"


def _line(n: int, entry: Entry, narrowed: Narrowing) -> str:
    told = narrowed.of(n)
    left = ""
    if told is not None and _counts(entry):
        left = (
            " [told nothing new]" if told.nothing else f" [{told.before} faults possible, then {told.after}]"
        )
    return f"{_said(entry)}{left}"


def _counts(entry: Entry) -> bool:
    """Whether it was a way to the finding, and nothing that guards people."""
    return entry.asks and not entry.aside and not entry.guards


def _said(entry: Entry) -> str:
    """What was asked and what came."""
    if not entry.shown:
        return entry.words
    return f"{entry.words} {entry.shown}" if entry.words.endswith("?") else f"{entry.words}: {entry.shown}"
