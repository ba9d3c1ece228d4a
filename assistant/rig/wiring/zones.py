"""The zone panel's side of the 24 V: zone inputs, damper outputs, and what calls for the fan behind it."""

from __future__ import annotations

from collections.abc import Mapping

from assistant.rig.circuit.network import CLOSED, OPEN, Network
from assistant.rig.part import Settings
from assistant.rig.wiring.common import INPUT_OHM, PANEL_RATIO, contact

ACTUATOR_OHM = 115.0
"""A damper motor of 5 VA."""
LEGS = ("close", "open")


def build(n: Network, zoned: bool) -> None:
    """Branches; without a panel its nodes hang on nothing."""
    n.branch("panel_source", "panel.c", "panel.inner", 1.4)
    n.branch("panel_fuse", "panel.inner", "panel.r", CLOSED)
    n.branch("panel_logic", "panel.r", "panel.c", 200.0)
    n.branch("panel_feed", "float.load", "panel.rh", 0.3)
    n.branch("panel_relay", "panel.rh", "panel.w", OPEN)
    n.branch("panel_fan", "panel.rh", "panel.g", OPEN)
    n.branch("panel_wire", "panel.w", "w" if zoned else "panel.nothing", 0.3)
    n.branch("panel_fan_wire", "panel.g", "g" if zoned else "panel.nowhere", 0.3)
    n.branch("panel_common", "panel.c_out", "c", 0.3)
    n.branch("humidifier_fan", "r", "g", OPEN)
    for zone in (1, 2, 3):
        w, g = ("zone.w", "zone.g") if zone == 1 else (f"zone{zone}.w", f"zone{zone}.g")
        n.branch(f"zone{zone}_w", w, "panel.c", INPUT_OHM)
        n.branch(f"zone{zone}_g", g, "panel.c", INPUT_OHM)
        n.branch(f"zone{zone}_call", "panel.r", w, OPEN)
        n.branch(f"zone{zone}_fan", "panel.r", g, OPEN)
        if not zoned:
            continue
        for leg in LEGS:
            n.branch(f"output{zone}_{leg}", "panel.r", f"panel{zone}.{leg}", OPEN)
            n.branch(f"wire{zone}_{leg}", f"panel{zone}.{leg}", f"damper{zone}.{leg}", 0.5)
            n.branch(f"motor{zone}_{leg}", f"damper{zone}.{leg}", "panel.c", OPEN)


def beside(first: float, second: float) -> float:
    """Two resistances beside each other."""
    return first * second / (first + second)


def update(n: Network, v: Settings, s: Mapping[str, float], zoned: bool) -> None:
    """Bring it to the settings and the state."""
    n.set(
        "panel_source",
        ohm=v["zone_panel.source_ohm"],
        volt=PANEL_RATIO * v["service.volts"] if zoned and s["panel_power"] else 0,
    )
    n.set("panel_fuse", ohm=contact(not v["zone_panel.fuse"]))
    n.set("panel_relay", ohm=contact(zoned and s["panel"]))
    n.set("panel_fan", ohm=contact(zoned and s["panel_g"]))
    n.set("panel_wire", ohm=OPEN if v["panel_wire.w_open"] else 0.3)
    n.set("panel_fan_wire", ohm=OPEN if v["panel_wire.g_open"] else 0.3)
    n.set("humidifier_fan", ohm=contact(v["humidifier.interlock"] and v["humidifier.demand"], 0.5))
    for zone in (1, 2, 3):
        calls = s[f"zone{zone}_heat"] if zone > 1 else 0.0
        fans = s[f"zone{zone}_g"] if zone > 1 else 0.0
        n.set(
            f"zone{zone}_call", ohm=beside(contact(calls, 0.5), v[f"zone{zone}.ghost_ohm"]) if zoned else OPEN
        )
        n.set(f"zone{zone}_fan", ohm=beside(contact(fans, 0.5), v[f"zone{zone}.r_g_ohm"]) if zoned else OPEN)
        if not zoned:
            continue
        dead = v[f"damper{zone}.dead"]
        for leg in LEGS:
            n.set(f"output{zone}_{leg}", ohm=contact(s[f"output{zone}_{leg}"]))
            n.set(f"wire{zone}_{leg}", ohm=OPEN if v[f"damper{zone}.wire_open"] else 0.5)
            n.set(
                f"motor{zone}_{leg}",
                ohm=contact(_has(v[f"damper{zone}.kind"], leg) and not dead, ACTUATOR_OHM),
            )


def _has(kind: str, leg: str) -> bool:
    return kind == "two way" or leg == ("close" if kind == "spring open" else "open")
