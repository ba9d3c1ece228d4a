"""A finding that says what failed also says what to do. For a condemned part that costs money that is an act
which fits this very part; a repair that fits another one belongs to another finding. What costs nothing is
set right in place.
"""

from __future__ import annotations

from assistant.tree.check.rule import Faults
from assistant.tree.check.study import Study
from assistant.tree.model import Finding, Tree


def in_tree(study: Study, tree: Tree) -> Faults:
    """Findings without a repair that fits what they condemn."""
    acts = study.vocabulary.acts
    for name, step in tree.steps.items():
        if not isinstance(step, Finding) or not step.fault:
            continue
        if not step.repair:
            yield step.common.place, (f"'{name}' says what failed and not what to do; write repair: with "
                                      "acts of house.yaml")
            continue
        fitted = [acts[act].fits for act in step.repair if act in acts and acts[act].fits]
        part = study.vocabulary.parts.get(step.condemns or "")
        if part is not None and part.costs and part.name not in fitted:
            fitting = [act.name for act in acts.values() if act.fits == part.name]
            instead = f"use {' or '.join(fitting)}"
            if not fitting:
                instead = f"give house.yaml an act with fits: {part.name}"
            yield step.common.place, (f"'{name}' condemns '{part.name}', and no act of its repair fits "
                                      f"it; {instead}")
