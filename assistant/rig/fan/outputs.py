"""What the board sends the blower: line on one of two terminals, or a command, unless something holds it."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from assistant.rig.electrics import Electrics
    from assistant.rig.machine import Machine

FLOAT_AT = 0.03
"""Depth in m at which a float closes the inhibit terminal."""
LEVEL_VOLTS, LEVEL_OHM = 10.0, 470.0
"""A steady command: V DC behind ohm."""
HEARS = 11.0
"""V on a command input that count as a command."""


def contacts(m: Machine) -> None:
    """What hands and water decide: a wire off the limit, another control that holds the blower."""
    kind = m.v["inhibit.kind"]
    holds = kind == "twin link" or (kind == "float" and m.v["drain.level"] > FLOAT_AT)
    m.e.s["inhibited"] = float(holds and not m.hands["inhibit_off"])
    if m.hands["limit_off"]:
        m.e.s["limit"] = 0.0


def follow(e: Electrics) -> None:
    """Close the board's relays for the blower, or send its command."""
    v, s = e.v, e.s
    on = bool(e.awake and not s["inhibited"] and not v["board.blower_dead"])
    heat, fan = bool(e.wants["blower"]), bool(e.wants["fan"])
    s["heat_mode"] = float(heat)
    s["blower"] = float(v["board.blower_stuck"] or (on and heat and not v["board_fan.heat_dead"]))
    s["fan"] = float(on and fan and not heat and not v["board_fan.fan_dead"])
    dead = v["board_fan.heat_dead"] if heat else v["board_fan.fan_dead"]
    s["command"] = float(v["board.blower_stuck"] or (on and (heat or fan) and not dead))


def told(e: Electrics) -> bool:
    """Whether the motor's electronics hear a command to turn, and one only."""
    v, s, kind = e.v, e.s, e.features["blower"]
    if kind in ("electronic", "torque"):
        one = e.volts("blower.command", "blower.common") > HEARS
        return one and e.volts("blower.taps", "blower.common") < HEARS
    wires = v["blower_harness.command_open"] or v["blower_leads.common_open"]
    wires = wires or (v["blower_leads.heat_command_open"] and s["heat_mode"])
    return bool(s["command"] and not wires)


def direct(e: Electrics, a: str, b: str, meter: float) -> float:
    """V DC between two points of the command, with a meter of that admittance across them."""
    e.solve()
    if e.features["blower"] != "level" or not e.s["command"]:
        return 0.0
    extra = [("board.command", "c", 1 / LEVEL_OHM), (a, b, meter)]
    push = [("c", "board.command", LEVEL_VOLTS / LEVEL_OHM)]
    return float(e.network.solve(0.0, extra, push, alive=False).between(a, b).real)
