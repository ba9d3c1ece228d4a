"""Where each point of house.yaml is in the machine, besides being a node of the wiring."""

from __future__ import annotations

import math
from collections.abc import Callable

from assistant.rig.branch import FACE_SHARE, NEIGHBOUR
from assistant.rig.burner.vent import ROOM
from assistant.rig.fan import points as fan
from assistant.rig.machine import CROSSES_AFTER, Machine
from assistant.rig.points_zone import AIR_ZONE, CLAMPS_ZONE

VACUUMS = frozenset({"inducer.port", "hose.inducer", "hose.burner_box", "room.air"})


def _draft(m: Machine) -> float:
    """In the vent: a chimney's pull on an 80 percent unit, the fan's push on a condensing one."""
    if m.unit.condensing:
        return m.draught.vent_inlet * 0.3
    pull = 7.5 * (m.heat.stack - ROOM) / (466.0 - ROOM)
    return -pull * (1 - m.v["vent.blocked"]) + 0.1 * max(m.draught.vent_inlet - 40.0, 0.0)


PRESSURES: dict[str, Callable[[Machine], float]] = {
    "port.inlet": lambda m: m.gas.inlet,
    "port.manifold": lambda m: m.gas.manifold,
    "inducer.port": lambda m: m.draught.tap,
    "hose.inducer": lambda m: m.hoses()[0],
    "hose.burner_box": lambda m: m.hoses()[1],
    "flue.sample": _draft,
    "room.air": lambda m: -m.v["room.pull"],
    "static.return": lambda m: m.air.ducts.before_filter,
    "static.filter": lambda m: m.air.ducts.before_blower,
    "static.furnace": lambda m: m.air.ducts.after_furnace,
    "static.supply": lambda m: m.air.ducts.plenum,
}
"""Pa against the room."""


def _dial(m: Machine) -> float:
    """Seconds for one turn of the meter's dial with only the furnace on."""
    flow = m.gas.flow * m.unit.input / m.unit.heating_value
    return m.unit.dial / flow if flow > 1e-9 else math.inf


def _register(zone: str) -> Callable[[Machine], float]:
    """Air that comes out of a zone's registers, m3/s."""
    return lambda m: m.air.ducts.runs.get(zone, 0.0)


def _lights_after(m: Machine) -> float:
    """Seconds from the gas valve's last click to a flame on every burner; a minute where there was none."""
    clicks = [at for name, at in m.events if name == "valve.opens"]
    flames = [at for name, at in m.events if name == "burner.lights" and clicks and at >= clicks[-1]]
    if not flames:
        return 60.0
    crosses = CROSSES_AFTER if 0 < m.v["burners.gap"] < 1 else 0.0
    return 60.0 if m.v["burners.gap"] >= 1 else flames[-1] - clicks[-1] + crosses


def _room_monoxide(m: Machine) -> float:
    spills = 0.02 * m.fire.monoxide if m.fire and m.v["vent.apart"] else 0.0
    return m.v["room.co"] + spills


AIR: dict[tuple[str, str], Callable[[Machine], float]] = {
    ("temperature", "supply.air"): lambda m: m.heat.supply,
    ("temperature", "return.air"): lambda m: m.returns(),
    ("temperature", "room.air"): lambda m: m.v["room.temperature"],
    ("temperature", "limit.face"): lambda m: m.heat.limit,
    ("temperature", "flue.sample"): lambda m: m.heat.stack,
    ("temperature_difference", "stat.w"): lambda m: m.v["thermostat.lag"],
    ("percent", "flue.sample"): lambda m: m.fire.oxygen if m.fire else 0.209,
    ("concentration", "flue.sample"): lambda m: m.fire.monoxide if m.fire else 0.0,
    ("percent", "room.air"): lambda m: m.v["room.gas"],
    ("concentration", "room.air"): _room_monoxide,
    ("duration", "meter.dial"): _dial,
    **AIR_ZONE,
    **{("airflow", f"register.{zone}"): _register(zone) for zone in ("1", "2", "3")},
    ("duration", "cabinet"): _lights_after,
    ("length", "drain.pan"): lambda m: m.v["drain.level"],
    ("temperature", "breaker.face"): lambda m: m.v["room.temperature"] + FACE_SHARE * m.branch.body,
    ("temperature", "neighbour.face"): lambda m: m.v["room.temperature"] + NEIGHBOUR,
    **fan.AIR,
    ("power", "blower.line"): lambda m: abs(m.e.solve().power("electronics").real),
}

CLAMPS = {
    "box.line": "door_switch",
    "box.neutral": "board_neutral",
    "switch.feed": "branch_hot",
    "switch.load": "line_wire",
    "inducer.line": "inducer_hot",
    "inducer.neutral": "inducer_return",
    "board.inducer": "inducer_hot",
    "igniter.line": "igniter_hot",
    "igniter.neutral": "igniter_return",
    "board.igniter": "igniter_hot",
    "blower.line": "blower_hot",
    "blower.neutral": "blower_return",
    "capacitor.a": "capacitor",
    "capacitor.b": "capacitor",
    "secondary.r": "secondary_lead",
    "fuse24.feed": "secondary_lead",
    "fuse24.load": "board_r",
    "r": "board_r",
    "valve.hot": "valve_hot",
    "board.valve": "valve_hot",
    "valve.common": "valve_return",
    "w": "cable_w",
    "stat.w": "cable_w",
    "primary.line": "primary_pin",
    "ground": "ground_wire",
    "accessory.line": "accessory_plug",
    **CLAMPS_ZONE,
    **fan.CLAMPS,
}
"""Point -> the branch whose wire a clamp goes round there."""

_PRIMARY = ("primary_winding", "transformer")
_SECONDARY = ("secondary_winding", "transformer")
_INDUCER = ("inducer_main", "inducer", "inducer_short", "inducer_capacitor")
_BLOWER = (*fan.BLOWER, "blower_short")
_FIELD = (
    "cable_r",
    "cable_w",
    "cable_c",
    "cable_g",
    "cable_y",
    "stat_w",
    "stat_g",
    "stat_y",
    "stat_load",
    "r_c_short",
    "w_c_short",
    "r_w_short",
    "r_g_short",
    "g_c_short",
    "float_lead",
    "float_switch",
)
_OUTDOOR = ("outdoor_coil", "outdoor_return", "y_c_short")
_CABLE = ("float_lead", "float_switch", "cable_r", "cable_w", "r_w_short")
_FAN_CABLE = ("float_lead", "float_switch", "cable_r", "cable_g", "r_g_short")
_FRAME = ("burner_bond",)
_BOARD = ("board_leak", "board_weak", "film_board", *_FRAME)
_RUN = ("line_wire", "line_wire_ground", "film_run", "ground_wire")
_CABLE_IN = ("cable_ground", "cable_weak", "ground_wire")
_IGNITER = ("igniter", "igniter_short", "igniter_plug")
_MODULE = ("module_ground", "bridge", "half_ground", "motor_frame")
_BLOWER_GROUND = ("blower_weak", "blower_lead_ground")

LEADS_OFF: dict[frozenset[str], tuple[str, ...]] = {
    frozenset(pair): branches
    for pair, branches in (
        (("limit.feed", "limit.load"), ("limit",)),
        (("rollout.feed", "rollout.load"), ("rollout",)),
        (("rollout.load", "aux.load"), ("aux_limit",)),
        (("pressure.feed", "pressure.load"), ("pressure_switch",)),
        (("aux.load", "pressure.load"), ("string_end", "bridge_pressure")),  # the switch's own wire off
        (("float.feed", "float.load"), ("float_switch",)),
        (("fuse24.feed", "fuse24.load"), ("control_fuse",)),
        (("switch.feed", "fuse.load"), ("plug_fuse",)),
        (("fuse.load", "switch.load"), ("service_switch",)),
        (("switch.load", "box.line"), ("line_wire", "straight_line")),
        (("box.line", "board.line"), ("door_switch", "line_pin")),
        (("primary.line", "primary.neutral"), _PRIMARY),
        (("secondary.r", "secondary.c"), _SECONDARY),
        (("inducer.line", "inducer.neutral"), _INDUCER),
        (("igniter.line", "igniter.neutral"), ("igniter", "igniter_short")),
        (("blower.line", "blower.neutral"), _BLOWER),
        (("valve.hot", "valve.common"), ("valve_coil",)),
        (("rod", "cabinet"), ("rod_leak",)),
        (("rod", "ground"), ("rod_leak", *_FRAME)),
        (("board.rod", "rod"), ("rod_wire",)),
        (("stat.r", "stat.w"), ("stat_w",)),
        (("r", "w"), _CABLE),
        (("r", "g"), _FAN_CABLE),
        (("r", "c"), _FIELD),
        (("w", "c"), _FIELD),
        (("g", "c"), _FIELD),
        (("y", "c"), _OUTDOOR),
        (("board.inducer", "inducer.line"), ("inducer_hot",)),
        (("board.igniter", "igniter.line"), ("igniter_hot",)),
        (("accessory.line", "accessory.neutral"), ("accessory", "accessory_short")),
        (("accessory.line", "ground"), ("accessory_ground", "others_weak", "ground_wire")),
        (("board.line", "ground"), _BOARD),
        (("board.line", "cabinet"), ()),
        (("igniter.line", "cabinet"), ("igniter_lead_ground", "igniter_plug")),
        (("blower.line", "cabinet"), (*_BLOWER, *_MODULE, "blower_leak", "blower_weak")),
        (("inducer.line", "cabinet"), (*_INDUCER, "inducer_plug", "inducer_leak", "inducer_weak")),
        (("primary.line", "cabinet"), (*_PRIMARY, "primary_leak", *_FRAME)),
        (("board.line", "board.neutral"), ("surge",)),
        (("switch.load", "ground"), _RUN),
        (("switch.load", "box.neutral"), ("line_wire", "run_across")),
        (("switch.feed", "ground"), _CABLE_IN),
        (("switch.feed", "box.neutral"), ("cable_across", "branch_neutral")),
        (("board.valve", "valve.hot"), ("valve_hot",)),
        (("pressure.load", "board.valve"), ("valve_relay",)),
    )
} | fan.OHMS
"""What is between two points with its leads off."""
LOADS = {
    "inducer.line": (*_INDUCER, "inducer_plug", "inducer_leak", "inducer_weak", "inducer_lead_ground"),
    "inducer.neutral": (*_INDUCER, "inducer_plug", "inducer_leak", "inducer_weak", "inducer_lead_ground"),
    "blower.line": (*_BLOWER, *_MODULE, "blower_plug", "blower_track", "blower_leak", *_BLOWER_GROUND),
    "blower.neutral": (*_BLOWER, *_MODULE, "blower_plug", "blower_track", "blower_leak", *_BLOWER_GROUND),
    "igniter.line": (*_IGNITER, "igniter_leak", "igniter_lead_ground"),
    "igniter.neutral": (*_IGNITER, "igniter_leak", "igniter_lead_ground"),
    "primary.line": (*_PRIMARY, "primary_leak", "primary_lead_ground"),
    "primary.neutral": (*_PRIMARY, "primary_leak", "primary_lead_ground"),
}
"""A load's plug off, read to the metal round it."""
BEHIND_PLUG = {"inducer.line": "inducer.pin", "igniter.line": "igniter.pin", "blower.line": "blower.pin"}
"""With a plug off, its load is read at the load's own pins."""
_PLUGS = ("primary_pin", "inducer_hot", "igniter_hot", "blower_hot", "accessory_plug", "panel_hot")
UNPLUGGED: dict[frozenset[str], tuple[str, ...]] = {
    frozenset(("box.line", other)): _PLUGS for other in ("box.neutral", "ground")
}
"""The furnace's own wiring: every load's plug off."""
CABLE_WHITE: dict[frozenset[str], dict[str, str]] = {
    frozenset(("switch.load", "box.neutral")): {"box.neutral": "run.neutral"},
    frozenset(("switch.feed", "box.neutral")): {"box.neutral": "run.neutral"},
    frozenset(("board.blower", "blower.line")): {"blower.line": "blower.heat"},
}
"""With the splices in the junction box apart, white is the cable's own; a lead that is off ends in itself."""
TWISTED: dict[frozenset[str], tuple[str, str]] = {
    frozenset(("r", "w")): ("stat.r", "stat.w"),
    frozenset(("r", "g")): ("stat.r", "stat.g"),
}
"""Two wires twisted together at their far end for the reading."""


def ohm_branches(m: Machine, a: str, b: str) -> tuple[str, ...] | None:
    """The branches that take part in ohms between two points; None where all do."""
    pair = frozenset((a, b))
    if pair in LEADS_OFF:
        return LEADS_OFF[pair]
    if pair == {"limit.feed", "aux.load"}:
        return _bridged(m)
    for load, metal in ((a, b), (b, a)):
        if metal in ("cabinet", "ground") and load in LOADS:
            return (*LOADS[load], *_FRAME)
    return None


def _bridged(m: Machine) -> tuple[str, ...]:
    """The string from limit to last auxiliary limit, one wire pulled off the switch that is looked at."""
    pulled = "rollout" if m.v["string.bridge"] == "rollout" else "limit"
    whole = ("limit", "bridge_limit", "string_middle", "rollout", "bridge_rollout", "aux_limit")
    return tuple(name for name in whole if name != pulled)
