"""The apprentice's instruments: which function is picked, how the display settles, and the fuse inside.

The display of a meter does not jump to its value: it ranges, overshoots a little, and its last digit wanders.
Ohms on a live circuit show an error and may take the meter's own fuse; from then on ohms, microfarads and
microamps read as if nothing were connected, whatever is there (from memory). Two leads held together show
which it is.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from random import Random

from assistant.drill.kit import CLAMP, HIGH, LOW, NULLED, REST, STATED

FUSE_GOES_AT = 50.0
"""Volts across the leads at which ohms take the meter's fuse (from memory)."""
FUSED = {"resistance": "OL", "capacitance": "0.00 uF", "dc_current": "0.0 uA"}
"""What the functions behind the fuse show once it is blown."""
_DIGITS = re.compile(r"(-?)(\d+)(\.\d+)?(.*)", re.DOTALL)


@dataclass(frozen=True)
class Function:
    """One place of the dial, or one instrument of the truck. `leads`: how many places it is laid on, at most.
    `settles`: seconds until the display stands.
    """

    name: str
    title: str
    kind: str
    instrument: str
    leads: int
    settles: float


FUNCTIONS: dict[str, Function] = {
    function.name: function
    for function in (
        Function("volts", "AC volts", "ac_voltage", HIGH, 2, 1.2),
        Function("low", "AC volts, low impedance", "ac_voltage", LOW, 2, 1.2),
        Function("ohms", "Ohms", "resistance", HIGH, 2, 1.6),
        Function("nulled", "Ohms, leads nulled", "resistance", NULLED, 2, 1.6),
        Function("clamp", "Amps, clamp", "ac_current", CLAMP, 1, 1.0),
        Function("microamps", "Microamps DC, in series", "dc_current", HIGH, 2, 2.0),
        Function("dc_volts", "DC volts", "dc_voltage", HIGH, 2, 1.2),
        Function("microfarads", "Microfarads", "capacitance", HIGH, 2, 2.4),
        Function("hertz", "Hertz", "frequency", HIGH, 2, 1.2),
        Function("megohms", "Insulation tester", "insulation", REST, 2, 3.0),
        Function("manometer", "Manometer", "pressure", REST, 2, 1.6),
        Function("probe", "Temperature probe", "temperature", REST, 1, 6.0),
        Function("gas", "Gas detector, or oxygen in the flue", "percent", REST, 1, 4.0),
        Function("monoxide", "Carbon monoxide", "concentration", REST, 1, 4.0),
        Function("clock", "Stop watch", "duration", REST, 1, 0.5),
        Function("watts", "Watts", "power", REST, 1, 1.0),
        Function("air", "Air meter", "airflow", REST, 1, 2.0),
        Function("rule", "Rule", "length", REST, 1, 0.5),
    )
}


def instrument_of(function: Function):
    """The instrument that is used for it."""
    return STATED[function.instrument]


def frames(text: str, function: Function, random: Random) -> list[tuple[float, str]]:
    """The display from the moment the leads touch: (seconds, what it shows), the last one standing.

    What is no number (OL, Err) comes after a blank. The last digit wanders by one.
    """
    found = _DIGITS.fullmatch(text)
    if found is None:
        return [(0.0, "- - -"), (function.settles, text)]
    sign, whole, part, rest = found.group(1), found.group(2), found.group(3) or "", found.group(4)
    places = max(len(part) - 1, 0)
    value = float(f"{sign}{whole}{part}")

    def written(number: float) -> str:
        return f"{number:.{places}f}{rest}"

    step = 10.0**-places
    moves = [0.82, 1.03, 0.99]
    shown = [(0.0, "- - -")]
    shown += [
        (function.settles * share, written(value * move))
        for share, move in zip((0.3, 0.5, 0.7), moves, strict=True)
    ]
    shown.append((function.settles, written(value + (random.choice((-step, 0.0, step)) if value else 0.0))))
    shown.append((function.settles + 0.6, text))
    return shown


@dataclass
class Meter:
    """What is in the hand: the picked function, where its leads lie, and whether its fuse is whole."""

    function: str = "low"
    red: str = ""
    black: str = ""
    fuse_blown: bool = False

    @property
    def picked(self) -> Function:
        """The function picked."""
        return FUNCTIONS[self.function]

    def points(self) -> tuple[str, ...]:
        """Where it is laid on now."""
        wanted = (self.red, self.black) if self.picked.leads == 2 else (self.red,)
        return tuple(point for point in wanted if point)

    def missing(self) -> str:
        """What still has to be laid on, in a sentence, or nothing."""
        if not self.red:
            return "Lay the red lead on a point first." if self.picked.leads == 2 else "Pick a point first."
        two = self.picked.leads == 2 and self.picked.kind != "pressure"
        return "Lay the black lead on a point too." if two and not self.black else ""


def through_fuse(kind: str, text: str, blown: bool) -> str:
    """What the display shows where the fuse is in the way."""
    return FUSED[kind] if blown and kind in FUSED else text


def leads_together(blown: bool) -> str:
    """Ohms with the two leads held together."""
    return "OL" if blown else "0.2 ohm"


def in_words(function: Function, points: Sequence[str], labels) -> str:
    """A reading in words: "AC volts, red on ..., black on ..."."""
    names = [labels[point].label if point in labels else point for point in points]
    if function.leads == 1 or len(names) == 1:
        return f"{function.title}: {names[0] if names else 'nowhere'}"
    return f"{function.title}: red on {names[0]}, black on {names[1]}"
