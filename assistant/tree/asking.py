"""The verbs that ask something of the technician: look, watch, measure, do. (compute: computing.py)"""

from __future__ import annotations

from assistant.house.fields import Form, one_text
from assistant.house.numbers import seconds
from assistant.house.reader import Text
from assistant.tree.desk import TreeDesk
from assistant.tree.model import Common, Do, Look, Measure, Reading, Watch, Way
from assistant.tree.readings import reading, readings

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
    wanted = dict.fromkeys(text.value for text in events)
    fields = form.fields("missing")
    for event, place in fields.keys.items() if fields else ():
        if event not in wanted:
            desk.problems.unknown(Text(event, place, False), "event of this step", wanted, "choice")
    for event in wanted:
        if fields is not None and event not in fields.entries:
            desk.problems.add(
                form.place("missing"),
                "missing",
                f"'missing' needs a way for '{event}': where to go when it does not happen",
            )
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
    if not form.has("then") and taken and not any(_decides(one) for one in taken):
        _then_is_missing(form, taken, group, desk)
    return Measure(common, ask or "", taken, group, then, close, cannot, verifies) if taken else None


def _decides(one: Reading) -> bool:
    return bool(one.bands) and all(band.then for band in one.bands)


def _then_is_missing(form: Form, taken: tuple[Reading, ...], group: bool, desk: TreeDesk) -> None:
    if group:
        desk.problems.add(
            form.place(),
            "missing",
            f"{form.what} needs 'then': where to go when no band of its readings says so",
        )
        return
    without = [band for band in taken[0].bands if band.then is None]
    for band in without:
        desk.problems.add(band.place, "missing", f"band '{band.label}' needs 'then', or the step does")
    if not taken[0].bands:
        desk.problems.add(
            form.place(), "missing", f"{form.what} needs 'bands' that say where to go, or 'then'"
        )


def do(form: Form, common: Common, desk: TreeDesk) -> Do | None:
    """Something to do."""
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
