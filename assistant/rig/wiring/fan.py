"""The blower's wires: speed leads, choke, plug, overload, the windings behind a module, and its command."""

from __future__ import annotations

from collections.abc import Mapping

from assistant.rig.circuit.network import CLOSED, OPEN, Network
from assistant.rig.part import Settings
from assistant.rig.wiring.common import contact

HALF_OHM = 1.5
"""One of a motor half's three windings."""
COMMAND_OHM, PULL_DOWN = 2000.0, 10e3
"""A motor's command input, and what holds an idle output of the board down."""
BY_24_VOLTS = ("electronic", "torque")
"""Kinds of blower that are told to turn by 24 V."""


def build(n: Network) -> None:
    """Branches."""
    n.branch("line_pin", "door.load", "board.line", CLOSED)
    n.branch("fan_relay", "board.line", "board.fan", OPEN)
    n.branch("fan_lead", "board.fan", "choke.feed", 0.02)
    n.branch("choke", "choke.feed", "choke.load", 0.02)
    n.branch("choke_lead", "choke.load", "blower.tap", CLOSED)
    n.branch("heat_lead", "board.blower", "blower.heat", 0.02)
    n.branch("heat_tap", "blower.heat", "blower.tap", 0.02)
    n.branch("blower_plug", "blower.line", "blower.pin", CLOSED)
    n.branch("blower_overload", "blower.pin", "blower.feed", CLOSED)
    n.branch("blower_track", "blower.inner", "motor.shell", OPEN)
    n.branch("half_one", "motor.one", "motor.star", HALF_OHM)
    n.branch("half_two", "motor.two", "motor.star", HALF_OHM)
    n.branch("half_three", "motor.three", "motor.star", HALF_OHM)
    n.branch("half_leak", "motor.star", "motor.shell", OPEN)
    n.branch("command_relay", "r", "board.command", OPEN)
    n.branch("command_rest", "board.command", "c", PULL_DOWN)
    n.branch("command_wire", "board.command", "blower.command", 0.3)
    n.branch("command_input", "blower.command", "blower.common", COMMAND_OHM)
    n.branch("command_common", "blower.common", "c", 0.3)
    n.branch("taps_link", "board.command", "blower.taps", OPEN)
    n.branch("taps_input", "blower.taps", "blower.common", COMMAND_OHM)


def update(n: Network, v: Settings, s: Mapping[str, float], kind: str) -> None:
    """Bring it to the settings and the state. `kind`: of the blower, as in a house's features."""
    psc = kind == "psc"
    lead = not v["blower_leads.fan_open"] and not v["blower_leads.fan_parked"]
    coil = not v["choke.open"] or not v["choke.fitted"]
    n.set("line_pin", ohm=contact(not v["board_fan.line_open"]))
    n.set("fan_relay", ohm=contact(s["fan"] or not psc, v["board.relay_ohm"] if psc else CLOSED))
    n.set("fan_lead", ohm=contact(lead or not v["choke.fitted"], 0.02))
    n.set("choke", ohm=contact(coil and (lead or v["choke.fitted"]), 0.05))
    heat = psc and not v["blower_leads.heat_open"] and not v["blower_harness.parked"]
    n.set("heat_lead", ohm=contact(heat, 0.02))
    n.set("heat_tap", ohm=contact(not v["blower_rotor.heat_tap_open"], 0.02))
    n.set("blower_plug", ohm=contact(not v["blower_leads.pin_open"]))
    n.set("blower_overload", ohm=contact(not s["overload"]))
    n.set("blower_track", ohm=v["blower_rotor.track_ohm"] if psc else OPEN)
    n.set("half_two", ohm=OPEN if v["blower_motor.main_open"] else v["blower_half.second_ohm"])
    n.set("half_leak", ohm=v["blower_half.leak_ohm"])
    n.set("command_relay", ohm=contact(s["command"] and kind in BY_24_VOLTS))
    whole = not v["blower_harness.command_open"]
    whole = whole and not (v["blower_leads.heat_command_open"] and s["heat_mode"])
    n.set("command_wire", ohm=contact(whole, 0.3))
    n.set("command_common", ohm=contact(not v["blower_leads.common_open"], 0.3))
    n.set("taps_link", ohm=contact(v["blower_leads.two_taps"]))
