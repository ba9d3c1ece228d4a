"""One reading of 0 V is not dead. With an open neutral, hot to neutral reads nothing while hot stands at 120
V to ground; a meter with a blown fuse reads nothing anywhere. Dead is every pair of the circuit under 1 V on
a low-impedance meter, between two readings of something known to be live, the first of them hot to the very
ground that is used, so that the ground is shown to be one.
"""

from __future__ import annotations

from assistant.house.model import Circuit
from assistant.tree.check.points import VOLTS, is_ground
from assistant.tree.check.rule import Faults
from assistant.tree.check.spans import Judged, judged_in
from assistant.tree.check.study import Study
from assistant.tree.model import Measure, Reading, Tree
from assistant.tree.power import proves_dead

MEND = ("Read known-live first and last, and between them every pair of the circuit, low impedance, "
        "under 1 V; the first known-live reading to the ground that is used.")

MOST_VOLTS = 1.0


def in_tree(study: Study, tree: Tree) -> Faults:
    """Dead-proofs that would pass a circuit that is not dead."""
    judged = {one.place: one for one in judged_in(study, tree)}
    for step in tree.steps.values():
        if not isinstance(step, Measure) or not step.verifies:
            continue
        yield from _between(study, step)
        for reading in step.readings:
            if reading.kind in VOLTS:
                yield from (_known(reading) if reading.known_live else _pair(judged[reading.place], reading))
        for instance in study.instances_of(tree):
            for name in proves_dead(step, instance.circuit):
                yield from _covers(step, study.vocabulary.circuits[name])


def _between(study: Study, step: Measure) -> Faults:
    first, last = step.readings[0], step.readings[-1]
    place = step.common.place
    if not first.known_live or not last.known_live or len(step.readings) < 3:
        yield place, ("the pairs stand between two readings of something known to be live; make the first "
                      "and the last reading known_live: yes")
        return
    used = {point for reading in step.readings[1:] for point in reading.at}
    grounds = {point for point in used if is_ground(study.vocabulary, point)}
    if grounds and not grounds & set(first.at):
        yield first.place, (f"the pairs are read to {min(grounds)}; take the first known-live reading to it "
                            "as well, so that it is shown to be a ground")


def _known(reading: Reading) -> Faults:
    if len(reading.bands) < 2 or reading.bands[0].then is None or reading.bands[-1].then is not None:
        yield reading.place, ("a known-live reading that reads nothing must end the proof; give its lowest "
                              "band a way to another meter or a stop, and its highest none")


def _pair(judged: Judged, reading: Reading) -> Faults:
    if "low" not in (reading.meter or ""):
        yield reading.place, ("a pair is read on a low-impedance meter, so that it is not a ghost; write "
                              "meter: low impedance")
    passing = [band for band in reading.bands if band.then is None]
    if len(reading.bands) < 2 or passing != [reading.bands[0]]:
        yield reading.place, ("only the lowest band of a pair goes on with the proof; give every other "
                              "band a way out, and the lowest none")
        return
    limit = reading.bands[0].under
    assert limit is not None
    if judged.bound(limit).span(judged.spans).hi > MOST_VOLTS:
        yield limit.place, ("dead is under 1 V; anything that stays on a low-impedance meter is not dead "
                            f"({limit.text})")


def _covers(step: Measure, circuit: Circuit) -> Faults:
    taken = [set(reading.at) for reading in step.readings if not reading.known_live and reading.kind in VOLTS]
    missing = [pair for pair in circuit.pairs if set(pair) not in taken]
    if missing:
        pairs = ", ".join(" to ".join(pair) for pair in missing)
        yield step.common.place, (f"circuit '{circuit.name}' is dead only when all its pairs are; read "
                                  f"{pairs} as well")
    if not circuit.pairs:
        yield step.common.place, (f"circuit '{circuit.name}' has no pairs in house.yaml; say there what "
                                  "proves it dead")
