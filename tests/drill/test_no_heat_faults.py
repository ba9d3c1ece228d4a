"""Faults of a house without heat walked on the simulated house: the ones that once went wrong.

The whole proof is `python -m assistant prove no_heat`.
"""

from __future__ import annotations

import pytest
from houses import worker_on

from assistant.drill.case import Case, nominal
from assistant.drill.outcome import RIGHT, judged

TREE = "no_heat"
FAN = b"""
format: 1
faults:
  fan_left_on:
    title: The fan is set to ON
    complaint: zone_spillover
    finding: fan_set
    change: [{part: thermostat, change: fan on}]
"""


@pytest.fixture(scope="module")
def worker():
    return worker_on(TREE, fan=FAN)


def walked(worker, name: str, degree: str | None = None):
    return worker.do(Case(TREE, name, degree or nominal(worker.faults[name])))


@pytest.mark.parametrize(
    ("name", "end"),
    [
        ("panel_fuse_blown", "panel_fuse"),  # a dead zone panel once condemned the cable
        ("panel_unplugged", "panel_unfed"),
        ("gas_in_the_room", "gas_stays"),  # a stop is right whatever the complaint
        ("monoxide_in_the_room", "co_found"),
        ("silent_splice_burnt", "line_loss"),
        ("float_inhibits", "drain_flooded"),
        ("cut_out_too_low", "panel_setting"),  # a board that obeyed the panel was condemned
    ],
)
def test_a_fault_of_another_complaint_says_what_is_right_here(worker, name, end):
    found = walked(worker, name)
    assert found.end == end
    assert worker.faults[name].complaint != TREE
    assert judged(found, worker.faults[name], TREE) == RIGHT


def test_a_blower_that_is_slow_for_a_burnt_plug_is_handed_over(worker):
    """It was called slow, and cleaned."""
    found = walked(worker, "plug_burnt_hot")
    assert (found.kind, found.end, found.condemns) == ("handed_over", "to_blower", None)


@pytest.mark.parametrize(
    ("name", "degree"),
    [
        ("door_contacts_burnt", "severe"),  # the transformer was condemned
        ("switch_contacts_burnt", "nominal"),  # the wire was condemned
        ("transformer_tap", "nominal"),  # a sound transformer on another tap was condemned
        ("door_not_seated", "nominal"),  # it worked with the switch held in, and nothing was found
        ("valve_passes_gas", "severe"),  # the board was condemned for a valve that passes gas
        ("board_valve_welded", "nominal"),  # and for an output that it held back for safety
        ("generator_floats", "nominal"),  # the furnace's own ground was condemned
        ("burners_choked", "nominal"),  # right orifices were condemned for the rust in them
        ("receptacle_lost_its_grip", "nominal"),
        ("valve_lets_go", "nominal"),
    ],
)
def test_a_fault_is_told_by_its_own_finding(worker, name, degree):
    found = walked(worker, name, degree)
    assert (found.end, found.undone) == (worker.faults[name].finding, ())


def test_a_fan_that_is_set_to_on_is_no_dead_blower(worker):
    """It is never seen to start, and the heater was handed over for it."""
    assert walked(worker, "fan_left_on").kind == "nothing"


def test_a_cut_cable_to_the_outdoor_unit_is_mended_and_not_its_sound_coil(worker):
    """The coil by itself once read the cable's short; the fuse would have blown at the next cooling call."""
    found = worker.do(Case(TREE, "mower_cut_cable", wholly=True))
    assert (found.end, found.causes, found.cured) == ("fuse_blown", ("shorted_control_wire",), True)
