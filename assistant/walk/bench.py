"""The workbench beside a walk: what a computation of the walk was worked out from, and a sheet worked out by
hand as an event of the visit.
"""

from __future__ import annotations

import re
from collections.abc import Mapping

from assistant.house.reader import Fields, Items, Node, Text
from assistant.quantity.kind import from_si
from assistant.trade.entry import TEXT, ArgumentError, Entry
from assistant.trade.registry import REGISTRY, entry_of
from assistant.trade.sheet import Worked, items_of, work_out
from assistant.tree.limits import parse_quantity
from assistant.tree.model import Compute
from assistant.walk.ask import Record, Taken
from assistant.walk.event import WorkedOut
from assistant.walk.state import BadAnswer, Visit

BARE = re.compile(r"[-+\d.,/eE\s]*\d[\d.,/]*\s*")
"""A text that ends in its number: it stands in its field's unit."""


def just_worked_out(visit: Visit) -> Taken | None:
    """The step that the walk worked out right before what it asks now; None where it asked a person last."""
    for taken in reversed(visit.path):
        if taken.verb == "compute":
            return taken
        if not taken.passed:
            return None
    return None


def inputs_of(visit: Visit, taken: Taken) -> tuple[str, dict[str, str], dict[str, str]]:
    """(computation, argument -> text, argument -> unit): a compute step as a sheet would be filled in. What
    was not known stays empty.
    """
    _, step = visit.step(taken.step)
    assert isinstance(step, Compute)
    entry = REGISTRY.get(step.function)
    texts: dict[str, str] = {}
    units: dict[str, str] = {}
    for name, given in step.arguments.items():
        a = next((a for a in entry.arguments if a.name == name), None) if entry else None
        if a is None:
            continue
        if a.choices or a.kind == TEXT:
            texts[name] = str(given)
            continue
        several = [given] if isinstance(given, str) else given
        said = [_value(visit, taken, text, a.unit) for text in several]
        texts[name] = ", ".join(text for text, _ in said if text)
        units[name] = next((unit for text, unit in said if text), a.unit)
    return step.function, texts, units


def _value(visit: Visit, taken: Taken, text: str, usual: str) -> tuple[str, str]:
    """A value of the walk as a number and the unit it stands in."""
    record = _reading(visit, taken, text)
    if record is None and isinstance(visit.plate.get(text), Record):
        record = visit.plate[text]
    if record is not None and record.value.finite:
        return f"{from_si(record.value.middle, record.unit):.6g}", record.unit
    parsed = parse_quantity(text)
    if parsed is None:
        return "", usual
    return f"{parsed[0]:.6g}", parsed[1] if parsed[1] != "count" else ""


def _reading(visit: Visit, taken: Taken, name: str) -> Record | None:
    """The latest reading of that name in the same tree, up to the step."""
    tree = taken.step.partition(".")[0]
    for earlier in reversed(visit.history[: max(taken.number, 0)]):
        if earlier.step.partition(".")[0] == tree:
            for record in earlier.records:
                if record.name == name:
                    return record
    return None


def event_of(
    at: str, entry: Entry, texts: Mapping[str, str], units: Mapping[str, str], worked: Worked
) -> WorkedOut:
    """The sheet as it enters the trail: what was typed with its units, and copies of what came out."""
    given = {}
    for a in entry.arguments:
        text = texts.get(a.name, "").strip()
        if text:
            given[a.name] = (
                text if a.choices or a.kind == TEXT else with_unit(text, units.get(a.name, a.unit), a.many)
            )
    return WorkedOut(at, entry.name, given, worked.said, worked.formula, str(entry.source))


def with_unit(text: str, unit: str, many: bool) -> str:
    """The text with its field's unit behind each number that has none of its own."""
    items = items_of(text) if many else [text]
    said = [f"{item.strip()} {unit}".strip() if BARE.fullmatch(item) else item.strip() for item in items]
    return ", ".join(said)


def _work(node: Node, at: str) -> WorkedOut:
    """`work: {function: NAME, argument: text, ...}` of a replay file; a list may stand for a list."""
    if not isinstance(node, Fields) or not isinstance(node.entries.get("function"), Text):
        raise BadAnswer("work is a map with `function:` and its arguments, such as `supply: 120 F`")
    texts = {name: _text(value) for name, value in node.entries.items() if name != "function"}
    try:
        entry = entry_of(node.entries["function"].value)
    except ArgumentError as problem:
        raise BadAnswer(str(problem)) from None
    unknown = [name for name in texts if name not in {a.name for a in entry.arguments}]
    if unknown:
        raise BadAnswer(f"{entry.name} has no argument '{unknown[0]}'")
    worked = work_out(entry, texts)
    if not worked.done:
        missing = f"still missing: {', '.join(worked.missing)}" if worked.missing else ""
        raise BadAnswer(f"{entry.name}: {worked.problem or missing}")
    return event_of(at, entry, texts, {}, worked)


def _text(node: Node) -> str:
    if isinstance(node, Items):
        return ", ".join(item.value for item in node.items if isinstance(item, Text))
    if not isinstance(node, Text):
        raise BadAnswer("each argument of work is a text or a list of texts")
    return node.value


BENCH = {"work": _work}
"""The entry of replay files."""
