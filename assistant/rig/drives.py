"""The inducer in time: speed from the torque of the motor at its volts against what it turns."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING

from assistant.rig import wiring
from assistant.rig.burner.vent import draught
from assistant.rig.circuit.torque import table, turned

if TYPE_CHECKING:
    from assistant.rig.machine import Machine

SYNCHRONOUS = 3600.0
SLIPS = 200
"""Currents are worked out anew for each 1/200 of slip."""
INDUCER_LOAD = 0.2
"""N m of the inducer's wheel at design."""
COLLECTOR = 0.12
"""Depth of water in m at which a condensing furnace's collector is full."""


def inducer(m: Machine, seconds: float) -> None:
    """Let the inducer follow its volts and its load, and the draught follow the inducer."""
    e, v = m.e, m.v
    volts = e.volts("inducer.inner", "inducer.neutral")
    if volts > 1 or m.inducer_slip < 1:
        motor = wiring.inducer_motor(m.unit.frequency)
        whole = v["inducer.main_open"] == 0
        torques = table(
            motor, wiring.INDUCER_FARAD * v["inducer.capacitor"], whole, not v["inducer.start_open"], 0.5
        )
        wet = 0.25 if v["drain.level"] > 0.9 * COLLECTOR else 0.0
        density = 466.0 / max(m.heat.stack, 293.0) * (0.55 + 0.45 * min(m.draught.flow, 1.5))
        stuck = v["inducer.seized"]
        slip = (
            1.0
            if stuck
            else turned(
                m.inducer_slip,
                torques,
                volts,
                motor.synchronous,
                0.0006,
                INDUCER_LOAD * 1.33 * density,
                v["inducer.drag"] + wet,
                seconds,
            )
        )
        m.inducer_slip = slip
    e.s["inducer_slip"] = round(m.inducer_slip * SLIPS) / SLIPS
    turns = (1 - m.inducer_slip) * SYNCHRONOUS * m.unit.frequency / 60
    flooded = min(v["drain.level"] / COLLECTOR, 1.0) if m.unit.condensing else 0.0
    aired = bool(m.hands.get("window"))
    key = (
        round(turns, -1),
        round(m.heat.stack),
        round(flooded, 2),
        e.version,
        m.hands["intake_open"],
        m.hands["vent_open"],
        aired,
    )
    if key != m.drawn:
        m.drawn = key
        settings: Mapping = v
        if m.hands["intake_open"] or m.hands["vent_open"]:
            settings = {**v, "intake.blocked": 0.0 if m.hands["intake_open"] else v["intake.blocked"]}
            if m.hands["vent_open"]:
                settings["vent.blocked"] = 0.0
        m.draught = draught(m.unit, settings, turns, m.heat.stack, flooded, aired)
