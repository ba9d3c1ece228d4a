"""Three limits are three things: `plausible` catches a slip of the key, `safe` stops the work, bands steer.
They nest: every band can be entered with a plausible value, and every band's limit is safe to read at. A
plausible range that is too narrow asks "a slip?" about every real fault; one that was left out lets 1184 V
pass for 118.4. How high a fault can bring a spot (240 V where a neutral is lost, a flooded pan) the house
says.
"""

from __future__ import annotations

from assistant.house.place import Place
from assistant.quantity.kind import show, to_si
from assistant.tree.check.box import Bound, not_under
from assistant.tree.check.rule import Faults
from assistant.tree.check.spans import Judged, judged_in, words_at
from assistant.tree.check.study import Study
from assistant.tree.model import Compute, Tree

MEND = ("Give plausible: the lowest and highest value that is not a slip of the key, and keep safe "
        "limits inside it and bands inside those.")


def in_tree(study: Study, tree: Tree) -> Faults:
    """Readings without a plausible range, and limits that do not nest inside it."""
    for judged in judged_in(study, tree):
        if isinstance(judged.step, Compute):
            continue
        if judged.plausible is None:
            yield judged.place, (f"'{judged.what}' has no plausible: [lowest, highest]; give the values in "
                                 f"{judged.unit} beyond which it must be a slip of the key")
        else:
            yield from _inside(study, judged, judged.plausible)
            yield from _reaches(study, judged, judged.plausible)
        yield from _safe(study, judged)


def _inside(study: Study, judged: Judged, plausible: tuple[float, float]) -> Faults:
    low, high = (Bound(None, to_si(end, judged.unit), judged.unit) for end in plausible)
    for limit in judged.limits:
        yield from _nested(study, judged, low, judged.bound(limit), limit.place, "this limit is not above "
                                                                                 "the lowest plausible "
                                                                                 "value")
        yield from _nested(study, judged, judged.bound(limit), high, limit.place,
                           "this limit is not below the highest plausible value")


def _reaches(study: Study, judged: Judged, plausible: tuple[float, float]) -> Faults:
    """Ranges that end below what a fault can bring about at every one of the reading's spots."""
    tops = []
    for point in filter(None, (study.vocabulary.points.get(name) for name in judged.at)):
        circuit = study.vocabulary.circuits.get(point.circuit or "")
        around = point.reads.get(judged.kind)
        if around is not None and around.up_to is not None:
            tops.append(around.up_to)
        elif circuit is not None:
            tops.append(circuit.up_to.get(judged.kind))
    known = [top for top in tops if top is not None]
    if known and to_si(plausible[1], judged.unit) < min(known) * (1 - 1e-9):
        yield judged.place, (f"'{judged.what}' is taken for a slip of the key above "
                             f"{show(to_si(plausible[1], judged.unit), judged.unit)}, and a fault can bring "
                             f"{show(min(known), judged.unit)} about there; write a wider plausible:")


def _safe(study: Study, judged: Judged) -> Faults:
    safe = judged.safe
    if safe is None:
        return
    edges = [band.under for band in judged.bands if band.under is not None]
    if safe.over is not None and edges:
        yield from _nested(study, judged, judged.bound(safe.over), judged.bound(edges[0]), edges[0].place,
                           "this limit is not above the value that is unsafe to go under")
    if safe.under is not None and edges:
        yield from _nested(study, judged, judged.bound(edges[-1]), judged.bound(safe.under), edges[-1].place,
                           "this limit is not below the value that is unsafe to go over")
    if safe.over is not None and safe.under is not None:
        yield from _nested(study, judged, judged.bound(safe.over), judged.bound(safe.under), safe.place,
                           "the low safe limit is not below the high one")


def _nested(study: Study, judged: Judged, low: Bound, high: Bound, place: Place, what: str) -> Faults:
    doubt = not_under(low, high, judged.spans, study.vocabulary.plate)
    if doubt is None:
        return
    if not doubt.settled:
        yield place, (f"it could not be shown that this limit is where it must be: {what}, as far as can be "
                      "told")
        return
    yield place, f"{what}{words_at(study, judged, doubt, low, high)}; {_instead(judged)}"


def _instead(judged: Judged) -> str:
    if judged.plausible is None:
        return "bands lie inside the safe limits"
    low, high = (show(to_si(end, judged.unit), judged.unit) for end in judged.plausible)
    return f"bands lie inside the safe limits, and those inside plausible ({low} to {high})"
