"""Inducer and blower in time: speed from the torque of the motor at its volts against what it turns."""

from __future__ import annotations

import math
from collections.abc import Mapping
from typing import TYPE_CHECKING

from assistant.rig import wiring
from assistant.rig.air.blower import Air, at_turns, path, supply_drop
from assistant.rig.air.ducts import Flows
from assistant.rig.burner.vent import draught
from assistant.rig.circuit.torque import table, turned

if TYPE_CHECKING:
    from assistant.rig.machine import Machine

SYNCHRONOUS = 3600.0
BLOWER_SYNCHRONOUS = 1200.0
SLIPS = 200
"""Currents are worked out anew for each 1/200 of slip."""
INDUCER_LOAD = 0.2
"""N m of the inducer's wheel at design."""
COLLECTOR = 0.12
"""Depth of water in m at which a condensing furnace's collector is full."""
RUBS = 0.06
"""N m with which bearings hold a blower that stands still or turns."""
MOST_KEPT = 4000
STILL = Air(Flows(0.0, 0.0, 0.0, 0.0, 0.0, {}, 0.0), 0.0, 0.0)


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
    key = (
        round(turns, -1),
        round(m.heat.stack),
        round(flooded, 2),
        e.version,
        m.hands["intake_open"],
        m.hands["vent_open"],
    )
    if key != m.drawn:
        m.drawn = key
        settings: Mapping = v
        if m.hands["intake_open"] or m.hands["vent_open"]:
            settings = {**v, "intake.blocked": 0.0 if m.hands["intake_open"] else v["intake.blocked"]}
            if m.hands["vent_open"]:
                settings["vent.blocked"] = 0.0
        m.draught = draught(m.unit, settings, turns, m.heat.stack, flooded)


def blower(m: Machine, seconds: float) -> None:
    """Let the blower follow its volts and the ducts."""
    volts = m.e.volts("blower.inner", "blower.neutral")
    if m.unit.features["blower"] == "psc":
        _split_capacitor(m, volts, seconds)
    else:
        _electronic(m, volts, seconds)


def _split_capacitor(m: Machine, volts: float, seconds: float) -> None:
    e, v = m.e, m.v
    if volts > 1 or m.blower_slip < 1:
        size = float(e.features["size"]) * v["blower_motor.size"]
        motor = wiring.blower_motor(m.unit.frequency, size)
        farad = 0.0 if v["capacitor.open"] else wiring.BLOWER_FARAD * size * v["capacitor.share"]
        farad = math.inf if v["capacitor.short"] else farad
        torques = table(motor, farad, not v["blower_motor.main_open"], not v["blower_motor.start_open"], 0.2)
        synchronous = motor.synchronous * 30 / math.pi
        turns = max((1 - m.blower_slip) * synchronous, 1.0)
        air = _air(m, turns)
        load = air.shaft / (turns * math.pi / 30) * (synchronous / turns) ** 2
        load += (v["wheel.rubs"] + v["blower_motor.binds"]) * size
        stuck = v["blower_motor.seized"] or v["wheel.jammed"]
        m.blower_slip = (
            1.0
            if stuck
            else turned(
                m.blower_slip,
                torques,
                volts,
                motor.synchronous,
                0.05 * size,
                load,
                v["blower_motor.drag"] * size + RUBS,
                seconds,
            )
        )
    e.s["blower_slip"] = round(m.blower_slip * SLIPS) / SLIPS
    m.air = _air(m, (1 - m.blower_slip) * BLOWER_SYNCHRONOUS * m.unit.frequency / 60)


def _electronic(m: Machine, volts: float, seconds: float) -> None:
    e, v = m.e, m.v
    turns = m.air.turns
    fed = volts > 85 and e.s["blower"] and not v["blower_harness.command_open"]
    stuck = v["blower_motor.seized"] or v["wheel.jammed"] or v["blower_motor.module_dead"]
    most = _air(m, 1500.0).flow if fed else 0.0
    if not fed or stuck:
        wanted = 0.0
    elif most < m.unit.design_flow:
        wanted = 1500.0
    else:
        low, high = 0.0, 1500.0
        for _ in range(25):
            middle = (low + high) / 2
            low, high = (middle, high) if _air(m, middle).flow < m.unit.design_flow else (low, middle)
        wanted = high
    turns += (wanted - turns) * (1 - math.exp(-seconds / 6))
    m.air = _air(m, turns if turns > 5 else 0.0)
    watts = max(m.air.shaft / 0.75 + 8.0, 8.0)
    e.s["ecm_ohm"] = round(120.0 * 120.0 * 0.62 / watts, 1)


def _air(m: Machine, turns: float) -> Air:
    turns *= m.v["fan_switch.over"]
    if turns < 5:
        return STILL
    arm = m.zoning.people.arm_pushed
    key = (round(turns), m.e.version, arm, *(round(blade, 2) for blade in m.zoning.blade.values()))
    if key not in m.airs:
        if len(m.airs) > MOST_KEPT:
            m.airs.clear()
        drop = supply_drop(m.unit, m.v)
        ducts = path(m.unit, m.v, m.zoning.runs(m, drop), m.zoning.bypass(m, drop))
        m.airs[key] = at_turns(m.unit, m.v, key[0], ducts)
    return m.airs[key]
