"""A tripped breaker is closed onto whatever tripped it. Before that, every load is measured dead, hot to
ground and hot to neutral (ohms to ground alone never find a short between the two wires); the house names
the loads of a circuit. Then it is reset once, loads off; if it trips again, stop. A breaker is no test
instrument.
"""

from __future__ import annotations

import re
from functools import partial

from assistant.house.model import Vocabulary
from assistant.tree.check.circuits import Instance
from assistant.tree.check.graph import Edge
from assistant.tree.check.points import OHMS, is_ground
from assistant.tree.check.rule import Faults, steps_on
from assistant.tree.check.search import Search, Walked, path_through
from assistant.tree.check.study import Study
from assistant.tree.model import Do, Reading, Step, Tree

MEND = ("Measure every load dead before, hot to ground and hot to neutral; reset once, with the "
        "loads off, and lead a second opening to a stop.")

RESET = "reset"
GROUND, NEUTRAL = "hot to ground", "hot to neutral"
_LOADS_OFF = re.compile(r"\b(unplugged|disconnected|loads? (are )?off|plugs? out)\b", re.IGNORECASE)


def in_tree(study: Study, tree: Tree) -> Faults:
    """Resets before the loads were tested, and second ones."""
    if not any(act.counts == RESET for act in study.vocabulary.acts.values()):
        return
    loads = dict.fromkeys(load for act in study.vocabulary.acts.values() if act.counts == RESET
                          for circuit in act.sets for load in study.vocabulary.circuits[circuit].loads)
    said: set[str] = set()
    for load in (None, *loads):
        everywhere = study.keep(f"reset {load}", partial(_everywhere, study, load))
        for instance in study.instances_of(tree):
            walked = everywhere.get(instance)
            for name, state in walked.ready() if walked else ():
                step = tree.steps[name]
                if not isinstance(step, Do) or not resets(study.vocabulary, step.act) or name in said:
                    continue
                way = path_through(everywhere, instance, name, state)
                missing = [test for test in (GROUND, NEUTRAL) if test not in state]
                if missing:
                    said.add(name)
                    where = f" at '{load}'" if load else ""
                    yield step.common.place, (f"'{step.act}' on the path {steps_on(way)}, with no decided "
                                              f"ohms {' and '.join(missing)}{where} before; measure the "
                                              "loads first"), way
                elif RESET in state:
                    said.add(name)
                    yield step.common.place, (f"a second reset on the path {steps_on(way)}; after the first, "
                                              "a trip is a stop"), way


def in_house(study: Study) -> Faults:
    """Resets that do not say that the loads are off."""
    for act in study.vocabulary.acts.values():
        if act.counts == RESET and not _LOADS_OFF.search(act.say):
            yield act.place, (f"'{act.name}' closes what had tripped and does not say that the loads are off "
                              "it; say so in its sentence, with everything unplugged or disconnected")


def _everywhere(study: Study, load: str | None) -> dict[Instance, Walked]:
    """The tests that were decided and the resets on every way; of one load only, where one is named."""
    vocabulary = study.vocabulary

    def cross(_tree: Tree, step: Step, edge: Edge, state: frozenset[str]) -> frozenset[str]:
        found = {test for one in edge.decides
                 if isinstance(one.what, Reading) and (load is None or load in one.what.at)
                 for test in _tests(vocabulary, one.what)}
        if isinstance(step, Do) and edge.sure and resets(vocabulary, step.act):
            found.add(RESET)
        return state | found

    return Search(study, cross).everywhere({instance: {frozenset()} for instance in study.instances})


def resets(vocabulary: Vocabulary, act: str | None) -> bool:
    """Whether an act closes what had tripped."""
    return act in vocabulary.acts and vocabulary.acts[act].counts == RESET


def _tests(vocabulary: Vocabulary, reading: Reading) -> list[str]:
    if reading.kind not in OHMS or len(reading.at) != 2:
        return []
    return [GROUND if any(is_ground(vocabulary, point) for point in reading.at) else NEUTRAL]
