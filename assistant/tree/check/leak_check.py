"""Gas that was shut off, opened or interrupted comes back through joints that somebody has touched. Every one
is checked for leaks before a burner is lit again, on every path, and before the proof of the repair lights
it.
"""

from __future__ import annotations

import re

from assistant.house.model import Vocabulary
from assistant.tree.check.circuits import Instance
from assistant.tree.check.graph import Edge
from assistant.tree.check.rule import Faults, steps_on
from assistant.tree.check.search import Search, Walked, after_finding, path_through
from assistant.tree.check.study import Study
from assistant.tree.model import Do, Step, Tree, Watch

MEND = ("Put a do step with act: leak_check before the burner is lit, and let the undo: of every "
        "act at the gas end there.")

CHECK = "leak_check"
LIT = "burner.lights"
_GAS = re.compile(r"\bgas (cock|shut|pipe|supplier|trap)\b|\bmanifold\b|\bgas valve that\b|\bsediment trap\b",
                  re.IGNORECASE)


def in_tree(study: Study, tree: Tree) -> Faults:
    """Burners lit after the gas was touched, with no leak check between."""
    everywhere = study.keep("leak check", lambda: _everywhere(study))
    for instance in study.instances_of(tree):
        walked = everywhere.get(instance)
        for name, pending in walked.ready() if walked else ():
            step = tree.steps[name]
            if pending and isinstance(step, Watch) and LIT in step.events:
                path = path_through(everywhere, instance, name, pending)
                yield step.common.place, (f"'{name}' lights the burner on the path {steps_on(path)} after "
                                          f"'{pending}', and no {CHECK} was done; put a do step with act: "
                                          f"{CHECK} before it"), path


def in_house(study: Study) -> Faults:
    """Acts that open or shut off gas and whose undoing never comes to a leak check."""
    for act in study.vocabulary.acts.values():
        if act.name != CHECK and _GAS.search(act.say) and not ends_in_check(study.vocabulary, act.name):
            yield act.place, (f"'{act.name}' opens or shuts off gas, and undoing it never comes to {CHECK}; "
                              f"write undo: {CHECK}, or an act that ends there")


def _everywhere(study: Study) -> dict[Instance, Walked]:
    def done(act: str, pending: str) -> str:
        """The act that still wants its leak check; empty where there is none."""
        if act == CHECK:
            return ""
        return act if ends_in_check(study.vocabulary, act) else pending

    def cross(_tree: Tree, step: Step, edge: Edge, pending: str) -> str:
        return done(step.act, pending) if isinstance(step, Do) and step.act and edge.sure else pending

    search = Search(study, cross)
    clean = {instance: {""} for instance in study.instances}
    return search.everywhere(clean, lambda finding, pending: after_finding(search, finding, pending, done))


def ends_in_check(vocabulary: Vocabulary, act: str) -> bool:
    """Whether undoing an act, and undoing that, leads to a leak check: it opened or shut off gas."""
    seen: set[str] = set()
    name: str | None = act
    while name in vocabulary.acts and name not in seen:
        seen.add(name)
        name = vocabulary.acts[name].undo
        if name == CHECK:
            return True
    return False
