"""A breaker or a service switch is not made to break the current of a running motor, and what was running
starts again on its own when it is closed. The thermostat goes off first; then the switch is moved with
nothing on it.
"""

from __future__ import annotations

import re

from assistant.house.model import Act, Vocabulary
from assistant.tree.check.circuits import Instance
from assistant.tree.check.graph import Edge
from assistant.tree.check.reset import RESET
from assistant.tree.check.rule import Faults, steps_on
from assistant.tree.check.search import Search, Walked
from assistant.tree.check.study import Study
from assistant.tree.model import Do, Step, Tree

MEND = "Put a do step with the act stat_off before the switch is moved."

_OFF = re.compile(r"(thermo)?stat_off")
AT_THE_THERMOSTAT = re.compile(r"((thermo)?stat|fan)_.*")
"""Acts done at the thermostat; all but turning it off may set something running."""
_CALL = re.compile(r"jumper_.*")
"""Acts that call for heat somewhere else."""


def in_tree(study: Study, tree: Tree) -> Faults:
    """Switches that are opened while something on them may run."""
    for instance in study.instances_of(tree):
        walked = study.keep("thermostat off", lambda: _everywhere(study)).get(instance)
        for name, off in walked.ready() if walked else ():
            step = tree.steps[name]
            if off or not isinstance(step, Do) or not step.act:
                continue
            moved = _moved(study.vocabulary, study.vocabulary.acts.get(step.act))
            if moved:
                path = walked.path(name, off)
                yield step.common.place, (f"'{step.act}' switches circuit '{moved}' off on the path "
                                          f"{steps_on(path)} while something on it may run; put a do step "
                                          "that turns the thermostat off before it"), path


def turns_off(act: str) -> bool:
    """Whether an act turns the thermostat off."""
    return _OFF.fullmatch(act) is not None


def _moved(vocabulary: Vocabulary, act: Act | None) -> str | None:
    """The circuit whose own switch an act opens. One that is counted is done even where the circuit is live,
    so it opens the switch before it closes it; a breaker that is reset has opened by itself."""
    for circuit, state in act.sets.items() if act else ():
        opens = state == "off" or (act.counts is not None and act.counts != RESET)
        if opens and vocabulary.circuits[circuit].fed_by is None:
            return circuit
    return None


def _everywhere(study: Study) -> dict[Instance, Walked]:
    def cross(_tree: Tree, step: Step, edge: Edge, off: bool) -> bool:
        if not isinstance(step, Do) or not step.act or not edge.sure:
            return off
        if AT_THE_THERMOSTAT.fullmatch(step.act):
            return turns_off(step.act)
        return off and not _CALL.fullmatch(step.act)

    return Search(study, cross).everywhere({instance: {False} for instance in study.instances})
