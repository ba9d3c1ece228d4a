"""A silicon-carbide igniter: its resistance halves as it heats, and it loses heat by radiation."""

from __future__ import annotations

import math

RADIATES = 6.4e-11
"""W per K^4 for the whole surface."""
HEAT = 2.6
"""J per K."""


def ohm(cold_ohm: float, kelvin: float) -> float:
    """Resistance at a temperature: about half of the cold one at glow (common practice: 4 A from 60 ohm)."""
    return cold_ohm * (0.5 + 0.5 * math.exp(-(kelvin - 293.0) / 400.0))


def heated(kelvin: float, watts: float, seconds: float) -> float:
    """Temperature after that time with those watts."""
    steps = max(1, math.ceil(seconds / 0.25))
    for _ in range(steps):
        kelvin += (watts - RADIATES * (kelvin**4 - 293.0**4)) * seconds / steps / HEAT
        kelvin = max(kelvin, 290.0)
    return kelvin
