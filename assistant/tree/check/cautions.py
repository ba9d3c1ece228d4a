"""The caution stands beside the step that can hurt: live terminals, gas, moving parts and flame, a switch
thrown, a guard that is out of place for a while. Where the house names the caution of a circuit, a spot, a
thing that is looked at, an act or an event, every step that has to do with it carries that one and not just
any. A technician who has done it a thousand times is hurt the
next time.
"""

from __future__ import annotations

from assistant.house.model import Vocabulary
from assistant.tree.check.points import ENERGIZED, circuits_at
from assistant.tree.check.rule import Faults
from assistant.tree.check.study import Study
from assistant.tree.check.thermostat_off import AT_THE_THERMOSTAT
from assistant.tree.model import Do, Look, Step, Tree, Watch, readings_of

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
    """The cautions that the house gives to what a step does and where it reads, each with why."""
    wanted: dict[str, str] = {}
    if isinstance(step, Look) and step.sees in vocabulary.seen:
        thing = vocabulary.seen[step.sees]
        wanted.update(dict.fromkeys(thing.caution, f"looks at {thing.title}"))
    if isinstance(step, Do) and step.act in vocabulary.acts:
        wanted.update(dict.fromkeys(vocabulary.acts[step.act].caution, f"has '{step.act}' done"))
    for event in step.events if isinstance(step, Watch) else ():
        for name in vocabulary.watched[event].caution if event in vocabulary.watched else ():
            wanted.setdefault(name, f"watches {event}")
    for reading in () if getattr(step, "verifies", ()) else readings_of(step):  # a proof reads what is off
        for circuit in circuits_at(vocabulary, reading) if reading.kind in ENERGIZED else ():
            name = vocabulary.circuits[circuit].caution
            if name is not None:
                wanted.setdefault(name, f"is taken on circuit '{circuit}' live")
        for point in reading.at:
            known = vocabulary.points.get(point)
            around = known.reads.get(reading.kind) if known is not None else None
            names = [known.caution] if known is not None and known.caution is not None else []
            for name in [*names, *(around.caution if around is not None else ())]:
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
