"""Where the blower's points are: clamps, ohms with leads off, sizes of filter and trunks, shell and speed."""

from __future__ import annotations

import math
from collections.abc import Callable

from assistant.rig.fan.warmth import shell
from assistant.rig.machine import Machine

FACE = 1.35
"""m/s through a filter that was sized for its air (266 ft/min)."""
ROUGH, FRICTION, RUN = 0.019, 25.0, 30.48
"""Friction factor, Pa lost in the trunks' 30.48 m (100 ft) at design: 0.1 in. w.c."""
DENSITY = 1.2014


def _told(m: Machine) -> float:
    """Air of the table inside the door for the setting as found, m3/s."""
    return m.unit.design_flow * max(float(m.v["blower_settings.heat"]), 0.2)


def _filter_side(m: Machine) -> float:
    return math.sqrt(m.unit.design_flow / FACE)


def _trunk(m: Machine) -> float:
    """Diameter in m of a round trunk that loses what trunks of this house lose (Darcy and Weisbach)."""
    flow = m.unit.design_flow
    whole = (ROUGH * RUN * DENSITY / 2 * (4 * flow / math.pi) ** 2 / FRICTION) ** 0.2
    return whole * (1 - m.v["ducts.small"]) ** 0.4


AIR: dict[tuple[str, str], Callable[[Machine], float]] = {
    ("temperature", "motor.shell"): shell,
    ("speed", "blower.shaft"): lambda m: m.air.turns / 60,
    ("airflow", "return.air"): _told,
    ("length", "static.filter"): _filter_side,
    ("length", "static.return"): _trunk,
    ("length", "static.supply"): _trunk,
}
CLAMPS = {"board.fan": "fan_lead", "board.blower": "heat_lead"}
BLOWER = (
    "blower_overload",
    "blower_main",
    "blower",
    "electronics",
    "capacitor_lead",
    "capacitor",
    "blower_aux",
)
LEAD = ("fan_lead", "choke", "choke_lead", "blower_hot")
SHELL = ("blower_leak", "blower_weak", "blower_track", "motor_frame")
OHMS: dict[frozenset[str], tuple[str, ...]] = {
    frozenset(pair): branches
    for pair, branches in (
        (("board.fan", "blower.line"), LEAD),
        (("choke.feed", "choke.load"), ("choke",)),
        (("board.blower", "blower.line"), ("heat_lead",)),
        (("board.blower", "blower.neutral"), ("heat_lead", "heat_tap", "blower_hot", "blower_plug", *BLOWER)),
        (("capacitor.a", "blower.neutral"), ("blower_aux", "blower")),
        (("blower.line", "motor.shell"), (*BLOWER, *SHELL)),
        (("motor.one", "motor.two"), ("half_one", "half_two")),
        (("motor.two", "motor.three"), ("half_two", "half_three")),
        (("motor.one", "motor.three"), ("half_one", "half_three")),
        (("motor.one", "motor.shell"), ("half_one", "half_leak", "half_ground")),
        (("board.command", "blower.command"), ("command_wire", "command_common")),
    )
}
"""What is between two points with its leads off."""
