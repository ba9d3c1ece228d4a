"""Walks simulated faults through spoiled trees that nobody else noticed: what the proof on the rig adds.
python tests/campaign/mutants_on_the_rig.py [--number 1000] [--seed 1] [--sample 60] [--walks 3] [--all]
    [--told FILE]

Of the mutants of tree_mutants.py with this number and seed, those that loader, checker, second statements and
recorded walks leave are sampled: of the classes that are for the rig, or of all. Each is tried on the faults
(at their usual degree, without noise) whose finding ends a recorded walk through the spoiled step, at most so
many; it is noticed where a fault is told otherwise, is not cured any more, or its proof of repair comes out
otherwise. A step that no such walk comes to is said so.
"""

from __future__ import annotations

import argparse
import json
import random
import sys
from collections import Counter, defaultdict
from functools import cache
from pathlib import Path

from mutant_classes import CLASSES, class_of
from mutant_walks import Walks
from tree_mutants import Second, address_of, checked, mutants

from assistant.drill.case import Case, nominal
from assistant.drill.outcome import judged
from assistant.drill.prove import complaint_trees
from assistant.drill.trial import tried
from assistant.resources import trees_folder
from assistant.rig.fault_file import shipped
from assistant.tree.check import Study, stem
from assistant.tree.library import read_folder


def walked(case, library, complaint, fault) -> tuple:
    """How a walk comes out, in the words that count."""
    try:
        outcome = tried(case, library, complaint, fault, 0)
    except Exception as problem:  # noqa: BLE001 - a spoiled tree may break anything
        return (f"broken: {type(problem).__name__}",)
    return judged(outcome, fault, complaint), outcome.end, outcome.cured, outcome.proof


def main() -> int:
    """Prints how many of the sampled survivors a simulated fault notices, by kind and by class."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--number", type=int, default=1000)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--sample", type=int, default=60)
    parser.add_argument("--walks", type=int, default=3)
    parser.add_argument("--told", type=Path, help="what tree_mutants.py kept of this number and seed")
    parser.add_argument("--all", action="store_true", help="sample every class, not only those for the rig")
    chosen = parser.parse_args()
    library, second = read_folder(trees_folder()), Second()
    sound = Study(library.vocabulary, library.trees, frozenset(map(stem, library.texts)))
    walks, faults, trees = Walks(library), shipped()[0], complaint_trees(library)
    ending = defaultdict(list)
    for fault in faults.values():
        ending[fault.complaint, fault.finding].append(fault)

    @cache
    def base(name: str) -> tuple:
        return walked(*case_of(faults[name]))

    def case_of(fault, other=library):
        tree = next(tree for tree, complaint in trees.items() if complaint == fault.complaint)
        return Case(tree, fault.name, nominal(fault), wholly=True), other, fault.complaint, fault

    told = json.loads(chosen.told.read_text()) if chosen.told else {}
    left = []
    for place, mutant in enumerate(mutants(library, chosen.number, chosen.seed)):
        address = address_of(mutant, library)
        if str(place) in told:
            if told[str(place)] is not None:
                continue
        else:
            caught, spoiled = checked(mutant, library, sound.known, sound)
            if caught or second.refuses(spoiled.trees[stem(mutant.file)]) or walks.refuses(spoiled, address):
                continue
        name = class_of(mutant, address, library, sound, walks)
        if chosen.all or CLASSES[name][0] == "for the rig":
            left.append((mutant, address, name))
    table: dict[str, Counter] = defaultdict(Counter)
    sample = random.Random(chosen.seed).sample(left, min(chosen.sample, len(left)))
    for mutant, address, name in sample:
        spoiled = checked(mutant, library, sound.known, sound)[1]
        ends = dict.fromkeys((path.parent.name, path.stem) for path, _ in walks.through.get(address, ()))
        near = [fault for tree, end in ends for fault in ending[trees[tree], end]][:chosen.walks]
        noticed = any(walked(*case_of(fault, spoiled)) != base(fault.name) for fault in near)
        met = "noticed" if noticed else "not noticed" if near else "no fault comes here"
        table[mutant.kind][met] += 1
        table[name][met] += 1
        print(f"{met}\t{name}\t{mutant.kind}\t{mutant.file}:{mutant.line}\t{address}\t{mutant.was}\t->\t"
              f"{mutant.now}", flush=True)
    for kind, row in sorted(table.items()):
        print(f"{kind:32} " + ", ".join(f"{met} {times}" for met, times in row.items()))
    print(f"seed {chosen.seed}: {len(left)} of {chosen.number} left; sample of {len(sample)}")
    return 0


if __name__ == "__main__":
    sys.exit(main())
