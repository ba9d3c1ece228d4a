"""The branch beside the furnace: the device ahead of it, other loads, and every place where a wire may touch.

Order from the panel: breaker, its terminal, the device with a test button, the tap where other loads hang,
the service switch. A weak place conducts once its insulation has let go (see circuit/weak.py).
"""

from __future__ import annotations

from collections.abc import Mapping

from assistant.rig.circuit.network import CLOSED, OPEN, Network
from assistant.rig.part import Settings
from assistant.rig.wiring.common import contact

HOME_OHM = 0.02
BESIDE_HOT, BESIDE_WHITE = HOME_OHM + CLOSED, CLOSED
"""What of the ohm of the branch's hot and white wire lies on the panel's side of the tap."""
OTHERS_OHM = 60.0
"""A pump with its float up: 2 A."""
FILM_OHM = 2e4
"""A wet track over a board as an ohmmeter reads it (reasoned)."""
ARC_OHM = 0.3
"""Where insulation has let go."""
BRIDGE_OHM = 2e4
"""The rectifier between a module's pins and its windings as an ohmmeter reads it (reasoned)."""

WEAK: dict[str, tuple[str, str, str]] = {
    "board_weak": ("board.line", "ground", "board.lets_go"),
    "others_weak": ("accessory.line", "earth", "branch_load.lets_go"),
    "cable_weak": ("switch.feed", "earth", "branch_hot.lets_go"),
    "blower_weak": ("blower.inner", "cabinet", "blower_motor.lets_go"),
    "inducer_weak": ("inducer.inner", "cabinet", "inducer.lets_go"),
    "film_board": ("board.line", "ground", ""),
    "film_run": ("run.line", "earth", ""),
    "bridge": ("blower.inner", "motor.one", ""),
}
"""Branch -> its ends and the setting with the peak volts at which it lets go; without one, see weak.py."""


def build(n: Network) -> None:
    """Branches."""
    n.branch("breaker_terminal", "breaker.lug", "breaker.load", 0.002)
    n.branch("home_run", "breaker.load", "device.line", HOME_OHM)
    n.branch("device", "device.line", "branch.tap", CLOSED)
    n.branch("device_neutral", "branch.return", "bar", CLOSED)
    n.branch("shared_neutral", "l2", "branch.return", OPEN)
    n.branch("panel_bar", "panel.ground", "earth", 0.001)
    n.branch("accessory_plug", "branch.tap", "accessory.line", CLOSED)
    n.branch("accessory", "accessory.line", "accessory.neutral", OPEN)
    n.branch("accessory_short", "accessory.line", "accessory.neutral", OPEN)
    n.branch("accessory_return", "accessory.neutral", "branch.return", CLOSED)
    n.branch("accessory_ground", "accessory.line", "earth", OPEN)
    n.branch("accessory_filter", "accessory.line", "earth", OPEN, farad=1e-12)
    n.branch("cable_ground", "switch.feed", "earth", OPEN)
    n.branch("cable_across", "switch.feed", "branch.return", OPEN)
    n.branch("run_across", "run.line", "run.neutral", OPEN)
    n.branch("wire_ground", "box.line", "ground", OPEN)
    n.branch("wire_across", "box.line", "box.neutral", OPEN)
    n.branch("added_load", "board.line", "board.neutral", OPEN)
    n.branch("blower_lead_ground", "blower.line", "cabinet", OPEN)
    n.branch("inducer_lead_ground", "inducer.line", "cabinet", OPEN)
    n.branch("igniter_lead_ground", "igniter.line", "cabinet", OPEN)
    n.branch("primary_lead_ground", "primary.line", "ground", OPEN)
    n.branch("blower_short", "blower.inner", "blower.neutral", OPEN)
    n.branch("blower_taps", "blower.inner", "blower.neutral", OPEN)
    n.branch("igniter_short", "igniter.pin", "igniter.neutral", OPEN)
    n.branch("igniter_hot_ground", "igniter.pin", "cabinet", OPEN)
    n.branch("module_ground", "blower.inner", "cabinet", OPEN)
    n.branch("module_filter", "blower.inner", "cabinet", OPEN, farad=1e-12)
    n.branch("half_ground", "motor.one", "motor.shell", OPEN)
    n.branch("motor_frame", "motor.shell", "cabinet", 0.01)
    for name, (a, b, _) in WEAK.items():
        n.branch(name, a, b, OPEN)


def update(n: Network, v: Settings, s: Mapping[str, float], psc: bool) -> None:
    """Bring it to the settings and the state."""
    n.set("breaker_terminal", ohm=v["breaker.lug_ohm"])
    n.set("device", ohm=contact(s["device"]))
    white = s["white"] and (s["device"] or v["ground_fault.kind"] != "receptacle")
    n.set("device_neutral", ohm=contact(white))
    n.set("shared_neutral", ohm=v["branch_neutral.shared_ohm"])
    n.set("accessory_plug", ohm=contact(s["others_plugged"]))
    n.set("accessory", ohm=others_ohm(v, s["others_heat"]) if s["others_on"] else OPEN)
    n.set("accessory_short", ohm=v["branch_load.across_ohm"])
    n.set("accessory_ground", ohm=v["branch_load.to_ground_ohm"])
    farad = v["branch_load.filter_farad"]
    n.set("accessory_filter", ohm=1.0 if farad else OPEN, farad=farad or 1e-12)
    n.set("cable_ground", ohm=v["branch_hot.to_ground_ohm"])
    n.set("cable_across", ohm=v["branch_hot.across_ohm"])
    n.set("run_across", ohm=v["line_wire.across_ohm"])
    n.set("wire_ground", ohm=_wire_ground(v, s))
    n.set("wire_across", ohm=v["furnace_wire.across_ohm"])
    n.set("added_load", ohm=v["added_load.ohm"] if s["blower"] or s["fan"] else OPEN)
    n.set("blower_lead_ground", ohm=v["blower_harness.to_ground_ohm"])
    n.set("inducer_lead_ground", ohm=v["inducer_harness.to_ground_ohm"])
    n.set("igniter_lead_ground", ohm=v["igniter_harness.to_ground_ohm"])
    n.set("primary_lead_ground", ohm=v["transformer_leads.to_ground_ohm"])
    n.set("blower_short", ohm=v["blower_motor.short_ohm"])
    n.set("blower_taps", ohm=v["blower_harness.joined_ohm"] if psc else OPEN)
    n.set("igniter_short", ohm=v["igniter.short_ohm"])
    glows = s["igniter_glows"]
    hot = ARC_OHM if v["igniter.touches_hot"] else v["igniter.leaks_hot_ohm"]
    n.set("igniter_hot_ground", ohm=hot if glows else OPEN)
    n.set("module_ground", ohm=OPEN if psc else v["blower_motor.module_leak_ohm"])
    farad = 0.0 if psc else v["blower_motor.filter_farad"]
    n.set("module_filter", ohm=1.0 if farad else OPEN, farad=farad or 1e-12)
    n.set("half_ground", ohm=OPEN if psc else v["blower_motor.half_leak_ohm"])
    for name in WEAK:
        n.set(name, ohm=ARC_OHM if s[name] else OPEN)
    if not s["film_board"]:
        n.set("film_board", ohm=FILM_OHM / s["wet_board"] if s["wet_board"] > 0.001 else OPEN)
    if not s["film_run"]:
        n.set("film_run", ohm=FILM_OHM / s["wet_run"] if s["wet_run"] > 0.001 else OPEN)
    if not s["bridge"]:
        n.set("bridge", ohm=OPEN if psc else BRIDGE_OHM)


def others_ohm(v: Settings, heat: float) -> float:
    """All other loads of the branch beside each other; one that climbs takes more the longer it runs."""
    usual = OTHERS_OHM if v["branch_load.fitted"] else OPEN
    more = v["branch_load.ohm"] / (1 + v["branch_load.grows"] * heat)
    return usual * more / (usual + more)


def _wire_ground(v: Settings, s: Mapping[str, float]) -> float:
    if s["casing"] >= v["furnace_wire.touches_at"]:
        return ARC_OHM
    return min(v["furnace_wire.to_ground_ohm"], v["furnace_wire.touches_ohm"] if s["moved"] else OPEN)
