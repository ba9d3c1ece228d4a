"""A finding that says what failed also says what to do, and so does a cause that was found. A condemned part
that costs money gets an act which fits this very part; a part that nobody condemned is not fitted. What costs
nothing is set right in place; where acts renew it all the same, what they renew is what the finding names.
Otherwise the report says one thing and the invoice another.
"""

from __future__ import annotations

from assistant.house.model import Vocabulary
from assistant.tree.check.rule import Faults
from assistant.tree.check.study import Study
from assistant.tree.model import Finding, Return, Tree

MEND = "Write repair: with acts of house.yaml, one of which fits the condemned part."


def in_tree(study: Study, tree: Tree) -> Faults:
    """Findings and causes without a repair, or with one that does not fit what is condemned."""
    for name, step in tree.steps.items():
        found = isinstance(step, Return) and tree.purpose == "cause" and step.outcome == "found"
        if found and not step.repair:
            yield step.common.place, (f"'{name}' has found a cause and does not say what removes it; write "
                                      "repair: with acts of house.yaml")
        if not isinstance(step, Finding) or not step.fault:
            continue
        if step.repair:
            yield from _fits(study.vocabulary, name, step)
        else:
            yield step.common.place, (f"'{name}' says what failed and not what to do; write repair: with "
                                      "acts of house.yaml")


def _fits(vocabulary: Vocabulary, name: str, step: Finding) -> Faults:
    acts = vocabulary.acts
    fitted = {acts[act].fits: act for act in step.repair if act in acts and acts[act].fits}
    part = vocabulary.parts.get(step.condemns or "")
    if part is not None and part.costs and part.name not in fitted:
        fitting = [act.name for act in acts.values() if act.fits == part.name]
        instead = f"use {' or '.join(fitting)}"
        if not fitting:
            instead = f"give house.yaml an act with fits: {part.name}"
        yield step.common.place, (f"'{name}' condemns '{part.name}', and no act of its repair fits it; "
                                  f"{instead}")
    if fitted and (part is None or not part.costs) and step.condemns not in fitted:
        renewed = " and ".join(str(name) for name in fitted)
        yield step.common.place, (f"'{name}' has {renewed} renewed and names {step.condemns or 'no part'} as "
                                  f"at fault; write condemns: {next(iter(fitted))}, or another act")
        return
    for other, act in fitted.items():
        known = vocabulary.parts.get(other or "")
        if known is not None and known.costs and other != step.condemns:
            yield step.common.place, (f"'{name}' has '{act}' done, and nothing condemns the {known.title}; "
                                      f"write condemns: {other}, or leave the act out")
