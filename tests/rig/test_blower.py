"""The rig's blower: what stalls it, what warms it, what it is told, and where its air goes.

Sources beside the checks: trade practice of the facts that the trees cite (common practice), the laws
of fans and induction motors of textbooks (from memory), arithmetic (reasoned).
"""

import pytest

from assistant.rig.fan import warmth
from assistant.rig.house import Rig
from assistant.rig.unit import REFERENCE, with_features

CALLED = {"thermostat.fan": "on", "thermostat.set": "below the room"}
ELECTRONIC = ("electronic", "torque", "level", "data")


def called(changes=None, blower="psc", seconds=120):
    """A house whose fan has been called for some time."""
    unit = with_features(REFERENCE, {"blower": blower})
    return Rig(unit, changes={**CALLED, **(changes or {})}, arrives_after=seconds)


@pytest.mark.parametrize("blower", ["psc", *ELECTRONIC])
def test_a_sound_blower_moves_its_air(blower):
    rig = called(blower=blower)
    assert rig.see("blower.does") == "blows well"
    assert rig.machine.air.flow == pytest.approx(rig.unit.design_flow, rel=0.1)


def test_a_stalled_motor_hums_until_its_overload_opens_and_closes_it_within_the_hour():
    """Common practice: an overload opens after minutes of stall and closes half an hour to an hour later."""
    rig = called({"wheel.jammed": 1}, seconds=30)
    assert rig.see("blower.does") == "hums or jerks"
    fan = rig.machine.fan
    for _ in range(20):
        rig.wait(30 if not fan.open else 0)
    assert fan.open and rig.see("blower.does") == "stands still and silent"
    rig.act("stat_off")
    rig.act("breaker_off")
    waited = 0
    while fan.open:
        rig.wait(60)
        waited += 60
    assert 20 * 60 <= waited <= 60 * 60


def test_an_open_overload_stands_in_the_way_of_an_ohmmeter_and_its_shell_is_hot():
    rig = called({"blower_cooling.found": 430.0}, seconds=5)
    rig.act("breaker_off")
    assert rig.measure("resistance", ("blower.line", "blower.neutral")) == "OL"
    assert warmth.shell(rig.machine) > 322.0  # 120 F, from memory: no open overload below


def test_a_locked_split_capacitor_motor_takes_about_twice_its_plate():
    """Common practice: 1.5 to 3 times, not the 4 to 8 of split-phase motors."""
    rig = called({"wheel.jammed": 1}, seconds=20)
    amps = float(rig.measure("ac_current", ("blower.line",)).split()[0])
    assert 1.5 <= amps / rig.unit.blower_amps <= 3.2


@pytest.mark.parametrize("changes", [{"blower_motor.reversed": 1}, {"wheel_fit.backwards": 1}])
def test_a_wheel_that_turns_the_wrong_way_moves_a_third_of_its_air(changes):
    """Common practice."""
    share = called(changes).machine.air.flow / REFERENCE.design_flow
    assert 0.25 <= share <= 0.45


def test_two_wrongs_of_rotation_cancel():
    assert called({"blower_motor.reversed": 1, "wheel_fit.backwards": 1}).see("blower.does") == "blows well"


@pytest.mark.parametrize("blower", ELECTRONIC)
def test_electronics_give_up_on_a_wheel_that_stands_and_forget_it_without_power(blower):
    """Common practice: locked out after stalls, cleared by five minutes without power."""
    rig = called({"wheel.jammed": 1}, blower, seconds=200)
    assert rig.machine.v["blower_module.locked"] == 1
    rig.set([("wheel.jammed", 0)])
    rig.wait(60)
    assert rig.see("blower.does") == "stands still and silent"
    rig.act("motor_rest")
    rig.wait(60)
    assert rig.see("blower.does") == "blows well"


def test_an_open_common_is_seen_at_the_plug_and_not_from_the_board():
    """24 V to the board's C, nothing to the plug's own common."""
    rig = called({"blower_leads.common_open": 1}, "torque")
    assert float(rig.measure("ac_voltage", ("blower.command", "c")).split()[0]) > 20
    assert rig.see("blower.does") == "stands still and silent"


def test_a_level_is_read_on_direct_volts_and_not_on_alternating_ones():
    rig = called(blower="level")
    assert float(rig.measure("dc_voltage", ("blower.command", "blower.common")).split()[0]) > 1
    assert float(rig.measure("ac_voltage", ("blower.command", "blower.common")).split()[0]) < 1


def test_a_trunk_that_is_apart_draws_its_air_and_delivers_none():
    rig = called({"air_way.lost": 0.85})
    assert rig.see("blower.does") == "turns with hardly any air"
    assert rig.machine.air.flow >= rig.unit.design_flow


def test_a_held_board_sends_nothing_until_the_wire_is_off():
    rig = called({"inhibit.kind": "twin link"})
    assert rig.see("blower.does") == "stands still and silent"
    rig.act("inhibit_off")
    rig.wait(30)
    assert rig.see("blower.does") == "blows well"
