"""Replay entries for what is written around the walk.

`triage`, `before`, `unit`, `order`, `healthy`, `outlook`, `tonight`: {question: text};
`as_left`: {thing: words}; `advise`: {what, why, number, answer}; `recalled`: a list of earlier visits.
"""

from __future__ import annotations

from collections.abc import Callable

from assistant.house.reader import Fields, Items, Node, Text
from assistant.quantity.entry import Understood, understand
from assistant.quantity.kind import KINDS
from assistant.walk.earlier_visit import Past, PastLook, PastReading
from assistant.walk.event import Advised, AsLeft, Event, Filled, Recalled, ShopMay
from assistant.walk.state import BadAnswer

SHEETS = ("triage", "before", "unit", "order", "healthy", "outlook", "tonight")


def _map(node: Node, what: str) -> dict[str, str]:
    """A map of texts. Raises BadAnswer."""
    if not isinstance(node, Fields) or not all(isinstance(value, Text) for value in node.entries.values()):
        raise BadAnswer(f"{what} is a map of texts, such as `{what}: {{name: text}}`")
    return {name: value.value for name, value in node.entries.items()}


def _advise(node: Node, at: str) -> Advised:
    said = _map(node, "advise")
    if beyond := sorted(set(said) - {"what", "why", "number", "answer"}):
        raise BadAnswer(f"advise has what, why, number and answer, not '{beyond[0]}'")
    return Advised(
        at, said.get("what", ""), said.get("why", ""), said.get("number", ""), said.get("answer", "")
    )


def _recalled(node: Node, at: str) -> Recalled:
    if not isinstance(node, Items):
        raise BadAnswer("recalled is a list of earlier visits, each with `visit:` and `began:`")
    return Recalled(at, tuple(_past(item) for item in node.items))


def _past(node: Node) -> Past:
    if not isinstance(node, Fields):
        raise BadAnswer("an earlier visit is a map with `visit:` and `began:`")
    texts = {name: value.value for name, value in node.entries.items() if isinstance(value, Text)}
    lists = {
        name: tuple(item.value for item in value.items if isinstance(item, Text))
        for name, value in node.entries.items()
        if isinstance(value, Items)
    }
    fitted = node.entries.get("fitted")
    readings, looks = node.entries.get("readings"), node.entries.get("looks")
    return Past(
        texts.get("visit", ""),
        texts.get("began", ""),
        texts.get("signed", ""),
        *(lists.get(name, ()) for name in ("complaints", "found", "touched", "left", "doubted")),
        tuple(_map(fitted, "fitted").items()) if fitted is not None else (),
        tuple(_reading(item) for item in readings.items) if isinstance(readings, Items) else (),
        texts.get("healthy", "no") == "yes",
        tuple(_look(item) for item in looks.items) if isinstance(looks, Items) else (),
    )


def _look(node: Node) -> PastLook:
    """`{step, thing, value, when}`."""
    said = _map(node, "looks")
    if not said.get("thing") or not said.get("value"):
        raise BadAnswer("what was seen on an earlier visit needs `thing:` and `value:`")
    return PastLook(said.get("step", ""), said["thing"], said["value"], said.get("when", ""))


def _reading(node: Node) -> PastReading:
    """`{quantity, at: [points], text, when}`; the text is understood as a reading put down is."""
    if not isinstance(node, Fields):
        raise BadAnswer("an earlier reading is a map with `quantity:`, `at:` and `text:`")
    kind, text, when = (
        value.value if isinstance(value := node.entries.get(name), Text) else ""
        for name in ("quantity", "text", "when")
    )
    points = node.entries.get("at")
    at = (
        tuple(item.value for item in points.items if isinstance(item, Text))
        if isinstance(points, Items)
        else ()
    )
    if kind not in KINDS or not at:
        raise BadAnswer("an earlier reading needs `quantity:` and `at:`")
    unit = KINDS[kind].units[0]
    got = understand(text, kind, unit)
    if not isinstance(got, Understood):
        raise BadAnswer(f"'{text}' is no reading of an earlier visit")
    ends = (got.interval.lo, got.interval.hi) if got.interval.finite else (None, None)
    return PastReading(kind, at, unit, got.echo, when, *ends)


def _sheet(name: str) -> Callable[[Node, str], Event]:
    return lambda node, at: Filled(at, name, _map(node, name))


AROUND: dict[str, Callable[[Node, str], Event]] = {
    **{name: _sheet(name) for name in SHEETS},
    "may_open": lambda node, at: ShopMay(at, _map(node, "may_open")),
    "as_left": lambda node, at: AsLeft(at, _map(node, "as_left")),
    "advise": _advise,
    "recalled": _recalled,
}
