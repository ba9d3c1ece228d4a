"""What a piece of duct work does to the pressure of the air that passes it: duct, fitting, filter, damper,
fan.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, field
from functools import lru_cache

from assistant.trade.air_density import density_at
from assistant.trade.constants import FOOT, KELVIN_AT_70F
from assistant.trade.duct_fittings import CLOSED, blade_loss
from assistant.trade.friction import drop_of, viscosity

GALVANIZED = 0.0003 * FOOT
SEEP = 1e-5
"""Below this flow, m³/s, a square law is taken as linear: pressure and flow stay in step."""


@dataclass(frozen=True)
class Power:
    """drop = `drop` × (flow / `flow`)^`exponent`: a filter, coil, grille or measured branch by one known
    point; Pa, m³/s.
    """

    drop: float
    flow: float
    exponent: float = 2.0

    def at(self, flow: float) -> tuple[float, float]:
        """Drop (Pa) and slope (Pa per m³/s) at a flow of zero or more."""
        q = max(flow, SEEP)
        drop = self.drop * (q / self.flow) ** self.exponent
        if flow < SEEP:
            return drop * flow / SEEP, drop / SEEP
        return drop, self.exponent * drop / q


@dataclass(frozen=True)
class Duct:
    """Straight duct with its fittings: diameter, length (m), sum of fitting coefficients, roughness (m)."""

    diameter: float
    length: float
    coefficient: float = 0.0
    roughness: float = GALVANIZED
    altitude: float = 0.0
    temperature: float = KELVIN_AT_70F

    def _drop(self, flow: float) -> float:
        density, mu = _air(self.altitude, self.temperature)
        velocity = flow / (math.pi / 4 * self.diameter**2)
        rub = drop_of(velocity, self.diameter, self.roughness, density, mu)
        return rub * self.length + self.coefficient * density * velocity * velocity / 2

    def at(self, flow: float) -> tuple[float, float]:
        """Drop (Pa) and slope (Pa per m³/s) at a flow of zero or more."""
        if flow < SEEP:
            drop = self._drop(SEEP)
            return drop * flow / SEEP, drop / SEEP
        step = 1e-6 * flow
        drop = self._drop(flow)
        return drop, (self._drop(flow + step) - drop) / step


@lru_cache(maxsize=64)
def _air(height: float, kelvin: float) -> tuple[float, float]:
    """Density and viscosity: a whole house shares one or two kinds of air."""
    return density_at(height, kelvin), viscosity(kelvin)


@dataclass(frozen=True)
class Damper:
    """A blade in a round duct: diameter (m), opening 0 to 1; 0 leaks as a good closed damper does."""

    diameter: float
    opening: float
    blade: str = "opposed"
    closed: float = CLOSED
    altitude: float = 0.0
    temperature: float = KELVIN_AT_70F

    def at(self, flow: float) -> tuple[float, float]:
        """Drop (Pa) and slope (Pa per m³/s) at a flow of zero or more."""
        coefficient = self.closed if self.opening <= 0 else blade_loss(self.opening, self.blade)
        area = math.pi / 4 * self.diameter**2
        per_square = coefficient * _air(self.altitude, self.temperature)[0] / (2 * area * area)
        if flow < SEEP:
            return per_square * SEEP * flow, per_square * SEEP
        return per_square * flow * flow, 2 * per_square * flow


@dataclass(frozen=True)
class Table:
    """A fan by its own table: (static Pa, flow m³/s) with static rising and flow falling; the ends are
    carried on.
    """

    points: Sequence[tuple[float, float]]

    def rise(self, flow: float) -> tuple[float, float]:
        """Static it gives (Pa) and how fast that falls with flow (Pa per m³/s, positive)."""
        p = self.points
        i = next((i for i in range(1, len(p) - 1) if flow > p[i][1]), len(p) - 1)
        (s0, q0), (s1, q1) = p[i - 1], p[i]
        slope = (s1 - s0) / (q0 - q1)
        return s0 + slope * (q0 - flow), slope


@dataclass(frozen=True)
class Constant:
    """A constant-airflow fan: holds `flow` (m³/s) while its air power stays within `limit` (W), then gives up
    air.
    """

    flow: float
    limit: float = math.inf

    def rise(self, flow: float) -> tuple[float, float]:
        """Beyond its limit: static (Pa) whose product with the flow is the limit, and how fast it falls."""
        q = max(flow, SEEP)
        return self.limit / q, self.limit / (q * q)


@dataclass(frozen=True)
class Link:
    """A way for air from node to node: its losses one after the other, or a fan that lifts the pressure.

    `room` names the node of the rooms, whose pressure is zero.
    """

    name: str
    start: str
    end: str
    losses: tuple = ()
    fan: Table | Constant | None = None
    tags: frozenset[str] = field(default_factory=frozenset)
