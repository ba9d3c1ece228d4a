"""A finding counts only if a fault in the rig reaches it and the repair of no other finding cures that fault.

By structure: what a fault and its consequence set in its house, against what the acts of each other finding's
repair put back as built, in the rig's own words for cured. That the faults reach their findings is shown by
`python -m assistant prove`. A stop that is itself something found counts as a finding does.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import cache
from random import Random
from types import SimpleNamespace

import pytest

from assistant.resources import trees_folder
from assistant.rig.acts import RENEWS, renewed
from assistant.rig.ailment import Ailment, told
from assistant.rig.fault import Fault
from assistant.rig.fault_file import shipped
from assistant.rig.house import built
from assistant.rig.part import Settings
from assistant.rig.unit import REFERENCE, with_features
from assistant.tree.library import read_folder
from assistant.tree.model import Finding, Stop

TREES = read_folder(trees_folder()).trees
FAULTS = shipped()[0]
AT_LEAST = {"no_heat": 30, "tripped_breaker": 20, "blower_silent": 24, "zone_spillover": 24}
IN_ALL = 98
Repairs = Mapping[str, Sequence[str]]


def repairs_of(tree: str) -> dict[str, tuple[str, ...]]:
    """The acts of each finding's own repair; none after a stop, whose work is another's."""
    return {name: step.repair if isinstance(step, Finding) else () for name, step in TREES[tree].steps.items()
            if (isinstance(step, Finding) and step.fault) or (isinstance(step, Stop) and step.finding)}


@cache
def house_of(features: tuple[tuple[str, str], ...]) -> Settings:
    """The settings of a house with these features, as built."""
    return built(with_features(REFERENCE, dict(features)))


@cache
def put_back(features: tuple[tuple[str, str], ...], acts: tuple[str, ...]) -> Settings:
    """What these acts put back as built."""
    house = house_of(features)
    renews = [renewed(house, RENEWS[act]) for act in acts if act in RENEWS]
    return {name: value for one in renews for name, value in one.items()}


def cures(acts: Sequence[str], fault: Fault, degree: str) -> bool:
    """Whether nothing of the fault is left in its house after these acts."""
    features = tuple(fault.house.items())
    house = house_of(features)
    ailment = Ailment(fault, degree, house, Random(0))
    v = {**house, **ailment.wrong, **ailment.harm, **put_back(features, tuple(acts))}
    ailment.mended = True  # for one that comes and goes: what was put right stays so
    return ailment.cured(SimpleNamespace(v=v))


def something_spoiled(fault: Fault, degree: str) -> bool:
    """Whether it changes anything that a person could put right."""
    house = house_of(tuple(fault.house.items()))
    given = {**fault.settings(degree), **fault.harm(degree)}
    return any(name in house and house[name] != value and not told(name) for name, value in given.items())


def counted(repairs: Repairs, faults: Sequence[Fault]) -> dict[str, dict[str, list[str]]]:
    """Finding -> fault at its degree -> the other findings whose repair cures it. A finding counts where one
    of its faults has no other."""
    found: dict[str, dict[str, list[str]]] = {name: {} for name in repairs}
    for fault in faults:
        for degree in fault.degrees:
            if fault.finding in repairs and something_spoiled(fault, degree):
                found[fault.finding][f"{fault.name}, {degree}"] = [
                    name for name, acts in repairs.items()
                    if name != fault.finding and cures(acts, fault, degree)]
    return found


def counting(found: Mapping[str, Mapping[str, list[str]]]) -> set[str]:
    return {name for name, faults in found.items() if any(not others for others in faults.values())}


def own(tree: str) -> list[Fault]:
    """Faults whose complaint the tree walks; complaint and tree have one name."""
    return [fault for fault in FAULTS.values() if fault.complaint == tree]


@pytest.fixture(scope="module")
def counts() -> dict[str, set[str]]:
    return {tree: counting(counted(repairs_of(tree), own(tree))) for tree in AT_LEAST}


@pytest.mark.parametrize("tree", AT_LEAST)
def test_enough_findings_have_a_fault_that_no_other_repair_cures(tree, counts):
    number = len(counts[tree])
    print(f"{tree}: {number} of {len(repairs_of(tree))} findings count")
    assert number >= AT_LEAST[tree]


def test_the_four_trees_together_have_enough(counts):
    assert sum(map(len, counts.values())) >= IN_ALL


def test_two_findings_with_one_repair_do_not_both_count():
    """Were a cracked igniter and a tired one each other's repair and nothing else, neither would count."""
    faults = [FAULTS["igniter_cracked"], FAULTS["igniter_aged"]]
    repairs = {fault.finding: ("fit_igniter",) for fault in faults}
    assert len(repairs) == 2
    assert counting(counted(repairs, faults)) == set()
    apart = {**repairs, FAULTS["igniter_aged"].finding: ("fit_valve",)}
    assert counting(counted(apart, faults)) == {FAULTS["igniter_cracked"].finding}


def test_a_finding_that_no_fault_reaches_does_not_count():
    assert counting(counted({"somewhere": ("fit_igniter",)}, own("no_heat"))) == set()
