"""Whether files of faults fit the trees that they are to prove: every name, at its place."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from difflib import get_close_matches

from assistant.drill.prove import complaint_trees
from assistant.house.place import Problem
from assistant.rig.fault import Fault
from assistant.rig.fault_file import load_faults
from assistant.tree.library import Library, from_texts
from assistant.tree.model import Finding, HandOver, Stop


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
        faults, wrong = load_faults(data, file)
        problems += wrong
        for name, fault in faults.items():
            if name in seen:
                words = f"there is a fault '{name}' in {seen[name].place.file} already"
                problems.append(Problem.at(fault.place, "name", words))
            seen[name] = fault
            problems += _names(fault, library, {c: t for t, c in known.items() if t in trees})
    return sorted(problems)


def _names(fault: Fault, library: Library, trees: Mapping[str, str]) -> list[Problem]:
    complaints = list(library.vocabulary.complaints)
    if fault.complaint not in complaints:
        return [_unknown(fault, "complaint", fault.complaint, complaints)]
    tree = library.trees.get(trees.get(fault.complaint, ""))
    if tree is None:
        return []
    ends = [
        name
        for name, step in tree.steps.items()
        if isinstance(step, (Finding, HandOver)) or (isinstance(step, Stop) and step.finding)
    ]
    wanted = [fault.finding, *fault.also, *([fault.absent] if fault.absent else [])]
    found = [_unknown(fault, f"finding of {tree.name}", name, ends) for name in wanted if name not in ends]
    causes = [name for name, one in library.trees.items() if one.purpose == "cause"]
    if fault.cause and fault.cause not in causes:
        found.append(_unknown(fault, "cause", fault.cause, causes))
    return found


def _unknown(fault: Fault, what: str, name: str, known: list[str]) -> Problem:
    near = get_close_matches(name, known, n=1)
    hint = f"; did you mean '{near[0]}'?" if near else f"; there are {', '.join(sorted(known)[:8])}"
    return Problem.at(fault.place, "name", f"fault '{fault.name}': no {what} is called '{name}'{hint}")
