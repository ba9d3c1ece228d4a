"""The zone panel's side of the 24 V: zone inputs, damper outputs, and what calls for the fan behind it.

A zone's call wire (`zone2.g_wire`) and its terminal (`zone2.g`) are two nodes, so that the one can be lifted
off the other; so are a damper's terminal (`panel2.close`), its wire (`damper2.close`) and its actuator's leg
(`actuator2.close`), and the two ends of the wire to the furnace (`panel.g`, `g.wire`).
"""

from __future__ import annotations

from collections.abc import Mapping

from assistant.rig.circuit.network import CLOSED, OPEN, Network
from assistant.rig.part import Settings
from assistant.rig.wiring.common import INPUT_OHM, PANEL_RATIO, contact

PRIMARY_OHM = 2000.0
"""Of the panel's transformer, little loaded: 7 VA."""
LEGS = ("close", "open")
OTHER = {"close": "open", "open": "close"}
CALLS = ("w", "g", "y")


def terminal(zone: int, letter: str) -> str:
    """The node of a zone's terminal on the panel."""
    return f"zone.{letter}" if zone == 1 else f"zone{zone}.{letter}"


def build(n: Network, zoned: bool) -> None:
    """Branches; without a panel its nodes hang on nothing."""
    n.branch("panel_source", "panel.c", "panel.feed", 1.4)
    n.branch("panel_fuse", "panel.feed", "panel.r", CLOSED)
    n.branch("panel_logic", "panel.r", "panel.c", 200.0)
    n.branch("panel_feed", "float.load", "panel.rh", 0.3)
    n.branch("panel_relay", "panel.rh", "panel.w", OPEN)
    n.branch("panel_fan", "panel.rh", "panel.g", OPEN)
    n.branch("panel_wire", "panel.w", "w" if zoned else "panel.nothing", 0.3)
    n.branch("panel_fan_wire", "panel.g", "g.wire" if zoned else "panel.nowhere", 0.3)
    n.branch("panel_common", "panel.c_out", "c", 0.3)
    n.branch("humidifier_fan", "r", "g", OPEN)
    for zone in (1, 2, 3):
        for letter in CALLS if zoned else ("w", "g"):
            n.branch(f"zone{zone}_{letter}", terminal(zone, letter), "panel.c", INPUT_OHM)
        if zoned:
            _zone(n, zone)
    if not zoned:
        return
    n.branch("furnace_g", "g.wire", "g", CLOSED)
    n.branch("wire_r_g", "r", "g.wire", OPEN)
    n.branch("panel_primary", "panel.line", "panel.neutral", PRIMARY_OHM)
    n.branch("panel_hot", "switch.load", "panel.line", CLOSED)
    n.branch("panel_return", "panel.neutral", "run.neutral", CLOSED)
    n.branch("panel_added", "panel.r", "panel.c", OPEN)
    for letter in CALLS:  # one call on two zones' terminals
        n.branch(f"paired_{letter}", terminal(3, letter), terminal(2, letter), OPEN)


def _zone(n: Network, zone: int) -> None:
    for letter in CALLS:
        wire = terminal(zone, letter) if zone == 1 and letter != "y" else f"zone{zone}.{letter}_wire"
        if wire != terminal(zone, letter):
            n.branch(f"lead{zone}_{letter}", wire, terminal(zone, letter), CLOSED)
        n.branch(f"call{zone}_{letter}", "panel.r", wire, OPEN)
        n.branch(f"short{zone}_{letter}", "panel.r", wire, OPEN)
        n.branch(f"ghost{zone}_{letter}", "panel.r", wire, OPEN)
        n.branch(f"spot{zone}_{letter}", "panel.r", terminal(zone, letter), OPEN)
    if zone == 2:
        for letter in CALLS:  # its thermostat on zone 3's terminals, and the other way round
            n.branch(f"cross2_{letter}", f"zone2.{letter}_wire", terminal(3, letter), OPEN)
            n.branch(f"cross3_{letter}", f"zone3.{letter}_wire", terminal(2, letter), OPEN)
    for leg in LEGS:
        n.branch(f"output{zone}_{leg}", "panel.r", f"panel{zone}.{leg}", OPEN)
        n.branch(f"lift{zone}_{leg}", f"panel{zone}.{leg}", f"damper{zone}.{leg}", CLOSED)
        if zone > 1:  # its damper on the other zone's terminals
            n.branch(f"cross_zone{zone}_{leg}", f"panel{5 - zone}.{leg}", f"damper{zone}.{leg}", OPEN)
        n.branch(f"cross_leg{zone}_{leg}", f"panel{zone}.{leg}", f"damper{zone}.{OTHER[leg]}", OPEN)
        n.branch(f"wire{zone}_{leg}", f"damper{zone}.{leg}", f"actuator{zone}.{leg}", 0.5)
        n.branch(f"swap{zone}_{leg}", f"damper{zone}.{leg}", f"actuator{zone}.{OTHER[leg]}", OPEN)
        n.branch(f"motor{zone}_{leg}", f"actuator{zone}.{leg}", "panel.c", OPEN)
        n.branch(f"cable_short{zone}_{leg}", f"damper{zone}.{leg}", "panel.c", OPEN)
    n.branch(f"feed{zone}", "panel.r", f"actuator{zone}.open", OPEN)


def update(n: Network, v: Settings, s: Mapping[str, float], zoned: bool) -> None:
    """Bring it to the settings and the state."""
    n.set("panel_fuse", ohm=contact(not v["zone_panel.fuse"]))
    n.set("panel_relay", ohm=contact(zoned and s["panel"]))
    n.set("panel_fan", ohm=contact(zoned and s["panel_g"]))
    apart = v["panel_wire.w_open"] or s["furnace_lifted"] or s["panel_out_lifted"]
    n.set("panel_wire", ohm=OPEN if apart else 0.3)
    out = v["panel_wire.g_open"] or s["panel_out_lifted"]
    n.set("panel_fan_wire", ohm=OPEN if out else 0.3)
    n.set("humidifier_fan", ohm=contact(v["humidifier.interlock"] and v["humidifier.demand"], 0.5))
    n.set(
        "panel_source",
        ohm=v["zone_panel.source_ohm"],
        volt=PANEL_RATIO * v["service.volts"] if zoned and s["panel_power"] and not s["panel_off"] else 0,
    )
    if not zoned:
        return
    fed = not v["zone_panel.unfed"] and not s["panel_off"]
    n.set("panel_hot", ohm=contact(fed))
    n.set("panel_added", ohm=v["zone_panel.added_ohm"])
    n.set("furnace_g", ohm=contact(not s["furnace_lifted"]))
    n.set("wire_r_g", ohm=v["panel_wire.r_g_ohm"])
    for letter in CALLS:
        n.set(f"paired_{letter}", ohm=contact(v["zone_panel.stats_paired"]))
    for zone in (1, 2, 3):
        _calls(n, v, s, zone)
        _damper(n, v, s, zone)


def _calls(n: Network, v: Settings, s: Mapping[str, float], zone: int) -> None:
    name = f"zone{zone}"
    on_base = s[f"{name}_on_base"]
    crossed = v["zone_panel.stats_crossed"] and zone > 1
    for letter, wants in (("w", f"{name}_heat"), ("g", f"{name}_g"), ("y", f"{name}_cool")):
        stuck = on_base and v[f"{name}.stuck"] == letter
        calls = (s[wants] and on_base and (zone > 1 or letter == "y")) or stuck
        n.set(f"call{zone}_{letter}", ohm=contact(calls, 0.5))
        if zone > 1 or letter == "y":
            lifted = s["zones_lifted"] or (zone == 2 and letter == "g" and s["g_lifted"])
            n.set(f"lead{zone}_{letter}", ohm=contact(not lifted and not crossed))
            if zone > 1:
                n.set(f"cross{zone}_{letter}", ohm=contact(crossed and not lifted))
    n.set(f"ghost{zone}_w", ohm=v[f"{name}.ghost_ohm"])
    n.set(f"ghost{zone}_g", ohm=v[f"{name}.g_ghost_ohm"])
    n.set(f"short{zone}_g", ohm=v[f"{name}.r_g_ohm"])
    n.set(f"short{zone}_w", ohm=v[f"{name}.r_w_ohm"])
    n.set(f"spot{zone}_g", ohm=beside(v[f"{name}.strand_ohm"], v[f"{name}.input_ohm"]))


def _damper(n: Network, v: Settings, s: Mapping[str, float], zone: int) -> None:
    name, own = f"damper{zone}", zone == 2
    kind, dead = v[f"{name}.kind"], v[f"{name}.dead"]
    off = own and s["legs_off"]
    for leg in LEGS:
        has = _has(kind, leg)
        lifted = own and s[f"{leg}_lifted"]
        n.set(f"output{zone}_{leg}", ohm=contact(s[f"output{zone}_{leg}"]))
        crossed = v["zone_panel.crossed"] and zone > 1
        astray = v[f"{name}.crossed_leg"] or crossed
        n.set(f"lift{zone}_{leg}", ohm=contact(has and not lifted and not astray))
        if zone > 1:
            n.set(f"cross_zone{zone}_{leg}", ohm=contact(has and not lifted and crossed))
        # its wire sits on the terminal of the other leg; the lifted wire is still its own
        n.set(f"cross_leg{zone}_{OTHER[leg]}", ohm=contact(has and not lifted and v[f"{name}.crossed_leg"]))
        whole = not v[f"{name}.wire_open"]
        n.set(f"wire{zone}_{leg}", ohm=contact(whole and not v[f"{name}.swapped"], 0.5))
        n.set(f"swap{zone}_{leg}", ohm=contact(whole and v[f"{name}.swapped"], 0.5))
        n.set(f"motor{zone}_{leg}", ohm=contact(has and not dead and not off, v[f"{name}.motor_ohm"]))
        n.set(f"cable_short{zone}_{leg}", ohm=v[f"{name}.cable_ohm"] if has else OPEN)
    n.set(f"feed{zone}", ohm=v[f"{name}.feed_ohm"])


def beside(first: float, second: float) -> float:
    """Two resistances beside each other."""
    return first * second / (first + second)


def _has(kind: str, leg: str) -> bool:
    return kind == "two way" or leg == ("close" if kind == "spring open" else "open")
