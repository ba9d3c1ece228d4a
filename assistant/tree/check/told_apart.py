"""A reading that goes the same way whether it is right or wrong decides nothing, and everybody believes that
it did: a trail says "too much" and goes on as if it were enough. Where that is meant - a fault to write down
while looking for another - the band says so in its words. And what is not right does not by itself prove a
repair or rule a cause out.
"""

from __future__ import annotations

import re

from assistant.tree.check.rule import Faults
from assistant.tree.check.study import Study
from assistant.tree.model import Band, Compute, Return, Tree, readings_of

MEND = ("Lead the band that is not normal another way, or say in its words that it is written down or told "
        "in writing.")

_NOTED = re.compile(r"\b(write it down|(told )?in writing)\b", re.IGNORECASE)
_GOOD = ("proved", "ruled_out")


def in_tree(_study: Study, tree: Tree) -> Faults:
    """Bands that are not normal and go on as the normal one does, or end as if all were right."""
    for name, step in tree.steps.items():
        whats = [one for _, one in step.page] if isinstance(step, Compute) else readings_of(step)
        for what in whats:
            normal = [band for band in what.bands if band.normal and band.then is not None]
            for band in what.bands if any(band.normal for band in what.bands) else ():
                if band.normal or band.then is None or _NOTED.search(band.label):
                    continue
                same = next((one for one in normal if one.then and one.then.to == band.then.to), None)
                if same is not None:
                    yield band.place, (f"'{name}' goes to '{band.then.to}' when it is '{band.label}' as when "
                                       f"it is '{same.label}'; lead one of them elsewhere, or say that it is "
                                       "written down")
                elif _ends_well(tree, band):
                    yield band.place, (f"'{name}' ends as '{band.then.to}' when it is '{band.label}', which "
                                       "is not what is normal; lead it elsewhere, or mark it normal: yes")


def _ends_well(tree: Tree, band: Band) -> bool:
    """Whether a band leads straight to a repair proved or a cause ruled out."""
    end = tree.steps.get(band.then.to) if band.then is not None else None
    return isinstance(end, Return) and end.outcome in _GOOD
