"""What a display shows: so many counts, ranges that change by themselves, OL above the highest."""

from __future__ import annotations

import math
from dataclasses import dataclass


@dataclass(frozen=True)
class Ranges:
    """Ranges of one function: (top in SI, unit, factor to the unit, decimals), rising."""

    steps: tuple[tuple[float, str, float, int], ...]

    def show(self, value: float, top: float | None = None) -> str:
        """The text on the display for a value in SI, with its unit; "OL" above the highest range or `top`."""
        if math.isnan(value) or abs(value) > (top or math.inf):
            return "OL"
        for limit, unit, factor, decimals in self.steps:
            if abs(value) <= limit:
                shown = f"{value * factor:.{decimals}f}"
                return f"{shown.removeprefix('-') if float(shown) == 0 else shown} {unit}"
        return "OL"


VOLTS = Ranges(((6.0, "V", 1, 3), (60.0, "V", 1, 2), (600.0, "V", 1, 1), (1000.0, "V", 1, 0)))
AMPS = Ranges(((6.0, "A", 1, 2), (60.0, "A", 1, 1), (600.0, "A", 1, 0)))
LEAKAGE = Ranges(((0.06, "mA", 1e3, 2), (0.6, "mA", 1e3, 1), (60.0, "A", 1, 2), (600.0, "A", 1, 1)))
"""A leakage clamp."""
MICROAMPS = Ranges(((600e-6, "uA", 1e6, 1), (6e-3, "mA", 1e3, 3)))
OHMS = Ranges(
    (
        (600.0, "ohm", 1, 1),
        (6e3, "kohm", 1e-3, 3),
        (60e3, "kohm", 1e-3, 2),
        (600e3, "kohm", 1e-3, 1),
        (6e6, "Mohm", 1e-6, 3),
        (40e6, "Mohm", 1e-6, 2),
    )
)
MILLIOHMS = Ranges(((2.0, "ohm", 1, 4), (20.0, "ohm", 1, 3), (200.0, "ohm", 1, 2)))
"""A milliohm meter with four leads."""
MEGGER = Ranges(((20e6, "Mohm", 1e-6, 2), (200e6, "Mohm", 1e-6, 1), (2e9, "Mohm", 1e-6, 0)))
FARADS = Ranges(((60e-6, "uF", 1e6, 2), (600e-6, "uF", 1e6, 1)))
PASCALS = Ranges(((15000.0, "inwc", 1 / 249.08891, 2),))
SHARES = Ranges(((1.0, "percent", 100, 1),))
PARTS = Ranges(((0.02, "ppm", 1e6, 0),))
SECONDS = Ranges(((36000.0, "s", 1, 1),))
METRES = Ranges(((2.0, "in", 1 / 0.0254, 2),))
WATTS = Ranges(((1e5, "W", 1, 0),))
DEGREES = Ranges(((300.0, "Fdiff", 1.8, 1),))
FLOWS = Ranges(((10.0, "cfm", 2118.88, 0),))
SPEEDS = Ranges(((20.0, "fpm", 196.8504, 0),))
TURNS = Ranges(((200.0, "rpm", 60, 0),))
HERTZ = Ranges(((1e3, "Hz", 1, 2),))


def fahrenheit(kelvin: float) -> str:
    """A probe's display."""
    return f"{kelvin * 1.8 - 459.67:.1f} F"


RANGES: dict[str, Ranges] = {
    "ac_voltage": VOLTS,
    "dc_voltage": VOLTS,
    "ac_current": AMPS,
    "dc_current": MICROAMPS,
    "resistance": OHMS,
    "insulation": MEGGER,
    "capacitance": FARADS,
    "pressure": PASCALS,
    "percent": SHARES,
    "concentration": PARTS,
    "duration": SECONDS,
    "length": METRES,
    "power": WATTS,
    "airflow": FLOWS,
    "velocity": SPEEDS,
    "temperature_difference": DEGREES,
    "frequency": HERTZ,
    "speed": TURNS,
}


def text(kind: str, value: float, top: float | None = None) -> str:
    """What the display shows for a value in SI; `top`: the instrument's own top of range."""
    if kind == "temperature":
        return fahrenheit(value)
    return _ranges(kind, top).show(value, top)


def _ranges(kind: str, top: float | None) -> Ranges:
    """Those of an instrument that goes no higher than `top`: one for small resistances shows more of them."""
    fine = kind == "resistance" and top is not None and top <= MILLIOHMS.steps[-1][0]
    return MILLIOHMS if fine else RANGES[kind]


def step(kind: str, value: float, top: float | None = None) -> float:
    """One step of the last digit shown for that value, in SI."""
    if kind == "temperature":
        return 0.1 / 1.8
    for limit, _, factor, decimals in _ranges(kind, top).steps:
        if abs(value) <= limit:
            return 10.0**-decimals / factor
    return 0.0
