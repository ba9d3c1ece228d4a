"""An entry taken apart: one end, or the two ends of a spread, each with its sign, figures and unit texts.

"4.5-6", "4.5 - 6 V" and "4.5 to 6" are spreads. A dash that could be something else is asked about: "1-1/2
in" is one and a half in most shops, and "-0.15-0.20" may lose its second minus.
"""

from __future__ import annotations

import re
from dataclasses import dataclass

from assistant.quantity.kind import Kind
from assistant.quantity.meaning import Doubt, UnclearError, quoted, refuse

_TO = re.compile(r"\s+to\s+|(?<=[0-9.])to(?=[0-9.+-])", re.IGNORECASE)
_SIGN = re.compile(r"\s*([+-]?)\s*")
_FIGURE = r"[0-9.:/]*[0-9][0-9.:/]*(?: [0-9]+/[0-9]+)?"
# Digits belong to a unit in ft3, in2, m3/h, m3h and H2O; in "5 ft3in" they are the inches.
_UNIT = r"(?:m3h|(?:ft|in|m)[23](?![0-9A-Za-z]|\.[0-9])|h2o|\.(?![0-9])|[^0-9+\-.])*"
_PAIR = re.compile(rf"({_FIGURE})\s*({_UNIT})", re.IGNORECASE)


@dataclass(frozen=True)
class End:
    """One number as typed: "-" or "", and its (figure, unit) texts; more than one in "5 ft 3 in"."""

    sign: str
    pairs: tuple[tuple[str, str], ...]
    typed: str

    def written(self, sign: str | None = None) -> str:
        """The end as text again, with another sign if given."""
        parts = (f"{figure} {unit}".strip() for figure, unit in self.pairs)
        return (self.sign if sign is None else sign) + " ".join(parts)


def ends(text: str, kind: Kind) -> tuple[End, ...]:
    """The one or two ends of an entry with decimal dots. Raises UnclearError."""
    parts = _TO.split(text)
    if len(parts) > 2:
        raise refuse("A spread has two ends, like 4.5-6.")
    first, rest = _end(parts[0], kind)
    if len(parts) == 2:
        second, left = _end(parts[1], kind)
        if rest or left:
            raise refuse("A spread has two ends, like 4.5-6.")
        return first, second
    if not rest:
        return (first,)
    if rest[0] != "-":
        raise refuse(
            f"{quoted(text)} is not one number. Write one, like {kind.example}; a reading that moves is "
            "written with a dash, like 4.5-6."
        )
    explicit = _SIGN.match(rest, 1)[1]
    second, left = _end(rest[1:], kind)
    if left:
        raise refuse(f"{quoted(text)} has too many dashes. Write one number, or a spread like 4.5-6.")
    _ask_about_the_dash(text, first, second, bool(explicit))
    return first, second


def _end(text: str, kind: Kind) -> tuple[End, str]:
    if text.lstrip()[:1] in tuple("<>~\u2248\u00b1="):
        raise refuse(f"Write the number that the display shows, like {kind.example}.")
    start = _SIGN.match(text)
    position, pairs = start.end(), []
    while found := _PAIR.match(text, position):
        pairs.append((found[1], found[2].strip()))
        position = found.end()
    if not pairs:
        raise refuse(f"{quoted(text.strip())} is not a reading. Write it like {kind.example}.")
    return End(start[1].replace("+", ""), tuple(pairs), text[:position].strip()), text[position:]


def _ask_about_the_dash(text: str, first: End, second: End, explicit: bool) -> None:
    if len(first.pairs) > 1 or len(second.pairs) > 1 or explicit:
        return
    whole, part = first.pairs[0], second.pairs[0]
    spreads = [f"{first.written()} to {second.written('')}"]
    if first.sign == "-":
        spreads.insert(0, f"{first.written()} to {second.written('-')}")
    if whole[0].isdigit() and not whole[1] and "/" in part[0] and " " not in part[0]:
        mixed = f"{first.sign}{whole[0]} {part[0]} {part[1]}".strip()
        raise UnclearError(Doubt(f"{quoted(text)}: one number, or a spread between two?", (mixed, *spreads)))
    if len(spreads) > 1:
        raise UnclearError(Doubt(f"{quoted(text)}: is the second number below zero too?", tuple(spreads)))
