"""The verbs that ask something of the technician: look, watch, measure, compute, do."""

from __future__ import annotations

from assistant.house.fields import Form, one_text
from assistant.house.numbers import exact_number, seconds
from assistant.house.quantity_fields import unit_for
from assistant.house.reader import Text
from assistant.quantity.units import UNITS
from assistant.tree.desk import TreeDesk
from assistant.tree.limit_units import Sort, argument_fits, result_kind, sort_of_kind, sort_of_unit
from assistant.tree.limits import BadLimit, parse_quantity
from assistant.tree.model import Common, Compute, Do, Look, Measure, Reading, Watch, Way
from assistant.tree.readings import bands_of_form, reading, readings

MOST_WATCHED_READINGS = 4


def look(form: Form, common: Common, desk: TreeDesk) -> Look | None:
    ask = form.words("look", need=True)
    thing = desk.known(form.text("sees", need=True), "seen", "thing seen")
    choices = ways(form, "choices", desk)
    cannot = desk.way(form.text("cannot"))
    if thing:
        values = desk.vocabulary.seen[thing].values
        fields = form.fields("choices")
        for value, place in fields.keys.items() if fields else ():
            if value not in values:
                desk.problems.unknown(Text(value, place, False), f"value of '{thing}'", dict.fromkeys(values), "choice")
    return Look(common, ask, thing, choices, cannot) if ask and thing else None


def watch(form: Form, common: Common, desk: TreeDesk) -> Watch | None:
    ask = form.words("watch", need=True)
    within = seconds(form.text("within", need=True), "'within'", desk.problems)
    events = form.texts("events", need=True)
    named = desk.all_known(events, "happens", "event")
    if form.has("events") and not events:
        desk.problems.add(form.place("events"), "missing", "'events' is empty; name what should happen, in order")
    missing = ways(form, "missing", desk)
    wanted = dict.fromkeys(text.value for text in events)
    fields = form.fields("missing")
    for event, place in fields.keys.items() if fields else ():
        if event not in wanted:
            desk.problems.unknown(Text(event, place, False), "event of this step", wanted, "choice")
    for event in wanted:
        if fields is not None and event not in fields.entries:
            desk.problems.add(form.place("missing"), "missing", f"'missing' needs a way for '{event}': where to go when "
                                                                "it does not happen")
    taken = readings(form, desk, need=False)
    if len(taken) > MOST_WATCHED_READINGS:
        desk.problems.add(form.place("readings"), "value", f"{len(taken)} readings are too many for one cycle; at most "
                                                           f"{MOST_WATCHED_READINGS}")
    form.get("source")
    then, close, cannot = (desk.way(form.text(name, need=name == "then")) for name in ("then", "close", "cannot"))
    if ask is None or within is None or then is None:
        return None
    return Watch(common, ask, within, named, missing, taken, then, close, cannot)


def measure(form: Form, common: Common, desk: TreeDesk) -> Measure | None:
    ask = form.words("measure", need=True)
    group = form.has("readings")
    if group:
        taken: tuple[Reading, ...] = readings(form, desk, need=True)
        form.get("source")
    else:
        name = form.words("name")
        one = reading(form, name, ask, form, desk)
        taken = (one,) if one else ()
    then, close, cannot = (desk.way(form.text(name)) for name in ("then", "close", "cannot"))
    verifies = tuple(circuit for circuit in map(desk.circuit, form.texts("verifies")) if circuit)
    if verifies and not group:
        desk.problems.add(form.place("verifies"), "field", "'verifies' stands in a measure with 'readings': a circuit is "
                                                           "proved dead by all its pairs between two known-live checks")
    if not form.has("then") and taken and not any(_decides(one) for one in taken):
        _then_is_missing(form, taken, group, desk)
    return Measure(common, ask or "", taken, group, then, close, cannot, verifies) if taken else None


def _decides(one: Reading) -> bool:
    return bool(one.bands) and all(band.then for band in one.bands)


def _then_is_missing(form: Form, taken: tuple[Reading, ...], group: bool, desk: TreeDesk) -> None:
    if group:
        desk.problems.add(form.place(), "missing", f"{form.what} needs 'then': where to go when no band of its readings "
                                                   "says so")
        return
    without = [band for band in taken[0].bands if band.then is None]
    for band in without:
        desk.problems.add(band.place, "missing", f"band '{band.label}' needs 'then', or the step does")
    if not taken[0].bands:
        desk.problems.add(form.place(), "missing", f"{form.what} needs 'bands' that say where to go, or 'then'")


def do(form: Form, common: Common, desk: TreeDesk) -> Do | None:
    ask = form.words("do", need=True)
    act = desk.known(form.text("act"), "acts", "act")
    wait = seconds(form.text("wait"), "'wait'", desk.problems)
    then = desk.way(form.text("then", need=True))
    return Do(common, ask, act, wait, then) if ask and then else None


def ways(form: Form, name: str, desk: TreeDesk) -> dict[str, Way]:
    """Answers with their ways on, such as {on: volts, off: switch}."""
    fields = form.fields(name, need=True)
    if fields is None:
        return {}
    if not fields.entries:
        desk.problems.add(form.place(name), "missing", f"'{name}' is empty; write answer: step")
    found = {}
    for answer, node in fields.entries.items():
        way = desk.way(one_text(node, f"the way of '{answer[:40]}'", desk.problems))
        if way:
            found[answer] = way
    return found


def compute(form: Form, common: Common, desk: TreeDesk) -> Compute | None:
    from assistant.trade.registry import REGISTRY

    function = form.text("compute", need=True)
    entry = REGISTRY.get(function.value) if function else None
    if function and entry is None:
        desk.problems.unknown(function, "computation", REGISTRY)
    given = form.form("from", need=True)
    arguments = _arguments(given, entry, desk) if given else {}
    name = form.text("name", need=True)
    kind = desk.values.get(name.value) if name else None
    unit = None
    if entry is not None and form.has("from"):
        if entry.results or result_kind(entry.name, "count") is None:
            desk.problems.add(function.place, "name", f"'{entry.name}' gives no single reading; another computation must "
                                                      "be found")
        elif name is not None and name.value in desk.values and kind is None and not desk.problems.found:
            desk.problems.add(function.place, "unit", f"what '{entry.name}' gives here can't be told; give it a reading of "
                                                      "this tree or a plate value")
        elif kind is not None:
            unit = unit_for(form, kind, desk) if form.has("unit") or not entry.result.unit else entry.result.unit
    form.get("unit")
    bands = bands_of_form(form, kind, desk)
    then, close, cannot = (desk.way(form.text(field)) for field in ("then", "close", "cannot"))
    source = desk.known(form.text("source"), "sources", "source")
    if not form.has("then"):
        for band in bands:
            if band.then is None:
                desk.problems.add(band.place, "missing", f"band '{band.label}' needs 'then', or the step does")
        if not bands:
            desk.problems.add(form.place(), "missing", f"{form.what} needs 'bands' that say where to go, or 'then'")
    if entry is None or name is None or kind is None or unit is None:
        return None
    return Compute(common, entry.name, arguments, name.value, kind, unit, bands, then, close, cannot, source)


def _arguments(form: Form, entry, desk: TreeDesk) -> dict[str, str]:
    """`from:` of a compute: each argument a name of this tree, a plate value or a number with its unit."""
    from assistant.trade.entry import ANY

    if entry is None:
        return {name: node.value for name, node in form.node.entries.items() if isinstance(node, Text)}
    found: dict[str, str] = {}
    shared: Sort | None = None
    for argument in entry.arguments:
        text = form.text(argument.name, need=argument.default is None)
        if text is None:
            continue
        found[argument.name] = text.value
        if argument.many or argument.choices:
            desk.problems.add(text.place, "type", f"{entry.name} takes a list or a word for '{argument.name}'; a compute "
                                                  "step can't give one")
            continue
        sort = _sort_of_argument(text, desk)
        if sort is None:
            continue
        shared = sort if shared is None and argument.kind == ANY else shared
        wanted = shared if argument.kind == ANY else sort_of_kind(argument.kind)
        try:
            argument_fits(entry.name, argument.name, wanted, sort, text.place)
        except BadLimit as bad:
            desk.problems.take(bad.problem)
    form.what = f"'from' of {entry.name}"
    form.close()
    return found


def _sort_of_argument(text: Text, desk: TreeDesk) -> Sort | None:
    if text.value in desk.kinds:
        return sort_of_kind(desk.kinds[text.value])
    if text.value in desk.values:
        return None
    parsed = parse_quantity(text.value)
    if parsed is not None:
        return sort_of_unit(parsed[1])
    if exact_number(text.value.partition(" ")[0]) is not None:
        desk.problems.add(text.place, "unit", f"'{text.value[:40]}' is no number with a unit; write it as 60 Hz, with one "
                                              f"of {', '.join(UNITS)}")
        return None
    desk.problems.unknown(text, "reading of this tree and no plate value", {**desk.kinds, **desk.values})
    return None
