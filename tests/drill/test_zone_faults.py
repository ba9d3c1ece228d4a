"""Faults of zones walked on the simulated house: what separates them, and which findings no fault reaches.

The whole proof is `python -m assistant prove zone_spillover`; these are the ones that once went wrong.
"""

import pytest

from assistant.drill.case import HEALTHY, Case, features_of, house_of, sort_of
from assistant.drill.every_test import AS_SOUND, every_test
from assistant.drill.hand import Hand
from assistant.drill.kit import PERFECT
from assistant.drill.proof import against
from assistant.drill.trial import opened, tried, until_end
from assistant.resources import resources_folder, trees_folder
from assistant.rig.fault_file import load_faults
from assistant.rig.house import Rig
from assistant.rig.unit import REFERENCE, with_features
from assistant.tree.library import read_folder
from assistant.tree.model import Finding, HandOver

LIBRARY = read_folder(trees_folder())
FILE = resources_folder() / "faults" / "zone_spillover.yaml"
FAULTS, _ = load_faults(FILE.read_bytes(), FILE.name)
ZONED = with_features(REFERENCE, {"zone_panel": "yes"})
NO_FAULT = {
    "quiet_now": "nothing is wrong: the healthy house ends here",
    "to_blower": "a blower that does not run spills no air; the walk hands over when a watched call shows it",
}
"""Ends that no fault reaches, each with its reason."""


def walked(name: str | None) -> str:
    fault = FAULTS[name] if name else None
    rig = Rig(ZONED, fault)
    _, ask = until_end(opened(LIBRARY, "zone_spillover"), Hand(rig, PERFECT), LIBRARY)
    return ask.step.partition(".")[2]


def test_a_house_in_which_nothing_is_wrong():
    assert walked(None) == "quiet_now"


@pytest.mark.parametrize(
    "name",
    ["humidifier_behind_panel", "r_g_behind_panel", "panel_fan_stuck", "dampers_crossed", "ghost_fan_call",
     "actuator_wire", "driven_back", "register_on_two_zones", "panel_overloaded", "registers_shut_in_zones",
     "blower_too_fast", "bypass_missing"],
)  # fmt: skip
def test_a_fault_is_told_by_its_own_finding(name):
    """24 V that comes back over the panel's wires once condemned the panel for a device behind it."""
    assert walked(name) == FAULTS[name].finding


def wholly(name: str):
    case = Case("zone_spillover", name, wholly=True)
    return tried(case, LIBRARY, "zone_spillover", FAULTS[name], seed=0)


@pytest.mark.parametrize(
    ("name", "causes"),
    [("panel_output_held", ()), ("panel_output_cable", ("shorted_damper",)),
     ("cut_out_rightly", ("low_airflow", "bypass_open")),
     ("panel_fuse_shorted_damper", ("damper_draw",)), ("screw_slips_three_wires", ())],
)  # fmt: skip
def test_the_cause_is_named_and_the_repair_proved(name, causes):
    """Ohms with the wires on the panel called every damper shorted, and a locked-out furnace once cleared
    a bypass that hung open.
    """
    outcome = wholly(name)

    assert (outcome.causes, outcome.proof) == (causes, "proved")


def test_every_end_has_a_fault_or_a_reason():
    steps = LIBRARY.trees["zone_spillover"].steps
    ends = {name for name, step in steps.items() if isinstance(step, (Finding, HandOver))}

    assert ends - {fault.finding for fault in FAULTS.values()} == set(NO_FAULT)


FROM_OUTSIDE = """
format: 1
faults:
  motor_shorted:
    title: The motor of zone 2's damper is shorted and takes the panel's fuse
    complaint: zone_spillover
    finding: panel_fuse
    cause: damper_draw
    house: {zone_panel: "yes"}
    change: [{part: damper2, change: motor shorted}]
  bypass_alone:
    title: The bypass does not open, and every blade has its seal
    complaint: zone_spillover
    finding: bypass_stuck
    house: {zone_panel: "yes"}
    change: [{part: bypass, change: stuck shut}]
"""


def test_a_stuck_bypass_is_found_also_where_every_blade_still_holds():
    """A quiet register once ended the search before anybody had read the static."""
    fault = load_faults(FROM_OUTSIDE.encode(), "outside.yaml")[0]["bypass_alone"]
    outcome = tried(Case("zone_spillover", fault.name), LIBRARY, "zone_spillover", fault, seed=0)

    assert outcome.end == "bypass_stuck"


def test_a_short_that_takes_the_panels_fuse_is_found_and_mended():
    """Lamps that are dark lead to the fuse before a fan is asked for that no panel can pass on."""
    fault = load_faults(FROM_OUTSIDE.encode(), "outside.yaml")[0]["motor_shorted"]
    outcome = tried(Case("zone_spillover", fault.name, wholly=True), LIBRARY, "zone_spillover", fault, seed=0)

    assert (outcome.end, outcome.causes) == ("panel_fuse", ("damper_draw",))
    assert (outcome.proof, outcome.cured) == ("proved", True)


@pytest.mark.parametrize("name", ["blade_jammed", "panel_output_held", "driven_back"])
def test_a_repair_of_a_damper_is_proved_with_the_wires_that_it_has(name):
    """Springs open, springs shut, three wires."""
    outcome = wholly(name)

    assert (outcome.proof, outcome.undone) == ("proved", ())


def test_the_best_order_learns_nothing_from_the_sort_of_damper(monkeypatch):
    """A damper with three wires is no fault; which of them is live is."""
    monkeypatch.setattr("assistant.drill.every_test.tests_of", lambda *_: ("damper_kind", "legs_arrive"))
    fault = FAULTS["legs_swapped"]
    alike = Case("zone_spillover", HEALTHY, features=features_of(fault))
    tree = LIBRARY.trees["zone_spillover"]
    here, sound = (
        every_test(LIBRARY, tree, "zone_spillover", rig)
        for rig in (Rig(ZONED, fault), Rig(house_of(alike, None, 0), changes=sort_of(alike)))
    )
    said = against(here, sound)

    assert said["damper_kind"].outcome == AS_SOUND != here["damper_kind"].outcome
    assert said["legs_arrive"].outcome != AS_SOUND
