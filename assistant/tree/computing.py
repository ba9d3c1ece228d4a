"""The verb compute: a function of the trade's registry, worked out from readings of the same tree."""

from __future__ import annotations

from assistant.house.fields import Form
from assistant.house.numbers import exact_number
from assistant.house.quantity_fields import unit_for
from assistant.house.reader import Text
from assistant.house.unit_names import unit_suggestion
from assistant.tree.desk import TreeDesk
from assistant.tree.limit_units import PLAIN, Sort, argument_fits, result_kind, sort_of_kind, sort_of_unit
from assistant.tree.limits import BadLimit, parse_quantity
from assistant.tree.model import Common, Compute
from assistant.tree.readings import bands_of_form, each_band_must_lead


def compute(form: Form, common: Common, desk: TreeDesk) -> Compute | None:
    """A computation with its bands."""
    from assistant.trade.registry import REGISTRY

    function = form.text("compute", need=True)
    entry = REGISTRY.get(function.value) if function else None
    if function and entry is None:
        desk.problems.unknown(function, "computation", REGISTRY)
    elif entry is not None and result_kind(entry.name, "count") is None:
        desk.problems.add(
            function.place,
            "name",
            f"'{entry.name}' gives no single reading; another computation must be found",
        )
        entry = None
    given = form.form("from", need=True)
    arguments = _arguments(given, entry, desk) if given else {}
    name = form.text("name", need=True)
    kind = desk.values.get(name.value) if name else None
    unit = None
    if entry is not None and form.has("from"):
        if kind is None and _nothing_tells_the_quantity(entry, arguments, desk):
            desk.problems.add(
                function.place,
                "unit",
                f"what '{entry.name}' gives here can't be told; give it a reading of "
                "this tree or a plate value",
            )
        elif kind is not None:
            unit = (
                unit_for(form, kind, desk) if form.has("unit") or not entry.result.unit else entry.result.unit
            )
    form.get("unit")
    bands = bands_of_form(form, kind, desk)
    then, close, cannot = (desk.way(form.text(field)) for field in ("then", "close", "cannot"))
    source = desk.known(form.text("source"), "sources", "source")
    each_band_must_lead(form, desk)
    if entry is None or name is None or kind is None or unit is None:
        return None
    return Compute(common, entry.name, arguments, name.value, kind, unit, bands, then, close, cannot, source)


def _nothing_tells_the_quantity(entry, arguments: dict[str, str], desk: TreeDesk) -> bool:
    """Where the result is of its arguments' quantity, and these are numbers only: 5 V may be AC or DC."""
    from assistant.trade.entry import ANY

    return entry.result.kind == ANY and not any(text in desk.values for text in arguments.values())


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
            desk.problems.add(
                text.place,
                "type",
                f"{entry.name} takes a list or a word for '{argument.name}'; a compute step can't give one",
            )
            continue
        sort = _sort_of_argument(text, desk)
        if sort is None:
            continue
        shared = sort if shared is None and argument.kind == ANY else shared
        wanted = shared if argument.kind == ANY else sort_of_kind(argument.kind)
        try:
            argument_fits(entry.name, argument.name, wanted, sort, 0)
        except BadLimit as bad:
            desk.problems.take(bad.problem(text.place))
    form.what = f"'from' of {entry.name}"
    form.close()
    return found


def _sort_of_argument(text: Text, desk: TreeDesk) -> Sort | None:
    if text.value in desk.kinds:
        return sort_of_kind(desk.kinds[text.value])
    if text.value in desk.values:
        return None
    number, _, unit = text.value.strip().partition(" ")
    if exact_number(number) is not None:
        parsed = parse_quantity(text.value)
        if parsed is not None:
            return sort_of_unit(parsed[1]) if unit.strip() else PLAIN
        desk.problems.add(text.place, "unit", f"'{unit[:40]}' is no unit{unit_suggestion(unit)}")
        return None
    desk.problems.unknown(text, "reading of this tree and no plate value", {**desk.kinds, **desk.values})
    return None
