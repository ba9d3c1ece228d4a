"""A survey while it is filled in: names, cells in any order, its line in the trail, what it says so far."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.trade.zone_sheet import MODES, BadSheet
from assistant.walk.survey_plan import NO_ZONE, NOT_SETTLED, conclusions, plan_in_words, plan_of
from assistant.walk.survey_sheet import MOST_THERMOSTATS, NOBODY, Sheet, from_line, from_text

HOUSE = {
    "den": {"den 1": "120", "den 2": "110", "bed 1": "8", "bed 2": "6", "bath": "90"},
    "bedrooms": {"den 1": "4", "den 2": "5", "bed 1": "110", "bed 2": "115", "bath": "4"},
}
"""Worked by hand: the bath is drawn under the bedrooms and moves with the den."""


def sheet(cells=HOUSE, drawn=("den", "den", "bedrooms", "bedrooms", "bedrooms")):
    made = Sheet()
    assert made.name("den, bedrooms", "den 1; den 2, bed 1,bed 2, bath") == ""
    for caller, flows in cells.items():
        for register, text in flows.items():
            made.write("fan", caller, register, text)
    for register, whose in zip(made.registers, drawn, strict=True):
        assert made.draw(register, whose) == ""
    return made


def test_what_it_says_and_the_plan():
    answer, why_not = sheet().answer()
    assert why_not == ""
    plan = dict(plan_in_words(plan_of(answer, sheet())))
    assert plan["den"].startswith(
        "den 1 (over 99 %), den 2 (over 99 %), bath (over 99 %, should be of bedrooms)"
    )
    assert "bath" not in plan["bedrooms"]
    assert any("Bath is drawn under bedrooms and follows den" in said for said in conclusions(answer))


def test_it_speaks_as_soon_as_one_cell_is_in():
    made = sheet({})
    answer, why_not = made.answer()
    assert answer is None
    assert "no cell yet" in why_not
    made.write("heat", "den", "bed 2", "40")
    answer, _ = made.answer()
    assert answer is not None
    assert {zone for zone, _ in plan_of(answer, made)} <= {"den", "bedrooms", NO_ZONE, NOT_SETTLED}


@pytest.mark.parametrize(
    ("typed", "kept"),
    [
        ("n", "none"),
        ("S", "some"),
        ("full", "full"),
        (" 85 ", "85"),
        ("12,5", "12,5"),
        ("-", None),
        ("", None),
    ],
)
def test_a_cell_keeps_what_was_typed(typed, kept):
    made = sheet({})
    made.write("fan", "den", "bed 1", "60")
    made.write("fan", "den", "bed 1", typed)
    assert made.cells.get(("fan", "den", "bed 1")) == kept


def test_a_cell_that_cannot_be_understood_is_named_and_kept():
    made = sheet()
    made.write("fan", "den", "bath", "a lot")
    answer, why_not = made.answer()
    assert answer is None
    assert "'a lot'" in why_not
    with pytest.raises(BadSheet):
        made.line()
    assert made.cells["fan", "den", "bath"] == "a lot"


@pytest.mark.parametrize(
    ("thermostats", "registers", "said"),
    [
        ("", "a", "at least one thermostat"),
        ("den", " , ", "at least one register"),
        ("den, den", "a", "Two thermostats are called den"),
        ("den", "a,b,a", "Two registers are called a"),
        (f"den, {NOBODY}", "a", "No thermostat can be called"),
        (",".join(f"z{n}" for n in range(MOST_THERMOSTATS + 1)), "a", "more than the"),
    ],
)
def test_names_that_cannot_be(thermostats, registers, said):
    made = sheet()
    before = made.as_text()
    assert said in made.name(thermostats, registers)
    assert made.as_text() == before


def test_names_that_change_lose_no_cell():
    made = sheet()
    made.name("den", "den 1")
    made.name("den, bedrooms", "den 1, den 2, bed 1, bed 2, bath")
    assert made.as_text() == sheet().as_text()


@pytest.mark.parametrize(
    ("typed", "meant"), [("2", "bedrooms"), ("be", "bedrooms"), ("DEN", "den"), ("", None)]
)
def test_whose_a_register_should_be(typed, meant):
    made = sheet()
    assert made.draw("bath", typed) == ""
    assert made.drawn.get("bath") == meant
    assert "none of the thermostats" in made.draw("bath", "garage")
    assert made.drawn.get("bath") == meant


def test_a_draft_that_cannot_be_read_is_an_empty_sheet():
    for text in (
        "",
        "nonsense",
        "[]",
        '{"thermostats": 3}',
        '{"thermostats": [], "registers": [], "cells": [1]}',
    ):
        assert from_text(text) == Sheet()


NAMES = st.text(st.characters(categories=["L", "N", "P", "Zs"]), min_size=1, max_size=12)


@given(
    st.lists(NAMES, min_size=1, max_size=4),
    st.lists(NAMES, min_size=1, max_size=5),
    st.data(),
)
def test_draft_and_line_give_the_sheet_back(thermostats, registers, data):
    made = Sheet()
    if made.name(",".join(thermostats), ",".join(registers)):
        return
    for mode in MODES:
        for caller in made.callers:
            for register in made.registers:
                made.write(mode, caller, register, data.draw(st.sampled_from(["", "n", "some", "35", "4.5"])))
    assert from_text(made.as_text()) == made
    if not made.cells:
        return
    again = from_line(made.line())
    assert again.line() == made.line()
    assert again.cells == made.cells
