"""A circuit that was proved dead counts as dead until something makes it live. If no act does, neither of its
own nor of what feeds it, the proof would be believed for the rest of the visit, with the power on.
"""

from __future__ import annotations

from assistant.tree.check.rule import Faults
from assistant.tree.check.study import Study
from assistant.tree.power import act_on

MEND = "Say what the circuit is fed_by, or give an act that sets it live."


def in_house(study: Study) -> Faults:
    """Circuits that no act makes live."""
    vocabulary = study.vocabulary
    for circuit in vocabulary.circuits.values():
        if not any(act_on(vocabulary, act, circuit.name) == "live" for act in vocabulary.acts):
            yield circuit.place, (f"no act makes circuit '{circuit.name}' live again, so once proved dead "
                                  "it would stay dead; say what it is fed_by, or give an act that switches "
                                  "it on")
