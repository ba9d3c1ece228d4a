"""What shows nothing wrong finds nothing, and what is wrong is not ruled out by having been seen. The house
says of a thing which of its words are good ("clean and tight", "dry"). A cause that is found on a good word
has the customer pay for a wheel that was clean; one that is ruled out on a bad word leaves the reason in the
house; and a proof of repair is no better.
"""

from __future__ import annotations

from assistant.tree.check.rule import Faults
from assistant.tree.check.study import Study
from assistant.tree.model import Look, Return, Tree

MEND = "Change the ways about under choices:, or mend good: of the thing in house.yaml."

_BAD_ENDS = {"cause": "found", "proof": "not_proved"}
_GOOD_ENDS = {"cause": "ruled_out", "proof": "proved"}


def in_tree(study: Study, tree: Tree) -> Faults:
    """Answers of a look that end as if something else had been seen."""
    if tree.purpose not in _BAD_ENDS:
        return
    for name, step in tree.steps.items():
        thing = study.vocabulary.seen.get(step.sees) if isinstance(step, Look) else None
        for value, way in step.choices.items() if thing is not None and thing.good else ():
            end = tree.steps.get(way.to)
            good = value in thing.good
            wrong = (_BAD_ENDS if good else _GOOD_ENDS)[tree.purpose]
            if isinstance(end, Return) and end.outcome == wrong:
                yield way.place, (f"'{name}' ends in '{wrong}' when {thing.title} is '{value}', which shows "
                                  f"{'nothing' if good else 'something'} wrong; lead it elsewhere")
