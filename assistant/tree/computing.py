"""The verb compute: a function of the trade's registry, worked out from readings of the same tree."""

from __future__ import annotations

from assistant.house.fields import Form
from assistant.house.numbers import exact_number
from assistant.house.quantity_fields import unit_for
from assistant.house.reader import Text
from assistant.house.unit_names import unit_suggestion
from assistant.quantity.kind import KINDS
from assistant.tree.desk import TreeDesk
from assistant.tree.limit_units import PLAIN, Sort, argument_fits, result_kind, sort_of_kind, sort_of_unit
from assistant.tree.limits import BadLimit, parse_quantity
from assistant.tree.model import Common, Compute
from assistant.tree.named_results import named_results
from assistant.tree.readings import bands_of_form, each_band_must_lead

Given = dict[str, "str | tuple[str, ...]"]


def compute(form: Form, common: Common, desk: TreeDesk) -> Compute | None:
    """A computation with its bands."""
    from assistant.trade.registry import REGISTRY

    function = form.text("compute", need=True)
    entry = REGISTRY.get(function.value) if function else None
    if form.has("results"):
        return named_results(form, common, function, entry, desk)
    if function and entry is None:
        desk.problems.unknown(function, "computation", REGISTRY)
    gives = form.text("gives")
    if function and entry is not None and result_kind(entry.name, "count", gives and gives.value) is None:
        _no_reading(entry, function, gives, desk)
        entry = None
    result = entry.results.get(gives.value if gives else "", entry.result) if entry is not None else None
    usual = result.unit if result is not None else ""
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
                unit_for(form, kind, desk)
                if form.has("unit") or not usual
                else usual
            )
    form.get("unit")
    bands = bands_of_form(form, kind, desk)
    then, close, cannot = (desk.way(form.text(field)) for field in ("then", "close", "cannot"))
    source = desk.known(form.text("source"), "sources", "source")
    each_band_must_lead(form, desk)
    if entry is None or name is None or kind is None or unit is None:
        return None
    return Compute(
        common,
        entry.name,
        arguments,
        name.value,
        kind,
        unit,
        bands,
        then,
        close,
        cannot,
        source,
        gives.value if gives else None,
    )


def _no_reading(entry, function: Text, gives: Text | None, desk: TreeDesk) -> None:
    """Says why no single reading comes out, and which of several results could."""
    able = [key for key in entry.results if result_kind(entry.name, "count", key) is not None]
    if gives is not None and gives.value not in able:
        desk.problems.unknown(gives, f"number that '{entry.name}' gives", able)
    elif able:
        several = f"'{entry.name}' gives several results; write gives: and one of {', '.join(able)}"
        desk.problems.add(function.place, "name", several)
    else:
        none = f"'{entry.name}' gives no single reading; another computation must be found"
        desk.problems.add(function.place, "name", none)


def _nothing_tells_the_quantity(entry, arguments: Given, desk: TreeDesk) -> bool:
    """Where the result is of its arguments' quantity, and these are numbers only: 5 V may be AC or DC."""
    from assistant.trade.entry import ANY

    told = [text for given in arguments.values() for text in ([given] if isinstance(given, str) else given)]
    return entry.result.kind == ANY and not any(text in desk.values for text in told)


def _arguments(form: Form, entry, desk: TreeDesk) -> Given:
    """`from:` of a compute: each argument a name of this tree, a plate value or a number with its unit; a
    list of these where the computation takes a list, and one of its words where it takes a word.
    """
    from assistant.trade.entry import ANY, TEXT

    if entry is None:
        return {name: node.value for name, node in form.node.entries.items() if isinstance(node, Text)}
    found: Given = {}
    shared: Sort | None = None
    for argument in entry.arguments:
        need = argument.default is None
        if argument.many:
            texts = form.texts(argument.name, need, single=True)
        else:
            texts = tuple(text for text in [form.text(argument.name, need)] if text is not None)
        if not texts:
            continue
        found[argument.name] = tuple(text.value for text in texts) if argument.many else texts[0].value
        for text in texts:
            if argument.kind == TEXT:
                continue
            if argument.choices:
                if text.value not in argument.choices:
                    desk.problems.unknown(text, f"word for '{argument.name}'", argument.choices)
                continue
            sort = _sort_of_argument(text, desk)
            if sort is None or (sort.plain and argument.kind == "count"):
                continue
            if argument.kind not in KINDS and argument.kind != ANY:
                desk.problems.add(
                    text.place, "unit", f"{entry.name}: no reading or number here can be '{argument.name}'"
                )
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
