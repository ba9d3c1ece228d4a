"""What opens again after its one reset has found the fault again, and every further closing feeds it:
contacts weld, and the one who stands at the panel gets the flash. So after a second opening nothing switches
that circuit on, neither a step nor a procedure that is put in front of one; the walk stops and it stays off.
"""

from __future__ import annotations

import re

from assistant.tree.check.circuits import Instance
from assistant.tree.check.graph import Edge
from assistant.tree.check.reset import RESET, resets
from assistant.tree.check.rule import Faults, steps_on
from assistant.tree.check.search import Search, Walked, path_through
from assistant.tree.check.study import Study
from assistant.tree.model import Do, Look, Step, Tree

MEND = ("End the way of a second opening in a stop, or in a finding that was already proved; nothing on it "
        "may switch the circuit on.")

_BREAKER = re.compile(r"(breaker|device|fuse)\.\w+")
_OPENED = re.compile(r"(opens|opened|tripped|trips)\b")
_AGAIN = "opened again"


def in_tree(study: Study, tree: Tree) -> Faults:
    """Acts that switch a circuit on after its breaker opened again."""
    if not any(act.counts == RESET for act in study.vocabulary.acts.values()):
        return
    everywhere = study.keep("second trip", lambda: _everywhere(study))
    for instance in study.instances_of(tree):
        walked = everywhere.get(instance)
        for name, state in walked.ready() if walked else ():
            step = tree.steps[name]
            act = study.vocabulary.acts.get(step.act or "") if isinstance(step, Do) else None
            if act is not None and state == _AGAIN and "live" in act.sets.values():
                path = path_through(everywhere, instance, name, state)
                yield step.common.place, (f"'{act.name}' switches on again on the path {steps_on(path)}, "
                                          "where it had opened after its reset; stop there, and leave it "
                                          "off"), path


def _everywhere(study: Study) -> dict[Instance, Walked]:
    def cross(_tree: Tree, step: Step, edge: Edge, state: str) -> str:
        if isinstance(step, Do) and edge.sure and resets(study.vocabulary, step.act):
            return state or RESET
        opened = isinstance(step, Look) and _BREAKER.fullmatch(step.sees) and _OPENED.match(edge.words)
        return _AGAIN if state == RESET and opened else state

    return Search(study, cross).everywhere({instance: {""} for instance in study.instances})
