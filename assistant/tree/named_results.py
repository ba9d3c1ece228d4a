"""A compute step of a function that gives several results: each that is named is judged like a reading."""

from __future__ import annotations

from typing import TYPE_CHECKING

from assistant.house.fields import Form
from assistant.house.reader import Fields, Text
from assistant.quantity.kind import KINDS
from assistant.tree.desk import TreeDesk
from assistant.tree.model import Common, Compute, Reading
from assistant.tree.readings import bands_of_form, every_band_leads

if TYPE_CHECKING:
    from assistant.trade.entry import Entry

SURVEY = "survey"
"""What `from` is called where a whole survey goes in."""


def named_results(
    form: Form, common: Common, function: Text | None, entry: Entry | None, desk: TreeDesk
) -> Compute | None:
    """`results:` in order: the first whose band names a way decides, otherwise the step's own `then`."""
    from assistant.trade.registry import REGISTRY

    if function and entry is None:
        desk.problems.unknown(function, "computation", REGISTRY)
    elif entry is not None and not entry.results:
        desk.problems.add(
            function.place, "name", f"'{entry.name}' gives one result; write name: and bands: for it"
        )
        entry = None
    given = form.form("from", need=True)
    arguments = _from(given, desk) if given else {}
    source = desk.known(form.text("source"), "sources", "source")
    fields = form.fields("results", need=True)
    results = _results(fields, entry, desk) if fields and entry else []
    then, close, cannot = (desk.way(form.text(field)) for field in ("then", "close", "cannot"))
    if not form.has("then") and not any(map(every_band_leads, fields.entries.values() if fields else ())):
        desk.problems.add(
            form.place(),
            "missing",
            f"{form.what} needs 'then': where to go when no band of its results says so",
        )
    if entry is None or not results:
        return None
    return Compute(
        common, entry.name, arguments, "", "", "", (), then, close, cannot, source, results=tuple(results)
    )


def _from(given: Form, desk: TreeDesk) -> dict[str, str]:
    text = given.text(SURVEY, need=True)
    if text and text.value not in desk.values:
        desk.problems.unknown(text, "survey of this tree", desk.values)
    given.what = "'from' of a survey"
    given.close()
    return {SURVEY: text.value} if text else {}


def _results(fields: Fields, entry: Entry, desk: TreeDesk) -> list[Reading]:
    found = []
    judged = {key: result for key, result in entry.results.items() if result.kind in KINDS}
    for key, node in fields.entries.items():
        place = fields.keys[key]
        if key not in judged:
            desk.problems.unknown(Text(key, place, False), f"result of {entry.name}", judged)
            continue
        if not isinstance(node, Fields):
            desk.problems.add(node.place, "type", f"result '{key[:40]}' needs its fields: bands, source")
            continue
        one = Form(Fields(node.entries, node.keys, place), f"result '{key}'", desk.problems)
        result = judged[key]
        bands = bands_of_form(one, result.kind, desk)
        source = desk.known(one.text("source"), "sources", "source")
        if not bands:
            desk.problems.add(place, "missing", f"result '{key}' needs 'bands'")
        one.close()
        words = result.words[:1].upper() + result.words[1:]
        found.append(
            Reading(key, words, result.kind, result.unit, (), None, None, None, bands, False, source, place)
        )
    if not fields.entries:
        desk.problems.add(fields.place, "missing", "'results' is empty")
    return found
