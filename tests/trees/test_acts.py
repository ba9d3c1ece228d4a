"""A hand goes in with the power off that it needs off, and gas that was opened is checked for leaks.

Common practice: a part comes out with the furnace off, an electrical part with it proved dead, and what lies
before the service switch with its breaker off and the wire that comes in proved dead.
"""

from __future__ import annotations

import pytest
from sound_furnace import shipped

ACTS = shipped().vocabulary.acts
FITTING = [act.name for act in ACTS.values() if act.fits]
BEFORE_THE_SWITCH = ("service_switch", "plug_fuse", "line_wire", "cord")
NOT_ELECTRICAL = ("drain", "filter", "air_path", "hose", "vent", "intake")
OPENS_GAS = ("fit_valve", "fit_gas_parts", "clean_burners", "set_manifold", "clean_gas_trap", "fit_gas_trap",
             "renew_gas_pipe", "open_gas", "call_gas_supplier", "gas_on", "close_port")


@pytest.mark.parametrize("name", FITTING)
def test_a_part_is_fitted_with_the_power_off(name: str):
    act = ACTS[name]
    assert act.needs
    assert set(act.needs.values()) <= {"off", "dead"}
    if act.fits not in NOT_ELECTRICAL:
        assert "dead" in act.needs.values()


@pytest.mark.parametrize("name", [name for name in FITTING if ACTS[name].fits in BEFORE_THE_SWITCH])
def test_what_lies_before_the_service_switch_wants_the_breaker_off(name: str):
    assert ACTS[name].needs == {"feed": "dead"}


@pytest.mark.parametrize("name", OPENS_GAS)
def test_gas_that_was_opened_is_checked_for_leaks(name: str):
    assert ACTS[name].undo == "leak_check"


def test_the_wire_into_the_switch_box_is_proved_by_itself():
    circuit = shipped().vocabulary.circuits["feed"]
    proof = shipped().trees[circuit.make_dead].steps["proof"]
    assert "feed" in proof.verifies
    assert {"switch.feed", "ground"} in [set(reading.at) for reading in proof.readings]
    assert shipped().vocabulary.points["switch.feed"].circuit == "feed"
