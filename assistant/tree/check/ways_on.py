"""Some readings can't be taken: no access, no meter, not allowed. Some stay too close to call after a retake.
Both are usual, so both have a way on that the tree's author thought about; a default would walk somebody
somewhere. The same goes for what the house says can't always be got at: behind a panel, on a roof, in a
story that nobody here can tell.
"""

from __future__ import annotations

from assistant.tree.check.rule import Faults
from assistant.tree.check.study import Study
from assistant.tree.model import Compute, Look, Measure, Step, Tree, Watch

MEND = ("Write cannot: and close: with the step that goes on without this reading; often another "
        "reading, or a stop that says what is missing.")


def in_tree(study: Study, tree: Tree) -> Faults:
    """Readings without a way on for 'can't be taken' or 'too close to call'."""
    for name, step in tree.steps.items():
        thing = study.vocabulary.seen.get(step.sees) if isinstance(step, Look) else None
        if thing is not None and thing.hidden and step.cannot is None:
            yield step.common.place, (f"'{name}' looks at {thing.title}, which can't always be got at, and "
                                      "has no way on then; write cannot: and a step")
        if not isinstance(step, (Measure, Watch, Compute)):
            continue
        if step.cannot is None and isinstance(step, Measure):
            yield step.common.place, (f"'{name}' has no way on where the reading can't be taken; write "
                                      "cannot: and a step")
        if step.cannot is None and isinstance(step, Compute):
            yield step.common.place, (f"'{name}' has no way on where a value it needs is missing or over "
                                      "the meter's range; write cannot: and a step")
        if step.close is None and _steers(step):
            yield step.common.place, (f"'{name}' has no way on where the value is too close to call; write "
                                      "close: and a step")


def _steers(step: Step) -> bool:
    """Whether a value between two bands could lead two ways."""
    values = [one for _, one in step.page] if isinstance(step, Compute) else step.readings
    pages = [one.bands for one in values]
    return any(len({band.then.to if band.then else None for band in bands}) > 1 for bands in pages)
