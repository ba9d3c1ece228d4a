"""Every finding of a proved tree is the right one for some fault, and enough of them are different jobs.

Read from trees and files of faults alone; `python -m assistant prove` walks them.
"""

from __future__ import annotations

import pytest

from assistant.resources import trees_folder
from assistant.rig.acts import RENEWS, renewed
from assistant.rig.fault import Fault
from assistant.rig.fault_file import shipped
from assistant.rig.house import built
from assistant.rig.unit import REFERENCE
from assistant.tree.library import read_folder
from assistant.tree.model import Finding, HandOver, Stop

TREES = read_folder(trees_folder()).trees
FAULTS = shipped()[0].values()
BUILT = built(REFERENCE)
NO_FAULT: dict[str, dict[str, str]] = {
    "blower_silent": {
        "called_for_heat": "a call that nobody made is a fault of the zones' complaint",
        "not_covered": "every simulated furnace has a direct-drive blower",
        "works_now": "nothing is wrong: the healthy house ends here",
        "to_no_heat": "a furnace that does not hold a flame is a fault of the no-heat complaint",
        "to_zones": "a blower that never stops is a fault of the zones' complaint",
    },
    "no_heat": {
        "exchanger_seen": "a cracked exchanger whose flue is not read: as right as what the flue shows",
        "inducer_flooded": "a blocked drain that stops the wheel: as right as what it does to the vacuum",
        "not_covered": "every simulated furnace has an inducer and a hot surface igniter",
        "works_now": "nothing is wrong: the healthy house ends here",
    },
    "tripped_breaker": {
        "never_tripped": "nothing is wrong: the healthy house ends here",
        "not_covered": "every simulated furnace has an inducer and a hot surface igniter",
    },
}
"""Ends that no fault of the tree's own complaint is to come to, each with its reason."""
AT_LEAST = {"blower_silent": 24, "no_heat": 30, "tripped_breaker": 20}
"""Findings that are different jobs: no other's repair puts their faults right."""


def own(tree: str) -> list[Fault]:
    """Faults whose complaint the tree walks; complaint and tree have one name."""
    return [fault for fault in FAULTS if fault.complaint == tree]


def ends(tree: str) -> set[str]:
    """Findings, hand-overs, and stops that are something found."""
    return {
        name
        for name, step in TREES[tree].steps.items()
        if isinstance(step, (Finding, HandOver)) or (isinstance(step, Stop) and step.finding)
    }


def put_right(tree: str) -> dict[str, set[str]]:
    """What the repair of each finding puts back as built."""
    return {
        name: {
            setting for act in step.repair if act in RENEWS for setting in renewed(BUILT, RENEWS[act])
        }
        for name, step in TREES[tree].steps.items()
        if isinstance(step, Finding) and step.fault
    }


def spoiled(fault: Fault) -> set[str]:
    """The settings that a fault, or its consequence, changes."""
    given = {**fault.settings(fault.degrees[-1]), **fault.harm(fault.degrees[-1])}
    return {name for name, value in given.items() if not name.startswith("story.") and BUILT[name] != value}


@pytest.mark.parametrize("tree", NO_FAULT)
def test_every_finding_is_right_for_a_fault_or_has_its_reason(tree):
    """A finding that no fault names was never proved."""
    assert ends(tree) - {fault.finding for fault in own(tree)} == set(NO_FAULT[tree])


@pytest.mark.parametrize("tree", NO_FAULT)
def test_enough_findings_are_different_jobs(tree):
    """Two findings are one job where the repair of one cures a fault of the other."""
    repairs = put_right(tree)
    job = {fault.finding: fault.finding for fault in own(tree) if fault.finding in repairs}
    for fault in own(tree):
        wrong = spoiled(fault)
        for other in repairs:
            if wrong and wrong <= repairs[other] and {fault.finding, other} <= set(job):
                old, new = job[other], job[fault.finding]
                job = {name: new if of == old else of for name, of in job.items()}
    assert len(set(job.values())) >= AT_LEAST[tree]
