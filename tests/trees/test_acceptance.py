"""What a no-heat tree must tell apart, each by a reading of its own and with a part or repair of its own.

The list is the trade's (common practice): the faults of a gas furnace with inducer and hot surface igniter
that a technician with twenty years expects to be asked about. Left: the fault in plain words. Right: the step
that says so, and the readings that separate it.
"""

from __future__ import annotations

import pytest
from sound_furnace import WALKS, replayed, shipped

from assistant.tree.model import Finding, HandOver, Stop
from assistant.walk.visit import asked

WANTED: dict[str, tuple[str, tuple[str, ...]]] = {
    "works now that I am here": ("works_now", ("flame_current_drift",)),
    "thermostat not calling, a setting or batteries": ("stat_setting", ("stat_w",)),
    "thermostat not calling, the thermostat itself": ("stat_dead", ("stat_w",)),
    "open call wire": ("call_wire", ("stat_w",)),
    "switch off at the unit": ("switch_off", ("switch_feed_off",)),
    "blown plug fuse at the unit": ("plug_fuse_blown", ("after_fuse",)),
    "no line power": ("to_breaker", ("switch_feed",)),
    "open neutral": ("open_neutral", ("ng",)),
    "transformer open": ("transformer_open", ("primary_ohms",)),
    "24 V fuse": ("fuse_blown", ("fuse_load",)),
    "float switch, water at it": ("drain_at_float", ("water_depth",)),
    "float switch itself": ("float_bad", ("float_contact",)),
    "limit open from low airflow": ("limit_airflow", ("static",)),
    "limit open and itself bad": ("limit_bad", ("limit_contact",)),
    "rollout open": ("rollout", ("after_rollout",)),
    "pressure switch stuck closed": ("switch_stuck", ("rest_contact",)),
    "inducer not powered": ("inducer_wire", ("inducer_out",)),
    "inducer motor, open": ("inducer_open", ("inducer_winding",)),
    "inducer motor, dragging": ("inducer_motor", ("inducer_current",)),
    "hose or port": ("hose_or_port", ("port_vacuum",)),
    "exhaust blocked": ("exhaust_blocked", ("vacuum_vent_off",)),
    "intake blocked": ("intake_blocked", ("vacuum_intake_off",)),
    "drain flooded": ("drain_flooded", ("vacuum_drained",)),
    "pressure switch bad": ("switch_bad", ("pressure_closed",)),
    "ignitor open": ("igniter_open", ("igniter_cold",)),
    "ignitor not powered": ("igniter_wire", ("igniter_out",)),
    "gas off": ("gas_off", ("inlet_rest",)),
    "inlet low": ("inlet_low", ("inlet_firing",)),
    "valve not powered": ("valve_wire", ("valve_out",)),
    "valve dead": ("valve_dead", ("manifold_trial",)),
    "manifold wrong": ("manifold_wrong", ("manifold_trial",)),
    "burner or carry-over": ("burners", ("manifold_trial",)),
    "flame rod dirty": ("rod_dirty", ("flame_cleaned",)),
    "ground or polarity": ("ground_bad", ("burner_ground",)),
    "rod leaking": ("rod_leaking", ("rod_insulation",)),
    "exchanger in doubt": ("exchanger", ("oxygen_moved",)),
    "blower not on": ("to_blower", ()),
    "board output missing": ("board_output", ("inducer_out_again",)),
    "wrong gas parts": ("wrong_gas", ("input_share_parts",)),
    "safety bridged by somebody": ("bridged", ("bridge",)),
    "flame signal with the valve off": ("gas_passing", ("flame_no_gas",)),
}
STOPS = ("rollout", "exchanger", "bridged", "gas_passing")
HANDED_OVER = {"to_breaker": "tripped_breaker", "to_blower": "blower_silent"}
ON_SIGHT = ("burners",)
"""Told apart by what the flame looks like, with the gas shown right by readings."""
SETTING_OR_PART = ("stat_setting", "stat_dead")
"""One reading says that it does not call; a look says whether a setting or the part is at fault."""


def steps():
    return shipped().trees["no_heat"].steps


def found_by(name: str) -> set[str]:
    """The names read on the recorded walk to an end."""
    return {record.name for taken in replayed(WALKS / f"{name}.yaml").path for record in taken.records}


@pytest.mark.parametrize("fault", WANTED)
def test_the_tree_knows_it_and_reads_what_separates_it(fault: str):
    name, readings = WANTED[fault]
    step = steps()[name]
    assert isinstance(step, HandOver if name in HANDED_OVER else Stop if name in STOPS else Finding)
    assert set(readings) <= found_by(name)


@pytest.mark.parametrize("name", HANDED_OVER)
def test_what_belongs_to_another_walk_is_handed_over(name: str):
    visit = replayed(WALKS / f"{name}.yaml")
    assert asked(visit).complaint == HANDED_OVER[name]
    assert not visit.found


@pytest.mark.parametrize("name", STOPS)
def test_what_may_not_be_left_running_is_a_stop(name: str):
    step = steps()[name]
    assert step.finding and step.customer
    assert "off" in shipped().vocabulary.stops[step.page].lines[0]


def deciding(name: str) -> tuple[str, str] | None:
    """The last reading that named the way on the walk to an end, with its band: on a page, the first one."""
    for taken in reversed(replayed(WALKS / f"{name}.yaml").path):
        for record in taken.records:
            if record.verdict and record.verdict.decided and record.verdict.band.then:
                return record.name, record.verdict.band.label
    return None


def test_each_has_a_reading_or_a_repair_of_its_own():
    """No two rest on one band of one reading, but where a look parts them and so does the repair."""
    seen: dict[tuple, str] = {}
    for name, _ in WANTED.values():
        step = steps()[name]
        parted_by_look = name in ON_SIGHT or name in SETTING_OR_PART
        key = (deciding(name), step.repair if parted_by_look else ())
        assert seen.setdefault(key, name) == name, f"{name} and {seen[key]} both rest on {key[0]}"


def test_there_are_at_least_28_findings():
    counted = [name for name, step in steps().items()
               if (isinstance(step, Finding) and step.fault) or (isinstance(step, Stop) and step.finding)]
    assert len(counted) >= 28


@pytest.mark.parametrize("kind", ["oil", "electric", "heat pump", "boiler", "gas with spark or pilot",
                                  "gas with natural draught", "cannot tell"])
def test_a_heater_that_is_not_covered_is_told_so_at_once(kind: str):
    look = steps()[shipped().trees["no_heat"].start]
    said = steps()[look.choices[kind].to]
    assert isinstance(said, Finding) and not said.fault and said.reason


HAZARDS = ("gas_smell", "carbon_monoxide", "unwell_people", "fire_damage", "hot_panel", "water_in_controls")


@pytest.mark.parametrize("hazard", HAZARDS)
def test_a_hazard_has_a_page_of_three_short_lines(hazard: str):
    page = shipped().vocabulary.stops[shipped().vocabulary.hazards[hazard]]
    assert len(page.lines) == 3
    assert all(len(line) <= 90 for line in page.lines)
