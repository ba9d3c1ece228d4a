"""Whether a step asks for the power state that something on it can only be seen or read in."""

from __future__ import annotations

from assistant.tree.check.study import Study
from assistant.tree.model import Step, Tree
from assistant.tree.power import fed_from, needs_of


def lacks(study: Study, tree: Tree, step: Step, circuit: str, wanted: str) -> bool:
    """Whether a step may be taken with a circuit in another state than the wanted one. Dead does where off is
    wanted; a circuit that is live has what feeds it live."""
    return any(not _met(study, needs_of(step, one.circuit), circuit, wanted)
               for one in study.instances_of(tree))


def _met(study: Study, needs: dict[str, str], circuit: str, wanted: str) -> bool:
    if wanted == "live":
        return any(state == "live" and circuit in fed_from(study.vocabulary, name)
                   for name, state in needs.items())
    return needs.get(circuit) in (("off", "dead") if wanted == "off" else (wanted,))
