"""The same two points read differently on two meters. A floating wire shows nearly 24 V to a high-impedance
meter and nothing once it is loaded, so volts to the return are read low. Across a switch of the safety string
a low-impedance meter carries current past it, and the board may take the open switch for closed. The step
says which; and every other reading says what it is taken with, because a surface probe is no air probe and a
clamp no shunt.
"""

from __future__ import annotations

from assistant.tree.check.points import VOLTS, across
from assistant.tree.check.rule import Faults
from assistant.tree.check.study import Study
from assistant.tree.model import Tree, readings_of

MEND = ("Write meter: low impedance for volts to the return, meter: high impedance across a switch "
        "and on the flame rod; for every other quantity the instrument that it is taken with.")


def in_tree(study: Study, tree: Tree) -> Faults:
    """Readings that do not say with what, and voltages across a switch on the wrong meter."""
    for step in tree.steps.values():
        for reading in readings_of(step):
            meter = reading.meter or ""
            if reading.kind not in VOLTS:
                if not meter:
                    yield reading.place, (f"nothing says what this {reading.kind} is read with; write meter: "
                                          "and the instrument")
                continue
            if "low impedance" not in meter and "high impedance" not in meter:
                yield reading.place, ("a voltage says which meter it is read with; write meter: low "
                                      "impedance, or high impedance across a switch and on the flame rod")
            elif "low impedance" in meter and across(study.vocabulary, reading):
                yield reading.place, (f"a low-impedance meter across {' and '.join(reading.at)} carries "
                                      "current past it; write meter: high impedance")
