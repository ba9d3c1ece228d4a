"""Each kind of tree ends in its own way. A complaint ends in a finding, a stop or the hand-over to another
complaint; a procedure is done or it stops; a cause is found or ruled out; a repair is proved or not. A cause
tree that can only find, or a proof that can only prove, asks nothing.
"""

from __future__ import annotations

from assistant.tree.check.returns import returns_of
from assistant.tree.check.rule import Faults
from assistant.tree.check.study import Study
from assistant.tree.model import Finding, HandOver, Return, Step, Tree

MEND = ("End a complaint in a finding, a stop or a hand_over; a cause in found and ruled_out; a "
        "proof in proved and not_proved; a procedure in done.")

OUTCOMES = {"cause": ("found", "ruled_out"), "proof": ("proved", "not_proved")}


def in_tree(_study: Study, tree: Tree) -> Faults:
    """Ends that do not fit the purpose, and outcomes that a tree never comes back with."""
    for step in tree.steps.values():
        yield from _fits(tree, step)
    given = returns_of(tree)
    for outcome in OUTCOMES.get(tree.purpose, ()):
        if outcome not in given:
            yield tree.place, (f"a {tree.purpose} tree must be able to come back with '{outcome}'; this one "
                               f"never does. Write a step with return: {outcome}")
    if tree.purpose == "procedure" and not given:
        yield tree.place, "this procedure never comes back; write a step with return: done"


def _fits(tree: Tree, step: Step) -> Faults:
    place = step.common.place
    if tree.purpose == "complaint":
        if isinstance(step, Return):
            yield place, ("nobody called a complaint tree, so it can't return; end in a finding, a stop or "
                          "a hand_over")
        return
    if isinstance(step, Finding):
        yield place, (f"a {tree.purpose} tree ends in a return; only a complaint tree has findings. Return, "
                      "and let the caller go on to the finding")
    if isinstance(step, HandOver):
        yield place, (f"a {tree.purpose} tree is part of another walk and can't hand it over; return, and "
                      "let the caller hand over")
    if isinstance(step, Return) and step.outcome not in OUTCOMES.get(tree.purpose, (step.outcome,)):
        yield place, (f"a {tree.purpose} tree does not come back with '{step.outcome}'; write "
                      f"{' or '.join(OUTCOMES[tree.purpose])}")
