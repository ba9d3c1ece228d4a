"""Faults of gas valve, feed and thermostat that a house can have: each shows itself by physics alone."""

import pytest

from assistant.quantity.units import to_si
from assistant.rig.burner.gas import LIFTS, gas
from assistant.rig.fault_file import load_faults
from assistant.rig.house import Rig, built
from assistant.rig.meter import KIT
from assistant.rig.unit import REFERENCE, with_features

CORD = with_features(REFERENCE, {"feed": "cord"})


def happened(rig: Rig) -> list[str]:
    return [name for name, _ in rig.machine.events]


def test_a_valve_opens_against_no_more_than_half_a_pound():
    """14 in. w.c., the usual rating of furnace valves (from memory)."""
    assert pytest.approx(to_si(14, "inwc"), rel=1e-3) == LIFTS
    weak = {**built(REFERENCE), "gas_supply.static": LIFTS - 1}
    strong = {**built(REFERENCE), "gas_supply.static": LIFTS + 1}
    assert gas(REFERENCE, weak, True).flow == pytest.approx(1.0)
    assert gas(REFERENCE, strong, True).flow == 0.0
    assert gas(REFERENCE, strong, True).inlet == pytest.approx(LIFTS + 1)


def test_a_valve_that_lets_go_takes_the_flame_with_24_volts_on_it():
    rig = Rig(changes={"gas_valve.holds": 8.0}, arrives_after=0)
    for _ in range(120):
        rig.wait(1)
        if "burner.lights" in happened(rig) and rig.machine.lit_for == 0:
            break
    assert "flame.holds" not in happened(rig)
    assert rig.machine.e.volts("valve.hot", "valve.common") > 20


def test_gas_that_passes_a_shut_valve_lights_on_the_glow_and_stops_the_board():
    rig = Rig(changes={"gas_valve.leaks": 0.25}, arrives_after=0)
    rig.wait(120)
    assert rig.see("flame.rest") == "flame"
    assert "valve.opens" not in happened(rig)
    assert rig.machine.board.phase == "flame_at_rest"


def test_a_board_that_finds_its_valve_driven_tries_nothing_and_keeps_the_inducer_running():
    rig = Rig(changes={"board.valve_stuck": 1}, arrives_after=120)
    assert rig.see("inducer.turning") == "runs"
    assert "ignitor.glows" not in happened(rig)
    rig.act("breaker_off")
    rig.wait(5)
    assert rig.measure("resistance", ("pressure.load", "board.valve"), KIT["high"]) == "0.2 ohm"
    sound = Rig(arrives_after=10)
    sound.act("breaker_off")
    sound.wait(5)
    assert sound.measure("resistance", ("pressure.load", "board.valve"), KIT["high"]) == "OL"


@pytest.mark.parametrize(
    ("setting", "whole"), [("cord.open", False), ("receptacle.open", True)], ids=["cord", "receptacle"]
)
def test_a_cord_that_is_broken_is_told_from_a_receptacle_without_grip(setting, whole):
    rig = Rig(CORD, changes={setting: 1}, arrives_after=10)
    assert rig.see("feed.kind") == "cord in a receptacle"
    assert rig.measure("ac_voltage", ("switch.feed", "ground"), KIT["low"]).startswith("1")
    assert rig.measure("ac_voltage", ("box.line", "box.neutral"), KIT["low"]).startswith("0")
    rig.act("breaker_off")
    assert (rig.measure("resistance", ("switch.load", "box.line"), KIT["high"]) != "OL") is whole


def test_a_thermostat_that_waits_too_long_calls_when_it_is_turned_up():
    """The room is 2 F below the setting; five degrees more and it calls."""
    rig = Rig(changes={"thermostat.lag": to_si(4, "Fdiff")}, arrives_after=60)
    assert rig.see("stat.display") == "not asking for heat"
    rig.act("stat_call")
    rig.wait(5)
    assert rig.see("stat.display") == "calling for heat"
    assert Rig(arrives_after=60).see("stat.display") == "calling for heat"


def test_a_supply_tied_to_no_ground_reads_half_with_a_high_impedance_and_nothing_with_a_low_one():
    """At the furnace and at any other outlet; from wire to wire it is whole."""
    rig = Rig(changes={"service.floats": 1}, arrives_after=30)

    def volts(a: str, b: str, kit: str) -> float:
        return float(rig.measure("ac_voltage", (a, b), KIT[kit]).split()[0])

    assert volts("box.line", "box.neutral", "low") == pytest.approx(120, abs=2)
    assert volts("box.line", "ground", "high") == pytest.approx(60, abs=5)
    assert volts("box.line", "ground", "low") < 5
    assert volts("known.line", "known.ground", "low") < 5
    sound = Rig(arrives_after=30)
    assert float(sound.measure("ac_voltage", ("known.line", "known.ground"), KIT["low"]).split()[0]) > 118


def test_a_part_that_only_some_houses_have_brings_its_house_along():
    change = b"change: [{part: cord, change: open}]"
    data = b"format: 1\nfaults:\n  a: {title: t, complaint: c, finding: f, " + change + b"}"
    assert load_faults(data, "mine.yaml")[0]["a"].house == {"feed": "cord"}


@pytest.mark.parametrize(
    ("setting", "ohm", "sound"),
    [("cable.y_c_ohm", 0.3, True), ("outdoor_unit.ohm", 0.4, False)],
    ids=["cable", "coil"],
)
def test_a_cut_cable_to_the_outdoor_unit_is_told_from_its_coil(setting, ohm, sound):
    """From the furnace both read as a short. At the coil, its wires off, only the coil does."""
    rig = Rig(changes={setting: ohm}, arrives_after=0)
    rig.act("breaker_off")
    rig.wait(5)
    assert float(rig.measure("resistance", ("y", "c"), KIT["high"]).split()[0]) < 4
    assert (float(rig.measure("resistance", ("y",), KIT["high"]).split()[0]) > 10) is sound


def test_a_zone_panels_transformer_is_no_short_in_the_furnaces_wiring():
    """It hangs on the furnace's branch, and the neutral that it ends in is tied to ground at the panel."""
    rig = Rig(with_features(REFERENCE, {"zone_panel": "yes"}), arrives_after=0)
    rig.act("breaker_off")
    rig.wait(5)
    for other in ("ground", "box.neutral"):
        assert rig.measure("resistance", ("box.line", other), KIT["high"]) == "OL"
