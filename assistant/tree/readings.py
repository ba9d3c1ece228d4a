"""A reading with its bands and safe limits, as a tree file writes them."""

from __future__ import annotations

from assistant.house.fields import Form
from assistant.house.numbers import pair
from assistant.house.quantity_fields import quantity, unit_for
from assistant.house.reader import Fields, Items, Node
from assistant.tree.desk import TreeDesk
from assistant.tree.model import Band, Reading, Safe


def reading(form: Form, name: str | None, ask: str | None, step: Form, desk: TreeDesk) -> Reading | None:
    """One reading from its fields; `step` is the form of its step, whose points and source it inherits."""
    if form is not step:
        ask = form.words("ask", need=True)
    kind = quantity(form, desk)
    unit = unit_for(form, kind, desk)
    at = desk.all_known(form.texts("at") or step.texts("at"), "points", "point")
    meter = form.words("meter")
    plausible = pair(form.get("plausible"), "'plausible'", desk.problems)
    safe = _safe(form, kind, desk)
    bands = bands_of_form(form, kind, desk)
    known_live = form.yes("known_live")
    source = desk.known(form.text("source") or step.text("source"), "sources", "source")
    if ask is None or kind is None or unit is None:
        return None
    span = (float(plausible[0]), float(plausible[1])) if plausible else None
    return Reading(name, ask, kind, unit, at, meter, span, safe, bands, known_live, source, form.place())


def readings(form: Form, desk: TreeDesk, need: bool) -> tuple[Reading, ...]:
    """`readings:` of a measure group or a watch, in order."""
    fields = form.fields("readings", need=need)
    if fields is None:
        return ()
    found = []
    for name, node in fields.entries.items():
        what = f"reading '{name[:40]}'"
        if isinstance(node, Fields):
            one = Form(Fields(node.entries, node.keys, fields.keys[name]), what, desk.problems)
            found.append(reading(one, name, None, form, desk))
            one.close()
        else:
            desk.problems.add(node.place, "type", f"{what} needs its fields: ask, quantity, unit, at")
    if not fields.entries:
        desk.problems.add(form.place("readings"), "missing", "'readings' is empty")
    return tuple(one for one in found if one)


def _safe(form: Form, kind: str | None, desk: TreeDesk) -> Safe | None:
    inner = form.form("safe")
    if inner is None:
        return None
    over, under = (desk.limit(inner.text(name), kind) for name in ("over", "under"))
    stop = desk.known(inner.text("stop"), "stops", "stop page")
    source = desk.known(inner.text("source"), "sources", "source")
    if not inner.has("over") and not inner.has("under"):
        desk.problems.add(
            form.place("safe"),
            "missing",
            "'safe' needs 'over', 'under' or both: safe readings are over the one and under the other",
        )
    inner.close()
    return Safe(over, under, stop, source, form.place("safe"))


def bands_of_form(form: Form, kind: str | None, desk: TreeDesk) -> tuple[Band, ...]:
    """`bands:` of a reading or compute, in order; only the last has no `under`."""
    node = form.get("bands")
    if node is None:
        return ()
    if not isinstance(node, Items) or not node.items:
        desk.problems.add(
            node.place,
            "type",
            "'bands' is a list such as [{under: 3, is: low, then: step}, {is: high, then: step}]",
        )
        return ()
    bands = []
    for index, item in enumerate(node.items):
        if not isinstance(item, Fields):
            desk.problems.add(item.place, "type", "a band is fields such as {under: 3, is: low, then: step}")
            continue
        bands.append(_band(Form(item, "a band", desk.problems), kind, index == len(node.items) - 1, desk))
    labels: set[str] = set()
    for band in bands:
        if band.label and band.label in labels:
            desk.problems.add(band.place, "band", f"two bands are '{band.label}'; give each its own words")
        labels.add(band.label)
    return tuple(bands)


def _band(form: Form, kind: str | None, last: bool, desk: TreeDesk) -> Band:
    under = desk.limit(form.text("under"), kind)
    if last and form.has("under"):
        desk.problems.add(
            form.place("under"), "band", "the last band has no 'under': it takes everything that is left"
        )
    if not last and not form.has("under"):
        desk.problems.add(
            form.place(), "band", "a band before the last needs 'under': the value that it stays below"
        )
    label = form.words("is", need=True)
    then = desk.way(form.text("then"))
    normal = form.yes("normal")
    source = desk.known(form.text("source"), "sources", "source")
    form.close()
    return Band(under, label or "", then, normal, source, form.place())


def every_band_leads(fields: Node) -> bool:
    """Whether a reading is written with bands that all have a way on, good or bad."""
    bands = fields.entries.get("bands") if isinstance(fields, Fields) else None
    items = bands.items if isinstance(bands, Items) else ()
    return bool(items) and all(isinstance(item, Fields) and "then" in item.entries for item in items)


def each_band_must_lead(form: Form, desk: TreeDesk) -> None:
    """For one reading or compute whose step has no `then`: report the bands that lead nowhere."""
    if form.has("then") or every_band_leads(form.node):
        return
    bands = form.get("bands")
    items = bands.items if isinstance(bands, Items) else ()
    for band in items:
        if isinstance(band, Fields) and "then" not in band.entries:
            desk.problems.add(band.place, "missing", "this band needs 'then', or the step does")
    if bands is None:
        desk.problems.add(
            form.place(), "missing", f"{form.what} needs 'bands' that say where to go, or 'then'"
        )
