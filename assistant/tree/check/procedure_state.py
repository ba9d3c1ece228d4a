"""The walker trusts a circuit's procedures: after make_dead it lets hands and ohms on the circuit, after
restore it believes a voltage. So the one must leave the circuit proved dead on every path that ends in done,
and the other live; and neither may come back with anything but done.
"""

from __future__ import annotations

from assistant.tree.check.circuits import Instance
from assistant.tree.check.returns import returns_of
from assistant.tree.check.rule import Faults
from assistant.tree.check.study import Study
from assistant.tree.model import Return

MEND = ("End a make_dead in done only after the proof of all pairs, a restore only after the act "
        "that makes the circuit live; everything else is a stop.")


def in_house(study: Study) -> Faults:
    """Procedures that can leave their circuit in another state than they are for."""
    for circuit in study.vocabulary.circuits.values():
        for field, name, wanted in (("make_dead", circuit.make_dead, "dead"), (
            "restore", circuit.restore, "live")):
            if name not in study.trees:
                continue
            tree = study.trees[name]
            if tree.purpose != "procedure":
                continue
            for step in tree.steps.values():
                if isinstance(step, Return) and step.outcome != "done":
                    yield step.common.place, (f"'{name}' is the {field} of circuit '{circuit.name}' and "
                                              "comes back with 'done' only; where that can't be reached, "
                                              "stop")
            if "done" not in returns_of(tree):
                continue
            yield from _leaves(study, circuit.name, study.circuits.bound(name, circuit.name), field, wanted)


def _leaves(study: Study, circuit: str, instance: Instance, field: str, wanted: str) -> Faults:
    trace = study.trace(instance)
    done = trace.exits.get("done", {}).get(circuit, frozenset())
    states = sorted({chain[0] for chain in done} - {wanted})
    if states:
        returns = (step for step in study.trees[instance.tree].steps.values() if isinstance(step, Return))
        end = next(step for step in returns if step.outcome == "done")
        after = "proof on all its pairs" if wanted == "dead" else "act that switches it on"
        after += _alone(study, circuit)
        yield end.common.place, (f"'{instance.tree}' is the {field} of circuit '{circuit}' and must leave "
                                 f"it {wanted}, but here it can be {' or '.join(states)}; end in done only "
                                 f"after the {after}")


def _alone(study: Study, circuit: str) -> str:
    """A hint at an act that takes the circuit's power alone, with its feeder live, where the house lets
    it."""
    feeder = study.vocabulary.circuits[circuit].fed_by
    acts = [act.name for act in study.vocabulary.acts.values()
            if feeder and act.sets.get(circuit) == "off" and feeder not in {**act.sets, **act.needs}]
    if not acts:
        return ""
    return (f". If '{acts[0]}' is only ever done with '{feeder}' off, say so in house.yaml: needs: "
            f"{{{feeder}: off}}")
