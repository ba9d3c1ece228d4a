"""What is done to panel, dampers and ducts of a house with zones, by the names of house.yaml."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from assistant.rig.parts.zone import ZONES

if TYPE_CHECKING:
    from assistant.rig.machine import Machine

RENEWS_ZONE: dict[str, tuple[str, ...]] = {
    "set_zone_wish": ("zone2.heat",),
    "set_zone_fan": ("zone2.fan", "zone3.fan"),
    "set_zone_moisture": ("zone2.humidity_fan", "zone3.humidity_fan"),
    "set_panel_menu": (
        "zone_panel.type_wrong", "zone_panel.fan_all", "zone_panel.relief", "zone_panel.purge",
        "zone_panel.purge_to", "zone_panel.hot_limit", "zone_panel.rest", "damper2.rises",
    ),
    # a panel of the same settings, wired as the old one was: what is inside it is new, and its fuse
    "fit_zone_panel": (
        "zone_panel.relay_dead", "zone_panel.g_dead", "zone_panel.fuse", "zone_panel.output_on",
        "zone_panel.output_dead", "zone_panel.output_held", "zone2.input_ohm",
    ),
    "fit_zone_thermostat": ("zone2.stuck",),
    "mend_zone_cable": (
        "cable.look", "zone2.r_g_ohm", "zone2.r_w_ohm", "damper2.wire_open",
        *(f"damper{zone}.cable_ohm" for zone in ZONES),
    ),
    "load_call_wire": ("zone2.ghost_ohm", "zone2.g_ghost_ohm"),
    "move_interlock": ("humidifier.interlock", "humidifier.demand"),
    "set_board_fan": ("fan_switch.always",),
    "sort_zone_wires": (
        "zone_panel.stats_crossed", "zone_panel.crossed", "zone2.strand_ohm", "damper2.swapped",
        "damper2.crossed_leg", "damper2.feed_ohm", "damper2.kind",
    ),
    "part_zone_calls": ("zone_panel.stats_paired",),
    "power_panel": ("zone_panel.unfed",),
    "fit_panel_fuse": ("zone_panel.fuse",),
    "fit_panel_transformer": ("zone_panel.source_ohm",),
    "part_damper_loads": (
        "zone_panel.added_ohm",
        *(f"damper{zone}.{what}" for zone in ZONES for what in ("motor_ohm", "cable_ohm")),
    ),
    "free_lever": ("damper2.lever",),
    "tighten_shaft": ("damper2.slips",),
    "free_blade": ("damper2.jam", "damper2.harm"),
    "set_blade": ("damper2.stop", "damper2.offset", "damper2.mounted"),
    "fit_actuator": ("damper2.dead", "damper2.stripped", "damper2.motor_ohm"),
    "fit_damper": ("damper2.closed",),
    "move_duct": ("ducts2.hangs_on", "ducts2.also_on", "damper2.before"),
    "seal_duct": ("ducts2.leak",),
    "open_hand_dampers": ("registers",),
    "enlarge_ducts": ("ducts",),
    "open_bypass": ("bypass.hand",),
    "free_bypass": ("bypass.stuck",),
    "fit_bypass": ("bypass", "story.no_bypass"),
    "give_relief": ("bypass", "story.no_bypass"),
    "open_transfer": ("ducts2.return_share",),
    "set_blower_air": ("fan_switch.over",),
}  # fmt: skip
"""Which components, or single settings, an act puts back as built."""


def _wires_back(m: Machine) -> None:
    m.zoning.people.lays_back()


def _actuator(off: bool) -> Callable[[Machine], None]:
    def deed(m: Machine) -> None:
        m.zoning.people.actuator_off = off

    return deed


def _panel(off: bool) -> Callable[[Machine], None]:
    def deed(m: Machine) -> None:
        m.zoning.people.panel_off = off

    return deed


def _lift_all(m: Machine) -> None:
    m.zoning.people.lift("all zones")


def _as_found(m: Machine) -> None:
    m.zoning.people.rest()


DEEDS_ZONE: dict[str, Callable[[Machine], None]] = {
    "stat_zones_noted": lambda _m: None,
    "stat_zones_back": _as_found,
    "lift_zone_wires": _lift_all,
    "zone_wires_back": _wires_back,
    "lift_actuator": _actuator(True),
    "actuator_back": _actuator(False),
    "drill_duct_hole": lambda _m: None,
    "plug_duct_hole": lambda _m: None,
    "panel_off": _panel(True),
    "panel_on": _panel(False),
}
