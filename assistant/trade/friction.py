"""Friction factor over the whole range of flow, and the friction of a metre of round duct; no ranges checked
here.

Laminar below Reynolds 2,000, Colebrook's equation above 4,000, a smooth blend between: the two published laws
at its ends, our own joint in the middle (where no law is agreed upon), so that pressure never falls as flow
rises.
"""

from __future__ import annotations

import math

from assistant.trade.air_density import density_at
from assistant.trade.constants import KELVIN_AT_70F

LAMINAR, TURBULENT = 2000.0, 4000.0
VISCOSITY_70F = 1.227e-5 * 0.45359237 / 0.3048
"""Dynamic viscosity of dry air at 70 °F, Pa·s (1.227e-5 lb/(ft·s), CoolProp, computed)."""
SUTHERLAND = 110.4
"""Sutherland's temperature for air, K (from memory)."""


def viscosity(kelvin: float) -> float:
    """Dynamic viscosity of air in Pa·s by Sutherland's law, tied to its value at 70 °F."""
    ratio = kelvin / KELVIN_AT_70F
    return VISCOSITY_70F * ratio**1.5 * (KELVIN_AT_70F + SUTHERLAND) / (kelvin + SUTHERLAND)


def colebrook(reynolds: float, relative: float) -> float:
    """Darcy friction factor from Colebrook's equation, solved to the last bits by Newton's method."""
    x = -1.8 * math.log10((relative / 3.7) ** 1.11 + 6.9 / reynolds)  # Haaland's start, within 2 %
    rough, smooth = relative / 3.7, 2.51 / reynolds
    for _ in range(8):
        inside = rough + smooth * x
        step = (x + 2 * math.log10(inside)) / (1 + 2 * smooth / (inside * math.log(10)))
        x -= step
        if abs(step) < 1e-14 * x:
            break
    return 1 / (x * x)


def darcy(reynolds: float, relative: float) -> float:
    """Darcy friction factor at any Reynolds number above zero; relative roughness 0 to 0.05."""
    if reynolds <= LAMINAR:
        return 64 / reynolds
    if reynolds >= TURBULENT:
        return colebrook(reynolds, relative)
    share = (reynolds - LAMINAR) / (TURBULENT - LAMINAR)
    share = share * share * (3 - 2 * share)
    return (1 - share) * 64 / reynolds + share * colebrook(reynolds, relative)


def drop_per_metre(airflow: float, diameter: float, roughness: float, height: float, kelvin: float) -> float:
    """Darcy-Weisbach: f / D × density × velocity² / 2 in Pa/m; m³/s, m, m, m, K."""
    density = density_at(height, kelvin)
    velocity = airflow / (math.pi / 4 * diameter * diameter)
    reynolds = density * velocity * diameter / viscosity(kelvin)
    if reynolds <= LAMINAR:
        return 32 * viscosity(kelvin) * velocity / diameter**2  # 64 / Re written out: holds down to no flow
    return darcy(reynolds, roughness / diameter) / diameter * density * velocity * velocity / 2


def crossing(rising, target: float, low: float, high: float) -> float:
    """x between low and high where the rising function meets the target, by secant steps kept inside a
    bracket.
    """
    below, above = rising(low) - target, rising(high) - target
    for _ in range(200):
        middle = (low + high) / 2
        guess = high - above * (high - low) / (above - below) if above != below else middle
        x = guess if low < guess < high and min(guess - low, high - guess) > 0.02 * (high - low) else middle
        value = rising(x) - target
        if value < 0:
            low, below = x, value
        else:
            high, above = x, value
        if high - low <= 1e-13 * abs(high):
            break
    return (low + high) / 2
