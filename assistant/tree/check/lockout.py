"""A furnace that tried to light and did not locks itself out, and stays so until the call or the power is
taken away. A second trial before that proves nothing: nothing moves, and a good repair would be called bad.
"""

from __future__ import annotations

from assistant.tree.check.circuits import Instance
from assistant.tree.check.graph import Edge
from assistant.tree.check.rule import Faults, steps_on
from assistant.tree.check.search import Search, Walked, after_finding, path_through
from assistant.tree.check.study import Study
from assistant.tree.check.thermostat_off import turns_off
from assistant.tree.model import Do, Step, Tree, Watch

MEND = "Turn the thermostat or the power off between the failed trial and the next."

TRIAL = ("burner.lights", "flame.holds")


def in_tree(study: Study, tree: Tree) -> Faults:
    """Watched trials that may come after a failed one with the lockout not cleared."""
    everywhere = study.keep("lockout", lambda: _everywhere(study))
    for instance in study.instances_of(tree):
        walked = everywhere.get(instance)
        for name, failed in walked.ready() if walked else ():
            step = tree.steps[name]
            if failed and isinstance(step, Watch) and TRIAL[0] in step.events:
                path = path_through(everywhere, instance, name, failed)
                yield step.common.place, (f"'{name}' watches a start that may follow one in which the flame "
                                          f"failed, on the path {steps_on(path)} with the lockout not "
                                          "cleared; turn the thermostat or the power off before it"), path


def _everywhere(study: Study) -> dict[Instance, Walked]:
    acts = study.vocabulary.acts

    def done(act: str, failed: bool) -> bool:
        """Whether a trial failed and neither call nor power was taken away since."""
        known = acts.get(act)
        if known is None:
            return failed
        powered_down = known.sets or set(known.needs.values()) & {"off", "dead"}
        return failed and not (powered_down or turns_off(act))

    def cross(_tree: Tree, step: Step, edge: Edge, failed: bool) -> bool:
        if isinstance(step, Watch) and edge.words in {f"{event} missing" for event in TRIAL}:
            return True
        return done(step.act, failed) if isinstance(step, Do) and step.act and edge.sure else failed

    search = Search(study, cross)
    rested = {instance: {False} for instance in study.instances}
    return search.everywhere(rested, lambda finding, failed: after_finding(search, finding, failed, done))
