"""What opens a branch: devices by their standards, insulation that lets go, a bad terminal's heat, and water.

UL 489 (a breaker holds its rating), UL 943 class A (4 to 6 mA): from memory.
"""

from __future__ import annotations

import pytest

from assistant.drill.kit import PERFECT
from assistant.drill.page_acts import beside, none_if_opened, on_at_once
from assistant.rig.house import Rig
from assistant.rig.meter import KIT
from assistant.rig.unit import REFERENCE, with_features

MILLIAMP_OHM = 120.0 / 1e-3


def house(features=None, arrives_after=0.0, **changes):
    """A house with some settings changed."""
    unit = with_features(REFERENCE, features or {})
    return Rig(
        unit, changes={k.replace("__", "."): v for k, v in changes.items()}, arrives_after=arrives_after
    )


@pytest.mark.parametrize(("amps", "opens"), [(14.5, False), (20.5, True)])
def test_a_breaker_holds_its_rating_and_opens_a_third_above_it_within_the_hour(amps, opens):
    rig = house(branch_load__ohm=119.0 / amps)
    rig.act("stat_off")
    rig.wait(3600)
    assert (rig.see("breaker.handle") == "tripped") is opens


@pytest.mark.parametrize(("milliamps", "opens"), [(3.5, False), (6.5, True)])
def test_a_device_with_a_button_opens_between_four_and_six_milliamps(milliamps, opens):
    rig = house(
        ground_fault__kind="receptacle",
        branch_load__to_ground_ohm=MILLIAMP_OHM / milliamps,
        branch_load__fitted=1,
    )
    rig.wait(5)
    assert (rig.see("ground_fault.device") == "one has opened") is opens
    assert rig.see("breaker.handle") == "on"


def test_weak_insulation_is_clean_to_an_ohmmeter_and_lets_go_at_500_volts_and_at_line_voltage():
    rig = house(blower_motor__lets_go=90.0)
    rig.act("stat_off")
    rig.act("branch_off")
    assert rig.measure("resistance", ("blower.line", "ground"), KIT["high"]) == "OL"
    assert rig.measure("insulation", ("blower.line", "ground")).startswith("0.")
    rig.act("breaker_on")
    rig.act("fan_on")
    rig.wait(5)
    assert rig.see("blower.start") == "the breaker opens"


def test_through_its_winding_a_pinched_lead_shows_on_every_lead():
    """So the neutral lead tells nothing: only the lead lifted clear does."""
    rig = house(blower_harness__to_ground_ohm=0.3)
    rig.act("branch_off")
    for point in ("blower.line", "blower.neutral"):
        assert float(rig.measure("resistance", (point, "ground"), PERFECT["multimeter"]).split()[0]) < 10
    assert rig.measure("resistance", ("blower.line", "cabinet"), PERFECT["multimeter"]) == "OL"


def test_a_bad_terminal_warms_the_face_before_it_opens_the_breaker():
    rig = house(breaker__lug_ohm=0.2, arrives_after=1500)
    face, beside_it = (
        float(rig.measure("temperature", (point,)).split()[0]) for point in ("breaker.face", "neighbour.face")
    )
    assert face - beside_it > 20
    assert rig.see("breaker.handle") == "on"


def test_a_wet_board_conducts_dries_and_is_wet_again_while_its_water_runs():
    rig = house(water__on_board=1, **{"water.from": "from humidifier"})
    rig.act("branch_off")
    ohms = lambda: rig.measure("resistance", ("board.line", "ground"), KIT["high"])  # noqa: E731
    assert ohms() == "OL"
    rig.act("pour_pad")
    rig.wait(600)
    rig.act("water_over")
    assert "kohm" in ohms()
    rig.act("warm_air")
    rig.wait(900)
    assert ohms() == "OL"


def test_what_a_page_asks_beside_its_act_is_read_from_its_words():
    assert beside(["Other loads off, clamp round the hot"]).before == ("others_off",)
    assert beside(["Every one of them running. Then switch them off again."]).after == ("others_off",)
    assert beside(["Hot to ground, lowest while it moves"]) == beside(["Flex every wire"])
    assert beside(["Everything still unplugged"]).before == ()
    assert none_if_opened(["It opened already? Say that it can't be taken."])
    assert on_at_once(["If it opens, go on at once."])
