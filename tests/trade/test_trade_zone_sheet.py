"""The zone survey as it is typed: rows to a survey and back, hand-worked matrices through the registry."""

from __future__ import annotations

import contextlib

import pytest
import yaml
from hypothesis import given, settings
from hypothesis import strategies as st
from trade_cases import FOLDER

from assistant.command.calc import read_values
from assistant.trade.entry import ArgumentError
from assistant.trade.registry import REGISTRY, call
from assistant.trade.zone_sheet import BadSheet, arguments_in, arguments_of, line_of
from assistant.trade.zone_survey import CONCLUSIONS, span, survey_of

DATA = yaml.safe_load((FOLDER / "trade_zone.yaml").read_text(encoding="utf-8"))
KIND = {key: kind for key, (kind, _) in CONCLUSIONS.items()}


def typed(case: dict) -> dict[str, str]:
    """A hand-worked matrix as a person types it, what a vane can't see left as a still vane."""
    rows = {
        mode: "/".join(
            f"{caller}:" + ",".join(str(flow if flow >= 10 else 0) for flow in row)
            for caller, row in calls.items()
        )
        for mode, calls in case["matrix"].items()
    }
    drawn = ",".join(zone for zone, _ in DATA["registers"].values())
    return {**rows, "registers": ",".join(DATA["registers"]), "drawn": drawn}


@pytest.mark.parametrize("case", DATA["cases"], ids=lambda c: c["case"].replace(" ", "-"))
def test_hand_worked_matrix_through_the_registry(case):
    """What was built in is told as its named result, and no other conclusion is sure.

    Expected values: tests/outside/data/trade_zone.yaml, matrices worked by hand from a stated flow balance.
    """
    answer = call("zone_survey", typed(case))

    told = [KIND[key] for key in CONCLUSIONS if answer[key] >= 0.9]
    assert sorted(told) == sorted({kind for kind, _ in case["finds"]})


def test_whose_a_register_is_stays_undecided_where_nobody_said_whose_it_should_be():
    """No drawing, no wrong duct: the answer asks for it. With it, the same rows tell the register apart."""
    rows = {"fan": "den:0,0,0/bed:105,120,0/hall:0,0,110"}

    blind, partly = call("zone_survey", rows), call("zone_survey", {**rows, "drawn": "-,bed,hall"})
    assert blind["other_duct"] is None and partly["other_duct"] is None
    assert "whose 1, 2, 3 should be" in blind["read_next"] and "whose 1 should be" in partly["read_next"]
    assert span(None) == (0.0, 1.0)
    assert call("zone_survey", {**rows, "drawn": "den,bed,hall"})["other_duct"] >= 0.9


def test_words_stand_where_there_was_no_meter():
    """None, some and full are enough for a register of a leaking zone."""
    answer = call("zone_survey", {"fan": "den:full,none,none/bed:none,full,none/hall:some,none,full"})

    assert answer["leaks"] >= 0.9
    assert "den: 1" in answer["plan"] and "hall: 3" in answer["plan"]


def test_cells_of_a_page_and_the_line_that_is_typed_are_one_survey():
    """A grid's cells, their line, and the line read again make the same survey."""
    cells = {
        "fan/den/den 1": "120", "fan/den/bed": "0 cfm", "fan/bed/bed": "some", "fan/nobody/bed": "",
        "drawn/den 1": "den", "drawn/bed": "bed",
    }  # fmt: skip
    arguments = arguments_of(cells)

    line = "registers=den_1,bed drawn=den,bed fan=den:120,0cfm/bed:-,some/nobody:-,-"
    assert line_of(arguments) == line
    assert survey_of(**arguments_in(line_of(arguments))) == survey_of(**arguments)


@pytest.mark.parametrize(
    "bad", ["fan=1:x", "fan=1:-5", "", "fan=a:1/a:2", "rest=1,2", "fan=:1", "fan=1,2 registers=a",
            "fan=nobody:1", "fan=1,2 drawn=9,9 registers=a,b", "fan=1 fan=2"]
)  # fmt: skip
def test_what_is_no_survey_gets_a_sentence(bad):
    """A sentence, and never another error."""
    with pytest.raises((BadSheet, ArgumentError)) as problem:
        survey_of(**arguments_in(bad))

    assert len(str(problem.value)) > 20


@settings(max_examples=60, deadline=None)
@given(st.text(alphabet="fan=heat:/,-0129.none some nobody×", max_size=40))
def test_no_text_breaks_it(text):
    """Any line is a survey or a sentence."""
    with contextlib.suppress(BadSheet, ArgumentError):
        assert call("zone_survey", arguments_in(text))["plan"]


def test_calc_takes_it_from_the_command_line():
    """The line of the help reads as it stands."""
    entry = REGISTRY["zone_survey"]
    words = ["fan=den:120,0/bed:0,110/nobody:0,0", "drawn=den,bed", "accuracy=5percent"]
    values, _ = read_values(entry, words)

    assert call(entry.name, values)["stays_open"] < 0.1


def test_a_conclusion_between_sure_and_surely_not_is_open():
    """From 10 to 90 % anything is possible: too close to call."""
    assert span(0.5) == (0.0, 1.0)
    assert span(0.95) == (0.95, 0.95)
    assert span(0.02) == (0.02, 0.02)
