"""One typed number: its exact value, the step of its last digit, and how it is written back.

Forms: 118.4 (also ".5", "5."), 3/8, 1 1/2, 1:30. A comma is a decimal mark; before exactly three digits it
could also be a thousands mark, and then a person picks. No powers of ten: "1e3" is a slip next to the 3 far
more often than a reading. At most 15 digits that count, so that a float keeps all of them.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction

from assistant.quantity.kind import Kind
from assistant.quantity.meaning import Doubt, UnclearError, quoted, refuse

MOST_DIGITS = 15
# Rulers and orifice tables stop at 64ths; "120/240" and "208/230" are two numbers on a plate, not fractions.
PARTS = (2, 3, 4, 8, 16, 32, 64)

_RUN = re.compile(r"[0-9.,]*[0-9][0-9.,]*")
_THOUSANDS = re.compile(r"[0-9]*[1-9][0-9]*,[0-9]{3}")
_POWER_OF_TEN = re.compile(r"[0-9.,]\s*[eE][+-]?[0-9]")
_GROUPED = re.compile(r"[0-9]{1,3}(?:,[0-9]{3})+(?:\.[0-9]*)?|[0-9]{1,3}(?:\.[0-9]{3})+(?:,[0-9]*)?")
_NUMBER = re.compile(r"([0-9]*)(?:\.([0-9]*))?")
_FRACTION = re.compile(r"(?:([0-9]+) )?([0-9]+)/([0-9]+)")
_CLOCK = re.compile(r"([0-9]{1,3}):([0-5][0-9])(?::([0-5][0-9]))?(?:\.([0-9]+))?")


@dataclass(frozen=True)
class Figure:
    """`value` without sign and unit; `step` is one count of the last digit, None for a fraction."""

    value: Fraction
    step: Fraction | None
    shown: str


def with_dots(text: str) -> str:
    """`text` with every decimal comma as a dot.

    Raises UnclearError for two marks, a possible thousands mark, a power of ten and too many digits.
    """
    if _POWER_OF_TEN.search(text):
        raise refuse(f"{quoted(text)} has a letter E in the number. Write it out, like 1000 or 1.2k.")
    doubtful = False
    for found in _RUN.finditer(text):
        run = found[0]
        if len(re.sub("[.,]", "", run).lstrip("0")) > MOST_DIGITS:
            raise refuse(f"{quoted(run)} has more than {MOST_DIGITS} digits; no instrument shows that many.")
        if run.count(",") + run.count(".") > 1:
            raise refuse(_two_marks(run))
        doubtful = doubtful or _THOUSANDS.fullmatch(run) is not None
    dotted = _RUN.sub(lambda found: found[0].replace(",", "."), text)
    if doubtful:
        joined = _RUN.sub(lambda found: _without_thousands(found[0]), text)
        message = f"{quoted(text)}: is the comma a decimal mark or a thousands mark?"
        raise UnclearError(Doubt(message, (joined, dotted)))
    return dotted


def _without_thousands(run: str) -> str:
    return run.replace(",", "" if _THOUSANDS.fullmatch(run) else ".")


def _two_marks(run: str) -> str:
    if not _GROUPED.fullmatch(run):
        return f"{quoted(run)} has more than one decimal mark. Write it with one, like 118.4."
    last = max(run.rfind(","), run.rfind("."))
    whole, rest = re.sub("[.,]", "", run[:last]), run[last + 1:]
    meant = whole + rest if run.count(run[last]) > 1 else f"{whole}.{rest}"
    return f"Write {quoted(run)} without thousands marks: {meant}."


def figure(text: str, kind: Kind) -> Figure:
    """What a typed number without sign and unit means, decimal marks already dots. Raises UnclearError."""
    number = _NUMBER.fullmatch(text)
    if number and (number[1] or number[2]):
        return _decimal(number[1], number[2] or "", kind)
    fraction = _FRACTION.fullmatch(text)
    if fraction:
        return _fraction(fraction, text, kind)
    if "/" in text:
        raise refuse(f"{quoted(text)} is not one number. Write one, like {kind.example}.")
    raise refuse(f"{quoted(text)} is not a number. Write it like {kind.example}.")


def _decimal(whole: str, decimals: str, kind: Kind) -> Figure:
    step = Fraction(1, 10 ** len(decimals))
    value = Fraction(int(whole + decimals)) * step
    if kind.whole and value.denominator != 1:
        raise refuse(f"{kind.title} is a whole number, like {kind.example}.")
    whole = whole.lstrip("0") or "0"
    return Figure(value, step, f"{whole}.{decimals}" if decimals else whole)


def _fraction(found: re.Match[str], text: str, kind: Kind) -> Figure:
    whole, over, parts = int(found[1] or 0), int(found[2]), int(found[3])
    if not kind.fractions:
        raise refuse(
            f"{quoted(text)} is not one number. Write one, like {kind.example}; a reading that moves is "
            "written with a dash, like 4.5-6."
        )
    if parts not in PARTS or not 0 < over < parts:
        usual = ", ".join(map(str, PARTS))
        raise refuse(
            f"{quoted(text)} is not a usual fraction (parts of {usual}). Write it like 3/8, 1 1/2 or 0.7."
        )
    shown = f"{over}/{parts}"
    return Figure(whole + Fraction(over, parts), None, f"{whole} {shown}" if whole else shown)


def clock(text: str, hours: bool) -> Figure | None:
    """1:30 in seconds: minutes and seconds, or with `hours` hours and minutes; None when it is none."""
    found = _CLOCK.fullmatch(text)
    if found is None or (found[4] and hours and not found[3]):
        return None
    first, second, third, tenths = int(found[1]), int(found[2]), found[3], found[4] or ""
    step = Fraction(1, 10 ** len(tenths))
    part = Fraction(int(tenths or 0)) * step
    if third is not None:
        shown = f"{first} h {second} min {_seconds(int(third), tenths)}"
        return Figure(3600 * first + 60 * second + int(third) + part, step, shown)
    if hours:
        return Figure(Fraction(3600 * first + 60 * second), Fraction(60), f"{first} h {second} min")
    return Figure(60 * first + second + part, step, f"{first} min {_seconds(second, tenths)}")


def _seconds(whole: int, tenths: str) -> str:
    return f"{whole}.{tenths} s" if tenths else f"{whole} s"
