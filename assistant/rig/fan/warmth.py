"""How warm a blower motor gets: what it takes from the line and does not give to the air stays in it.

One body with a heat capacity, cooled a little by itself and much by the air it moves. Its overload opens
when the winding is too hot and closes when it has cooled, half an hour to an hour later (common practice).
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from assistant.rig.machine import Machine

CAPACITY = 1500.0
"""J/K of a third of a horsepower."""
BY_ITSELF, BY_AIR = 0.8, 3.9
"""W/K standing still, and more at the design's air."""
OPENS, CLOSES = 410.0, 338.0
"""K of the winding at which the overload opens and closes."""
SHELL_SHARE = 0.85
"""Of the winding's rise over the air that the shell has."""


@dataclass
class Fan:
    """Of one blower: `winding` in K; whether the overload is open; seconds pushed in vain, seconds unfed."""

    winding: float = 293.0
    open: bool = False
    met: bool = False
    pushed: float = 0.0
    pushes: bool = False
    unfed: float = 0.0


def step(m: Machine, seconds: float) -> None:
    """Let the motor warm up or cool."""
    fan, air = m.fan, m.v["room.temperature"]
    if not fan.met:
        fan.met, fan.winding = True, max(fan.winding, m.v["blower_cooling.found"])
    size = float(m.e.features["size"])
    psc = m.unit.features["blower"] == "psc"
    share = m.air.flow / m.unit.design_flow
    conducts = size * (BY_ITSELF + BY_AIR * min(share, 1.2) * (1 - m.v["blower_cooling.vents"]))
    if m.v["blower_cooling.vents"]:
        conducts -= size * BY_ITSELF * m.v["blower_cooling.vents"] * 0.5
    fan.winding += (_lost(m) - conducts * (fan.winding - air)) / (CAPACITY * size) * seconds
    fan.open = psc and (fan.winding > OPENS or (fan.open and fan.winding > CLOSES))
    m.e.s["overload"] = float(fan.open)


def _lost(m: Machine) -> float:
    """Watts that stay in the motor."""
    solution = m.e.solve()
    current = solution.current("blower_overload")
    taken = (solution.between("blower.feed", "blower.neutral") * current.conjugate()).real
    if m.unit.features["blower"] != "psc":
        return 0.25 * m.air.shaft + (60.0 if m.fan.pushes else 0.0)
    return max(taken - m.air.shaft, 0.0)


def shell(m: Machine) -> float:
    """K of the motor's shell."""
    air = m.v["room.temperature"]
    return air + SHELL_SHARE * (m.fan.winding - air)
