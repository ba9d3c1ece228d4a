"""Walks every tree against every fault and against healthy houses, and sums up."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from assistant.drill.case import HEALTHY, Case, cases, features_of, nominal
from assistant.drill.proof import Proof
from assistant.drill.run import EveryTest, Matter, Progress, Task, run
from assistant.tree.library import Library


def complaint_trees(library: Library) -> dict[str, str]:
    """The complaint trees that exist, each with the complaint that opens it."""
    return {
        complaint.tree: name
        for name, complaint in library.vocabulary.complaints.items()
        if complaint.tree in library.trees
    }


def prove(
    texts: Mapping[str, bytes],
    files: Mapping[str, bytes],
    trees: Sequence[str] = (),
    samples: int = 4,
    seed: int = 0,
    progress: Progress = lambda _done, _total: None,
    jobs: int | None = None,
    orders: bool = True,
    healthy: bool = True,
) -> list[Proof]:
    """A proof for each of `trees` (all complaint trees where none is named).

    `orders` False leaves out the best order, which takes as long as everything else; `healthy` False the
    healthy houses. Deterministic by seed.
    """
    matter = Matter(texts, files, seed)
    library, faults = matter.library(), matter.faults()
    known = complaint_trees(library)
    chosen = {tree: known[tree] for tree in (trees or known)}
    matter = Matter(texts, files, seed, chosen)
    tasks: list[Task] = []
    for tree, complaint in chosen.items():
        if orders:
            own = {name: fault for name, fault in faults.items() if fault.complaint == complaint}
            steady = [name for name, fault in own.items() if fault.comes_and_goes is None]
            houses = dict.fromkeys(((), *(features_of(own[name]) for name in steady)))
            tasks += [EveryTest(Case(tree, HEALTHY, features=features)) for features in houses]
            tasks += [EveryTest(Case(tree, name, nominal(faults[name]))) for name in steady]
        tasks += cases(tree, complaint, faults, samples, seed, healthy)
    results = run(matter, tasks, progress, jobs)
    return [_proof(tree, chosen[tree], library, faults, tasks, results) for tree in chosen]


def _proof(tree: str, complaint: str, library: Library, faults, tasks, results) -> Proof:
    outcomes, said, sound = [], {}, {}
    for task, result in zip(tasks, results, strict=True):
        if isinstance(task, EveryTest) and task.case.tree == tree:
            if task.case.fault == HEALTHY:
                sound[task.case.features] = result
            else:
                said[task.case.fault] = result
        elif isinstance(task, Case) and task.tree == tree:
            outcomes.append(result)
    return Proof(tree, complaint, library, faults, outcomes, said, sound)
