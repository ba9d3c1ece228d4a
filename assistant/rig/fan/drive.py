"""The blower in time: a split-capacitor motor by its torque, one with electronics by what these do.

A split-capacitor motor turns what its torque at its volts can turn. Electronics feed their motor as long as
they have line, hear a command and are not locked out; they push against a rotor that does not turn for a
minute and then give up until they had no power for minutes (common practice).
"""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from assistant.rig import wiring
from assistant.rig.air.blower import Air, at_turns, path, supply_drop
from assistant.rig.air.ducts import Flows
from assistant.rig.circuit.torque import table, turned
from assistant.rig.fan import warmth
from assistant.rig.fan.outputs import told

if TYPE_CHECKING:
    from assistant.rig.machine import Machine

BLOWER_SYNCHRONOUS = 1200.0
SLIPS = 200
"""Currents are worked out anew for each 1/200 of slip."""
RUBS, STICKS = 0.06, 0.12
"""N m with which sound bearings hold a blower that turns, and one that stands still."""
MOST_KEPT = 4000
STILL = Air(Flows(0.0, 0.0, 0.0, 0.0, 0.0, {}, 0.0), 0.0, 0.0)
LEAST_VOLTS = 85.0
MOST_TURNS = 1500.0
GIVES_UP, FORGETS = 60.0, 240.0
"""Seconds of pushing against a rotor that stands, and seconds without power that clear a lockout."""
TORQUE = 2.3
"""N m of a constant-torque motor on its usual tap, for the reference's flow."""
HALF_RUNS, HALF_LEAKS = 2.2, 1e5
"""Ohm of one of a motor half's windings with which it still runs, half again over its sisters, and ohm to its
shell; electronics stop at more unequal currents or a ground (reasoned).
"""
STANDBY, PUSHES = 8.0, 130.0
"""Watts that electronics take at rest, and against a rotor that stands."""


def blower(m: Machine, seconds: float) -> None:
    """Let the blower follow its volts, its command and the ducts."""
    if m.unit.features["blower"] == "psc":
        _split_capacitor(m, m.e.volts("blower.feed", "blower.neutral"), seconds)
    else:
        _electronic(m, m.e.volts("blower.inner", "blower.neutral"), seconds)
    warmth.step(m, seconds)


def held(m: Machine) -> bool:
    """Whether the wheel can't turn at all."""
    v = m.v
    return bool(v["blower_motor.seized"] or v["wheel.jammed"] or v["blower_half.stiff"])


def _split_capacitor(m: Machine, volts: float, seconds: float) -> None:
    e, v = m.e, m.v
    if volts > 1 or m.blower_slip < 1:
        size = float(e.features["size"]) * v["blower_motor.size"]
        motor = wiring.blower_motor(
            m.unit.frequency, size, v["blower_rotor.bars"], v["blower_rotor.turns_shorted"]
        )
        farad = 0.0 if v["capacitor.open"] else wiring.BLOWER_FARAD * size * v["capacitor.share"]
        farad = math.inf if v["capacitor.short"] else farad
        torques = table(motor, farad, not v["blower_motor.main_open"], not v["blower_motor.start_open"], 0.2)
        synchronous = motor.synchronous * 30 / math.pi
        turns = max((1 - m.blower_slip) * synchronous, 1.0)
        air = _air(m, turns)
        load = air.shaft / (turns * math.pi / 30) * (synchronous / turns) ** 2
        load += (v["wheel.rubs"] + v["blower_motor.binds"]) * size
        rubs = v["blower_motor.drag"] * size + (STICKS if m.blower_slip >= 1 else RUBS)
        slip = m.blower_slip
        m.blower_slip = (
            1.0
            if held(m)
            else turned(slip, torques, volts, motor.synchronous, 0.05 * size, load, rubs, seconds)
        )
    e.s["blower_slip"] = round(m.blower_slip * SLIPS) / SLIPS
    m.air = _air(m, (1 - m.blower_slip) * BLOWER_SYNCHRONOUS * m.unit.frequency / 60)


def _electronic(m: Machine, volts: float, seconds: float) -> None:
    e, v, turns = m.e, m.v, m.air.turns
    m.fan.unfed = 0.0 if volts > 10 else m.fan.unfed + seconds
    if m.fan.unfed >= FORGETS:
        m.fan.pushed = 0.0
        if v["blower_module.locked"] or v["blower_module.limited"] != 1.0:
            v["blower_module.locked"], v["blower_module.limited"] = 0, 1.0
            e.touched()
    wants = _wants(m, volts)
    bad = held(m) or v["blower_module.output_short"] or not half_good(m)
    if wants and bad:
        m.fan.pushed += seconds
        if m.fan.pushed >= GIVES_UP:
            v["blower_module.locked"] = 1
            e.touched()
    m.fan.pushes = bool(wants and bad)
    wanted = 0.0 if bad or not wants else _turns(m, wants)
    turns += (wanted - turns) * (1 - math.exp(-seconds / 6))
    m.air = _air(m, turns if turns > 5 else 0.0)
    watts = PUSHES if m.fan.pushes else max(m.air.shaft / 0.75 + STANDBY, STANDBY)
    e.s["ecm_ohm"] = round(120.0 * 120.0 * 0.62 / watts, 1)


def half_good(m: Machine) -> bool:
    """Whether electronics can drive the motor half."""
    v = m.v
    whole = v["blower_half.second_ohm"] < HALF_RUNS and not v["blower_motor.main_open"]
    return bool(whole and v["blower_half.leak_ohm"] > HALF_LEAKS)


def _wants(m: Machine, volts: float) -> float:
    """Share of its air that the motor wants to move; 0 where it is not fed, not told or will not."""
    v, s = m.v, m.e.s
    inside = volts / 2 if v["line_jumper.wrong"] else volts
    fed = inside > LEAST_VOLTS and not m.hands["module_off"]
    will = not v["blower_motor.module_dead"] and not v["blower_module.locked"]
    heat = bool(s["heat_mode"])
    if not (fed and will and told(m.e)) or (heat and v["blower_module.heat_tap_dead"]):
        return 0.0
    asked = v["blower_settings.heat"] if heat else v["blower_settings.fan"]
    return float(asked * v["blower_module.program"] * v["blower_module.limited"])


def _turns(m: Machine, share: float) -> float:
    """Speed at which the motor moves that share of the design's air, or gives that share of its torque."""
    torque = m.unit.features["blower"] == "torque"
    size = float(m.e.features["size"])

    def enough(turns: float) -> bool:
        air = _air(m, turns)
        if torque:
            return air.shaft / (turns * math.pi / 30) >= TORQUE * size * share**2
        return air.flow >= m.unit.design_flow * share

    if not enough(MOST_TURNS):
        return MOST_TURNS
    low, high = 5.0, MOST_TURNS
    for _ in range(22):
        middle = (low + high) / 2
        low, high = (low, middle) if enough(middle) else (middle, high)
    return high


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
