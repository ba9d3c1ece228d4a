"""Heat from the fire into the exchanger, from there into the air, and what limit, rollout and stack feel."""

from __future__ import annotations

import math
from dataclasses import dataclass

from assistant.rig.unit import Unit

HOT = 180.0
"""Exchanger over return air at design, K."""
HELD = 105.0
"""Seconds in which the exchanger takes up its design heat: its heat capacity over its conductance."""
AIR_HEAT = 1.2014 * 1005.0
"""Standard air, J per m3 and K."""
STILL = 0.06
"""Share of design flow that rises by itself with the blower off."""
DESIGN_TRANSFER = 1.079
"""Keeps the design rise where the exchanger's heat is all in the air: x / (1 - exp(-x)) at design."""
SEEN_BY_LIMIT = 0.095
"""Share of exchanger heat that a limit sees beside the air (radiation)."""


SENSOR_LAG = 45.0
"""Time constant of a sensor in a well or in still air, s."""


@dataclass
class Heat:
    """Temperatures in K."""

    exchanger: float = 293.0
    supply: float = 293.0
    limit: float = 293.0
    rollout: float = 293.0
    stack: float = 293.0
    discharge: float = 293.0
    """What a sensor in the plenum shows, a minute or so behind the air."""

    def step(
        self, unit: Unit, seconds: float, fire: float, air_flow: float, return_air: float, rolls_out: float
    ) -> None:
        """`fire`: share of the rated input that burns; `air_flow` in m3/s through the furnace."""
        share = max(air_flow / unit.design_flow, STILL)
        conducts = unit.input * unit.efficiency / HOT * (0.06 + 0.94 * share**0.7)
        capacity = HELD * unit.input * unit.efficiency / HOT
        taken = 1 - 0.10 * max(0.0, (self.exchanger - return_air) / HOT - 1)
        heat_in = unit.input * fire * unit.efficiency * max(taken, 0.3)
        target = return_air + heat_in / conducts
        fade = math.exp(-seconds * conducts / capacity)
        self.exchanger = target + (self.exchanger - target) * fade
        transfer = conducts / (AIR_HEAT * share * unit.design_flow)
        reached = (1 - math.exp(-transfer)) * DESIGN_TRANSFER
        self.supply = return_air + (self.exchanger - return_air) * min(reached, 1.0)
        felt = self.supply + SEEN_BY_LIMIT * (self.exchanger - self.supply)
        self.discharge += (self.supply - self.discharge) * (1 - math.exp(-seconds / SENSOR_LAG))
        self.limit += (felt - self.limit) * (1 - math.exp(-seconds / 40))
        rolled = (
            300.0 + 0.2 * (self.exchanger - 293.0) * (fire > 0) + 400.0 * min(rolls_out, 1.0) * (fire > 0)
        )
        self.rollout += (rolled - self.rollout) * (1 - math.exp(-seconds / 30))
        over = (self.exchanger - return_air) / HOT
        hot = (return_air + 18.0 * over) if unit.condensing else 300.0 + 166.0 * over * max(fire, 0.2) ** 0.3
        self.stack += ((hot if fire > 0 else 300.0) - self.stack) * (1 - math.exp(-seconds / 20))
