"""A blower that was found standing still is not tried out with a fire under it: the exchanger overheats
within a minute, and the limit that should end it may be the next thing that fails. Until somebody has seen it
blow again, on a fan call, no start is watched, whatever was repaired meanwhile and whichever complaint goes
on.
"""

from __future__ import annotations

import re

from assistant.tree.check.blower_watched import RUNS
from assistant.tree.check.circuits import Instance
from assistant.tree.check.graph import Edge
from assistant.tree.check.leak_check import LIT
from assistant.tree.check.reset import resets
from assistant.tree.check.rule import Faults, steps_on
from assistant.tree.check.search import Search, Walked, after_finding, path_through
from assistant.tree.check.study import Study
from assistant.tree.model import Do, Look, Step, Tree, Watch

MEND = ("Put a step before it that sees the blower run without a flame: a fan call, and a look at the blower "
        "or its register. A proof of repair needs it too.")

_BLOWER = re.compile(r"(blower|fan)\.\w+")
_STILL = re.compile(r"\b(stands? still|nothing moves|does not (turn|run|start))\b")
_BLOWS = re.compile(r"(runs|blows|turning|starts)\b")


def in_tree(study: Study, tree: Tree) -> Faults:
    """Starts that are watched after the blower was found still, with no run of it seen since."""
    everywhere = study.keep("no air", lambda: _everywhere(study))
    for instance in study.instances_of(tree):
        walked = everywhere.get(instance)
        for name, still in walked.ready() if walked else ():
            step = tree.steps[name]
            if still and isinstance(step, Watch) and LIT in step.events:
                path = path_through(everywhere, instance, name, still)
                yield step.common.place, (f"'{name}' lights the burner on the path {steps_on(path)}, where "
                                          "the blower was found still; see it run on a fan call first"), path


def _everywhere(study: Study) -> dict[Instance, Walked]:
    def cross(_tree: Tree, step: Step, edge: Edge, still: bool) -> bool:
        """Whether the blower was found still and nobody has seen it run since."""
        if isinstance(step, Watch) and RUNS in step.events:
            if edge.words == f"{RUNS} missing":
                return True
            return still and not (edge.sure and not edge.words.endswith(" missing"))
        if isinstance(step, Look) and _BLOWER.fullmatch(step.sees) and edge.sure:
            return bool(_STILL.search(edge.words)) or (still and not _BLOWS.match(edge.words))
        return still

    search = Search(study, cross)
    clean = {instance: {False} for instance in study.instances}
    return search.everywhere(
        clean, lambda finding, still: after_finding(search, finding, still, lambda _act, at: at),
        lambda tree, still: still and not _power_was_gone(study, tree))


def _power_was_gone(study: Study, tree: Tree) -> bool:
    """Whether a complaint is that the furnace has no power at all: its blower stood still for that, and is
    run by this complaint's own steps before anything is lit."""
    return any(isinstance(step, Do) and resets(study.vocabulary, step.act) for step in tree.steps.values())
