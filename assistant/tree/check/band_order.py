"""A reading belongs to the first band it is under, so a band whose limit does not rise above the one before
it can never be entered on some plate. That the limits rise is proved for every rating plate there can be, not
tried on one.
"""

from __future__ import annotations

from itertools import pairwise

from assistant.house.place import Place
from assistant.tree.check.box import Bound, Doubt, not_under
from assistant.tree.check.rule import Faults
from assistant.tree.check.spans import Judged, judged_in, words_at
from assistant.tree.check.study import Study
from assistant.tree.model import Tree

MEND = ("Put the bands in rising order, and write limits that rise on every plate: in house.yaml, "
        "over: and by: say that one plate value lies above another.")


def in_tree(study: Study, tree: Tree) -> Faults:
    """Neighbouring bands whose limits do not rise on every plate."""
    for judged in judged_in(study, tree):
        rising = [(band.label, band.under) for band in judged.bands if band.under is not None]
        for (low_label, low), (label, high) in pairwise(rising):
            doubt = not_under(judged.bound(low), judged.bound(high), judged.spans, study.vocabulary.plate)
            yield from _said(study, judged, doubt, high.place, f"the limit of '{label}' is not above that of "
                             f"'{low_label}'", judged.bound(low), judged.bound(high))


def _said(study: Study, judged: Judged, doubt: Doubt | None, place: Place, what: str, low: Bound,
          high: Bound) -> Faults:
    if doubt is None:
        return
    if not doubt.settled:
        yield place, (f"it could not be shown that bands are in order: {what} as far as can be told; make "
                      "the limits simpler")
        return
    where = words_at(study, judged, doubt, low, high)
    yield place, f"{what}{where}; bands stand in rising order for every plate"
