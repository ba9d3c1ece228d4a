"""The names that a tree gives to its readings and computes, and the quantity of each.

They are gathered before any step is read, because a limit may name a reading of a later line. Only what is
written right is taken; the step that holds a mistake reports it.
"""

from __future__ import annotations

from collections.abc import Iterator

from assistant.house.fields import Problems, good_name
from assistant.house.model import Vocabulary
from assistant.house.place import Place
from assistant.house.reader import Fields, Items, Node, Text
from assistant.quantity.kind import KINDS
from assistant.quantity.units import UNITS
from assistant.tree.limit_units import result_kind

Kinds = dict[str, "str | None"]


def values_of(steps: Fields, vocabulary: Vocabulary, problems: Problems) -> Kinds:
    """Name -> quantity of every reading and compute; a name written twice, or that is taken, is a problem."""
    plain: dict[str, str | None] = {}
    computed: dict[str, Fields] = {}
    first: dict[str, Place] = {}
    for name, place, fields, compute in _declared(steps):
        if not good_name(name, place, "a reading", problems):
            continue
        if name in first:
            problems.add(
                place,
                "name",
                f"'{name}' is the name of two readings, on line {first[name].line} and on line "
                f"{place.line}; a name is used once in a tree",
            )
            continue
        first[name] = place
        if name in vocabulary.plate:
            problems.add(place, "name", f"'{name}' is a plate value; give the reading another name")
        if name in UNITS:
            problems.add(place, "name", f"'{name}' is a unit; give the reading another name")
        if compute and "results" in fields.entries:
            plain[name] = _named_result(fields, name)
        elif compute:
            computed[name] = fields
        else:
            kind = _text(fields.entries.get("quantity"))
            plain[name] = kind if kind in KINDS else None
    known: Kinds = {name: value.kind for name, value in vocabulary.plate.items()} | plain
    for name in computed:
        _resolve(name, computed, known, problems)
    return {name: known[name] for name in first}


def _declared(steps: Fields) -> Iterator[tuple[str, Place, Fields, bool]]:
    """(name, place, the fields that describe it, whether it is computed) of every name that a step gives."""
    for step in steps.entries.values():
        if not isinstance(step, Fields):
            continue
        name = step.entries.get("name")
        if _text(name) and ("measure" in step.entries or "compute" in step.entries):
            yield name.value, name.place, step, "compute" in step.entries
        readings = step.entries.get("readings")
        if isinstance(readings, Fields):
            for key, reading in readings.entries.items():
                if isinstance(reading, Fields):
                    yield key, readings.keys[key], reading, False
        results = step.entries.get("results")
        if "compute" in step.entries and isinstance(results, Fields):
            for key, result in results.entries.items():
                if isinstance(result, Fields):
                    yield key, results.keys[key], step, True


def _resolve(name: str, computed: dict[str, Fields], known: Kinds, problems: Problems) -> None:
    """The quantity of a compute, which may be that of what it is computed from."""
    waiting = [name]
    while waiting:
        at = waiting[-1]
        given = _given_any_kind(computed[at])
        needed = next(
            (text for text in given if text in computed and text not in known and text not in waiting), None
        )
        if needed is not None:
            waiting.append(needed)
            continue
        circle = [text for text in given if text in waiting and text not in known]
        if circle:
            problems.add(
                computed[at].keys["compute"],
                "circle",
                f"'{at}' is computed from itself ({', '.join(waiting)})",
            )
        function = _text(computed[at].entries.get("compute"))
        kind = next((known[text] for text in given if known.get(text)), None)
        known[at] = _result(function, kind, _text(computed[at].entries.get("gives")))
        waiting.pop()


def _given_any_kind(step: Fields) -> list[str]:
    """What is given for the arguments that take any quantity."""
    from assistant.trade.entry import ANY
    from assistant.trade.registry import REGISTRY

    entry = REGISTRY.get(_text(step.entries.get("compute")) or "")
    given = step.entries.get("from")
    if entry is None or not isinstance(given, Fields):
        return []
    nodes = [given.entries.get(argument.name) for argument in entry.arguments if argument.kind == ANY]
    items = [item for node in nodes for item in (node.items if isinstance(node, Items) else [node])]
    return [text for text in map(_text, items) if text]


def _result(function: str | None, kind: str | None, gives: str | None) -> str | None:
    from assistant.trade.registry import REGISTRY

    return result_kind(function, kind, gives) if function in REGISTRY else None


def _named_result(step: Fields, name: str) -> str | None:
    """The quantity of one of several results; None where the function has none of that name."""
    from assistant.trade.registry import REGISTRY

    entry = REGISTRY.get(_text(step.entries.get("compute")) or "")
    result = entry.results.get(name) if entry else None
    return result.kind if result and result.kind in KINDS else None


def _text(node: Node | None) -> str | None:
    return node.value if isinstance(node, Text) else None
