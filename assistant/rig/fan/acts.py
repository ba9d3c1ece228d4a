"""What a person does to a blower, and what repairs of it put back as built."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from assistant.rig.machine import Machine

REST = 300
MODULE = (
    "blower_motor.module_dead",
    "blower_motor.module_short",
    "blower_motor.module_leak_ohm",
    "blower_module",
)

RENEWS: dict[str, tuple[str, ...]] = {
    "fit_blower_motor": (
        "blower_motor.main_open",
        "blower_motor.start_open",
        "blower_motor.seized",
        "blower_motor.drag",
        "blower_motor.leak_ohm",
        "blower_motor.short_ohm",
        "blower_motor.lets_go",
        "blower_motor.size",
        "blower_motor.binds",
        "blower_motor.half_leak_ohm",
        "blower_rotor",
        "blower_cooling.vents",
        "blower_half",
    ),
    "fit_module": MODULE,
    "fit_capacitor": ("capacitor",),
    "mend_blower_plug": ("blower_harness", "blower_leads"),
    "fit_choke": ("choke",),
    "take_bracket_off": ("wheel.jammed",),
    "free_wheel": ("wheel.jammed", "wheel.slips", "wheel.rubs", "wheel.look", "blower_cooling.loose"),
    "turn_wheel": ("wheel_fit.backwards", "wheel.look"),
    "turn_rotation": ("blower_motor.reversed",),
    "set_blower_speed": (
        "blower_harness.parked",
        "blower_harness.joined_ohm",
        "blower_leads.fan_parked",
        "blower_leads.two_taps",
        "blower_settings",
    ),
    "match_ducts": ("ducts",),
    "set_line_jumper": ("line_jumper",),
    "release_inhibit": ("inhibit",),
    "unload_motor": ("blower_cooling.found",),
    "teach_customer": ("last_visit", "service_switch.by", "thermostat.habit"),
}
"""Beside the acts of the furnace itself."""


def _hands(**given: object) -> Callable[[Machine], None]:
    def deed(m: Machine) -> None:
        m.hands.update(given)

    return deed


def _rest(m: Machine) -> None:
    """Five minutes at the service switch."""
    m.hands["tagged"] = True
    for _ in range(REST):
        m.tick()
    m.hands["tagged"] = False


def _nothing(_m: Machine) -> None:
    """What overheated or stalled the motor is put right by the cause's own repair."""


DEEDS: dict[str, Callable[[Machine], None]] = {
    "fan_on": _hands(fan="on", fan_held=False),
    "fan_again": _hands(fan_held=False),
    "fan_auto": _hands(fan="auto"),
    "w_off": _hands(w_off=True),
    "w_back": _hands(w_off=False),
    "limit_lead_off": _hands(limit_off=True),
    "limit_lead_back": _hands(limit_off=False),
    "inhibit_off": _hands(inhibit_off=True),
    "inhibit_back": _hands(inhibit_off=False),
    "module_off": _hands(module_off=True),
    "module_on": _hands(module_off=False),
    "motor_rest": _rest,
    "unstall_motor": _nothing,
}
