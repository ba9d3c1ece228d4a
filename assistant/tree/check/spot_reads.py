"""A spot gives only some quantities, and some of them only while something runs: the pressure of air behind
a blower, the oxygen in a vent, a turn of the gas meter. Taken elsewhere or with the furnace off they read
nothing, and nothing looks like "too little". The house says what each spot can be asked and in which power
state.
"""

from __future__ import annotations

from assistant.tree.check.asked import lacks
from assistant.tree.check.rule import Faults
from assistant.tree.check.study import Study
from assistant.tree.model import Tree, readings_of

MEND = ("Read at a spot of house.yaml that gives this quantity, and write needs: with the power state that "
        "stands beside it there.")


def in_tree(study: Study, tree: Tree) -> Faults:
    """Quantities read where they can't be read, or in a power state in which they tell nothing."""
    for name, step in tree.steps.items():
        for reading in readings_of(step):
            for point in reading.at:
                known = study.vocabulary.points.get(point)
                if known is None or not known.reads:
                    continue
                around = known.reads.get(reading.kind)
                if around is None:
                    yield reading.place, (f"'{name}' reads {reading.kind} at '{point}', where house.yaml has "
                                          f"{' or '.join(known.reads)}; read it elsewhere, or another "
                                          "quantity")
                    continue
                for circuit, wanted in around.needs.items():
                    if lacks(study, tree, step, circuit, wanted):
                        yield reading.place, (f"{reading.kind} at '{point}' tells nothing unless circuit "
                                              f"'{circuit}' is {wanted}; write needs: "
                                              f"{{{circuit}: {wanted}}}")
