"""A forward-curved blower on its ducts: speed where the motor's torque meets the wheel's, flow where fan
and ducts meet.

Flow goes with speed, static with its square, power with its cube (fan laws, AMCA 201, from memory). At one
speed such a wheel takes shaft power nearly in proportion to its flow (Euler's equation for turbomachines,
reasoned). Blocked shares shut area: resistance goes with 1 / (1 - b)^2.
"""

from __future__ import annotations

from dataclasses import dataclass

from assistant.rig.air.ducts import Bypass, Flows, Path, Run, meet, shut
from assistant.rig.part import Settings
from assistant.rig.unit import Unit

TURNS = 1075.0
"""Design speed, 1/min."""
SHAFT = 250.0
"""Shaft watts at design for the reference unit's flow."""
REFERENCE_FLOW = 0.559
RETURN, FILTER, COIL, SUPPLY = 0.24, 0.20, 0.28, 0.28
"""Shares of the rated static at design flow."""
BACKWARDS = 0.33
"""Of its air that a wheel moves whose blades face the wrong way (common practice: a third)."""
MOST_STATIC = 2.0
"""Static at which the wheel moves nothing, over the rated one."""


@dataclass(frozen=True)
class Air:
    """Flows and pressures of the ducts, `turns` of the wheel in 1/min, power at its shaft in W."""

    ducts: Flows
    turns: float
    shaft: float

    @property
    def flow(self) -> float:
        """Through the blower, m3/s."""
        return self.ducts.total


def curve(share: float) -> float:
    """Static over rated at design speed, by flow over design: falls from 2.0 through 1.8 at 0.69 to 1 at 1.

    Set to give 0.9 in. w.c. at 823 cfm and 0.1 at 1,410 for the reference unit, the shape of a published
    split-capacitor table (common practice).
    """
    if share < 0.44:
        return MOST_STATIC
    return 2 * (0.9 - 1.307 * (share - 0.694) - 1.609 * (share - 0.694) * (share - 1))


def path(unit: Unit, v: Settings, runs: tuple[Run, ...], bypass: Bypass | None) -> Path:
    """Return, filter, coil and the ducts behind the plenum, as they stand."""
    rated, flow = unit.static_rated, unit.design_flow
    ducts = shut(v["ducts.small"]) * shut(v["registers.shut"]) * (1 - v["ducts.apart"])
    coil = COIL * rated / flow**2 * shut(v["coil.matted"]) if v["coil.fitted"] else 0.0
    coil *= 1 - v["ducts.apart"]
    strainer = (FILTER * rated * shut(v["filter.clog"]) * (1 - v["ducts.apart"]), flow, 1.5)
    return Path(RETURN * rated / flow**2 * ducts, strainer, coil, runs, bypass)


def supply_drop(unit: Unit, v: Settings) -> float:
    """Drop of the supply ducts at design flow with every damper open, Pa."""
    lost = (1 - v["air_way.lost"]) ** 2  # what leaves before the ducts does not pass through them
    ducts = shut(v["ducts.small"]) * shut(v["registers.shut"]) * (1 - v["ducts.apart"]) * lost
    return SUPPLY * unit.static_rated * ducts


def at_turns(unit: Unit, v: Settings, turns: float, ducts: Path) -> Air:
    """Flow and statics with the wheel at a speed."""
    speed = turns / TURNS
    grip = (1 - v["wheel.slips"]) * (1 - v["wheel.caked"])
    if bool(v["wheel_fit.backwards"]) != bool(v["blower_motor.reversed"]):
        grip *= BACKWARDS
    turned = speed * grip
    if turned < 0.01:
        return Air(Flows(0.0, 0.0, 0.0, 0.0, 0.0, {}, 0.0), turns, 0.0)
    flow = unit.design_flow

    def lift(q: float) -> float:
        return curve(q / flow / turned) * turned**2 * unit.static_rated

    met = meet(ducts, lift, 2.0 * speed * flow)
    share = met.total / flow
    shaft = SHAFT * flow / REFERENCE_FLOW * speed**2 * (0.15 * speed + 0.85 * share) * (1 - v["wheel.slips"])
    return Air(met, turns, shaft)
