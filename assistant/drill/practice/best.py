"""The shortest good path to a fault: the cheapest order of tests found for all faults of the complaint.

Every test of the tree is tried on a house with each fault, which takes minutes; that is done once for a text
of the trees and faults (`prepare`) and kept beside the drills. Until it is there, the tree's own walk of this
house stands for it.
"""

from __future__ import annotations

import hashlib
import json
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path

from assistant.drill.best_order import Order, greedy, mean_cost, minutes_to, rollout
from assistant.drill.case import HEALTHY, Case, house_of, nominal
from assistant.drill.every_test import Said, every_test
from assistant.drill.hand import Hand, Stuck
from assistant.drill.kit import PERFECT
from assistant.drill.practice.answers import tree_of
from assistant.drill.practice.drill import Drill
from assistant.drill.practice.safety import step_guards
from assistant.drill.problem import problem_of
from assistant.drill.proof import RARE
from assistant.drill.sequence import Problem, Situation
from assistant.drill.trial import minutes_of, opened, until_end
from assistant.folders import user_folder
from assistant.rig.fault import Fault
from assistant.rig.house import Rig
from assistant.tree.library import Library
from assistant.tree.model import Tree, readings_of

BY_TREE, BY_ORDER = "the tree", "the best order"


@dataclass(frozen=True)
class Shortest:
    """`tests` in words, in order. `asked`: how many looks and readings that is, without those that guard
    people. `by` says who found it.
    """

    tests: tuple[str, ...]
    minutes: float
    asked: int
    by: str


def store() -> Path:
    """Where the orders are kept."""
    return user_folder() / "drills" / "orders"


def key_of(library: Library, faults: Mapping[str, Fault], complaint: str) -> str:
    """A name for these texts and faults: another word in any of them gives another."""
    whole = hashlib.sha256(complaint.encode())
    for file, text in sorted(library.texts.items()):
        whole.update(file.encode() + b"\0" + hashlib.sha256(text).digest())
    for name, fault in sorted(faults.items()):
        if fault.complaint == complaint:
            parts = (name, fault.finding, fault.also, fault.deeds, sorted(fault.house.items()))
            whole.update(repr(parts).encode())
    return f"{complaint}-{whole.hexdigest()[:16]}"


def prepare(
    library: Library, faults: Mapping[str, Fault], complaint: str, folder: Path | None = None
) -> Iterator[tuple[int, int]]:
    """Works the orders out and keeps them: (done, of all) while it goes on."""
    tree = tree_of(library, complaint)
    own = [
        name for name, fault in faults.items() if fault.complaint == complaint and not fault.comes_and_goes
    ]
    if tree is None or not own:
        return
    said: dict[str, dict[str, Said]] = {}
    for number, name in enumerate((HEALTHY, *own), 1):
        said[name] = _said(library, tree, complaint, faults.get(name))
        yield number, len(own) + 1
    ends = {name: faults[name].finding for name in own if faults[name].finding in tree.steps}
    problem, names = _problem(library, tree, said, ends)
    best = min((greedy(problem), rollout(problem)), key=lambda order: mean_cost(problem, order))
    paths = {name: _path(problem, best, number) for number, name in enumerate(names)}
    place = (folder or store()) / f"{key_of(library, faults, complaint)}.json"
    place.parent.mkdir(parents=True, exist_ok=True)
    beside = place.with_suffix(".part")
    beside.write_text(json.dumps(paths), encoding="utf-8")
    beside.replace(place)


def prepared(
    library: Library, faults: Mapping[str, Fault], complaint: str, folder: Path | None = None
) -> dict | None:
    """The paths by fault; None where they were not worked out for these texts, or can't be read."""
    place = (folder or store()) / f"{key_of(library, faults, complaint)}.json"
    try:
        found = json.loads(place.read_text(encoding="utf-8"))
    except (OSError, ValueError):
        return None
    return found if isinstance(found, dict) else None


def shortest(
    drill: Drill, library: Library, faults: Mapping[str, Fault], folder: Path | None = None
) -> Shortest | None:
    """None for a complaint without a tree."""
    tree = tree_of(library, drill.complaint)
    if tree is None:
        return None
    walked = _walked(drill, library)
    name = drill.fault.name if drill.fault else HEALTHY
    found = (prepared(library, faults, drill.complaint, folder) or {}).get(name)
    if not _is_path(found) or (walked and walked.minutes <= found["minutes"]):
        return walked
    steps = [tree.steps[one] for one in found["tests"] if one in tree.steps]
    asked = sum(max(1, len(readings_of(step))) for step in steps if not step_guards(step))
    return Shortest(tuple(_words(step) for step in steps), found["minutes"], asked, BY_ORDER)


def _is_path(found: object) -> bool:
    return (
        isinstance(found, dict)
        and isinstance(found.get("tests"), list)
        and isinstance(found.get("minutes"), (int, float))
    )


def _said(library: Library, tree: Tree, complaint: str, fault: Fault | None) -> dict[str, Said]:
    case = Case(tree.name, fault.name if fault else HEALTHY, nominal(fault) if fault else "nominal")
    rig = Rig(house_of(case, fault, 0), fault, case.degree, case.seed(0))
    return every_test(library, tree, complaint, rig)


def _problem(
    library: Library, tree: Tree, said: Mapping[str, Mapping[str, Said]], ends: Mapping[str, str]
) -> tuple[Problem, list[str]]:
    here = {name: said[name] for name in (*ends, HEALTHY)}
    weights = {**dict.fromkeys(ends, 1.0), HEALTHY: RARE}
    return problem_of(library, tree, here, {**ends, HEALTHY: ""}, weights), sorted(here)


def _path(problem: Problem, order: Order, fault: int) -> dict[str, object]:
    tests, at, here = [], Situation(), order
    while here.test is not None:
        tests.append(problem.tests[here.test].name)
        at = problem.after(here.test, at)
        here = here.ways[problem.tests[here.test].outcomes[fault]]
    return {"tests": tests, "minutes": round(minutes_to(problem, order, fault), 1)}


def _walked(drill: Drill, library: Library) -> Shortest | None:
    """The tree's own walk of this house, by a hand that makes no mistake."""
    hand = Hand(drill.rig(), PERFECT)
    try:
        visit, _ = until_end(opened(library, drill.complaint), hand, library)
    except Stuck as stop:
        visit = stop.visit
    path = tuple(taken for walk in visit.walks for taken in walk.taken) + visit.path
    taken = [
        one
        for one in path
        if one.verb in ("look", "measure", "watch")
        and not one.passed
        and library.trees[one.step.partition(".")[0]].purpose == "complaint"
    ]
    steps = [library.step(one.step)[1] for one in taken]
    asked = sum(
        max(1, len(one.records)) for one, step in zip(taken, steps, strict=True) if not step_guards(step)
    )
    return Shortest(tuple(_words(step) for step in steps), minutes_of(library, path), asked, BY_TREE)


def _words(step) -> str:
    return str(step.ask or step.common.name.replace("_", " "))
