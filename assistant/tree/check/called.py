"""A call, a cause, a proof, a procedure and a complaint's tree name other files. A name that leads nowhere,
or to a tree made for something else, would only come to light in front of the customer: a cause tree has no
answer to "is it proved?", and a complaint tree never comes back.
"""

from __future__ import annotations

from assistant.house.nearest import suggestion
from assistant.house.place import Place
from assistant.tree.check.rule import Faults
from assistant.tree.check.study import Study
from assistant.tree.model import Call, Finding, Tree

MEND = ("Write the name of a tree of the wanted kind, or write that tree. A procedure that takes a "
        "circuit is called with: one.")

RETURNING = ("procedure", "cause", "proof")


def in_tree(study: Study, tree: Tree) -> Faults:
    """Calls, causes and proofs that lead nowhere or to another kind of tree."""
    for step in tree.steps.values():
        place = step.common.place
        if isinstance(step, Call):
            yield from _named(study, step.tree, RETURNING, place)
            yield from _circuit(study, step)
        if isinstance(step, Finding):
            for cause in step.causes:
                yield from _named(study, cause, ("cause",), place)
            if step.proof is not None:
                yield from _named(study, step.proof, ("proof",), place)


def in_house(study: Study) -> Faults:
    """Procedures of circuits and trees of complaints that lead nowhere."""
    for circuit in study.vocabulary.circuits.values():
        for name in (circuit.make_dead, circuit.restore):
            if name is not None:
                yield from _named(study, name, ("procedure",), circuit.place)
    for complaint in study.vocabulary.complaints.values():
        if complaint.tree is not None:
            yield from _named(study, complaint.tree, ("complaint",), complaint.place)


def _named(study: Study, name: str, purposes: tuple[str, ...], place: Place) -> Faults:
    wanted = " or ".join(purposes)
    if name not in study.known:
        fitting = [tree.name for tree in study.trees.values() if tree.purpose in purposes]
        instead = suggestion(name, fitting) or "; write that tree, or name another"
        yield place, f"there is no {wanted} tree '{name}'{instead}"
    elif name in study.trees and study.trees[name].purpose not in purposes:
        yield place, f"'{name}' is a {study.trees[name].purpose} tree; here a {wanted} tree is needed"


def _circuit(study: Study, step: Call) -> Faults:
    called = study.trees.get(step.tree)
    if called is None:
        return
    place = step.common.place
    if called.takes and step.circuit is None:
        yield place, f"'{step.tree}' takes a circuit; write with: and the circuit's name"
    if not called.takes and step.circuit is not None:
        yield place, f"'{step.tree}' takes no circuit; leave out with: {step.circuit}"
