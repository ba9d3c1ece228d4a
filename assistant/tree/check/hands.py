"""A blower starts by itself, and a hand in it is gone. A wheel or belt is turned by hand only with the power
locked off and proved dead. The same for a neutral that is lifted: with the other leg live it puts 240 V on
everything that shares it.
"""

from __future__ import annotations

import re

from assistant.tree.check.rule import Faults
from assistant.tree.check.study import Study
from assistant.tree.model import Do, Look, Measure, Step, Tree
from assistant.tree.power import needs_of

MEND = "Write needs: with the circuit dead, so that the proof comes before the hand."

WHEEL = "puts a hand in a wheel"
_HAND = re.compile(r"\b(by hand|spin|spun|reach(ing)? in(to)?)\b", re.IGNORECASE)
_WHEEL = re.compile(r"\b(wheel|blower|fan|belt|inducer|motor)s?\b", re.IGNORECASE)
_NEUTRAL = re.compile(
    r"\b(lift(ed|ing)?|pull(ed)?|take|loosen(ed)?)\b[^.;:]*\bneutrals?\b(?! to)", re.IGNORECASE
)


def in_tree(study: Study, tree: Tree) -> Faults:
    """Steps that put a hand in a wheel or lift a neutral with nothing proved dead."""
    for name, step in tree.steps.items():
        work = _work(step)
        bound = [one.circuit for one in study.instances_of(tree)]
        if work and any("dead" not in needs_of(step, one).values() for one in bound):
            yield step.common.place, (f"'{name}' {work}, and nothing says that the power is proved dead; "
                                      "write needs: with the circuit dead")
        elif work == WHEEL and not step.common.caution:
            yield step.common.place, (f"'{name}' {work} and carries no caution; write caution: with one of "
                                      "cautions.yaml")


def _work(step: Step) -> str | None:
    if not isinstance(step, (Do, Look, Measure)):
        return None
    for text in (step.ask, *step.common.how):
        if _HAND.search(text) and _WHEEL.search(text):
            return WHEEL
        if _NEUTRAL.search(text):
            return "lifts a neutral"
    return None
