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
TWO_THINGS = b"""
format: 1
faults:
  metal_for_a_fuse:
    title: A short burnt the transformer, since metal lies in the 24 V fuse's place
    complaint: no_heat
    finding: transformer_open
    cause: control_fuse
    house: {zone_panel: "no"}
    change: [{part: control_fuse, change: bridged}, {part: cable, change: R-C short}]
    consequence: {after: 5 min, change: [{part: transformer, change: secondary open}]}
  damper_took_the_panel_fuse:
    title: A damper's shorted motor took the zone panel's fuse
    complaint: no_heat
    finding: panel_fuse
    cause: damper_draw
    house: {zone_panel: "yes"}
    change: [{part: damper2, change: motor shorted}]
    found: [{part: zone_panel, change: fuse blown}]
  lint_in_the_burners:
    title: Lint of the room lies in burners and orifices
    complaint: no_heat
    finding: burners_air
    cause: burner_dirt
    change: [{part: burners, change: choked}, {part: room, change: lint}]
  cut_out_set_low:
    title: The zone panel's hot-air cut-out is set far too low
    complaint: no_heat
    finding: panel_setting
    cause: panel_settings
    change: [{part: zone_panel, change: cut-out low}]
"""
BEHIND_A_BUTTON = b"""
format: 1
faults:
  rod_behind_a_button:
    title: The rod is coated, and the furnace hangs behind a receptacle with a test button
    complaint: no_heat
    finding: rod_dirty
    change: [{part: flame_rod, change: coated}, {part: ground_fault, change: receptacle}]
  wire_behind_a_button:
    title: The hot wire is off, and the furnace hangs behind a receptacle with a test button
    complaint: no_heat
    finding: hot_wire
    change: [{part: line_wire, change: open}, {part: ground_fault, change: receptacle}]
  ground_behind_a_button:
    title: The furnace's ground wire is open
    complaint: no_heat
    finding: ground_bad
    change: [{part: ground_wire, change: open}]
  line_high:
    title: The power company gives too much
    complaint: no_heat
    finding: supply_wrong
    degrees: [severe]
    change: [{part: service, change: high voltage}]
"""
BEHIND_IT = b"""
format: 1
faults:
  soot_behind_the_burners:
    title: Soot begins to shut the passages behind sound burners
    complaint: no_heat
    finding: exchanger_plugged
    degrees: [mild]
    change: [{part: exchanger, change: clogged}]
  blower_stops_of_its_heat:
    title: The motor's vents are packed shut; it stops of its own heat after many minutes
    complaint: no_heat
    finding: to_blower
    change: [{part: blower_cooling, change: vents packed shut}]
  weak_fan_hot:
    title: The inducer's wheel is worn a little, and lets go of hot flue gas only
    complaint: no_heat
    finding: inducer_weak
    degrees: [mild]
    change: [{part: inducer, change: wheel worn}]
"""
SHORT_TURNS = b"""
format: 1
faults:
  ice_for_hours:
    title: Ice shuts the vent of a condensing furnace for two hours at a time
    complaint: no_heat
    finding: exhaust_blocked
    absent: works_now
    house: {kind: condensing}
    degrees: [severe]
    change: [{part: vent, change: iced}]
    intermittent: {there: 2 h, away: 4 h}
  board_pin_for_minutes:
    title: The inducer's pin on the board loses contact for two minutes at a time
    complaint: no_heat
    finding: output_late
    absent: works_now
    change: [{part: board_plugs, change: inducer pin loose}]
    intermittent: {there: 2 min, away: 9 min}
  inducer_wire_for_minutes:
    title: The inducer's hot wire loses contact for three minutes at a time
    complaint: no_heat
    finding: inducer_wire
    absent: works_now
    change: [{part: inducer_harness, change: hot open}]
    intermittent: {there: 3 min, away: 25 min}
  valve_common_for_minutes:
    title: The gas valve's common loses contact for ten minutes at a time
    complaint: no_heat
    finding: valve_wire
    absent: works_now
    change: [{part: valve_harness, change: common open}]
    intermittent: {there: 10 min, away: 20 min}
  igniter_wire_for_minutes:
    title: The igniter's hot wire loses contact for ten minutes at a time
    complaint: no_heat
    finding: igniter_wire
    absent: works_now
    change: [{part: igniter_harness, change: hot open}]
    intermittent: {there: 10 min, away: 20 min}
  call_for_minutes:
    title: The thermostat's contact lets go for ten minutes at a time
    complaint: no_heat
    finding: stat_dead
    absent: works_now
    change: [{part: thermostat, change: W contact open}]
    intermittent: {there: 10 min, away: 20 min}
"""


@pytest.fixture(scope="module")
def worker():
    return worker_on(
        TREE, fan=FAN, two=TWO_THINGS, button=BEHIND_A_BUTTON, behind=BEHIND_IT, short=SHORT_TURNS
    )


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


@pytest.mark.parametrize(
    "name", ["metal_for_a_fuse", "damper_took_the_panel_fuse", "lint_in_the_burners", "cut_out_set_low"]
)
def test_what_took_the_part_is_found_with_it_and_nothing_wrong_stays_in_the_house(worker, name):
    """Each proof passed, or the new fuse blew, with half of the fault still there."""
    found = worker.do(Case(TREE, name, wholly=True))
    assert (found.end, found.cured, found.proof) == (worker.faults[name].finding, True, "proved")
    assert worker.faults[name].cause in found.causes


@pytest.mark.parametrize(
    "name",
    ["board_pin_for_minutes", "inducer_wire_for_minutes", "valve_common_for_minutes",
     "igniter_wire_for_minutes", "call_for_minutes", "ice_for_hours"],
)  # fmt: skip
def test_no_sound_part_is_condemned_for_what_comes_and_goes_between_two_readings(worker, name):
    """Burners, a wire, a limit, a rod or a board's plug once were, each by readings of two moments."""
    found = walked(worker, name)
    assert found.kind == "open" or found.end in (worker.faults[name].finding, "works_now")


@pytest.mark.parametrize(
    "name", ["rod_behind_a_button", "wire_behind_a_button", "ground_behind_a_button", "line_high"]
)
def test_the_meter_takes_no_power_away_by_reading_it_to_ground(worker, name):
    """A low-impedance meter from hot to ground opened the device, and a sound board was condemned for it."""
    assert walked(worker, name).end == worker.faults[name].finding


@pytest.mark.parametrize("name", ["soot_behind_the_burners", "blower_stops_of_its_heat", "weak_fan_hot"])
def test_what_stands_behind_a_thing_is_told_from_the_thing(worker, name):
    """Burners were condemned for soot behind them, a vent for a fan; a blower that let go was not found."""
    fault = worker.faults[name]
    assert walked(worker, name, fault.degrees[0] if len(fault.degrees) == 1 else None).end == fault.finding
