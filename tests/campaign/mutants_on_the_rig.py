"""Walks simulated faults through spoiled trees that nobody else noticed: what the proof on the rig adds.
python tests/campaign/mutants_on_the_rig.py [--number 1000] [--seed 1] [--sample 60] [--walks 4]
    [--tree TREE]

Of the mutants of tree_mutants.py with this number and seed, those that loader, checker and second statements
leave are sampled. Each is tried on the usual faults (at their usual degree, without noise) whose sound walk
comes to the spoiled step, at most so many; it is noticed where a fault that was told rightly no longer is, is
not cured any more, or its proof of repair comes out otherwise. A step that no fault comes to is said so.
"""

from __future__ import annotations

import argparse
import random
import sys
from bisect import bisect_right
from collections import Counter, defaultdict

from tree_mutants import Second, checked, mutants

from assistant.drill import trial
from assistant.drill.case import HEALTHY, Case, nominal
from assistant.drill.outcome import judged
from assistant.drill.prove import complaint_trees
from assistant.resources import resources_folder, trees_folder
from assistant.rig.fault_file import load_faults
from assistant.tree.check import Study, stem
from assistant.tree.library import read_folder

SEEN: dict[str, set[str]] = {}
_WITH_REPAIR = trial._with_repair


def _spy(ended, visit, *rest):
    SEEN["steps"] = {taken.step for taken in visit.history}
    return _WITH_REPAIR(ended, visit, *rest)


trial._with_repair = _spy  # the steps that a walk took are told nowhere else


def walked(case, library, complaint, fault):
    """How a walk comes out, in the words that count, and the steps that it took."""
    SEEN.clear()
    try:
        outcome = trial.tried(case, library, complaint, fault, 0)
    except Exception as problem:  # noqa: BLE001 - a spoiled tree may break anything
        return (f"broken: {type(problem).__name__}",), set()
    told = judged(outcome, fault, complaint)
    return (told, outcome.end, outcome.cured, outcome.proof), SEEN.get("steps", set())


def main() -> int:
    """Prints how many of the sampled survivors a simulated fault notices, by kind."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--number", type=int, default=1000)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--sample", type=int, default=60)
    parser.add_argument("--walks", type=int, default=4)
    parser.add_argument("--tree", help="only mutants and faults of this complaint tree")
    chosen = parser.parse_args()
    library, second = read_folder(trees_folder()), Second()
    sound = Study(library.vocabulary, library.trees, frozenset(map(stem, library.texts)))
    faults = {}
    for file in sorted((resources_folder() / "faults").glob("*.yaml")):
        faults = {**load_faults(file.read_bytes(), file.name)[0], **faults}
    base = []
    for tree, complaint in complaint_trees(library).items():
        if chosen.tree not in (None, tree):
            continue
        own = {name: fault for name, fault in faults.items() if fault.complaint == complaint}
        for name, fault in [(HEALTHY, None), *own.items()]:
            case = Case(tree, name, nominal(fault) if fault else "nominal", wholly=True)
            base.append((case, complaint, fault, *walked(case, library, complaint, fault)))
        print(f"... {tree}: {len(own)} faults walked", file=sys.stderr, flush=True)
    left = []
    for mutant in mutants(library, chosen.number, chosen.seed):
        if chosen.tree not in (None, stem(mutant.file)):
            continue
        caught, spoiled = checked(mutant, library, sound.known, sound)
        if caught is None and spoiled and second.refuses(spoiled.trees[stem(mutant.file)]) is None:
            left.append((mutant, spoiled))
    table: dict[str, Counter] = defaultdict(Counter)
    sample = random.Random(chosen.seed).sample(left, min(chosen.sample, len(left)))
    for mutant, spoiled in sample:
        tree = library.trees[stem(mutant.file)]
        starts = sorted((step.common.place.line, name) for name, step in tree.steps.items())
        at = max(bisect_right([line for line, _ in starts], mutant.line) - 1, 0)
        address = f"{tree.name}.{starts[at][1]}"
        ends = {f"{case.tree}.{how[1]}" for case, _, _, how, _ in base if len(how) > 1}
        through = [one for one in base
                   if address in one[4] or (len(one[3]) > 1 and f"{one[0].tree}.{one[3][1]}" == address)]
        noticed = any(walked(case, spoiled, complaint, fault)[0] != how
                      for case, complaint, fault, how, _ in through[:chosen.walks])
        met = "noticed" if noticed else "not noticed" if through or address in ends else "no fault comes here"
        table[mutant.kind][met] += 1
        where = f"{mutant.file}:{mutant.line}"
        print(f"{met}\t{mutant.kind}\t{where}\t{mutant.was}\t->\t{mutant.now}", flush=True)
    total = Counter()
    for kind, row in sorted(table.items()):
        total += row
        print(f"{kind:32} " + ", ".join(f"{name} {times}" for name, times in row.items()))
    print(f"{len(left)} of {chosen.number} left; sample of {len(sample)}: {dict(total)}")
    return 0


if __name__ == "__main__":
    sys.exit(main())
