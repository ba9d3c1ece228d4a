"""What a person sees, hears and feels of a blower."""

from __future__ import annotations

from collections.abc import Callable

from assistant.rig.fan.drive import LEAST_VOLTS, half_good
from assistant.rig.machine import Machine

HARDLY = 0.45
"""Share of the design's air that a hand at a register calls air."""
TURNS = 60.0
HUMS = 0.3
"""Share of its plate's current with which a motor is heard."""
DRAGS = 0.8
"""N m at which a hand feels a bearing."""
NEARLY = 0.8
"""Share of the label's horsepower under which a motor's plate is the next smaller one's."""
HELD = {1: "something jams the wheel", 2: "bracket or strap left on"}
KINDS = {"psc": "split capacitor", "torque": "constant torque"}
COMMANDS = {"level": "pulses or a level", "data": "data"}


def to_rooms(m: Machine) -> float:
    """Share of the design's air that comes out of registers."""
    return m.air.flow * (1 - m.v["air_way.lost"]) / m.unit.design_flow


def does(m: Machine) -> str:
    """What the blower does, by eye, ear and a hand at a register."""
    if m.air.turns > TURNS:
        return "blows well" if to_rooms(m) > HARDLY else "turns with hardly any air"
    psc = m.unit.features["blower"] == "psc"
    amps = abs(m.e.solve().current("blower_hot"))
    hums = amps > HUMS * m.unit.plate()["blower_amps"] if psc else m.fan.pushes
    return "hums or jerks" if hums else "stands still and silent"


def hand(m: Machine) -> str:
    """What a hand feels at the wheel, locked off."""
    v, off = m.v, m.hands["wheel_off"]
    if v["wheel.jammed"] and not off:
        return HELD.get(int(v["wheel.jammed"]), "stiff or rubbing")
    drag = v["blower_motor.drag"] + v["blower_motor.binds"] + (0.0 if off else v["wheel.rubs"])
    stiff = v["blower_motor.seized"] or v["blower_half.stiff"] or drag > DRAGS
    stiff = stiff or (v["blower_module.output_short"] and not m.hands["module_off"])
    return "stiff or rubbing" if stiff else "turns freely"


def setting(m: Machine) -> str:
    """Speed leads and switches against the label."""
    v = m.v
    if v["blower_harness.parked"] or v["blower_leads.fan_parked"] or v["blower_harness.joined_ohm"] < 1e9:
        return "lead on a wrong or parked terminal"
    wrong = v["blower_settings.fan"] < 0.9 or v["blower_settings.heat"] < 0.9
    return "switches or jumpers wrong" if wrong or v["blower_leads.two_taps"] else "as the label says"


def plate(m: Machine) -> str:
    """The motor's own plate against the furnace's label."""
    return "smaller than the label" if m.v["blower_motor.size"] < NEARLY else "as the label says"


def holds(m: Machine) -> str:
    """What holds the blower at the board."""
    if m.v["inhibit.kind"] != "none":
        return "wire on an inhibit or twin terminal"
    return "lockout code" if m.board.phase == "lockout" else "nothing found"


def mount(m: Machine) -> str:
    """The motor's mount and vents."""
    v = m.v
    if v["wheel.jammed"] == 2:
        return "bracket or strap left on"
    if v["blower_cooling.vents"] > 0.3:
        return "vents caked"
    return "mount loose or cracked" if v["blower_cooling.loose"] else "free and clean"


def tester(m: Machine) -> str:
    """What the motor does on a tester that sends its command."""
    v = m.v
    if not v["truck.tester"]:
        return "no tester here"
    fed = m.e.volts("blower.inner", "blower.neutral") > LEAST_VOLTS and not v["line_jumper.wrong"]
    free = hand(m) == "turns freely"
    dead = v["blower_motor.module_dead"] or v["blower_module.output_short"] or v["blower_module.locked"]
    return "runs on it" if fed and half_good(m) and free and not dead else "stands still on it"


def jumper(m: Machine) -> str:
    """The voltage jumper in the power plug."""
    if m.unit.features["blower"] == "psc":
        return "none on this plug"
    return "missing or wrong" if m.v["line_jumper.wrong"] else "as the voltage asks"


def way(m: Machine) -> str:
    """The way the wheel turns."""
    return "against its arrow" if m.v["blower_motor.reversed"] else "with its arrow"


LOOKS: dict[str, Callable[[Machine], str]] = {
    "blower.kind": lambda m: KINDS.get(m.unit.features["blower"], "constant airflow"),
    "blower.does": does,
    "blower.hand": hand,
    "blower.way": way,
    "blower.setting": setting,
    "blower.before": lambda _m: "first one",
    "blower.mount": mount,
    "blower.plate": plate,
    "board.holds": holds,
    "capacitor.mark": lambda m: m.v["capacitor.mark"],
    "command.kind": lambda m: COMMANDS.get(m.unit.features["blower"], "24 V on separate pins"),
    "motor.tester": tester,
    "line.jumper": jumper,
    "worked.by": lambda m: m.v["last_visit.by"],
    "filter.habit": lambda m: m.v["last_visit.filter"],
    "choke": lambda m: "fitted" if m.v["choke.fitted"] else "none",
}
"""Things that one look answers; those that take time are in trials.py."""
