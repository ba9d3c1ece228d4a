"""What a person does to the house, by the names of house.yaml. A repair puts components back as they were
built.
"""

from __future__ import annotations

from collections.abc import Callable

from assistant.rig import acts_branch
from assistant.rig.acts_zone import DEEDS_ZONE, RENEWS_ZONE
from assistant.rig.fan import acts as fan
from assistant.rig.fan.warmth import Fan
from assistant.rig.machine import Machine
from assistant.rig.part import Settings

STANDS_STILL = 240
Deed = Callable[[Machine], None]

RENEWS: dict[str, tuple[str, ...]] = {
    "set_thermostat": (
        "thermostat.mode",
        "thermostat.habit",
        "thermostat.set",
        "thermostat.locked",
        "thermostat.batteries",
        "thermostat.needs_c",
        "thermostat.seated",
        "thermostat.rate",
        "thermostat.lag",
    ),
    "place_thermostat": ("thermostat.place",),
    "fit_thermostat": ("thermostat",),
    "mend_cable": ("cable", "panel_wire"),
    "set_zone_panel": (
        "zone_panel.heat_locked",
        "zone_panel.fan_locked",
        "zone_panel.delay",
        "zone_panel.fuse",
        "zone_panel.hot_limit",
    ),
    "switch_on": ("service_switch.position",),
    "fit_switch": ("service_switch",),
    "fit_plug_fuse": ("plug_fuse",),
    "mend_line_wire": ("branch_hot", "branch_neutral", "line_wire", "breaker.lug_ohm", "breaker.joint"),
    "call_electrician": ("branch_hot", "branch_neutral", "breaker", "line_wire", "polarity"),
    "mend_line_load": (
        "branch_load",
        "board.surge_ohm",
        "board.leak_ohm",
        "igniter.leaks_hot_ohm",
        "blower_motor.filter_farad",
        "inducer.main_open",
        "inducer.leak_ohm",
        "igniter.leak_ohm",
        "blower_motor.leak_ohm",
        "blower_motor.module_short",
    ),
    "fit_door_switch": ("door_switch",),
    "fit_transformer": ("transformer",),
    "set_tap": ("transformer.ratio",),
    "seat_door": ("door",),
    "fit_control_fuse": ("control_fuse",),
    "add_control_fuse": ("control_fuse",),
    "part_24v_loads": ("accessories", "control_fuse.rating"),
    "clear_drain": ("drain",),
    "fit_pump": ("drain.pump_dead",),
    "fit_float": ("float_switch",),
    "fit_filter": ("filter",),
    "open_air_path": ("registers", "coil", "ducts", "air_way"),
    "clean_blower": (
        "wheel",
        "blower_harness.parked",
        "blower_harness.joined_ohm",
        "blower_cooling.vents",
    ),
    "fit_limit": ("limit",),
    "mend_string": ("string",),
    "fit_pressure_switch": ("pressure_switch",),
    "mend_hose": ("hose",),
    "clear_vent": ("vent",),
    "clear_intake": ("intake",),
    "fit_inducer": ("inducer",),
    "mend_inducer_plug": ("inducer_harness",),
    "fit_igniter": ("igniter",),
    "mend_igniter_plug": ("igniter_harness",),
    "open_gas": ("gas_supply.cock", "gas_supply.meter"),
    "call_gas_supplier": ("gas_supply.static", "gas_supply.meter"),
    "turn_valve_on": ("gas_valve.knob",),
    "mend_valve_wire": ("valve_harness",),
    "fit_valve": ("gas_valve",),
    "set_manifold": ("gas_valve.regulator",),
    "clean_burners": ("burners",),
    "fit_gas_parts": ("gas_parts",),
    "clean_rod": ("flame_rod.coat_ohm", "flame_rod.reach", "flame_rod.film_ohm"),
    "fit_rod": ("flame_rod",),
    "mend_ground": ("ground_wire", "burner_bond", "polarity", "branch_neutral.to_ground_ohm"),
    "mend_board_plug": ("board_plugs", "board_fan.line_open"),
    "fit_board": ("board", "board_fan.fan_dead", "board_fan.heat_dead"),
    "dry_and_lead_away": ("water", "damper2.harm"),
    "mend_wire": (
        "line_wire.to_ground_ohm",
        "branch_neutral.to_ground_ohm",
        "furnace_wire",
        "transformer_leads",
        "blower_harness.to_ground_ohm",
        "blower_harness.way",
        "inducer_harness.to_ground_ohm",
        "inducer_harness.way",
        "igniter_harness.to_ground_ohm",
        "igniter_harness.way",
    ),
    "mend_rod_wire": ("flame_rod.wire_open",),
    "fit_cord": ("cord", "line_wire"),
    "fit_receptacle": ("receptacle", "branch_hot", "branch_neutral"),
    "fit_contactor": ("outdoor_unit",),
    "mend_accessory": ("accessories",),
    "fit_gas_trap": ("gas_supply.trap",),
    "renew_gas_pipe": ("gas_supply.pipe",),
    "open_combustion_air": ("room.opening", "room.pull"),
    "clean_gas_trap": ("gas_supply.trap", "gas_valve.drop"),
    "set_igniter": ("igniter.place", "igniter.look"),
    "clean_air_way": ("room.dust",),
    "call_power_company": ("service",),
    **acts_branch.RENEWS,
    **RENEWS_ZONE,
    **fan.RENEWS,
}
"""Which components, or single settings, an act puts back as built."""
LOOKS_GOOD = {"clean_rod": {"flame_rod.look": "clean"}}


def renewed(built: Settings, names: tuple[str, ...]) -> Settings:
    """The built values of those components or settings."""
    wanted = {}
    for name in names:
        found = {key: value for key, value in built.items() if key == name or key.startswith(f"{name}.")}
        if not found:
            raise KeyError(name)
        wanted.update(found)
    return wanted


def _hands(**given: object) -> Deed:
    def deed(m: Machine) -> None:
        m.hands.update(given)

    return deed


def _stat_off(m: Machine) -> None:
    """Off, and wait until inducer and blower stand still, four minutes at most."""
    m.hands.update(stat="off", fan_held=True)
    for _ in range(STANDS_STILL):
        m.tick()
        if m.inducer_slip > 0.98 and m.air.turns < 10 and not any(m.board.wants.values()):
            return


def _power_cycle(m: Machine) -> None:
    m.hands["tagged"] = True
    for _ in range(60):
        m.tick()
    m.hands["tagged"] = False


def _gas_cock(position: float) -> Deed:
    def deed(m: Machine) -> None:
        if position == 0 or m.hands.get("cock_by_hand"):
            m.v["gas_supply.cock"] = position
            m.e.touched()
        m.hands["cock_by_hand"] = position == 0

    return deed


def _nothing(_m: Machine) -> None:
    """Words to a customer, a bubble test on a sound joint: nothing in the machine changes."""


def _drain_back(m: Machine) -> None:
    """Closed, and its trap filled with water."""
    m.hands["drain_off"] = False
    m.v["drain.trap_dry"] = 0
    m.e.touched()


DEEDS: dict[str, Deed] = {
    "stat_off": _stat_off,
    "stat_on": _hands(stat="call", fan_held=False),
    "stat_call": _hands(stat="call", fan_held=False),
    "stat_back": _hands(stat="customer", fan_held=False),
    "breaker_off": _hands(tagged=True),
    "branch_off": _hands(tagged=True, locked=True),
    "open_window": _hands(window=True),
    "close_window": _hands(window=False),
    "lift_accessories": _hands(lifted=True),
    "accessories_back": _hands(lifted=False),
    "lift_float": _hands(float_up=True),
    "drop_float": _hands(float_up=False),
    "watch_fuse": _nothing,
    "power_cycle": _power_cycle,
    "hold_door_switch": _hands(door_on=False, held=True),
    "release_door_switch": _hands(door_on=True, held=False),
    "discharge_capacitor": _hands(discharged=True),
    "gas_off": _gas_cock(0.0),
    "gas_on": _gas_cock(1.0),
    "open_port": _hands(ports="open"),
    "close_port": _hands(ports="shut"),
    "leak_check": _nothing,
    "tee_in": _hands(tee=True),
    "tee_out": _hands(tee=False),
    "hose_off": _hands(hose_off=True),
    "hose_on": _hands(hose_off=False),
    "drain_to_bucket": _hands(drain_off=True),
    "drain_back": _drain_back,
    "lift_r": _hands(r_off=True),
    "r_back": _hands(r_off=False),
    "open_intake": _hands(intake_open=True),
    "close_intake": _hands(intake_open=False),
    "open_vent_joint": _hands(vent_open=True),
    "close_vent_joint": _hands(vent_open=False),
    **acts_branch.DEEDS,
    **DEEDS_ZONE,
    **fan.DEEDS,
}


def do(m: Machine, built: Settings, name: str) -> tuple[str, ...] | None:
    """Do it. The settings that were put back as built; None where no act of that name is known here."""
    m.deeds.add(name)
    if name in DEEDS:
        DEEDS[name](m)
    if name in RENEWS:
        fresh = renewed(built, RENEWS[name])
        m.v.update(fresh)
        m.v.update(LOOKS_GOOD.get(name, {}))
        if name == "fit_board":
            m.board.__init__()
        if name == "fit_blower_motor":  # a new one is cold
            m.fan = Fan(m.v["room.temperature"], met=True)
        m.e.touched()
        return tuple(fresh)
    return () if name in DEEDS else None


def known() -> frozenset[str]:
    """Every act that can be done in this house."""
    return frozenset(DEEDS) | frozenset(RENEWS)
