"""What a page says of the power is what it asks for. "Locked off and dead" over a step that asks for nothing
is read as done, and a hand goes in; "let it run" over one that asks for a circuit off has somebody walk down,
switch it off, and wait beside a furnace that stands still. And nobody is sent to switch one circuit on while
another is to be off, with nothing read on it.
"""

from __future__ import annotations

import re

from assistant.tree.check.points import circuits_at
from assistant.tree.check.rule import Faults
from assistant.tree.check.study import Study
from assistant.tree.model import Do, Look, Measure, Step, Tree, Watch, readings_of
from assistant.tree.power import fed_from, needs_of

MEND = "Write needs: with the power state that the page's own words say, or say what is meant otherwise."

_OFF = re.compile(r"\b(power off|locked off|(all|proved) dead|dead and (bled|empty|cold))\b|, dead\b|^dead\b",
                  re.IGNORECASE)
_ALL_OFF = re.compile(r"\ball dead\b", re.IGNORECASE)
_RUNS = re.compile(r"\b(running|burning|firing|(everything|fan|call) (still )?on(?! AUTO)"
                   r"|(fan|call|blower) called|(so that|while) the (blower|inducer|furnace) runs"
                   r"|let (it|everything|the furnace|blower and inducer|the blower) (run|burn|light)\b"
                   r"|leave [^.]*\b(running|on)|loads [^,.]*\bon)\b", re.IGNORECASE)


def in_tree(study: Study, tree: Tree) -> Faults:
    """Steps whose words about the power are not what they ask for."""
    for name, step in tree.steps.items():
        if not isinstance(step, (Do, Look, Measure, Watch)):
            continue
        for instance in study.instances_of(tree):
            needs = needs_of(step, instance.circuit)
            wrong = _against(needs, step) or _for_nothing(study, needs, step)
            if wrong:
                yield step.common.place, f"'{name}' {wrong}"
                break


def _against(needs: dict[str, str], step: Step) -> str | None:
    """How a step's needs go against its words."""
    states, text = set(needs.values()), step.ask
    off = _OFF.search(text)
    if off and not states & {"off", "dead"}:
        return (f"says '{off.group(0).strip(', ')}' and asks for no circuit off; write needs: with it off or "
                "dead")
    if _ALL_OFF.search(text) and "live" in states:
        return "says that all is dead and asks for a circuit live; write needs: with it dead"
    runs = None if off else _RUNS.search(text)
    if runs and states & {"off", "dead"}:
        return f"says '{runs.group(0)}' and asks for a circuit off; write needs: with it live"
    if runs and not states and isinstance(step, Do) and step.act is None:
        return f"says '{runs.group(0)}' and asks for no power; write needs: with the circuit live"
    return None


def _for_nothing(study: Study, needs: dict[str, str], step: Step) -> str | None:
    """A circuit that is to be live while another is to be off, with nothing read on it. Where one feeds the
    other it can't be at all, which `needs_met` says."""
    read = {circuit for reading in readings_of(step) for circuit in circuits_at(study.vocabulary, reading)}
    fed = {feeder for circuit in read for feeder in fed_from(study.vocabulary, circuit)}
    for circuit in (name for name, wanted in needs.items() if wanted == "live" and name not in fed):
        for other in (name for name, wanted in needs.items() if wanted in ("off", "dead")):
            lines = fed_from(study.vocabulary, circuit), fed_from(study.vocabulary, other)
            if circuit not in lines[1] and other not in lines[0]:
                return (f"asks for circuit '{circuit}' live and for '{other}' {needs[other]}, and reads "
                        f"nothing on '{circuit}'; leave that need out, or ask for it {needs[other]} too")
    return None
