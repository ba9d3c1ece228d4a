"""How the house is wired: every wire, contact, coil and winding as a branch between the points of house.yaml.

Points of house.yaml are nodes of the network by the same name; nodes in between are its own. `earth` is the
ground bar of the panel. `update` brings the branches to the settings of the components and to the state that
contacts, motors and the igniter are in.
"""

from __future__ import annotations

import math
from collections.abc import Mapping

from assistant.rig.circuit.motor import Induction
from assistant.rig.circuit.network import CLOSED, OPEN, Network
from assistant.rig.circuit.transformer import Transformer
from assistant.rig.part import Settings

BLOWER = Induction(3.0, 3.3, 6.2, 3.3, 60.0, 10.0, 9.0, 1.7, 6)
"""A third of a horsepower, six poles, 120 V; with 10 uF it locks at about twice its plate."""
BLOWER_FARAD = 10e-6
INDUCER = Induction(14.0, 19.0, 19.0, 13.0, 150.0, 40.0, 38.0, 1.4, 2)
INDUCER_FARAD = 5e-6
LOGIC_OHM = 150.0
"""What the board itself draws from 24 V: about 4 VA."""
COIL_OHM = 400.0
"""One relay coil of the board."""
INPUT_OHM = 1500.0
"""A board's or panel's input for W, Y or G."""
SENSE_OHM = 5000.0
"""A board's sense input in the safety string."""
ROD_SERIES_OHM, ROD_FARAD, ROD_SENSE_OHM = 2.2e6, 4.7e-9, 10e6
PANEL_RATIO = 0.216
DEFAULT_STATE = {
    "door": 1.0,
    "breaker": 1.0,
    "switch": 1.0,
    "inducer": 0.0,
    "igniter": 0.0,
    "valve": 0.0,
    "blower": 0.0,
    "stat_w": 0.0,
    "stat_g": 0.0,
    "stat_y": 0.0,
    "float": 1.0,
    "limit": 1.0,
    "rollout": 1.0,
    "aux": 1.0,
    "pressure": 0.0,
    "panel": 0.0,
    "panel_power": 1.0,
    "coils": 0.0,
    "igniter_ohm": 60.0,
    "ecm_ohm": 5000.0,
    "inducer_slip": 1.0,
    "blower_slip": 1.0,
    "r_lifted": 0.0,
    "loads_lifted": 0.0,
}


def build(features: Mapping[str, object], frequency: float) -> Network:
    """The network of a house. `features`: zone_panel (yes or no), blower (psc or electronic), size (of the
    blower motor against the reference's).
    """
    n = Network("earth")
    _supply(n)
    _branch(n)
    _control(n, features["zone_panel"] == "yes")
    _string(n)
    _loads(n, features, frequency)
    return n


def _supply(n: Network) -> None:
    n.branch("leg1", "pole", "l1", 0.03, 3e-5)
    n.branch("leg2", "l2", "pole", 0.03, 3e-5)
    n.branch("service_neutral", "pole", "bar", 0.03)
    n.branch("pole_electrode", "pole", "soil", 10.0)
    n.branch("house_electrode", "earth", "soil", 15.0)
    n.branch("main_bond", "bar", "earth", 0.001)
    n.branch("house_load_1", "l1", "bar", 14.0)
    n.branch("house_load_2", "l2", "bar", 25.0)
    n.branch("outlet_line", "l2", "known.line", 0.1)
    n.branch("outlet_neutral", "bar", "known.neutral", 0.1)


def _branch(n: Network) -> None:
    n.branch("breaker", "l1", "breaker.load", 0.01)
    n.branch("branch_hot", "breaker.load", "switch.feed", 0.08)
    n.branch("branch_load", "switch.feed", "run.neutral", OPEN)
    n.branch("branch_load_ground", "switch.feed", "earth", OPEN)
    n.branch("plug_fuse", "switch.feed", "fuse.load", CLOSED)
    n.branch("service_switch", "fuse.load", "switch.load", CLOSED)
    n.branch("line_wire", "switch.load", "run.line", 0.02)
    n.branch("line_wire_ground", "run.line", "ground", OPEN)
    n.branch("branch_neutral", "run.neutral", "bar", 0.08)
    n.branch("neutral_ground", "run.neutral", "ground", OPEN)
    for name, a, b in (
        ("straight_line", "run.line", "box.line"),
        ("cross_line", "run.line", "box.neutral"),
        ("straight_neutral", "run.neutral", "box.neutral"),
        ("cross_neutral", "run.neutral", "box.line"),
    ):
        n.branch(name, a, b, 0.005)
    n.branch("ground_wire", "ground", "earth", 0.1)
    n.branch("burner_bond", "cabinet", "ground", 0.05)
    n.branch("door_switch", "box.line", "board.line", CLOSED)
    n.branch("board_neutral", "box.neutral", "board.neutral", CLOSED)
    n.branch("surge", "board.line", "board.neutral", OPEN)
    n.branch("board_leak", "board.line", "ground", OPEN)


def _control(n: Network, zoned: bool) -> None:
    n.branch("primary_pin", "board.line", "primary.line", CLOSED)
    n.branch("primary_return", "primary.neutral", "board.neutral", CLOSED)
    n.branch("primary_winding", "primary.line", "primary.inner", 0.001)
    n.branch("primary_leak", "primary.inner", "ground", OPEN)
    n.branch("secondary_winding", "secondary.inner", "secondary.r", 0.001)
    n.two_port(
        "transformer",
        ("primary.inner", "primary.neutral"),
        ("secondary.inner", "secondary.c"),
        Transformer(0.221, 12.0, 0.75, 0.012, 0.0006, 4.0, 5700.0).impedances,
    )
    for end in ("inner", "neutral"):  # half of a winding's stray capacitance at each of its ends
        n.branch(f"primary_stray_{end}", f"primary.{end}", "secondary.inner", 1.0, farad=150e-12)
        n.branch(f"primary_frame_{end}", f"primary.{end}", "ground", 1.0, farad=150e-12)
    n.branch("secondary_lead", "secondary.r", "fuse24.feed", CLOSED)
    n.branch("control_fuse", "fuse24.feed", "fuse24.load", 0.03)
    n.branch("board_r", "fuse24.load", "r", CLOSED)
    n.branch("common_pin", "secondary.c", "c", CLOSED)
    n.branch("common_bond", "c", "ground", 0.05)
    n.branch("logic", "r", "c", LOGIC_OHM)
    n.branch("coils", "r", "c", OPEN)
    n.branch("accessories", "r", "c", OPEN)
    n.branch("w_input", "w", "c", INPUT_OHM)
    n.branch("g_input", "g", "c", INPUT_OHM)
    n.branch("outdoor_coil", "y", "outdoor.common", 20.0, 0.13)
    n.branch("outdoor_return", "outdoor.common", "c", 0.5)
    n.branch("y_c_short", "y", "outdoor.common", OPEN)
    n.branch("float_lead", "r", "float.feed", CLOSED)
    n.branch("float_switch", "float.feed", "float.load", 0.02)
    hot, heat, common = ("panel.r", "zone.w", "panel.c") if zoned else ("float.load", "w", "c")
    n.branch("cable_r", hot, "stat.r", 0.32)
    n.branch("cable_w", "stat.w", heat, 0.32)
    n.branch("cable_c", "stat.c", common, 0.32)
    n.branch("cable_g", "stat.g", "g", 0.32)
    n.branch("cable_y", "stat.y", "y", 0.32)
    n.branch("stat_w", "stat.r", "stat.w", OPEN)
    n.branch("stat_g", "stat.r", "stat.g", OPEN)
    n.branch("stat_y", "stat.r", "stat.y", OPEN)
    n.branch("stat_load", "stat.r", "stat.c", OPEN)
    for a, b in (("r", "c"), ("w", "c"), ("r", "w"), ("r", "g"), ("g", "c")):
        n.branch(f"{a}_{b}_short", f"stat.{a}", f"stat.{b}", OPEN)
        n.branch(f"{a}_{b}_stray", f"stat.{a}", f"stat.{b}", 1.0, farad=1.5e-9)
    n.branch("panel_source", "panel.c", "panel.inner", 1.4)
    n.branch("panel_fuse", "panel.inner", "panel.r", CLOSED)
    n.branch("zone_input", "zone.w", "panel.c", INPUT_OHM)
    n.branch("panel_logic", "panel.r", "panel.c", 200.0)
    n.branch("panel_feed", "float.load", "panel.rh", 0.3)
    n.branch("panel_relay", "panel.rh", "panel.w", OPEN)
    n.branch("panel_wire", "panel.w", "w" if zoned else "panel.nothing", 0.3)
    n.branch("panel_common", "panel.c_out", "c", 0.3)


def _string(n: Network) -> None:
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


def _loads(n: Network, features: Mapping[str, object], frequency: float) -> None:
    psc, size = features["blower"] == "psc", float(features["size"])
    n.branch("inducer_relay", "board.line", "board.inducer", OPEN)
    n.branch("inducer_hot", "board.inducer", "inducer.line", 0.02)
    n.branch("inducer_main", "inducer.line", "inducer.inner", 0.001)
    n.branch("inducer_capacitor", "inducer.inner", "inducer.aux", 0.5, farad=INDUCER_FARAD)
    motor = INDUCER.at(frequency)
    n.two_port(
        "inducer",
        ("inducer.inner", "inducer.neutral"),
        ("inducer.aux", "inducer.neutral"),
        winding(motor, 1.0),
    )
    n.branch("inducer_short", "inducer.line", "inducer.neutral", OPEN)
    n.branch("inducer_return", "inducer.neutral", "board.neutral", 0.02)
    n.branch("inducer_leak", "inducer.inner", "cabinet", OPEN)
    n.branch("igniter_relay", "board.line", "board.igniter", OPEN)
    n.branch("igniter_hot", "board.igniter", "igniter.line", 0.02)
    n.branch("igniter", "igniter.line", "igniter.neutral", 60.0)
    n.branch("igniter_return", "igniter.neutral", "board.neutral", 0.02)
    n.branch("igniter_leak", "igniter.line", "cabinet", OPEN)
    n.branch("blower_relay", "board.line", "blower.tap", OPEN)
    n.branch("blower_hot", "blower.tap", "blower.line", 0.02)
    n.branch("blower_return", "blower.neutral", "board.neutral", 0.02)
    n.branch("blower_leak", "blower.inner", "cabinet", OPEN)
    n.branch("blower_main", "blower.line", "blower.inner", 0.001)
    n.branch("capacitor_lead", "blower.line", "capacitor.b", 0.02)
    n.branch("capacitor", "capacitor.b", "capacitor.a", 0.2, farad=BLOWER_FARAD * size)
    n.branch("blower_aux", "capacitor.a", "blower.aux", 0.001)
    n.branch("electronics", "blower.inner", "blower.neutral", OPEN)
    if psc:
        n.two_port(
            "blower",
            ("blower.inner", "blower.neutral"),
            ("blower.aux", "blower.neutral"),
            winding(BLOWER.at(frequency).sized(size), 1.0),
        )
    n.branch("rod_source", "board.line", "board.rod", ROD_SERIES_OHM, farad=ROD_FARAD)
    n.branch("rod_sense", "board.rod", "c", ROD_SENSE_OHM)
    n.branch("rod_wire", "board.rod", "rod", 0.1)
    n.branch("rod_leak", "rod", "cabinet", OPEN)


def winding(motor: Induction, slip: float):
    """A motor's two-port at a slip; at 0 Hz its bare copper."""
    z, copper = motor.impedances(slip), motor.winding_ohms()
    return lambda omega: copper if omega == 0 else z


def contact(closed: float, ohm: float = CLOSED) -> float:
    """A contact's ohm."""
    return ohm if closed else OPEN


def update(
    n: Network, v: Settings, s: Mapping[str, float], features: Mapping[str, object], frequency: float
) -> None:
    """Bring every branch to the components' settings `v` and the state `s` (see DEFAULT_STATE)."""
    volts = 0.0 if v["service.leg_open"] else v["service.volts"]
    n.set("leg1", volt=volts, ohm=OPEN if v["service.leg_open"] else 0.03)
    n.set("leg2", volt=v["service.volts"])
    n.set("service_neutral", ohm=OPEN if v["service.neutral_open"] else v["service.neutral_ohm"])
    handle = v["breaker.handle"] == "on" and s["breaker"] and not v["breaker.open"]
    n.set("breaker", ohm=contact(handle, v["breaker.ohm"] + v["breaker.lug_ohm"]))
    n.set("branch_hot", ohm=OPEN if v["branch_hot.open"] else v["branch_hot.ohm"])
    n.set("branch_load", ohm=v["branch_load.ohm"])
    n.set("branch_load_ground", ohm=v["branch_load.to_ground_ohm"])
    n.set("plug_fuse", ohm=contact(not (v["plug_fuse.fitted"] and v["plug_fuse.blown"])))
    on = v["service_switch.position"] == "on" and s["switch"] and not v["service_switch.open"]
    n.set("service_switch", ohm=contact(on, v["service_switch.ohm"]))
    n.set("line_wire", ohm=OPEN if v["line_wire.open"] else v["line_wire.ohm"])
    n.set("line_wire_ground", ohm=v["line_wire.to_ground_ohm"])
    n.set("branch_neutral", ohm=OPEN if v["branch_neutral.open"] else v["branch_neutral.ohm"])
    n.set("neutral_ground", ohm=v["branch_neutral.to_ground_ohm"])
    for way, closed in (("straight", not v["polarity.swapped"]), ("cross", v["polarity.swapped"])):
        n.set(f"{way}_line", ohm=contact(closed, 0.005))
        n.set(f"{way}_neutral", ohm=contact(closed, 0.005))
    n.set("ground_wire", ohm=OPEN if v["ground_wire.open"] else v["ground_wire.ohm"])
    n.set("burner_bond", ohm=OPEN if v["burner_bond.open"] else v["burner_bond.ohm"])
    n.set("door_switch", ohm=contact(s["door"] and not v["door_switch.open"], v["door_switch.ohm"]))
    n.set("board_neutral", ohm=contact(not v["board_plugs.neutral_open"]))
    n.set("surge", ohm=v["board.surge_ohm"])
    n.set("board_leak", ohm=v["board.leak_ohm"])
    _update_control(n, v, s, features)
    _update_string(n, v, s)
    _update_loads(n, v, s, features, frequency)


def _update_control(n: Network, v: Settings, s: Mapping[str, float], features: Mapping[str, object]) -> None:
    n.set("primary_pin", ohm=contact(not v["board_plugs.primary_open"]))
    n.set("primary_winding", ohm=contact(not v["transformer.primary_open"], 0.001))
    n.set("secondary_winding", ohm=contact(not v["transformer.secondary_open"], 0.001))
    n.set("primary_leak", ohm=v["transformer.leak_ohm"])
    n.set_pair(
        "transformer",
        Transformer(
            v["transformer.ratio"],
            v["transformer.primary_ohm"],
            v["transformer.secondary_ohm"],
            0.012,
            0.0006,
            4.0,
            v["transformer.core_ohm"],
        ).impedances,
    )
    n.set("secondary_lead", ohm=contact(not s["r_lifted"]))
    n.set("control_fuse", ohm=contact(not v["control_fuse.blown"], v["control_fuse.ohm"]))
    n.set("common_pin", ohm=contact(not v["board_plugs.common_open"]))
    n.set("logic", ohm=LOGIC_OHM)
    n.set("coils", ohm=COIL_OHM / s["coils"] if s["coils"] else OPEN)
    n.set("accessories", ohm=OPEN if s["loads_lifted"] else v["accessories.ohm"])
    n.set(
        "outdoor_coil",
        ohm=OPEN if v["outdoor_unit.open"] or s["loads_lifted"] else v["outdoor_unit.ohm"],
        henry=0.13 if v["outdoor_unit.ohm"] > 5 else 0.0,
    )
    n.set("y_c_short", ohm=OPEN if s["loads_lifted"] else v["cable.y_c_ohm"])
    n.set("float_switch", ohm=contact(s["float"] and not v["float_switch.open"], v["float_switch.ohm"]))
    n.set("cable_r", ohm=OPEN if v["cable.r_open"] else v["cable.r_ohm"])
    n.set("cable_w", ohm=OPEN if v["cable.w_open"] else v["cable.w_ohm"])
    n.set("cable_c", ohm=OPEN if v["cable.c_open"] else 0.32)
    n.set("cable_g", ohm=OPEN if v["cable.g_open"] else 0.32)
    seated = v["thermostat.seated"]
    n.set(
        "stat_w",
        ohm=contact(s["stat_w"] and seated and not v["thermostat.contact_open"], v["thermostat.contact_ohm"]),
    )
    n.set("stat_g", ohm=contact(s["stat_g"] and seated, 0.1))
    n.set("stat_y", ohm=contact(s["stat_y"] and seated, 0.1))
    n.set("stat_load", ohm=contact(v["thermostat.needs_c"] and seated, 300.0))
    for a, b in (("r", "c"), ("w", "c"), ("r", "w"), ("r", "g"), ("g", "c")):
        n.set(f"{a}_{b}_short", ohm=v[f"cable.{a}_{b}_ohm"])
    zoned = features["zone_panel"] == "yes"
    n.set("panel_source", volt=PANEL_RATIO * v["service.volts"] if zoned and s["panel_power"] else 0)
    n.set("panel_fuse", ohm=contact(not v["zone_panel.fuse"]))
    n.set("panel_relay", ohm=contact(zoned and s["panel"]))
    n.set("panel_wire", ohm=OPEN if v["panel_wire.w_open"] else 0.3)


def _update_string(n: Network, v: Settings, s: Mapping[str, float]) -> None:
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


def _update_loads(
    n: Network, v: Settings, s: Mapping[str, float], features: Mapping[str, object], frequency: float
) -> None:
    n.set("inducer_relay", ohm=contact(s["inducer"]))
    n.set("inducer_hot", ohm=contact(not v["inducer_harness.hot_open"], 0.02))
    n.set("inducer_return", ohm=contact(not v["inducer_harness.neutral_open"], 0.02))
    n.set("inducer_main", ohm=contact(v["inducer.main_open"] != 1, 0.001))
    n.set("inducer_short", ohm=0.6 if v["inducer.main_open"] == 2 else OPEN)
    n.set("inducer_capacitor", farad=INDUCER_FARAD * v["inducer.capacitor"])
    n.set("inducer_leak", ohm=v["inducer.leak_ohm"])
    n.set_pair("inducer", winding(INDUCER.at(frequency), s["inducer_slip"]))
    n.set("igniter_relay", ohm=contact(s["igniter"]))
    n.set("igniter_hot", ohm=contact(not v["igniter_harness.hot_open"], 0.02))
    n.set("igniter_return", ohm=contact(not v["igniter_harness.neutral_open"], 0.02))
    n.set("igniter", ohm=OPEN if v["igniter.open"] else s["igniter_ohm"])
    n.set("igniter_leak", ohm=v["igniter.leak_ohm"])
    psc = features["blower"] == "psc"
    n.set("blower_relay", ohm=contact(s["blower"] or not psc, v["board.relay_ohm"]))
    n.set(
        "blower_hot", ohm=contact(not v["blower_harness.hot_open"] and not v["blower_harness.parked"], 0.02)
    )
    n.set("blower_return", ohm=contact(not v["blower_harness.neutral_open"], 0.02))
    n.set("blower_leak", ohm=v["blower_motor.leak_ohm"])
    n.set("blower_main", ohm=contact(not v["blower_motor.main_open"], 0.001))
    n.set("blower_aux", ohm=contact(psc and not v["blower_motor.aux_open"], 0.001))
    n.set("capacitor_lead", ohm=contact(psc, 0.02))
    share = v["capacitor.share"]
    shorted = v["capacitor.short"]
    n.set(
        "capacitor",
        ohm=OPEN if v["capacitor.open"] else 0.2,
        farad=math.inf if shorted else BLOWER_FARAD * share * float(features["size"]),
    )
    electronics = 0.3 if v["blower_motor.module_short"] else s["ecm_ohm"]
    n.set("electronics", ohm=OPEN if psc else electronics)
    if psc:
        motor = BLOWER.at(frequency).sized(float(features["size"]))
        n.set_pair("blower", winding(motor, s["blower_slip"]))
    n.set("rod_source", ohm=OPEN if v["board.rod_dead"] else ROD_SERIES_OHM)
    n.set("rod_wire", ohm=contact(not v["flame_rod.wire_open"], 0.1))
    n.set("rod_leak", ohm=v["flame_rod.leak_ohm"])
