"""Air and flue gas from the intake to the vent terminal, and what the hoses of the pressure switch feel.

Three resistances in a row (intake, exchanger up to the tap, vent) and the inducer after the tap. Pressure
drops go with the square of the mass flow over the density; a blocked share b of a section's area multiplies
its resistance by 1 / (1 - b)^2 (reasoned: the velocity in what is left). The inducer's lift goes with speed
squared and density, and falls with the square of its volume flow (fan laws, AMCA 201, from memory). Flows
are told as a share of the design flow with fire.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from assistant.rig.part import Settings
from assistant.rig.unit import Unit

TIGHTEST = 0.995
"""A blocked pipe still lets a little through."""
INDUCER_TURNS = 3220.0
"""Design speed of the inducer, 1/min."""
DRY_TRAP = 1.0
"""Resistance of an empty trap and its hose against that of exchanger and intake (reasoned: 20 mm of hose)."""
FREE_FLOW = 2.4
"""Volume flow at which the inducer lifts nothing, as a share of its design flow."""
ROOM = 293.0


@dataclass(frozen=True)
class Draught:
    """`flow` of air as a share of design; pressures in Pa against the room: burner box, tap, vent inlet."""

    flow: float
    burner_box: float
    tap: float
    vent_inlet: float


def _shut(blocked: float) -> float:
    return 1 / (1 - min(blocked, TIGHTEST)) ** 2


def draught(
    unit: Unit, v: Settings, turns: float, gas_kelvin: float, flooded: float, aired: bool = False
) -> Draught:
    """Flow and pressures with the inducer at `turns` (1/min) and flue gas of that temperature at its inlet.

    `flooded`: share of the collector that stands under water, 0 to 1. `aired`: a window beside the furnace
    is open and no fan pulls.
    """
    vacuum = unit.stamp * unit.margin
    hot = 340.0 if unit.condensing else 466.0
    density = hot / gas_kelvin  # against the design's hot gas
    through = (gas_kelvin + 300.0) / (hot + 300.0)  # middle of the exchanger is hotter than its end
    intake, exchanger, out = (0.12, 0.88, 0.30) if unit.condensing else (0.03, 0.97, 0.18)
    open_intake = v["intake.blocked"] if unit.condensing else 0.0
    resist_in = vacuum * intake * _shut(open_intake) * (300.0 / 300.0)
    resist_x = vacuum * exchanger * _shut(v["exchanger.plugged"]) * through
    joint = 0.25 if v["vent.apart"] else 1.0
    resist_out = (
        vacuum * out * _shut(1 - (1 - v["vent.blocked"]) * (1 - min(flooded, TIGHTEST))) * joint / density
    )
    lift_most = vacuum * (intake + exchanger + out) / (1 - 1 / FREE_FLOW**2)
    speed = turns / INDUCER_TURNS * v["inducer.wheel"]
    if speed <= 0.02:
        natural = 0.04 * (gas_kelvin - ROOM) / (hot - ROOM)
        return Draught(natural, 0.0, 0.0, 0.0)
    lift = lift_most * density * speed**2 - (0.0 if aired else _against(unit, v))
    fall = lift_most * density / (FREE_FLOW * density) ** 2
    way_in = resist_in + resist_x
    beside = 1 + math.sqrt(way_in / (DRY_TRAP * way_in)) if v["drain.trap_dry"] and unit.condensing else 1.0
    drawn = math.sqrt(max(lift, 0.0) / (way_in / beside**2 + resist_out + fall))  # by inducer, trap's air too
    flow = drawn / beside
    box = -resist_in * flow**2
    tap = box - resist_x * flow**2
    return Draught(flow, box, tap, resist_out * drawn**2)


def _against(unit: Unit, v: Settings) -> float:
    """Pa by which fans pull the room down, against the inducer of a furnace that breathes the room."""
    return 0.0 if unit.condensing else float(v["room.pull"])


def at_switch(unit: Unit, v: Settings, pulled: Draught, hose_off: bool) -> tuple[float, float]:
    """Pressures at the switch in the inducer's hose and in the burner box's hose, Pa against the room."""
    if hose_off:
        return 0.0, pulled.burner_box
    if v["hose.blocked"]:
        tapped = 0.0
    else:
        tapped = pulled.tap * (1 - v["hose.leak"])
    if v["hose.water"]:
        tapped -= 1.3 * unit.stamp
    box = pulled.burner_box if unit.condensing else 0.0
    if v["hose.swapped"]:
        tapped, box = box, tapped
    return tapped, box
