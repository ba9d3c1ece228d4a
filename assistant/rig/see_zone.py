"""What a person sees of panel, dampers, ducts and air in a house with zones, in the words of house.yaml.

The zone that should be still is zone 2, the register that the customer speaks of is one of its two.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from assistant.rig.air.blower import supply_drop
from assistant.rig.air.registers import COMPLAINED, REGISTERS, area
from assistant.rig.air.zoning import OPENS_AT, SHARES

if TYPE_CHECKING:
    from assistant.rig.machine import Machine

TISSUE = 0.20
"""Air that blows a tissue aside, m/s (40 fpm); what a sound shut damper passes is half of it."""
QUIET, CALLING = 2, 1
AJAR = 0.05
"""A blade open by less lets no air through that a hand would feel."""
SMOKE = 0.08
"""Share of the open duct's air that draws smoke past a blade's edge; what a sound seal passes is a third."""


def quiet_speed(m: Machine) -> float:
    """Speed of the air out of the register that should be still, m/s."""
    return m.zoning.registers(m).get(COMPLAINED, 0.0) / area(m.unit)


def return_speed(m: Machine) -> float:
    """Speed of the air at the quiet zone's return, m/s."""
    share = m.v["ducts2.return_share"]
    return share * sum(m.air.ducts.runs.values()) / area(m.unit) if share else 0.0


def _calling_air(m: Machine) -> str:
    """At the registers of zone 1, whose thermostat calls, as they are while the blower runs."""
    if not m.zoning.fitted:
        return "no zones here"
    if m.air.turns < 100:
        return "air comes" if m.zoning.blade[CALLING] > AJAR else "little or none"
    out = m.zoning.registers(m)
    most = max(out.get(name, 0.0) for name, zone in REGISTERS.items() if zone == CALLING)
    return "air comes" if most / area(m.unit) > TISSUE else "little or none"


def _kind(m: Machine) -> str:
    if m.unit.features["zone_panel"] != "yes":
        return "no dampers that move"
    on_data = m.v["zone_panel.data"]
    return "zone panel on data wires or radio" if on_data else "zone panel with dampers on 24 V"


def _stat(m: Machine) -> str:
    v = m.v
    if v["zone2.heat"]:
        return "asks for heat or cooling"
    if v["zone2.fan"] != "auto":
        return "fan on or circulating"
    return "automatic and asks for nothing"


def _fan_switch(m: Machine) -> str:
    if m.zoning.circulates(m, QUIET):
        return "on or circulating in the quiet zone"
    if m.zoning.circulates(m, 1) or m.zoning.circulates(m, 3):
        return "on or circulating in another zone"
    return "automatic"


def _lamps(m: Machine) -> str:
    if m.e.volts("panel.r", "panel.c") < 8:
        return "all dark"
    return "a call shown" if any(m.zoning.calls.values()) else "no call shown"


def _holds(m: Machine) -> str:
    if m.zoning.too_hot:
        return "cut-out on supply air"
    return "delay still counting" if m.zoning.purging > 0 and m.e.s["panel_g"] else "nothing shown"


def _rest(m: Machine) -> str:
    if m.air.turns > 100:
        return "blower runs"
    drifts = m.v["damper2.rises"] and m.zoning.blade[QUIET] > 0.5
    return "blower still, warm air drifts out" if drifts else "both still"


def _tissue(m: Machine) -> str:
    if quiet_speed(m) > TISSUE:
        return "blown away"
    if return_speed(m) > TISSUE or m.v["draught.den"]:
        return "moves but not from the register"
    return "hangs still"


def _pointer(m: Machine) -> str:
    if m.v["damper2.lever"]:
        return "a lever or clutch engaged"
    shaft = m.zoning.blade[QUIET] if m.v["damper2.slips"] else m.zoning.motor[QUIET]
    if m.v["damper2.mounted"]:
        shaft = max(shaft, m.v["damper2.mounted"])
    return "pointer at shut" if shaft < 0.05 else "pointer not at shut"


KINDS = {
    "spring open": "two wires, springs open",
    "spring close": "two wires, springs shut",
    "two way": "three wires",
}


def _wires(m: Machine) -> str:
    if m.v["zone_panel.crossed"]:
        return "on another zone's terminals"
    return "on the wrong leg" if m.v["damper2.crossed_leg"] else "right for its kind"


def _menu(m: Machine) -> str:
    v = m.v
    if v["zone_panel.type_wrong"]:
        return "set for another kind of damper"
    if v["zone_panel.relief"]:
        return "opens this zone on purpose"
    opens = v["zone_panel.fan_all"] or (v["zone_panel.purge_to"] == "all" and v["zone_panel.purge"] > 300)
    return "fan or rest opens every zone" if opens else "as they should be"


def _turns(m: Machine) -> str:
    """Through the last stroke: the actuator's hub and the shaft."""
    moved = m.zoning.stroke(QUIET)
    if m.v["damper2.slips"] and moved > 0.2:
        return "actuator turns and shaft does not"
    return "neither turns" if moved < 0.2 else "both turn and stop short"


def _blade(m: Machine) -> str:
    v = m.v
    if v["damper2.jam"] > 0:
        return "stiff or stops on something"
    return "held open by a stop" if v["damper2.stop"] > 0 else "free to its seat"


def _seat(m: Machine) -> str:
    if m.zoning.blade[QUIET] > 0.03:
        return "short of its seat"
    leaky = m.v["damper2.closed"] < 1e4 or m.v["damper2.unsealed"]
    return "seal gone or blade bent" if leaky else "on its seat all round"


def _smoke(m: Machine) -> str:
    past = m.air.ducts.runs.get(str(QUIET), 0.0)
    return "drawn past the blade" if past > SMOKE * SHARES[QUIET] * m.unit.design_flow else "stands still"


def _trace(m: Machine) -> str:
    v = m.v
    if v["damper2.before"]:
        return "leaves before the damper"
    if v["ducts2.hangs_on"] != "own" or v["ducts2.also_on"]:
        return "comes from another zone's duct"
    return "a joint or chase leaks into it" if v["ducts2.leak"] else "passes its own damper"


def _bypass(m: Machine) -> str:
    v = m.v
    if not v["bypass.fitted"] or v["story.no_bypass"]:
        return "none"
    if v["bypass.hand"] < 0.1:
        return "shut off by a hand damper"
    if v["bypass.stuck"] >= 0:
        return "its arm stands fully open" if v["bypass.stuck"] > 0.5 else "its arm stands at shut"
    opens = OPENS_AT * supply_drop(m.unit, {**v, "ducts.small": 0.0, "registers.shut": 0.0})
    return "its arm stands fully open" if m.air.ducts.plenum > 1.15 * opens else "its arm stands at shut"


def _run(m: Machine) -> str:
    """What the quiet register did through the call that was watched, and after it."""
    during, after = m.zoning.blew
    if during:
        return "blows during the call"
    return "blows only after the call ended" if after else "still throughout"


LOOKS_ZONE: dict[str, Callable[[Machine], str]] = {
    "zoning.kind": _kind,
    "zone.air": _calling_air,
    "zone.stat": _stat,
    "stat.fan": _fan_switch,
    "spill.when": lambda m: m.v["story.when"],
    "panel.calls": _lamps,
    "panel.holds": _holds,
    "panel.cut_out": lambda m: "lit" if m.zoning.cut_seen else "not lit",
    "panel.spot": lambda m: "stray strand or jumper" if m.v["zone2.strand_ohm"] < 1e3 else "nothing seen",
    "panel.damper_menu": _menu,
    "board.fan_switch": lambda m: (
        "set to run all the time" if m.v["fan_switch.always"] else "as they should be"
    ),
    "rest.state": _rest,
    "register.tissue": _tissue,
    "return.tissue": lambda m: "drawn in or blown out" if return_speed(m) > TISSUE else "hangs still",
    "register.run": _run,
    "damper.pointer": _pointer,
    "damper.kind": lambda m: KINDS[m.v["damper2.kind"]],
    "damper.wires": _wires,
    "shaft.turns": _turns,
    "blade.turn": _blade,
    "blade.seat": _seat,
    "blade.smoke": _smoke,
    "duct.trace": _trace,
    "hand_dampers": lambda m: (
        "shut or covered" if max(m.v["registers.shut"], m.v["registers.others"]) > 0.3 else "open"
    ),
    "bypass.state": _bypass,
    "setting.by": lambda m: m.v["story.set_by"],
    "work.last": lambda m: m.v["story.work"],
    "damper.harm": lambda m: m.v["damper2.harm"],
    "fan_device": lambda m: m.v["story.device"],
    "air.changes": lambda m: m.v["story.air"],
    "as_left": lambda _m: "as written down or as agreed",
}
"""Things of house.yaml that are looked at in a house with zones."""
