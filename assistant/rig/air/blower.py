"""A forward-curved blower on its ducts: speed where the motor's torque meets the wheel's, flow where fan
and ducts meet.

Flow goes with speed, static with its square, power with its cube (fan laws, AMCA 201, from memory). At one
speed such a wheel takes shaft power nearly in proportion to its flow (Euler's equation for turbomachines,
reasoned). Blocked shares shut area: resistance goes with 1 / (1 - b)^2.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from assistant.rig.part import Settings
from assistant.rig.unit import Unit

TURNS = 1075.0
"""Design speed, 1/min."""
SHAFT = 250.0
"""Shaft watts at design for the reference unit's flow."""
REFERENCE_FLOW = 0.559
RETURN, FILTER, COIL, SUPPLY = 0.24, 0.20, 0.28, 0.28
"""Shares of the rated static at design flow."""
MOST_STATIC = 2.0
"""Static at which the wheel moves nothing, over the rated one."""


@dataclass(frozen=True)
class Air:
    """`flow` in m3/s, statics in Pa against the room, `turns` in 1/min, `shaft` in W."""

    flow: float
    turns: float
    before_filter: float
    before_blower: float
    after_furnace: float
    plenum: float
    shaft: float


def curve(share: float) -> float:
    """Static over rated at design speed, by flow over design: falls from 2.0 through 1.8 at 0.69 to 1 at 1.

    Set to give 0.9 in. w.c. at 823 cfm and 0.1 at 1,410 for the reference unit, the shape of a published
    split-capacitor table (common practice).
    """
    if share < 0.44:
        return MOST_STATIC
    return 2 * (0.9 - 1.307 * (share - 0.694) - 1.609 * (share - 0.694) * (share - 1))


def _shut(blocked: float) -> float:
    return 1 / (1 - min(blocked, 0.995)) ** 2


def losses(v: Settings, coil: bool) -> Callable[[float], tuple[float, float, float, float]]:
    """Drops of return, filter, coil and supply over the rated static, by flow over design."""
    ducts = _shut(v["ducts.small"])
    pulled = RETURN * _shut(v["registers.shut"]) * ducts
    strained = FILTER * _shut(v["filter.clog"])
    cooled = COIL * _shut(v["coil.matted"]) if coil else 0.0
    pushed = SUPPLY * _shut(v["registers.shut"]) * ducts
    return lambda q: (pulled * q * q, strained * q**1.5, cooled * q * q, pushed * q * q)


def at_turns(unit: Unit, v: Settings, turns: float) -> Air:
    """Flow and statics with the wheel at a speed."""
    speed = turns / TURNS
    grip = (1 - v["wheel.slips"]) * (1 - v["wheel.caked"])
    if speed * grip < 0.01:
        return Air(0.0, turns, 0.0, 0.0, 0.0, 0.0, 0.0)
    drops = losses(v, bool(v["coil.fitted"]))
    low, high = 0.0, 2.0 * speed
    for _ in range(40):
        q = (low + high) / 2
        lift = curve(q / (speed * grip)) * (speed * grip) ** 2
        low, high = (q, high) if lift > sum(drops(q)) else (low, q)
    pulled, strained, cooled, pushed = drops(q)
    rated = unit.static_rated
    size = unit.design_flow / REFERENCE_FLOW
    shaft = SHAFT * size * speed**2 * (0.15 * speed + 0.85 * q) * (1 - v["wheel.slips"])
    return Air(
        q * unit.design_flow,
        turns,
        -pulled * rated,
        -(pulled + strained) * rated,
        (cooled + pushed) * rated,
        pushed * rated,
        shaft,
    )
