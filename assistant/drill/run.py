"""All samples of a proof on all cores. What comes out does not depend on how many there are.

Workers start afresh (spawn), as they must where no process can be copied, and read trees and faults from the
bytes that they are given, so that all of them prove the same texts.
"""

from __future__ import annotations

import multiprocessing
import os
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, field

from assistant.drill.case import HEALTHY, Case, house_of, sort_of
from assistant.drill.every_test import Said, every_test
from assistant.drill.outcome import Outcome
from assistant.drill.trial import tried
from assistant.rig.fault import Fault
from assistant.rig.fault_file import load_faults
from assistant.rig.house import Rig
from assistant.tree.library import Library, from_texts

BROKEN = "this house could not be worked out"
Progress = Callable[[int, int], None]


@dataclass(frozen=True)
class Matter:
    """What is proved: the texts of a library, the files of faults by name, and the seed."""

    texts: Mapping[str, bytes]
    files: Mapping[str, bytes]
    seed: int = 0
    trees: Mapping[str, str] = field(default_factory=dict)
    """Tree -> the complaint that it walks."""

    def library(self) -> Library:
        """The library of the texts."""
        return from_texts(self.texts)

    def faults(self) -> dict[str, Fault]:
        """All faults of the files, the first of a name."""
        found: dict[str, Fault] = {}
        for file, data in self.files.items():
            found = {**load_faults(data, file)[0], **found}
        return found


@dataclass(frozen=True)
class EveryTest:
    """A task: every test of a tree at one fault."""

    case: Case


Task = Case | EveryTest


class Worker:
    """One worker's own reading of the matter."""

    def __init__(self, matter: Matter) -> None:
        self.matter = matter
        self.library = matter.library()
        self.faults = matter.faults()

    def do(self, task: Task) -> Outcome | dict[str, Said]:
        """One walk, or every test of one house. What could not be worked out is an open end that says so, or
        no test: one strange fault does not take the others' proof away.
        """
        try:
            return self._done(task)
        except Exception as problem:  # noqa: BLE001 - whatever it is, it is told and the others go on
            words = f"{BROKEN}: {type(problem).__name__}: {problem}"
            return {} if isinstance(task, EveryTest) else Outcome(task, "open", "", undone=(words,))

    def _done(self, task: Task) -> Outcome | dict[str, Said]:
        case = task.case if isinstance(task, EveryTest) else task
        fault = None if case.fault == HEALTHY else self.faults[case.fault]
        complaint, seed = self.matter.trees[case.tree], self.matter.seed
        if isinstance(task, EveryTest):
            house, sort = house_of(case, fault, seed), sort_of(case)
            rig = Rig(house, fault, case.degree, case.seed(seed), changes=sort)
            return every_test(self.library, self.library.trees[case.tree], complaint, rig)
        return tried(case, self.library, complaint, fault, seed)


def run(
    matter: Matter, tasks: Sequence[Task], progress: Progress, jobs: int | None = None
) -> list[Outcome | dict[str, Said]]:
    """What each task gives, in the order of the tasks."""
    jobs = min(jobs or os.cpu_count() or 1, max(len(tasks), 1))
    if jobs == 1:
        return _collected(map(_numbered(Worker(matter)), enumerate(tasks)), len(tasks), progress)
    with multiprocessing.get_context("spawn").Pool(jobs, _begin, (matter,)) as pool:
        return _collected(pool.imap_unordered(_one, enumerate(tasks)), len(tasks), progress)


def _collected(results: Iterable[tuple[int, object]], total: int, progress: Progress) -> list:
    found: list = [None] * total
    for done, (number, result) in enumerate(results, 1):
        found[number] = result
        progress(done, total)
    return found


def _numbered(worker: Worker) -> Callable[[tuple[int, Task]], tuple[int, object]]:
    return lambda numbered: (numbered[0], worker.do(numbered[1]))


_worker: list[Worker] = []


def _begin(matter: Matter) -> None:
    _worker[:] = [Worker(matter)]


def _one(numbered: tuple[int, Task]) -> tuple[int, object]:
    number, task = numbered
    return number, _worker[0].do(task)
