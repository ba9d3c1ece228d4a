"""Every change of every component at every degree, walked by every tree: none may break the proof.

Each is one fault of a file that somebody else might write; as many pairs of changes by chance are walked
beside them. The first argument walks only every so-many-th, the second is another seed. Prints what broke;
what was found is not judged, since such a fault names no finding.
"""

import random
import sys
import time
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[1] / "drill"))
sys.path.insert(0, str(Path(__file__).parents[2]))

from anything import written

from assistant.drill.case import Case
from assistant.drill.prove import complaint_trees
from assistant.drill.run import BROKEN, Matter, run
from assistant.resources import trees_folder
from assistant.rig.parts import COMPONENTS
from assistant.tree.folder import read_texts


def main():
    """Walk them; the exit code tells whether any broke."""
    step, seed = (int(text) for text in (*sys.argv[1:], "1", "0")[:2])
    every = [
        [(component.name, name, degree)]
        for component in COMPONENTS.values()
        for name, change in component.changes.items()
        for degree in change.degrees
    ]
    chance = random.Random(seed)
    pairs = [[*chance.choice(every), *chance.choice(every)] for _ in every]
    texts = dict(read_texts(trees_folder())[0])
    matter = Matter(texts, {"any.yaml": written([*every, *pairs])}, seed)
    trees = complaint_trees(matter.library())
    matter = Matter(texts, matter.files, seed, trees)
    tasks = [
        Case(tree, name, wholly=True)
        for number, name in enumerate(matter.faults())
        for tree in (*trees,)
        if number % step == 0
    ]
    begun = time.monotonic()
    found = run(matter, tasks, lambda _done, _total: None)
    broken = [outcome for outcome in found if any(BROKEN in words for words in outcome.undone)]
    for outcome in broken:
        print(outcome.case.tree, outcome.case.fault, outcome.undone)
    print(
        f"{len(every)} changes and {len(pairs)} pairs of them, {len(tasks)} walks in {len(trees)} trees: "
        f"{len(broken)} broke; {time.monotonic() - begun:.0f} s"
    )
    return 1 if broken or not tasks else 0


if __name__ == "__main__":
    sys.exit(main())
