"""What is asked about a blower fits the motor that drives it.

A motor with electronics has no run capacitor to bleed, and its module is off for minutes before it is opened;
a split-capacitor motor has no motor half (reasoned).
"""

from __future__ import annotations

import pytest
from sound_furnace import ENDS, WALKS, Furnace, driven, opened, replayed, shipped

from assistant.tree.model import Finding
from assistant.walk.visit import asked

TREE = "blower_silent"
KINDS = ("split capacitor", "constant torque", "constant airflow")
FILES = sorted((WALKS / TREE).glob("*.yaml"))


def kind_of(visit) -> str | None:
    """The motor that the walk was told of."""
    return next((taken.answer for taken in visit.path if taken.step == f"{TREE}.kind"), None)


def whole(path):
    """The visit to the end of the proof, the house sound but for its motor's kind."""
    visit = replayed(path)
    step = shipped().trees[TREE].steps[path.stem]
    if isinstance(step, Finding) and step.fault:
        kind = kind_of(visit)
        visit = driven(visit, Furnace({"kind": kind} if kind else {}), until=("choose", "leave", "stop"))
    return visit


@pytest.mark.parametrize("kind", KINDS)
def test_a_sound_blower_of_each_kind_works_now(kind: str):
    visit = driven(opened(TREE), Furnace({"kind": kind}), until=ENDS)
    assert asked(visit).step == f"{TREE}.works_now"
    assert [entry.act for entry in visit.house.undone] == []


def test_all_kinds_are_walked():
    assert {kind_of(replayed(path)) for path in FILES} >= set(KINDS)


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)
def test_only_a_split_capacitor_motor_has_its_capacitor_bled(path):
    visit = whole(path)
    bled = [taken.step for taken in visit.path if taken.step.startswith("discharge.")]
    assert not bled or kind_of(visit) == "split capacitor"


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)
def test_a_module_comes_off_five_minutes_after_the_power(path):
    for taken in replayed(path).path:
        step = shipped().step(taken.step)[1]
        if getattr(step, "act", None) == "module_off":
            assert step.wait >= 300
            assert "module_charge" in step.common.caution
