"""Whether files of faults fit the trees that they are to prove: every name, at its place."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from difflib import get_close_matches

from assistant.drill.prove import complaint_trees
from assistant.house.place import Problem
from assistant.rig.fault import Fault
from assistant.rig.fault_file import faults_as_written
from assistant.tree.library import Library, from_texts
from assistant.tree.model import Finding, HandOver, Stop, Tree

MOST_NAMED = 8
"""Names that a sentence lists; a longer list is told where to find."""


def problems_of(
    files: Mapping[str, bytes], texts: Mapping[str, bytes], trees: Sequence[str]
) -> list[Problem]:
    """What is wrong in the files, and which findings, causes and complaints of theirs nobody knows.

    A finding of a complaint without a tree is a bare name that is left as it is.
    """
    library = from_texts(texts)
    known = complaint_trees(library)
    problems: list[Problem] = []
    seen: dict[str, Fault] = {}
    for file, data in files.items():
        faults, _, wrong = faults_as_written(data, file)
        problems += wrong
        if not faults and not wrong:
            words = "no fault is in it; write one under 'faults', as --components shows"
            problems.append(Problem(file, 1, 1, "missing", words))
        for name, fault in faults.items():
            if name in seen:
                words = f"there is a fault '{name}' in {seen[name].place.file} already"
                problems.append(Problem.at(fault.place, "name", words))
            seen[name] = fault
            problems += _names(fault, library, {c: t for t, c in known.items() if t in trees})
    return sorted(problems)


def _names(fault: Fault, library: Library, trees: Mapping[str, str]) -> list[Problem]:
    """What is empty in it was told by the reader."""
    complaints = list(library.vocabulary.complaints)
    found = [
        _unknown(fault, "complaint", complaint, complaints)
        for complaint in (fault.complaint, *fault.elsewhere)
        if complaint and complaint not in complaints
    ]
    for complaint in dict.fromkeys((fault.complaint, *fault.elsewhere)):
        tree = library.trees.get(trees.get(complaint, ""))
        if tree is not None:
            ends = ends_of(tree)
            absent = fault.absent if complaint == fault.complaint else None
            wanted = [*fault.right(complaint), *([absent] if absent else [])]
            what = f"finding of {tree.name}"
            found += [_unknown(fault, what, w, ends, tree.name) for w in wanted if w and w not in ends]
    causes = [name for name, one in library.trees.items() if one.purpose == "cause"]
    walked = fault.complaint in trees or fault.complaint not in complaints
    if fault.cause and fault.cause not in causes and walked:
        found.append(_unknown(fault, "cause", fault.cause, causes))
    return found


def ends_of(tree: Tree) -> list[str]:
    """The steps of a tree at which a walk can end with something told."""
    return [
        name
        for name, step in tree.steps.items()
        if isinstance(step, (Finding, HandOver)) or (isinstance(step, Stop) and step.finding)
    ]


def _unknown(fault: Fault, what: str, name: str, known: list[str], tree: str = "") -> Problem:
    near = get_close_matches(name, known, n=1)
    hint = f"; did you mean '{near[0]}'?" if near else f"; there are {', '.join(sorted(known)[:MOST_NAMED])}"
    if len(known) > MOST_NAMED:
        hint += f" (prove {tree} --findings lists them all)" if tree else " (prove --findings lists them all)"
    place = fault.places.get(name, fault.place)
    return Problem.at(place, "name", f"fault '{fault.name}': no {what} is called '{name}'{hint}")
