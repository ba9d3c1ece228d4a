"""Numbers of a file: decimals as written, ranges of two, amounts with a unit."""

from __future__ import annotations

import re
from fractions import Fraction

from assistant.house.fields import Problems, kind_of, one_text
from assistant.house.reader import Items, Node, Text

LONGEST = 30
SMALLEST, GREATEST = Fraction(1, 10**12), Fraction(10**12)
"""A number other than 0 in a file lies between these, in size."""

_NUMBER = re.compile(r"-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d{1,2})?", re.ASCII)
_LOOKS_LIKE_ONE = re.compile(r"-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?", re.ASCII)


def exact_number(text: str) -> Fraction | None:
    """A number as a file writes it (`118.4`, `-0.15`, `1e3`), exactly; None when none or out of range."""
    if len(text) > LONGEST or not _NUMBER.fullmatch(text):
        return None
    value = Fraction(text)
    return value if not value or SMALLEST <= abs(value) <= GREATEST else None


def number_hint(text: str) -> str:
    """What to write instead of a text that is no number."""
    sign = "-" if text.startswith("-") else ""
    whole, point, decimals = re.sub("[+_, -]", "", text).partition(".")
    plain = sign + (whole.lstrip("0") or "0") + (point + decimals if decimals else "")
    if plain != text and exact_number(plain) is not None:
        return f"; write {plain}" + (", or a point before decimals" if "," in text else "")
    if _LOOKS_LIKE_ONE.fullmatch(text):
        return "; numbers lie between 0.000000000001 and 1000000000000"
    return "; write digits, such as 118.4 or -0.15"


def number(node: Node | None, what: str, problems: Problems) -> Fraction | None:
    """One number, or None with a problem noted (None without one where nothing is given)."""
    text = None if node is None else one_text(node, what, problems)
    if text is None:
        return None
    value = exact_number(text.value)
    if value is None:
        problems.add(
            text.place, "number", f"'{text.value[:40]}' is no number for {what}{number_hint(text.value)}"
        )
    return value


def pair(node: Node | None, what: str, problems: Problems) -> tuple[Fraction, Fraction] | None:
    """[low, high], the low one first and not equal."""
    if node is None:
        return None
    if not isinstance(node, Items) or len(node.items) != 2:
        got = f"{len(node.items)} items" if isinstance(node, Items) else kind_of(node)
        problems.add(node.place, "type", f"{what} is two numbers, [low, high], not {got}")
        return None
    low, high = (number(item, what, problems) for item in node.items)
    if low is None or high is None:
        return None
    if low >= high:
        problems.add(node.place, "number", f"{what}: the low one comes first and is less than the high one")
        return None
    return low, high


def seconds(text: Text | None, what: str, problems: Problems) -> float | None:
    """A duration such as `150 s` or `5 min`, in seconds."""
    from assistant.quantity.kind import KINDS
    from assistant.quantity.units import exact_si

    if text is None:
        return None
    amount, _, unit = text.value.strip().partition(" ")
    value, unit = exact_number(amount), unit.strip()
    if value is None or unit not in KINDS["duration"].units or value <= 0:
        problems.add(
            text.place,
            "number",
            f"'{text.value[:40]}' is no duration for {what}; write a number and its "
            "unit, such as 150 s, 5 min or 1 h",
        )
        return None
    return float(exact_si(value, unit))
