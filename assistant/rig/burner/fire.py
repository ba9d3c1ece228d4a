"""What burns, and what it makes: oxygen, carbon monoxide, heat, and the flame that the rod stands in."""

from __future__ import annotations

import math
from dataclasses import dataclass

from assistant.rig.part import Settings

DESIGN_AIR = 1.50
"""Air over what burning needs, at rated gas and design draught: 7.5 % oxygen."""
LIGHTS_AT = 1255.0
"""An igniter below 1,800 F lights nothing, K."""
GLOWS_AT = 950.0
FLAME_OHM = 6.9e6
LEAST_FLOW, MOST_FLOW = 0.5, 1.75
"""Shares of rated gas between which a flame sits on the burner."""


@dataclass(frozen=True)
class Fire:
    """`air`: excess-air ratio (1 = just enough). Shares of dry flue gas for oxygen and carbon monoxide."""

    air: float
    oxygen: float
    monoxide: float
    flame_ohm: float
    rolls_out: float


def air_ratio(draught_flow: float, gas_flow: float) -> float:
    """Air over what the gas needs."""
    return DESIGN_AIR * draught_flow / gas_flow if gas_flow > 0 else math.inf


def oxygen(air: float) -> float:
    """Share of oxygen in the dry flue gas of methane burnt with `air` times its air (1 or more).

    Inverse of excess = 8.52381 o / (2 - 9.52381 o) (US DOE process-heating tool documentation, read).
    """
    excess = max(air - 1, 0.0)
    return 2 * excess / (8.52381 + 9.52381 * excess)


def fire(v: Settings, gas_flow: float, draught_flow: float, blown_in: float) -> Fire:
    """The flame at those flows; `blown_in` is air that a breached exchanger lets in, as a share of design.

    Carbon monoxide rises steeply where air is short or the flame is disturbed (shape reasoned, set to 25
    ppm at design and about 120 at 37 % excess air); no standard gives such a curve.
    """
    air = air_ratio(draught_flow * (1 - 0.35 * v["burners.dirt"]), gas_flow)
    clean = oxygen(air)
    mixed = (clean * draught_flow + 0.209 * blown_in) / (draught_flow + blown_in) if draught_flow else clean
    worse = 11 * max(DESIGN_AIR - air, -0.1) + 13 * blown_in + 6 * v["burners.dirt"]
    monoxide = min(25e-6 * math.exp(worse), 0.02)
    strength = min(1.0, max(0.0, (gas_flow - 0.4) / 0.45)) * v["flame_rod.reach"]
    strength *= max(0.0, 1 - 6 * blown_in)  # a flame that waves leaves the rod
    if air < 0.9:
        strength *= 0.5
    ohm = FLAME_OHM / strength + v["flame_rod.coat_ohm"] if strength > 1e-3 else math.inf
    rolls = max(0.0, 1 - air / 0.85) + 1.3 * blown_in
    return Fire(air, mixed, monoxide, ohm, rolls)


def holds(gas_flow: float, draught_flow: float) -> bool:
    """Whether a flame stays on the burner."""
    return LEAST_FLOW <= gas_flow <= MOST_FLOW and air_ratio(draught_flow, gas_flow) > 0.35


def look(v: Settings, gas_flow: float, air: float) -> str:
    """The flame in words of house.yaml."""
    if v["burners.gap"] > 0:
        return "late or with a bang" if v["burners.gap"] < 1 else "only some burners light"
    if air < 1.15 or (v["burners.dirt"] > 0.3 and air < 1.45):
        return "yellow or sooting"
    if gas_flow < 0.75 or gas_flow > 1.3:
        return "small or lifting"
    return "even and blue"
