"""The safety string and the gas valve that it feeds."""

from __future__ import annotations

from collections.abc import Mapping

from assistant.rig.circuit.network import CLOSED, OPEN, Network
from assistant.rig.part import Settings
from assistant.rig.wiring.common import SENSE_OHM, contact


def build(n: Network) -> None:
    """Branches from the board through every safety to the valve."""
    n.branch("string_trace", "r", "board.limit", CLOSED)
    for name, a, b in (
        ("string_feed", "board.limit", "limit.feed"),
        ("limit", "limit.feed", "limit.load"),
        ("string_middle", "limit.load", "rollout.feed"),
        ("rollout", "rollout.feed", "rollout.load"),
        ("aux_limit", "rollout.load", "aux.load"),
        ("string_end", "aux.load", "pressure.feed"),
        ("pressure_switch", "pressure.feed", "pressure.load"),
    ):
        n.branch(name, a, b, 0.02)
    for name, a, b in (
        ("bridge_limit", "limit.feed", "limit.load"),
        ("bridge_rollout", "rollout.feed", "rollout.load"),
        ("bridge_pressure", "pressure.feed", "pressure.load"),
    ):
        n.branch(name, a, b, OPEN)
    n.branch("limit_sense", "aux.load", "c", SENSE_OHM)
    n.branch("pressure_sense", "pressure.load", "c", SENSE_OHM)
    n.branch("valve_relay", "pressure.load", "board.valve", OPEN)
    n.branch("valve_hot", "board.valve", "valve.hot", 0.02)
    n.branch("valve_coil", "valve.hot", "valve.common", 38.0, 0.12)
    n.branch("valve_return", "valve.common", "c", 0.02)


def update(n: Network, v: Settings, s: Mapping[str, float]) -> None:
    """Bring it to the settings and the state."""
    n.set("string_trace", ohm=contact(not v["board.string_dead"]))
    n.set("string_feed", ohm=contact(not v["string.feed_open"], 0.02))
    n.set("string_middle", ohm=contact(not v["string.middle_open"], 0.02))
    n.set("string_end", ohm=contact(not v["string.end_open"], 0.02))
    n.set("limit", ohm=contact(s["limit"], 0.02))
    n.set("rollout", ohm=contact(s["rollout"], 0.02))
    n.set("aux_limit", ohm=contact(s["aux"], 0.02))
    n.set("pressure_switch", ohm=contact(s["pressure"], v["pressure_switch.ohm"]))
    for at in ("limit", "rollout", "pressure"):
        n.set(f"bridge_{at}", ohm=contact(v["string.bridge"] == at))
    n.set("valve_relay", ohm=contact(s["valve"]))
    n.set("valve_hot", ohm=contact(not v["valve_harness.hot_open"], 0.02))
    n.set("valve_return", ohm=contact(not v["valve_harness.common_open"], 0.02))
    ohm = v["gas_valve.coil_ohm"]
    dead = v["gas_valve.coil_open"] or v["gas_valve.knob"] == "off"  # its knob opens the coil
    n.set("valve_coil", ohm=OPEN if dead else ohm, henry=0.12 if ohm > 20 else 0.0)
