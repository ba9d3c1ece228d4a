"""The verbs that ask something of the technician: look, watch, measure, do. (compute: computing.py)"""

from __future__ import annotations

from assistant.house.fields import Form, one_text
from assistant.house.numbers import seconds
from assistant.house.reader import Fields, Node, Text
from assistant.tree.desk import TreeDesk
from assistant.tree.model import Common, Do, Look, Measure, Reading, Watch, Way
from assistant.tree.readings import each_band_must_lead, every_band_leads, reading, readings

MOST_WATCHED_READINGS = 4


def look(form: Form, common: Common, desk: TreeDesk) -> Look | None:
    """A question that eyes, ears or nose answer."""
    ask = form.words("look", need=True)
    thing = desk.known(form.text("sees", need=True), "seen", "thing seen")
    choices = ways(form, "choices", desk)
    cannot = desk.way(form.text("cannot"))
    if thing:
        values = desk.vocabulary.seen[thing].values
        fields = form.fields("choices")
        for value, place in fields.keys.items() if fields else ():
            if value not in values:
                desk.problems.unknown(
                    Text(value, place, False), f"value of '{thing}'", dict.fromkeys(values), "choice"
                )
    return Look(common, ask, thing, choices, cannot) if ask and thing else None


def watch(form: Form, common: Common, desk: TreeDesk) -> Watch | None:
    """A cycle that is watched: events in order, and readings filled in afterwards."""
    ask = form.words("watch", need=True)
    within = seconds(form.text("within", need=True), "'within'", desk.problems)
    events = form.texts("events", need=True)
    named = desk.all_known(events, "happens", "event")
    if form.has("events") and not events:
        desk.problems.add(
            form.place("events"), "missing", "'events' is empty; name what should happen, in order"
        )
    missing = ways(form, "missing", desk)
    if len(named) == len(events):
        _each_event_has_its_way(form, named, desk)
    taken = readings(form, desk, need=False)
    if len(taken) > MOST_WATCHED_READINGS:
        desk.problems.add(
            form.place("readings"),
            "value",
            f"{len(taken)} readings are too many for one cycle; at most {MOST_WATCHED_READINGS}",
        )
    form.get("source")
    then, close, cannot = (
        desk.way(form.text(name, need=name == "then")) for name in ("then", "close", "cannot")
    )
    if ask is None or within is None or then is None:
        return None
    return Watch(common, ask, within, named, missing, taken, then, close, cannot)


def _each_event_has_its_way(form: Form, events: tuple[str, ...], desk: TreeDesk) -> None:
    """`missing` has a way for each event that should happen, and for no other."""
    if not form.has("missing"):
        return
    written = _written(form, "missing")
    for event, place in form.node.entries["missing"].keys.items() if written else ():
        if event not in events:
            desk.problems.unknown(
                Text(event, place, False), "event of this step", dict.fromkeys(events), "choice"
            )
    for event in events:
        if event not in written:
            desk.problems.add(
                form.place("missing"),
                "missing",
                f"'missing' needs a way for '{event}': where to go when it does not happen",
            )


def measure(form: Form, common: Common, desk: TreeDesk) -> Measure | None:
    """One reading, or several of one act."""
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
        desk.problems.add(
            form.place("verifies"),
            "field",
            "'verifies' stands in a measure with 'readings': a circuit is "
            "proved dead by all its pairs between two known-live checks",
        )
    survey = _survey(form, group, desk)
    if not group:
        each_band_must_lead(form, desk)
    elif not form.has("then") and not any(map(every_band_leads, _written(form, "readings").values())):
        desk.problems.add(
            form.place(),
            "missing",
            f"{form.what} needs 'then': where to go when no band of its readings says so",
        )
    return Measure(common, ask or "", taken, group, then, close, cannot, verifies, survey) if taken else None


def _survey(form: Form, group: bool, desk: TreeDesk) -> tuple[str, ...]:
    """The columns of a zone survey: the one reading then stands for each of its cells."""
    from assistant.trade.zone_sheet import MODES

    columns = form.texts("survey")
    for column in columns:
        if column.value not in MODES:
            desk.problems.unknown(column, "column of a survey", dict.fromkeys(MODES))
    if columns and (group or not form.has("name") or form.has("bands")):
        desk.problems.add(
            form.place("survey"), "field", "a survey has one reading, with a name and without bands"
        )
    return tuple(column.value for column in columns)


def do(form: Form, common: Common, desk: TreeDesk) -> Do | None:
    """Something to do."""
    ask = form.words("do", need=True)
    act = desk.known(form.text("act"), "acts", "act")
    wait = seconds(form.text("wait"), "'wait'", desk.problems)
    then = desk.way(form.text("then", need=True))
    cannot = desk.way(form.text("cannot"))
    notes = form.words("notes") if form.has("notes") else ""
    return Do(common, ask, act, wait, then, cannot, notes or "") if ask and then else None


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


def _written(form: Form, name: str) -> dict[str, Node]:
    """The entries of a field that holds fields; empty where it does not."""
    node = form.node.entries.get(name)
    return node.entries if isinstance(node, Fields) else {}
