"""Steps never lead back to a step before them. A walk then always ends, "try again" is a new walk with its
own answers, and a retest is a new answer to the same step: nobody goes round three times without noticing.
"""

from __future__ import annotations

from assistant.tree.check.rule import Faults, steps_on
from assistant.tree.check.study import Study
from assistant.tree.model import Tree


def in_tree(study: Study, tree: Tree) -> Faults:
    """One circle of each tree."""
    circle = study.graphs[tree.name].circle
    if circle:
        yield tree.steps[circle[0]].common.place, (f"these steps lead in a circle: {steps_on(circle)}; end "
                                                   "one of them in a finding, a stop or another step")
