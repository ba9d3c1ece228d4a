"""What a person sees, hears or smells, worked out from the state of the machine, in the words of
house.yaml.
"""

from __future__ import annotations

from collections.abc import Callable

from assistant.rig.burner import fire
from assistant.rig.drives import COLLECTOR
from assistant.rig.fan.looks import LOOKS as OF_THE_BLOWER
from assistant.rig.machine import Machine
from assistant.rig.see_branch import LOOKS as OF_THE_BRANCH
from assistant.rig.see_zone import LOOKS_ZONE

Look = Callable[[Machine], str]

HARNESSES = ("board_plugs", "inducer_harness", "igniter_harness", "valve_harness", "blower_harness")
TIGHT = "tight and bright"
WIRES = ("branch_hot", "branch_neutral", "line_wire", "burner_bond", "ground_wire")
"""Wires whose screws and splices are looked at like a plug's pins."""
SPADES = ("string.feed_open", "string.middle_open", "string.end_open", "flame_rod.wire_open")
CUT_OUT_LEAST = 333.0
"""A panel's cut-out below 140 F opens in ordinary heating, K."""
FEEDS = {"wired": "wired through a service switch", "cord": "cord in a receptacle"}
LEAST_RATIO, OTHER_TAP = 0.15, "for another voltage"
NO_COIL, OWN_VA, SMALL_VA = 1e9, 20.0, 10.0
SOUND_COIL = 4.0
"""A 24 V coil with less than that is shorted, and its plate says nothing of it, ohm."""
"""Ohms above which nothing was added to the 24 V; VA of board and gas valve together."""
QUARTER = 900.0
BAD_JOINT = 1.0
"""Ohms at which a joint shows that it is loose, rusted or burnt."""


def _code(m: Machine) -> str:
    if not m.e.awake:
        return "dark"
    return "flashing a code" if m.board.code else "steady"


def _stat(m: Machine) -> str:
    v = m.v
    powered = v["thermostat.batteries"] and not v["thermostat.needs_c"]
    powered = powered or (v["thermostat.needs_c"] and m.e.volts("stat.r", "stat.c") > 17)
    if not powered or not v["thermostat.seated"]:
        return "blank"
    return "calling for heat" if m.e.stat_wants["w"] else "not asking for heat"


def _stat_state(m: Machine) -> str:
    v = m.v
    if not v["thermostat.batteries"]:
        return "batteries flat"
    if v["thermostat.mode"] != "heat" or v["thermostat.set"] == "low" or v["thermostat.locked"]:
        return "mode or schedule or lock"
    if not v["thermostat.seated"]:
        return "loose on its base"
    if v["thermostat.needs_c"] and m.e.volts("stat.r", "stat.c") < 17:
        return "no power on C"
    return "nothing found"


def _cut_out(m: Machine) -> bool:
    """Whether the panel's lamps or its menu show the cut-out: it is open, or set where heating opens it."""
    return m.zoning.too_hot or m.v["zone_panel.hot_limit"] < CUT_OUT_LEAST


def _panel(m: Machine) -> str:
    if m.v["zone_panel.fuse"] or _cut_out(m):
        return "fuse or screw or cut-out"
    held = m.v["zone_panel.heat_locked"] or m.v["zone_panel.fan_locked"]
    return "settings or priority hold it" if held else "nothing found"


def _panel_held(m: Machine) -> str:
    if m.v["zone_panel.fuse"]:
        return "its own fuse or a screw"
    if _cut_out(m):
        return "cut-out on hot air"
    if m.v["zone_panel.heat_locked"] or m.v["zone_panel.fan_locked"]:
        return "menu or priority"
    return "nothing shown"


def _swing(m: Machine) -> str:
    return "something gets brighter" if m.v["service.neutral_open"] else "steady or only lower"


def _glow(m: Machine) -> str:
    """How it is at the end of a warm-up, judged by the last one."""
    if m.hottest < fire.LIGHTS_AT + 40:
        return "dull or patchy"
    return "bright and beside the gas" if m.v["igniter.place"] else "bright and at the gas"


AT_BURNERS = {"clean_burners", "fit_gas_parts", "set_igniter", "fit_igniter", "clean_rod", "fit_rod"}
SHORTS = (
    "cable.r_c_ohm",
    "cable.w_c_ohm",
    "cable.y_c_ohm",
    "cable.g_c_ohm",
    "outdoor_unit.ohm",
    "gas_valve.coil_ohm",
)


LINE_GROUNDS = ("inducer.leak_ohm", "igniter.leak_ohm", "blower_motor.leak_ohm", "board.leak_ohm")


def _shorted(m: Machine) -> bool:
    """Whether something has shown why a fuse went: a coil, wire, winding or insulation that reads shorted, or
    the wrong fuse itself.
    """
    if not (m.v["plug_fuse.right"] and m.v["control_fuse.right"]):
        return True
    added = m.v["accessories.ohm"] * m.v["accessories.coils"] < 8
    winding = added or m.v["inducer.main_open"] == 2 or m.v["blower_motor.module_short"]
    return bool(
        winding or any(m.v[name] < 8 for name in SHORTS) or any(m.v[name] < 1000 for name in LINE_GROUNDS)
    )


def _plates(m: Machine) -> str:
    """What is printed on the 24 V parts, the furnace's own counted as 20 VA."""
    coil = m.v["accessories.ohm"] * m.v["accessories.coils"]
    added = 24.0**2 / m.v["accessories.ohm"] if coil > SOUND_COIL else SMALL_VA
    more = OWN_VA + added > m.unit.transformer_va
    return "more than the transformer carries" if more else "within the transformer"


def _inducer(m: Machine) -> str:
    if m.v["drain.level"] > 0.9 * COLLECTOR:
        return "water in the housing"
    return "stiff or stuck" if m.v["inducer.seized"] or m.v["inducer.drag"] > 0.02 else "dry and free"


def _flame(m: Machine) -> str:
    if m.lit_for <= 0 or m.fire is None:
        return "no flame"
    return fire.look(m.v, m.gas.flow, m.fire.air)


def _kept(m: Machine) -> str:
    """Whether it was lit once only, and longer ago than that."""
    again = any(name == "burner.lights" and m.time - at < QUARTER for name, at in m.events)
    return "went out by itself" if again or m.lit_for <= 0 else "burnt all the time"


def _at_blower(m: Machine) -> str:
    lit = m.lit_for > 0 or m.fire is not None
    return "waves or changes" if m.v["exchanger.breach"] >= 0.1 and (lit or m.board.code) else "steady"


def _parts(m: Machine) -> str:
    right = m.v["gas_parts.area"] == 1.0 and m.v["gas_parts.spring"] == 1.0
    return "match the gas here" if right else "do not match"


def _exchanger(m: Machine) -> str:
    wrong = (m.v["exchanger.breach"] > 0 and m.v["exchanger.seen"]) or m.v["exchanger.soot"]
    return "crack or hole or soot" if wrong else "nothing seen"


def _drain(m: Machine) -> str:
    if m.v["drain.pump_dead"]:
        return "pump dead"
    if m.v["drain.frozen"]:
        return "frozen outside"
    return "slow or blocked" if m.v["drain.blocked"] else "runs freely"


def _terminal(m: Machine) -> str:
    return "blocked" if m.v["intake.blocked"] > 0.3 and m.unit.condensing else m.v["vent.terminal"]


def _pressed(m: Machine) -> str:
    """The code light while somebody presses the door home."""
    held, m.hands["held"] = m.hands["held"], True
    for _ in range(3):
        m.tick()
    lit = m.e.awake
    m.hands["held"] = held
    m.tick()
    return "lights up" if lit else "stays dark"


def _harness(m: Machine) -> str:
    loose = any(m.v[f"{name}.open"] or m.v[f"{name}.ohm"] > BAD_JOINT for name in WIRES)
    if loose or any(m.v[name] for name in SPADES):
        return "pin backed out or burnt"
    return next((m.v[f"{name}.look"] for name in HARNESSES if m.v[f"{name}.look"] != TIGHT), TIGHT)


def _cable(m: Machine) -> str:
    return "damaged" if m.v["panel_wire.w_open"] or m.v["panel_wire.g_open"] else m.v["cable.look"]


def _switched_by(m: Machine) -> str:
    return m.v["service_switch.by"]


def _gas_cock(m: Machine) -> str:
    if m.v["gas_supply.cock"] == 0:
        return "cock shut"
    return "all open with gas" if m.v["gas_supply.meter"] else "meter off or tank empty"


def _others(m: Machine) -> str:
    weak = not m.v["gas_supply.meter"] or m.v["gas_supply.static"] < 1250
    return "weak too" if weak else "burn normally"


def _blower_forced(m: Machine) -> str:
    return "runs" if m.air.turns > 300 else "stands still"


def _wheel(m: Machine) -> str:
    return m.v["wheel.look"]


def _coil(m: Machine) -> str:
    if not m.v["coil.fitted"]:
        return "none"
    return "matted or iced" if m.v["coil.matted"] > 0.3 else "clean"


LOOKS: dict[str, Look] = {
    **OF_THE_BRANCH,
    **OF_THE_BLOWER,
    **LOOKS_ZONE,
    "heater.kind": lambda _m: "gas with inducer and hot surface igniter",
    "code_light": _code,
    "door.press": _pressed,
    "transformer.tap": lambda m: "suits the line" if m.v["transformer.ratio"] > LEAST_RATIO else OTHER_TAP,
    "stat.display": _stat,
    "added.parts": lambda m: "fitted" if m.v["accessories.ohm"] < NO_COIL else "none",
    "added.plates": _plates,
    "zone_panel": lambda m: "fitted" if m.unit.features["zone_panel"] == "yes" else "none",
    "panel.state": _panel,
    "panel.held": _panel_held,
    "feed.kind": lambda m: FEEDS[m.unit.features["feed"]],
    "supply.swing": _swing,
    "gas.history": lambda m: m.v["gas_parts.history"],
    "burners.touched": lambda m: "touched" if m.deeds & AT_BURNERS else "not touched",
    "stat.rate": lambda m: m.v["thermostat.rate"],
    "air.from": lambda m: "through a pipe from outdoors" if m.unit.condensing else "from the room",
    "air.opening": lambda m: m.v["room.opening"],
    "trap.state": lambda m: m.v["drain.trap"],
    "igniter.glow": _glow,
    "fuse.reason": lambda m: "a reading showed it" if _shorted(m) else "nothing showed it",
    "fuse.blown": lambda m: "a fuse blew" if m.fuses else "no fuse blew",
    "inducer.turning": lambda m: "runs" if m.inducer_slip < 0.7 else "stands still",
    "stat.place": lambda m: m.v["thermostat.place"],
    "stat.habit": lambda m: m.v["thermostat.habit"],
    "float_switch": lambda m: "fitted" if m.v["float_switch.fitted"] else "none",
    "service_switch": lambda m: m.v["service_switch.position"],
    "plug_fuse": lambda m: "fitted" if m.v["plug_fuse.fitted"] else "none",
    "string.wiring": lambda m: "as built" if m.v["string.bridge"] == "none" else "something bridges a switch",
    "aux.kind": lambda m: m.unit.features["aux"],
    "blower.forced": _blower_forced,
    "vent.kind": lambda m: "plastic with a drain" if m.unit.condensing else "metal without a drain",
    "hoses": lambda m: "two" if m.unit.condensing else "one",
    "inducer.sign": _inducer,
    "gas_valve.knob": lambda m: m.v["gas_valve.knob"],
    "flame.look": _flame,
    "flame.kept": _kept,
    "flame.rest": lambda m: "flame" if m.lit_for > 0 and not m.e.valve_open else "no flame",
    "flame.at_blower": _at_blower,
    "gas_parts": _parts,
    "exchanger.look": _exchanger,
    "filter": lambda m: "clogged or wrong" if m.v["filter.clog"] > 0.3 else "clean and right size",
    "registers": lambda m: (
        "shut or covered" if max(m.v["registers.shut"], m.v["registers.others"]) > 0.3 else "open"
    ),
    "blower.wheel": _wheel,
    "coil.face": _coil,
    "water.track": lambda m: m.v["water.from"],
    "drain.state": _drain,
    "terminal": _terminal,
    "vent.run": lambda m: m.v["vent.look"],
    "hose.state": lambda m: m.v["hose.look"],
    "cable.state": _cable,
    "harness.state": _harness,
    "stat.state": _stat_state,
    "switched.by": _switched_by,
    "fuse.kind": lambda m: (
        "right size and type"
        if m.v["control_fuse.right"] and m.v["plug_fuse.right"]
        else "wrong size or type"
    ),
    "gas_cock": _gas_cock,
    "other_gas": _others,
    "gas_trap": lambda m: m.v["gas_supply.trap"],
    "rod.state": lambda m: m.v["flame_rod.look"],
    "dust": lambda m: m.v["room.dust"],
    "igniter.state": lambda m: m.v["igniter.look"],
    "burner.state": lambda m: m.v["burners.look"],
    "meter_box": lambda m: "dial can be read" if m.unit.features["meter"] == "yes" else "no meter here",
    "ports.closed": lambda m: "bubbles" if m.hands["bubbles"] else "closed and no bubbles",
}
"""Things that one look answers. Those that take time (five starts, two cycles) are in house.py."""
