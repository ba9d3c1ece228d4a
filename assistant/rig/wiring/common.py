"""Values that all of the wiring shares: motors, loads, contacts, and the state they are in."""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache

from assistant.rig.circuit.motor import Induction
from assistant.rig.circuit.network import CLOSED, OPEN

BLOWER = Induction(3.0, 3.3, 6.2, 3.3, 60.0, 10.0, 9.0, 1.7, 6)
"""A third of a horsepower, six poles, 120 V; with 10 uF it locks at about twice its plate."""
BLOWER_FARAD = 10e-6
INDUCER = Induction(14.0, 19.0, 19.0, 13.0, 150.0, 40.0, 38.0, 1.4, 2)
INDUCER_FARAD = 5e-6
LOGIC_OHM = 150.0
"""What the board itself draws from 24 V: about 4 VA."""
COIL_OHM = 400.0
"""One relay coil of the board."""
INPUT_OHM = 1500.0
"""A board's or panel's input for W, Y or G."""
SENSE_OHM = 5000.0
"""A board's sense input in the safety string."""
ROD_SERIES_OHM, ROD_FARAD, ROD_SENSE_OHM = 2.2e6, 4.7e-9, 10e6
PANEL_RATIO = 0.216
DEFAULT_STATE = {
    "door": 1.0,
    "breaker": 1.0,
    "switch": 1.0,
    "inducer": 0.0,
    "igniter": 0.0,
    "valve": 0.0,
    "blower": 0.0,
    "fan": 0.0,
    "command": 0.0,
    "heat_mode": 0.0,
    "inhibited": 0.0,
    "overload": 0.0,
    "stat_w": 0.0,
    "stat_g": 0.0,
    "stat_y": 0.0,
    "float": 1.0,
    "limit": 1.0,
    "rollout": 1.0,
    "aux": 1.0,
    "pressure": 0.0,
    "panel": 0.0,
    "panel_power": 1.0,
    "panel_g": 0.0,
    **{f"zone{zone}_{what}": 0.0 for zone in (1, 2, 3) for what in ("heat", "g", "cool")},
    **{f"zone{zone}_on_base": 1.0 for zone in (1, 2, 3)},
    "zones_lifted": 0.0,
    "g_lifted": 0.0,
    "furnace_lifted": 0.0,
    "panel_out_lifted": 0.0,
    "open_lifted": 0.0,
    "close_lifted": 0.0,
    "legs_off": 0.0,
    "panel_off": 0.0,
    **{f"output{zone}_{leg}": 0.0 for zone in (1, 2, 3) for leg in ("close", "open")},
    "coils": 0.0,
    "igniter_ohm": 60.0,
    "ecm_ohm": 5000.0,
    "inducer_slip": 1.0,
    "blower_slip": 1.0,
    "r_lifted": 0.0,
    "loads_lifted": 0.0,
    "device": 1.0,
    "white": 1.0,
    "spliced": 1.0,
    "board_plugged": 1.0,
    "others_plugged": 1.0,
    "motors_plugged": 1.0,
    "others_on": 1.0,
    "others_heat": 0.0,
    "igniter_glows": 0.0,
    "casing": 293.0,
    "moved": 0.0,
    "wet_board": 0.0,
    "wet_run": 0.0,
    "film_board": 0.0,
    "film_run": 0.0,
    "bridge": 0.0,
    "board_weak": 0.0,
    "others_weak": 0.0,
    "cable_weak": 0.0,
    "blower_weak": 0.0,
    "inducer_weak": 0.0,
}


def winding(motor: Induction, slip: float):
    """A motor's two-port at a slip; at 0 Hz its bare copper."""
    z, copper = motor.impedances(slip), motor.winding_ohms()
    return lambda omega: copper if omega == 0 else z


@lru_cache(maxsize=64)
def inducer_motor(frequency: float) -> Induction:
    """The inducer's motor on a line frequency."""
    return INDUCER.at(frequency)


@lru_cache(maxsize=1024)
def blower_motor(frequency: float, size: float, bars: float = 1.0, shorted: float = 0.0) -> Induction:
    """The blower's motor on a line frequency, wound for `size` times the reference's power.

    `bars`: ohm of its rotor over a sound one's; `shorted`: share of its auxiliary turns that touch each other
    and no longer turn the field (ohms go with the turns, reactance with their square).
    """
    motor, left = BLOWER.at(frequency).sized(size), 1 - shorted
    return replace(
        motor,
        rotor_ohm=motor.rotor_ohm * bars,
        turns=motor.turns * left,
        aux_ohm=motor.aux_ohm * left,
        aux_reactance=motor.aux_reactance * left**2,
    )


def contact(closed: float, ohm: float = CLOSED) -> float:
    """A contact's ohm."""
    return ohm if closed else OPEN
