"""Gas from the supplier's regulator to the orifices.

A fixed orifice passes a flow that goes with the square root of the pressure before it (orifice equation, from
memory); pipe and valve take pressure with the square of the flow. Flow is told as a share of the rated one.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from assistant.rig.part import Settings
from assistant.rig.unit import Unit

PIPE_DROP = 100.0
"""At rated flow from the meter to the valve's inlet, Pa (0.4 in. w.c.)."""
LIFTS = 3487.0
"""Most inlet pressure against which a valve's coil lifts its seat, Pa (14 in. w.c.: half a pound per square
inch, the usual rating of furnace valves, from memory).
"""
VALVE_DROP = 274.0
"""At rated flow through the open valve with its regulator wide open, Pa (1.1 in. w.c.)."""


@dataclass(frozen=True)
class Gas:
    """Pressures in Pa and `flow` as a share of the rated flow."""

    inlet: float
    manifold: float
    flow: float


def gas(unit: Unit, v: Settings, valve_open: bool) -> Gas:
    """Pressures and flow with the valve driven or not."""
    supply = v["gas_supply.static"] * v["gas_supply.meter"] * v["gas_supply.cock"]
    passes = valve_open and v["gas_valve.knob"] == "on" and not v["gas_valve.stuck_shut"]
    passes = passes and supply <= LIFTS
    share = 1.0 if passes else float(v["gas_valve.leaks"])
    if supply <= 0 or share <= 0:
        return Gas(supply, 0.0, 0.0)
    wanted = unit.manifold * v["gas_valve.regulator"] * v["gas_parts.spring"]
    bore = v["gas_parts.area"] * (1 - v["burners.dirt"] * 0.2)
    pipe, valve = PIPE_DROP * v["gas_supply.pipe"], VALVE_DROP * v["gas_valve.drop"] / share**2
    per_flow = bore**2 / unit.manifold  # flow^2 for each pascal before the orifice
    most = supply / (1 + (pipe + valve) * per_flow)
    manifold = min(wanted, most) if passes else most
    flow = math.sqrt(manifold * per_flow)
    return Gas(supply - pipe * flow**2, manifold, flow)
