"""Friction factor over the whole range of flow, and the friction of a metre of round duct; no ranges checked
here.

Laminar law and Colebrook's equation, joined in one curve the way Churchill joined his in 1977 (from memory;
fluids' own coding of it agrees): smooth everywhere, and pressure never falls as flow rises. Between Reynolds
2,000 and 4,000 no law is agreed upon.
"""

from __future__ import annotations

import math

from assistant.trade.air_density import density_at
from assistant.trade.constants import KELVIN_AT_70F

LAMINAR = 1000.0
"""Below this Reynolds number the joint is nothing but the laminar law."""
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
    turbulent = colebrook(reynolds, relative)
    if reynolds >= 1e5:
        return turbulent  # what the joint would add is below the last bit
    joined = (8 / turbulent) ** 8 + (37530 / reynolds) ** 16
    return 8 * ((8 / reynolds) ** 12 + joined**-1.5) ** (1 / 12)


def drop_of(velocity: float, diameter: float, roughness: float, density: float, mu: float) -> float:
    """Darcy-Weisbach: f / D × density × velocity² / 2 in Pa/m; m/s, m, m, kg/m³, Pa·s."""
    reynolds = density * velocity * diameter / mu
    if reynolds <= LAMINAR:
        return 32 * mu * velocity / diameter**2  # 64 / Re written out: holds down to no flow
    return darcy(reynolds, roughness / diameter) / diameter * density * velocity * velocity / 2


def drop_per_metre(airflow: float, diameter: float, roughness: float, height: float, kelvin: float) -> float:
    """drop_of for a flow, altitude and temperature: Pa/m; m³/s, m, m, m, K."""
    velocity = airflow / (math.pi / 4 * diameter * diameter)
    return drop_of(velocity, diameter, roughness, density_at(height, kelvin), viscosity(kelvin))


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
