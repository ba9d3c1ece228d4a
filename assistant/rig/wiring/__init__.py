"""How the house is wired: every wire, contact, coil and winding as a branch between the points of house.yaml.

Points of house.yaml are nodes of the network by the same name; nodes in between are its own. `earth` is the
ground bar of the panel. `update` brings the branches to the settings of the components and to the state that
contacts, motors and the igniter are in.
"""

from __future__ import annotations

from collections.abc import Mapping

from assistant.rig.circuit.network import Network
from assistant.rig.part import Settings
from assistant.rig.wiring import branch, control, fan, line, loads, string, zones
from assistant.rig.wiring.common import (
    BLOWER,
    BLOWER_FARAD,
    DEFAULT_STATE,
    INDUCER,
    INDUCER_FARAD,
    blower_motor,
    contact,
    inducer_motor,
    winding,
)

__all__ = [
    "BLOWER",
    "BLOWER_FARAD",
    "DEFAULT_STATE",
    "INDUCER",
    "INDUCER_FARAD",
    "blower_motor",
    "build",
    "contact",
    "inducer_motor",
    "update",
    "winding",
]


def build(features: Mapping[str, object], frequency: float) -> Network:
    """The network of a house. `features`: zone_panel (yes or no), blower (see unit.FEATURES), size (of the
    blower motor against the reference's).
    """
    n = Network("earth")
    line.build(n)
    branch.build(n)
    control.build(n, features["zone_panel"] == "yes")
    zones.build(n, features["zone_panel"] == "yes")
    string.build(n)
    loads.build(n, features, frequency)
    fan.build(n)
    return n


def update(
    n: Network, v: Settings, s: Mapping[str, float], features: Mapping[str, object], frequency: float
) -> None:
    """Bring every branch to the components' settings `v` and the state `s` (see DEFAULT_STATE)."""
    line.update(n, v, s)
    branch.update(n, v, s, features["blower"] == "psc")
    control.update(n, v, s)
    zones.update(n, v, s, features["zone_panel"] == "yes")
    string.update(n, v, s)
    loads.update(n, v, s, features, frequency)
    fan.update(n, v, s, str(features["blower"]))
