"""The 24 V side: transformer, fuse, float switch, thermostat and its cable."""

from __future__ import annotations

from collections.abc import Mapping

from assistant.rig.circuit.network import CLOSED, OPEN, Network
from assistant.rig.circuit.transformer import Transformer
from assistant.rig.part import Settings
from assistant.rig.wiring.common import COIL_OHM, INPUT_OHM, LOGIC_OHM, contact


def build(n: Network, zoned: bool) -> None:
    """Branches; with a zone panel the thermostat hangs on it."""
    n.branch("primary_pin", "door.load", "primary.line", CLOSED)
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
    hot, heat, fan, common = (
        ("panel.r", "zone.w", "zone.g", "panel.c") if zoned else ("float.load", "w", "g", "c")
    )
    n.branch("cable_r", hot, "stat.r", 0.32)
    n.branch("cable_w", "stat.w", heat, 0.32)
    n.branch("cable_c", "stat.c", common, 0.32)
    n.branch("cable_g", "stat.g", fan, 0.32)
    n.branch("cable_y", "stat.y", "y", 0.32)
    n.branch("stat_w", "stat.r", "stat.w", OPEN)
    n.branch("stat_g", "stat.r", "stat.g", OPEN)
    n.branch("stat_y", "stat.r", "stat.y", OPEN)
    n.branch("stat_load", "stat.r", "stat.c", OPEN)
    for a, b in (("r", "c"), ("w", "c"), ("r", "w"), ("r", "g"), ("g", "c")):
        n.branch(f"{a}_{b}_short", f"stat.{a}", f"stat.{b}", OPEN)
        n.branch(f"{a}_{b}_stray", f"stat.{a}", f"stat.{b}", 1.0, farad=1.5e-9)


def update(n: Network, v: Settings, s: Mapping[str, float]) -> None:
    """Bring it to the settings and the state."""
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
    n.set("stat_g", ohm=contact(s["stat_g"] and seated and not v["thermostat.fan_contact_open"], 0.1))
    n.set("stat_y", ohm=contact(s["stat_y"] and seated, 0.1))
    n.set("stat_load", ohm=contact(v["thermostat.needs_c"] and seated, 300.0))
    for a, b in (("r", "c"), ("w", "c"), ("r", "w"), ("r", "g"), ("g", "c")):
        n.set(f"{a}_{b}_short", ohm=v[f"cable.{a}_{b}_ohm"])
