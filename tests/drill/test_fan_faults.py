"""Faults of a silent blower walked on the simulated house: the ones that once went wrong.

The whole proof is `python -m assistant prove blower_silent`.
"""

from __future__ import annotations

import pytest
from houses import worker_on

from assistant.drill.case import Case, nominal

TREE = "blower_silent"


@pytest.fixture(scope="module")
def worker():
    return worker_on(TREE)


def test_a_zone_panel_takes_no_fan_call_from_a_motor_that_has_rested(worker):
    """A thermostat put back to HEAT with W off the board once left the motor uncalled, and its module was
    condemned.
    """
    found = worker.do(Case(TREE, "motor_locked_itself_out", noisy=True))
    assert (found.end, found.condemns) == ("locked_out", None)


@pytest.mark.parametrize("name", ["r_w_shorted", "stat_sticks_on_heat", "ghost_call"])
def test_a_panel_that_hears_a_call_nobody_made_is_not_condemned(worker, name):
    found = worker.do(Case(TREE, name, nominal(worker.faults[name])))
    assert (found.kind, found.end) == ("nothing", "called_for_heat")


def test_a_blower_that_never_stops_is_another_walk(worker):
    """It is never seen to start, and the walk began anew three times for it."""
    found = worker.do(Case(TREE, "board_fan_always"))
    assert (found.kind, found.end) == ("handed_over", "to_zones")


@pytest.mark.parametrize(
    "name", ["panel_menu_keeps_fan", "turns_shorted", "towel_in_wheel", "weak_capacitor_and_full_filter"]
)
def test_a_repair_is_proved(worker, name):
    """With heat called, a panel passed no fan call to the proof; a new motor had the burnt one's heat; one
    that had stalled was not left to cool.
    """
    found = worker.do(Case(TREE, name, nominal(worker.faults[name]), wholly=True))
    assert (found.cured, found.proof) == (True, "proved")


@pytest.mark.parametrize("degree", ["mild", "nominal", "severe"])
def test_a_motor_half_that_does_not_run_reads_unequal(worker, degree):
    assert worker.do(Case(TREE, "half_burnt", degree)).end == "half_unequal"


def test_a_zone_panels_transformer_is_no_cause_of_a_dead_door_switch(worker):
    found = worker.do(Case(TREE, "door_switch_in_zoned_house", wholly=True))
    assert (found.end, found.causes) == ("door_switch", ())
