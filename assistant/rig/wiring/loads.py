"""What the board drives at line voltage (inducer, igniter, blower), and the flame rod."""

from __future__ import annotations

import math
from collections.abc import Mapping

from assistant.rig.circuit.network import OPEN, Network
from assistant.rig.part import Settings
from assistant.rig.wiring.common import (
    BLOWER_FARAD,
    INDUCER_FARAD,
    ROD_FARAD,
    ROD_SENSE_OHM,
    ROD_SERIES_OHM,
    blower_motor,
    contact,
    inducer_motor,
    winding,
)


def build(n: Network, features: Mapping[str, object], frequency: float) -> None:
    """Branches, windings and the rod."""
    psc, size = features["blower"] == "psc", float(features["size"])
    n.branch("inducer_relay", "board.line", "board.inducer", OPEN)
    n.branch("inducer_hot", "board.inducer", "inducer.line", 0.02)
    n.branch("inducer_plug", "inducer.line", "inducer.pin", 0.01)
    n.branch("inducer_main", "inducer.pin", "inducer.inner", 0.001)
    n.branch("inducer_capacitor", "inducer.inner", "inducer.aux", 0.5, farad=INDUCER_FARAD)
    motor = inducer_motor(frequency)
    n.two_port(
        "inducer",
        ("inducer.inner", "inducer.neutral"),
        ("inducer.aux", "inducer.neutral"),
        winding(motor, 1.0),
    )
    n.branch("inducer_short", "inducer.pin", "inducer.neutral", OPEN)
    n.branch("inducer_return", "inducer.neutral", "board.neutral", 0.02)
    n.branch("inducer_leak", "inducer.inner", "cabinet", OPEN)
    n.branch("igniter_relay", "board.line", "board.igniter", OPEN)
    n.branch("igniter_hot", "board.igniter", "igniter.line", 0.02)
    n.branch("igniter_plug", "igniter.line", "igniter.pin", 0.01)
    n.branch("igniter", "igniter.pin", "igniter.neutral", 60.0)
    n.branch("igniter_return", "igniter.neutral", "board.neutral", 0.02)
    n.branch("igniter_leak", "igniter.pin", "cabinet", OPEN)
    n.branch("blower_relay", "board.line", "board.blower", OPEN)
    n.branch("blower_hot", "blower.tap", "blower.line", 0.02)
    n.branch("blower_return", "blower.neutral", "board.neutral", 0.02)
    n.branch("blower_leak", "blower.inner", "cabinet", OPEN)
    n.branch("blower_main", "blower.feed", "blower.inner", 0.001)
    n.branch("capacitor_lead", "blower.feed", "capacitor.b", 0.02)
    n.branch("capacitor", "capacitor.b", "capacitor.a", 0.2, farad=BLOWER_FARAD * size)
    n.branch("blower_aux", "capacitor.a", "blower.aux", 0.001)
    n.branch("electronics", "blower.inner", "blower.neutral", OPEN)
    if psc:
        n.two_port(
            "blower",
            ("blower.inner", "blower.neutral"),
            ("blower.aux", "blower.neutral"),
            winding(blower_motor(frequency, size), 1.0),
        )
    n.branch("rod_source", "board.line", "board.rod", ROD_SERIES_OHM, farad=ROD_FARAD)
    n.branch("rod_sense", "board.rod", "c", ROD_SENSE_OHM)
    n.branch("rod_wire", "board.rod", "rod", 0.1)
    n.branch("rod_leak", "rod", "cabinet", OPEN)


def update(
    n: Network, v: Settings, s: Mapping[str, float], features: Mapping[str, object], frequency: float
) -> None:
    """Bring it to the settings and the state."""
    n.set("inducer_relay", ohm=contact(s["inducer"]))
    plugged = s["motors_plugged"] and not v["inducer_harness.hot_open"]
    n.set("inducer_hot", ohm=contact(plugged, v["inducer_harness.ohm"]))
    n.set("inducer_return", ohm=contact(not v["inducer_harness.neutral_open"], 0.02))
    n.set("inducer_plug", ohm=contact(not v["inducer_harness.plug_open"]))
    n.set("inducer_main", ohm=contact(v["inducer.main_open"] != 1, 0.001))
    n.set("inducer_short", ohm=0.6 if v["inducer.main_open"] == 2 else OPEN)
    n.set("inducer_capacitor", farad=INDUCER_FARAD * v["inducer.capacitor"])
    n.set("inducer_leak", ohm=v["inducer.leak_ohm"])
    n.set_pair("inducer", winding(inducer_motor(frequency), s["inducer_slip"]))
    n.set("igniter_relay", ohm=contact(s["igniter"]))
    n.set("igniter_hot", ohm=contact(s["motors_plugged"] and not v["igniter_harness.hot_open"], 0.02))
    n.set("igniter_return", ohm=contact(not v["igniter_harness.neutral_open"], 0.02))
    n.set("igniter_plug", ohm=contact(not v["igniter_harness.plug_open"]))
    n.set("igniter", ohm=OPEN if v["igniter.open"] else s["igniter_ohm"])
    n.set("igniter_leak", ohm=v["igniter.leak_ohm"])
    psc = features["blower"] == "psc"
    n.set("blower_relay", ohm=contact(s["blower"] or not psc, v["board.relay_ohm"]))
    lead = s["motors_plugged"] and not v["blower_harness.hot_open"]
    n.set("blower_hot", ohm=contact(lead, v["blower_leads.hot_ohm"]))
    n.set("blower_return", ohm=contact(not v["blower_harness.neutral_open"], v["blower_leads.neutral_ohm"]))
    n.set("blower_leak", ohm=v["blower_motor.leak_ohm"])
    n.set("blower_main", ohm=contact(not v["blower_motor.main_open"], 0.001))
    n.set("blower_aux", ohm=contact(psc and not v["blower_motor.start_open"], 0.001))
    n.set("capacitor_lead", ohm=contact(psc, 0.02))
    size = float(features["size"]) * v["blower_motor.size"]
    share = v["capacitor.share"]
    shorted = v["capacitor.short"]
    n.set(
        "capacitor",
        ohm=OPEN if v["capacitor.open"] else 0.2,
        farad=math.inf if shorted else BLOWER_FARAD * share * size,
    )
    electronics = 0.3 if v["blower_motor.module_short"] else s["ecm_ohm"]
    n.set("electronics", ohm=OPEN if psc else electronics)
    if psc:
        motor = blower_motor(frequency, size, v["blower_rotor.bars"], v["blower_rotor.turns_shorted"])
        n.set_pair("blower", winding(motor, s["blower_slip"]))
    n.set("rod_source", ohm=OPEN if v["board.rod_dead"] else ROD_SERIES_OHM)
    n.set("rod_wire", ohm=contact(not v["flame_rod.wire_open"], 0.1))
    n.set("rod_leak", ohm=v["flame_rod.leak_ohm"])
