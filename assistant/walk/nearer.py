"""Which instrument could tell a reading from its limit: one of the shop's, or one as good as a sentence says.

Accuracies are tried from a plain hand meter's to a bench meter's, on ranges of 2, 20, 200 ... that show 2,000
counts (common practice). What none of them can tell stands on the limit.
"""

from __future__ import annotations

import math

from assistant.quantity.interval import Interval
from assistant.quantity.meaning import Understood
from assistant.quantity.units import UNITS, from_si, to_si
from assistant.walk.shop import Shop

ACCURACIES = ((1.5, 3), (1.0, 2), (0.5, 2), (0.2, 2), (0.1, 1))
"""Percent of reading and counts of the last digit, the plainest first."""
RANGED = {
    "ac_voltage", "dc_voltage", "resistance", "insulation", "ac_current", "dc_current", "capacitance",
}  # fmt: skip
"""Quantities that a meter reads on ranges; for the others a sentence names how near it must tell."""
COUNTS = 2000


def gap_words(size: float, unit: str) -> str:
    """A difference of two values (SI) in words, two figures that count: "0.35 V", "1.2 °F"."""
    unit = {"F": "Fdiff", "C": "K"}.get(unit, unit)
    number = from_si(size, unit)
    symbol = "°F" if unit == "Fdiff" else UNITS[unit].symbol
    if number and abs(number) < 100:
        number = round(number, 1 - math.floor(math.log10(abs(number))))
    return f"{number:.6g} {symbol}".strip()


def good_to(size: float, unit: str) -> str:
    """The same, rounded down to one figure: what an instrument must be good to."""
    unit = {"F": "Fdiff", "C": "K"}.get(unit, unit)
    number = from_si(size, unit)
    step = 10.0 ** math.floor(math.log10(number)) if number > 0 else 0.0
    return gap_words(to_si(math.floor(number / step + 1e-9) * step, unit), unit) if step else "nothing"


def one_of_the_shop(shop: Shop, got: Understood, used: str | None, edges: list[Interval]) -> str | None:
    """The name of another instrument of the shop that would decide the same display."""
    for name, instrument in shop.instruments.items():
        if name == used or got.kind not in instrument.covers or not instrument.percent.get(got.kind, 0) + (
            instrument.counts.get(got.kind, 0)
        ):
            continue
        if not any(_overlap(instrument.widen(got), edge) for edge in edges):
            return name
    return None


def good_enough(got: Understood, distance: float, unit: str) -> str | None:
    """What an instrument must be to tell `got` from a limit `distance` (SI) away, in words; None: none is."""
    if got.kind not in RANGED:
        return f"an instrument that is good to {good_to(distance, unit)}" if distance > 0 else None
    shown = abs(from_si(got.interval.middle, unit))
    top = 2.0
    while top < shown:
        top *= 10
    wanted = from_si(distance, unit)
    for percent, counts in ACCURACIES:
        if percent / 100 * shown + counts * top / COUNTS < wanted:
            range_top = f"{top:.0f} {UNITS[unit].symbol}".strip()
            return f"a meter of {percent:g} % + {counts} counts or better, on its {range_top} range"
    return None


def _overlap(one: Interval, other: Interval) -> bool:
    return one.lo < other.hi and other.lo <= one.hi
