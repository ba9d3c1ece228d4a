"""The caution stands beside the step that can hurt: live terminals, gas, moving parts and flame, a switch
thrown, a guard that is out of place for a while. Where the house names the caution of a circuit or a spot,
every step there carries that one and not just any. A technician who has done it a thousand times is hurt the
next time.
"""

from __future__ import annotations

from assistant.house.model import Vocabulary
from assistant.tree.check.points import ENERGIZED, circuits_at
from assistant.tree.check.rule import Faults
from assistant.tree.check.study import Study
from assistant.tree.check.thermostat_off import AT_THE_THERMOSTAT
from assistant.tree.model import Do, Step, Tree, Watch, readings_of

MEND = "Write caution: with the names in cautions.yaml that fit what can hurt here."


def in_tree(study: Study, tree: Tree) -> Faults:
    """Steps that can hurt and carry no caution."""
    for name, step in tree.steps.items():
        danger = None if step.common.caution else _danger(study.vocabulary, step)
        if danger:
            yield step.common.place, (f"'{name}' {danger} and carries no caution; write caution: with one "
                                      "of cautions.yaml")
            continue
        for wanted, why in _own(study.vocabulary, step).items():
            if wanted not in step.common.caution:
                yield step.common.place, (f"'{name}' {why} and does not carry the caution '{wanted}'; add it "
                                          "under caution:")


def _own(vocabulary: Vocabulary, step: Step) -> dict[str, str]:
    """The cautions that the house gives to where a step reads, each with why."""
    wanted: dict[str, str] = {}
    for reading in () if getattr(step, "verifies", ()) else readings_of(step):  # a proof reads what is off
        for circuit in circuits_at(vocabulary, reading) if reading.kind in ENERGIZED else ():
            name = vocabulary.circuits[circuit].caution
            if name is not None:
                wanted.setdefault(name, f"is taken on circuit '{circuit}' live")
        for point in reading.at:
            name = vocabulary.points[point].caution if point in vocabulary.points else None
            if name is not None:
                wanted.setdefault(name, f"is taken at '{point}'")
    return wanted


def _danger(vocabulary: Vocabulary, step: Step) -> str | None:
    for reading in readings_of(step):
        if reading.kind in ENERGIZED and circuits_at(vocabulary, reading):
            return "is taken on live terminals"
        if any(point in vocabulary.points and vocabulary.points[point].of == "gas" for point in reading.at):
            return "is taken at the gas"
    if isinstance(step, Watch):
        return "watches moving parts and flame"
    if isinstance(step, Do) and step.act in vocabulary.acts:
        act = vocabulary.acts[step.act]
        if act.sets:
            return "throws a switch"
        if act.undo and not AT_THE_THERMOSTAT.fullmatch(act.name):
            return "takes something out of its place"
    return None
