"""Zones, dampers, panel and bypass, by what each type of damper and panel is known to do.

Types and times: spring-open dampers are shut by 24 V, spring-shut ones opened by it, three-wire ones driven
on exactly one leg; a stroke takes 15 to 90 s; a closed zone leaks little (common practice).
"""

from random import Random

import pytest

from assistant.rig.fault_file import load_faults
from assistant.rig.house import Rig
from assistant.rig.meter import KIT
from assistant.rig.unit import REFERENCE, varied, with_features

ZONED = with_features(REFERENCE, {"zone_panel": "yes"})


def zoned(changes=None, after=400, unit=ZONED):
    return Rig(unit, changes=changes, arrives_after=after).machine


@pytest.mark.parametrize(
    ("kind", "open_leg", "close_leg"),
    [("spring open", (0, 0), (0, 24)), ("spring close", (24, 0), (0, 0)), ("two way", (24, 0), (0, 24))],
)
def test_volts_of_each_type(kind, open_leg, close_leg):
    """Legs of an open zone's damper (zone 1) and of a shut one's (zone 2): driven about 24 V, else none."""
    rig = Rig(ZONED, changes={f"damper{zone}.kind": kind for zone in (1, 2, 3)}, arrives_after=400)
    m = rig.machine
    for zone, place in ((1, 0), (2, 1)):
        for leg, wanted in (("open", open_leg[place]), ("close", close_leg[place])):
            shown = rig.measure("ac_voltage", (f"damper{zone}.{leg}", "panel.c"), KIT["low"])
            volts = float(shown.split()[0])
            assert (volts > 22) if wanted else (volts < 0.5), (kind, zone, leg, volts)
        assert m.zoning.blade[zone] == (1.0, 0.0)[place]


def test_a_stroke_takes_a_minute():
    """From the first volts to the end between 15 and 90 s."""
    rig = Rig(ZONED, arrives_after=0)
    machine = rig.machine
    seconds = 0
    while machine.zoning.blade[2] > 0 and seconds < 200:
        rig.wait(1)
        seconds += 1
    assert 15 <= seconds <= 90


def test_a_panels_transformer_is_fed_whichever_supply_wire_is_which():
    """Both its leads are taken before the junction box, where hot and neutral may be crossed (reasoned)."""
    for changes in ({}, {"polarity.swapped": 1}):
        m = zoned(changes)
        assert 110 < m.e.volts("panel.line", "panel.neutral") < 130, changes
    assert zoned({"service_switch.position": "off"}).e.volts("panel.line", "panel.neutral") < 1


def test_without_power_springs_decide():
    """Spring-open ones stand open, spring-shut ones shut, three-wire ones stay."""
    for kind, stands in (("spring open", 1.0), ("spring close", 0.0)):
        m = zoned({"zone_panel.fuse": 1, **{f"damper{z}.kind": kind for z in (1, 2, 3)}})
        assert set(m.zoning.blade.values()) == {stands}
    rig = Rig(ZONED, changes={f"damper{z}.kind": "two way" for z in (1, 2, 3)}, arrives_after=400)
    before = dict(rig.machine.zoning.blade)
    rig.set([("zone_panel.fuse", 1)])
    rig.wait(120)
    assert rig.machine.zoning.blade == before


def test_a_shut_zone_hardly_leaks():
    """Under a tenth of its open flow (common practice), tens of cfm or less."""
    m = zoned()
    assert 0 < m.air.ducts.runs["2"] * 2118.88 < 40


def test_recirculation_by_a_bypass():
    """With a share b round the bypass, supply stands over the room by the unit's rise / (1 - b).

    Source: mass and heat balance of air that goes round (calc); 3 % for what lags in a steady state.
    """
    m = zoned({"bypass.stuck": 0.3, "zone2.heat": 1, "zone3.heat": 1}, 1800)
    share = m.air.ducts.bypass / m.air.flow
    rise = m.heat.supply - m.returns()
    assert 0.1 < share < 0.5
    assert m.heat.supply - 293.0 == pytest.approx(rise / (1 - share), rel=0.03)


def test_one_small_zone_alone_raises_the_static_and_opens_the_bypass():
    """All zones: bypass shut. A narrow one alone: more static, and the bypass carries some."""
    calls = {"thermostat.set": "satisfied", "zone3.fan": "on", "story.narrow": 1}
    all_of_them = zoned({**calls, "thermostat.fan": "on", "zone2.fan": "on"})
    alone = zoned(calls)
    assert all_of_them.air.ducts.bypass == 0 and alone.air.ducts.bypass > 0
    assert alone.air.ducts.plenum > all_of_them.air.ducts.plenum


@pytest.mark.parametrize("zone", [1, 2, 3])
def test_each_zone_alone_heats_without_tripping_the_limit(zone):
    """A quarter of an hour of heat for one zone alone; a house that trips its limit then is not sound."""
    calls = {"thermostat.set": "calling" if zone == 1 else "satisfied"}
    rig = Rig(ZONED, changes=calls | ({f"zone{zone}.heat": 1} if zone > 1 else {}), arrives_after=900)
    assert rig.machine.e.s["limit"] and rig.machine.lit_for > 600


def test_a_smaller_zone_alone_heats_too():
    """A house that somebody added a zone to is sound while its bypass opens."""
    changes = {"thermostat.set": "satisfied", "zone3.heat": 1, "story.narrow": 1}
    rig = Rig(ZONED, changes=changes, arrives_after=1800)
    assert rig.machine.e.s["limit"] and rig.machine.lit_for > 1500


def test_registers_shut_in_the_other_zones_press_air_into_the_quiet_one():
    """More pressure in the plenum, more air past zone 2's blade, and its own registers stay open."""
    calls = {"thermostat.set": "satisfied", "zone3.fan": "on", "damper2.unsealed": 1}
    sound, shut = zoned(calls), zoned({**calls, "registers.others": 0.74})
    assert shut.air.ducts.plenum > 1.15 * sound.air.ducts.plenum
    assert shut.zoning.registers(shut)["2a"] > 1.05 * sound.zoning.registers(sound)["2a"]


def test_a_shorted_damper_motor_turns_nothing():
    """Its blade stays where its spring holds it."""
    m = zoned({"damper2.motor_ohm": 1.5})
    assert m.zoning.blade[2] == 1.0


@pytest.mark.parametrize("zone", [1, 2, 3])
@pytest.mark.parametrize("short", ["motor_ohm", "cable_ohm"])
def test_a_short_on_any_driven_leg_takes_the_panels_fuse(zone, short):
    """24 V over a few ohms of copper and winding is several amperes; a 3 A fuse does not carry them."""
    others = {"thermostat.set": "satisfied", "zone3.heat": 1} if zone == 1 else {}
    m = zoned({f"damper{zone}.{short}": 0.5, **others})
    assert m.v["zone_panel.fuse"] and m.e.volts("panel.r", "panel.c") < 1


@pytest.mark.parametrize("zone", [1, 2, 3])
def test_a_shorted_damper_reads_as_one_behind_the_fuse_that_it_took(zone):
    """With the fuse open no damper draws current; ohms tell the short with the power off, and a sound house's
    dampers read as their windings do (common practice: 2 to 10 VA at 24 V are 58 to 288 ohm of impedance).
    """
    for changes, shown in (({}, (58, 288)), ({f"damper{zone}.motor_ohm": 1.5}, (1, 2))):
        rig = Rig(ZONED, changes={**changes, "zone_panel.fuse": 1}, arrives_after=60)
        assert rig.measure("ac_current", ("damper.common",), KIT["high"]).startswith("0.0")
        ohms = float(rig.measure("resistance", ("damper.common",), KIT["high"]).split()[0])
        assert shown[0] < ohms < shown[1], (zone, changes, ohms)


def test_the_panels_fuse_carries_what_sound_and_overloaded_panels_draw():
    """Three sound dampers, or a sag under a solenoid of 1 to 2 A, are no short."""
    for changes in ({}, {"zone_panel.added_ohm": 8.0}, {"zone_panel.source_ohm": 18.0}):
        assert not zoned(changes).v["zone_panel.fuse"], changes


@pytest.mark.parametrize("kind", ["spring open", "spring close", "two way"])
def test_stripped_gears_leave_the_blade_to_its_spring(kind):
    """The motor draws what it always drew, and its blade stands where spring or chance left it."""
    sound, stripped = ({"damper2.kind": kind, "damper2.stripped": gone} for gone in (0, 1))
    assert zoned(stripped).zoning.blade[2] == (0.0 if kind == "spring close" else 1.0)
    leg = f"actuator2.{'open' if kind == 'spring close' else 'close'}"
    volts = [zoned(changes).e.volts(leg, "panel.c") for changes in (sound, stripped)]
    assert volts[0] == pytest.approx(volts[1], abs=0.1)


def test_liner_in_a_blades_way_holds_it():
    """What lies in the way of a blade stops it, and is seen there; once it is out both are gone."""
    fault = load_faults(LINER.encode(), "mine.yaml")[0]["liner"]
    rig = Rig(with_features(REFERENCE, fault.house), fault, arrives_after=400)
    assert rig.machine.zoning.blade[2] == 0.5 and rig.see("damper.harm") == "liner or screw in the way"
    rig.act("free_blade")
    assert rig.cured


LINER = """\
format: 1
faults:
  liner:
    title: Liner lies in the blade's way
    complaint: zone_spillover
    finding: blade_jammed
    change: [{part: damper2, change: liner in the way}]
"""


def test_moisture_runs_the_fan_of_its_zone():
    """G of that zone and nothing else: its damper opens, W and Y stay dead, the furnace gets G."""
    m = zoned({"thermostat.mode": "off", "zone2.humidity_fan": 1, "humidifier.demand": 1})
    assert m.e.volts("zone2.g", "panel.c") > 22 and m.e.volts("zone2.w", "panel.c") < 0.5
    assert m.e.volts("panel.g", "panel.c_out") > 22 and m.e.volts("w", "c") < 0.5
    assert m.air.turns > 300 and m.zoning.blade[2] == 1.0 and m.zoning.blade[1] == 0.0


def test_a_call_behind_the_panel():
    """Every zone reads nothing, the panel sends nothing, and the furnace has G all the same."""
    m = zoned({"thermostat.mode": "off", "humidifier.demand": 1, "humidifier.interlock": 1})
    assert m.e.volts("zone2.g", "panel.c") < 0.5 and m.e.volts("panel.r", "panel.g") > 0
    assert not m.e.s["panel_g"] and m.e.volts("g", "c") > 22 and m.air.turns > 300


def test_purge_ends():
    """After a call the zone stays open for the purge, then dampers go to rest."""
    rig = Rig(ZONED, arrives_after=600)
    rig.act("stat_off")
    machine = rig.machine
    assert machine.zoning.wanted == {1: True, 2: False, 3: False}
    rig.wait(240)
    assert all(machine.zoning.wanted.values())


@pytest.mark.parametrize("seed", range(6))
def test_other_zoned_plates_heat(seed):
    """One zone alone, on other plates: it heats and its limit holds."""
    unit = with_features(varied(REFERENCE, Random(seed)), {"zone_panel": "yes"})
    m = zoned(after=1500, unit=unit)
    assert m.lit_for > 600 and m.e.s["limit"]
