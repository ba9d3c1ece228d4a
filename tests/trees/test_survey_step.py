"""The zone survey as a step of a tree: cells or one line, conclusions as facts, ways on where it is open."""

from __future__ import annotations

from functools import cache

import pytest
from sound_furnace import AT, WALKS, opened, replayed

from assistant.house.reader import read
from assistant.walk.entries import events_of, read_entries
from assistant.walk.event import Cannot, Read, Typed
from assistant.walk.state import BadAnswer, Visit
from assistant.walk.visit import asked, fold
from assistant.walk.weigh import weigh

STEP = "zone_spillover.matrix"


@cache
def at_the_survey() -> Visit:
    """The walk of a leaky blade up to the survey."""
    path = WALKS / "zone_spillover" / "leaky_blade.yaml"
    entries, _ = read_entries(read(path.read_bytes(), path.name))
    visit = opened("zone_spillover")
    for entry in entries:
        if entry.key == STEP:
            break
        for make in events_of(entry, AT):
            event = make(visit)
            visit = fold(visit, event) if event is not None else visit
    assert asked(visit).step == STEP and asked(visit).body.survey == ("fan",)
    return visit


def answered(**cells: str) -> Visit:
    typed = {name.replace("__", "/"): Typed(text) for name, text in cells.items()}
    return fold(at_the_survey(), Read(AT, STEP, typed))


def line(text: str) -> Visit:
    return answered(who_blows=text)


def test_cells_and_the_line_that_is_typed_are_one_answer():
    """Cells by name, in any order, make the record that the line makes."""
    cells = answered(
        fan__den__a="120", fan__den__b="0", fan__bed__b="95 cfm", fan__bed__a="none",
        drawn__a="den", drawn__b="bed",
    )  # fmt: skip
    typed = line("registers=a,b drawn=den,bed fan=den:120,0/bed:none,95cfm")

    assert cells.path[-1].answer == typed.path[-1].answer
    survey = [next(r for t in v.path for r in t.records if r.name == "who_blows") for v in (cells, typed)]
    assert survey[0].typed.text == survey[1].typed.text
    assert survey[0].echo == "4 of 4 cells: 2 thermostats, 2 registers"


@pytest.mark.parametrize(
    ("rows", "way"),
    [
        ("fan=a:0,0,0/b:105,120,0/c:0,0,110 drawn=a,b,c", "other_duct"),
        ("fan=a:110,0,0/b:105,120,0/c:108,0,110 drawn=a,b,c", "trace"),
        ("fan=a:110,0,0/b:30,120,0/c:32,0,110 drawn=a,b,c", "blade_hole"),
        ("fan=a:110,2,0/b:3,120,1/c:0,0,110 drawn=a,b,c", "small_registers"),
        ("fan=a:full,none,none/b:none,full,none/c:some,none,full drawn=a,b,c", "blade_hole"),
        ("fan=a:110,0,0/b:12,120,0/c:11,0,110 drawn=a,b,c", "flows"),
        ("fan=a:0,0,0/b:105,120,0/c:0,0,110", "flows"),
    ],
)
def test_where_each_conclusion_leads(rows, way):
    """The row before the last lies at the tenth from which a damper is looked at: too close, so two plain
    readings. In the last nobody said whose each register is, so that none can be called another zone's.
    """
    compute = next(t for t in line(rows).path if t.step == "zone_spillover.whose")

    assert compute.way == way
    assert compute.undecided == (way == "flows")
    assert len(compute.records) == 11
    assert all(record.computed for record in compute.records)


def test_a_conclusion_is_a_fact_of_the_finding():
    visit = replayed(WALKS / "zone_spillover" / "other_duct.yaml")

    assert "other_duct" in [fact.name for fact in visit.found[-1].facts]


@pytest.mark.parametrize(
    "cells",
    [
        {"fan__den": "1"}, {"fan__den__a": "lots"}, {"fan__den__a": "1,200"}, {"fan__den__a": "9999"},
        {"cellar__den__a": "1"}, {"drawn__a": "den"}, {"who_blows": "nonsense"}, {"who_blows": ""}, {},
        {"fan__nobody__a": "3"}, {"fan__den__a": "5", "drawn__a": "moon"},
    ],
)  # fmt: skip
def test_what_is_no_survey_gets_a_sentence_and_changes_nothing(cells):
    before = at_the_survey()
    with pytest.raises(BadAnswer, match=r"\w{3}"):
        answered(**cells)
    assert asked(before).step == STEP


def test_a_cell_is_understood_before_it_is_committed():
    """Blank, words, an odd number and a doubt, each as with any reading."""
    visit = at_the_survey()

    assert weigh(visit, "fan/den/a", "120").ready
    assert weigh(visit, "fan/den/a", "some").ready
    assert weigh(visit, "fan/den/a", "").blank
    assert weigh(visit, "fan/den/a", "9999").implausible
    assert weigh(visit, "fan/den/a", "1,200").choices
    assert weigh(visit, "fan/den/a", "lots").message
    assert weigh(visit, "who_blows", "fan=a:1,2/b:3,4").ready


def test_without_an_anemometer_the_walk_goes_on():
    assert asked(fold(at_the_survey(), Cannot(AT, STEP, "no vane"))).step == "zone_spillover.flows"
