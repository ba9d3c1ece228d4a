"""Walks simulated faults through spoiled trees that the checker lets pass: what the proof on the rig adds.
python tests/campaign/mutants_on_the_rig.py [--number 400] [--seed 1] [--walks 4] [--minutes 30] [--told FILE]
    [--kept FILE] [--left]

The mutants are those of tree_mutants.py with this number and seed, `--told FILE` what that kept of them. All
that neither loader nor checker refuses are tried, in an order drawn by the seed, until the minutes are over;
with `--left` only those that limits and recorded walks leave too. A fault's sound walk (usual degree, no
noise, repair and proof walked) is gone when first needed and kept in `--kept FILE`; a mutant is tried on
faults whose sound walk comes to the spoiled step, at most so many, those first that go on from there by
different ways; sound houses are walked like faults. It is *noticed* only where the proof's own verdict gets
worse: wrong or undecided, a cause not named, not cured, not proved, something left undone. Another end or way
that is as good is told apart, as *other way*. Kinds that no simulated hand reads (cautions, sources, words)
are not walked.
"""

from __future__ import annotations

import argparse
import json
import random
import sys
import time
from collections import Counter, defaultdict
from collections.abc import Iterable
from dataclasses import dataclass
from pathlib import Path

from mutant_classes import class_of
from mutant_walks import Walks
from tree_mutants import address_of, checked, digest, mutants, noticed, told_of

from assistant.drill.case import HEALTHY, Case, healthy_houses, nominal
from assistant.drill.outcome import RIGHT, UNDECIDED, cause_named, judged
from assistant.drill.prove import complaint_trees
from assistant.drill.trial import walked
from assistant.resources import trees_folder
from assistant.rig.fault_file import shipped
from assistant.tree.check import Study, stem
from assistant.tree.library import read_folder

UNREAD = ("caution dropped", "one caution dropped", "other source", "source removed", "normal dropped",
          "words of bands swapped", "one fact dropped", "trade word for the customer", "meter dropped")
"""Kinds that change nothing that the simulated hand reads or the proof looks at."""
NOTICED, OTHER, SAME, NOBODY, NOT_WALKED = ("noticed", "other way", "not noticed", "no fault comes here",
                                            "not walked")


@dataclass(frozen=True)
class Told:
    """What of a walk counts: `marks` are a verdict's parts, each better the lower; `way` is how it went."""

    marks: tuple[int, ...]
    way: tuple
    through: tuple[str, ...] = ()

    def worse_than(self, sound: Told) -> bool:
        return any(mine > its for mine, its in zip(self.marks, sound.marks, strict=True))


class Proving:
    """The faults, each with its walk through the unspoiled trees, which is gone when it is first needed."""

    def __init__(self, library, walks: Walks, kept: Path | None) -> None:
        self.library, self.walks, self.kept = library, walks, kept
        self.faults, self.of = shipped()[0], digest(library)
        trees = {complaint: tree for tree, complaint in complaint_trees(library).items()}
        self.cases = {name: (Case(trees[fault.complaint], name, nominal(fault), wholly=True),
                             fault.complaint, fault) for name, fault in self.faults.items()}
        # the plain house, a condensing furnace, one with a zone panel
        self.cases |= {f"{HEALTHY} {tree} {case.features}": (case, complaint, None)
                       for complaint, tree in trees.items() for case in healthy_houses(tree, 0)[:3]}
        self.ending: dict[tuple[str, str], list[str]] = defaultdict(list)
        for name, fault in self.faults.items():
            self.ending[trees[fault.complaint], fault.finding].append(name)
        self.sound: dict[str, Told] = {}
        self.through: dict[str, dict[str, list[str]]] = defaultdict(lambda: defaultdict(list))
        known = json.loads(kept.read_text()) if kept and kept.exists() else {}
        for name, (marks, way, through) in known["walks"].items() if known.get("of") == self.of else ():
            self._keep(name, Told(tuple(marks), _deep(way), tuple(through)))

    def _keep(self, name: str, told: Told) -> None:
        self.sound[name] = told
        for step, after in dict(zip(told.through, [*told.through[1:], ""], strict=True)).items():
            self.through[step][after].append(name)

    def walk_soundly(self, names: Iterable[str]) -> None:
        """Walks these through the unspoiled trees, those that were not yet."""
        fresh = [name for name in names if name not in self.sound]
        for name in fresh:
            self._keep(name, self.told(name, self.library))
        if self.kept and fresh:
            self.kept.write_text(json.dumps({"of": self.of, "walks": {
                name: (one.marks, one.way, one.through) for name, one in self.sound.items()}}))

    def told(self, name: str, library) -> Told:
        """How a fault's walk comes out."""
        case, complaint, fault = self.cases[name]
        try:
            outcome, taken = walked(case, library, complaint, fault, 0)
        except Exception as problem:  # noqa: BLE001 - a spoiled tree may break anything
            return Told((9,) * 6, (type(problem).__name__,))
        verdict = judged(outcome, fault, complaint)
        marks = (0 if verdict == RIGHT else 1 if verdict == UNDECIDED else 2,
                 int(bool(outcome.condemns) and verdict not in (RIGHT, UNDECIDED)),
                 int(cause_named(outcome, fault) is False),
                 {True: 0, None: 1, False: 2}[outcome.cured],
                 {"proved": 0, "none": 1, "": 1, "not_proved": 2}.get(outcome.proof, 2),
                 len(outcome.undone) + len(outcome.mishaps))
        way = (outcome.kind, outcome.end, outcome.condemns, outcome.causes, outcome.proof,
               round(outcome.minutes, 3), outcome.readings)
        through = [one.step for one in taken] + [f"{case.tree}.{outcome.end}"]
        return Told(marks, _deep(way), tuple(through))

    def near(self, address: str, most: int) -> list[str]:
        """Faults whose sound walk comes to a step, one of each way on from it after the other. Those are
        tried whose finding ends a recorded walk through the step, until there are enough."""
        likely = [name for path, _ in self.walks.through.get(address, ())
                  for name in self.ending[path.parent.name, path.stem]]
        likely = list(dict.fromkeys(likely))[:4 * most]
        while len(self._of_each_way(address, most)) < most and likely:
            some, likely = likely[:most], likely[most:]
            self.walk_soundly(some)
        return self._of_each_way(address, most)

    def _of_each_way(self, address: str, most: int) -> list[str]:
        ways = [list(names) for names in self.through.get(address, {}).values()]
        out: list[str] = []
        while any(ways) and len(out) < most:
            out += [names.pop(0) for names in ways if names][:most - len(out)]
        return out

    def tried(self, address: str, spoiled, most: int) -> tuple[str, str]:
        """What the walks tell of a spoiled library, and the fault that tells it."""
        near, other = self.near(address, most), ""
        for name in near:
            told, sound = self.told(name, spoiled), self.sound[name]
            if told.worse_than(sound):
                return NOTICED, name
            if told.way != sound.way:
                other = other or name
        return (OTHER, other) if other else (SAME if near else NOBODY, "")


def _deep(value):
    """Lists as tuples, all the way down: what was kept in a file compares with what was walked now."""
    return tuple(map(_deep, value)) if isinstance(value, (list, tuple)) else value


def main() -> int:
    """Prints a line a mutant, then how many were noticed by kind, by class and by who else catches them."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--number", type=int, default=400)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--walks", type=int, default=4)
    parser.add_argument("--minutes", type=float, default=30)
    parser.add_argument("--told", type=Path, help="what tree_mutants.py kept of these mutants")
    parser.add_argument("--kept", type=Path, help="where the sound walks are kept")
    parser.add_argument("--left", action="store_true", help="only what limits and recorded walks leave too")
    chosen = parser.parse_args()
    library, began = read_folder(trees_folder()), time.monotonic()
    told = (told_of(chosen.told, library) if chosen.told
            else dict(noticed((chosen.number, chosen.seed, 0, 1))))
    sound = Study(library.vocabulary, library.trees, frozenset(map(stem, library.texts)))
    walks = Walks(library)
    proving = Proving(library, walks, chosen.kept)
    proving.walk_soundly(name for name in proving.cases if name.startswith(HEALTHY))
    passed = [(place, mutant) for place, mutant in enumerate(mutants(library, chosen.number, chosen.seed))
              if not (told[place] or "left").startswith(("loader", "check"))
              and (told[place] is None or not chosen.left)]
    random.Random(chosen.seed).shuffle(passed)
    table: dict[str, Counter] = defaultdict(Counter)
    done = 0
    for place, mutant in passed:
        if time.monotonic() - began > chosen.minutes * 60:
            break
        done += 1
        address, caught = address_of(mutant, library), (told[place] or "left").partition(":")[0]
        if mutant.kind in UNREAD:
            met, by = NOT_WALKED, ""
        else:
            met, by = proving.tried(address, checked(mutant, library, sound.known, sound)[1], chosen.walks)
        klass = class_of(mutant, address, library, sound, walks) if caught == "left" else f"({caught})"
        for row in (mutant.kind, klass, f"caught by {caught}" if caught != "left" else "left by all", "all"):
            table[row][met] += 1
        print(f"{met}\t{by}\t{klass}\t{mutant.kind}\t{mutant.file}:{mutant.line}\t{address}\t{mutant.was}\t->\t"
              f"{mutant.now}", flush=True)
    for name, row in sorted(table.items()):
        print(f"{name:32} " + ", ".join(f"{met} {times}" for met, times in row.most_common()))
    which = "are left by all" if chosen.left else "pass loader and checker"
    print(f"seed {chosen.seed}: {len(passed)} of {chosen.number} {which}; {done} of them tried, against "
          f"{len(proving.sound)} sound walks")
    return 0


if __name__ == "__main__":
    sys.exit(main())
