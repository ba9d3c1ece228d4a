"""What is worked out by hand enters the visit as an event, from the workbench or a replay file."""

from __future__ import annotations

import pytest

from assistant.house.reader import read
from assistant.trade.registry import REGISTRY
from assistant.trade.sheet import work_out
from assistant.trail.encode import from_object, to_object
from assistant.walk.bench import BENCH, event_of, inputs_of, just_worked_out, with_unit
from assistant.walk.state import BadAnswer
from assistant.walk.visit import asked, fold
from tests.walk.small import AT, Walker


def test_typed_texts_keep_their_units_and_what_came_out():
    entry = REGISTRY["ducts_carry"]
    texts = {
        "diameters": "6, 7 in; 200 mm",
        "rate": "0.08",
        "material": "flexible",
        "altitude": "",
        "temperature": "",
    }
    worked = work_out(entry, texts)
    event = event_of(AT, entry, texts, {}, worked)

    assert event.given == {
        "diameters": "6 in, 7 in, 200 mm",
        "rate": "0.08 inwc100ft",
        "material": "flexible",
    }
    assert event.result == worked.said
    assert event.source == str(entry.source)
    assert work_out(entry, event.given).said == worked.said


def test_it_goes_through_the_trail_and_the_fold_unchanged():
    walk = Walker()
    event = BENCH["work"](read(b"{function: heat_rise, supply: 120 F, return_air: 68 F}", "t.yaml"), AT)
    before = asked(walk.visit)
    visit = fold(walk.visit, event)

    assert from_object(to_object(event)) == (event, {})
    assert asked(visit) == before
    assert visit.events[-1] is event
    assert event.result == "heat rise 52 °F"


@pytest.mark.parametrize(
    ("line", "needle"),
    [
        (b"{function: heat_ries, supply: 120 F}", "heat_rise"),
        (b"{function: heat_rise, supply: 120 F}", "return air"),
        (b"{function: heat_rise, supply: warm, return_air: 68 F}", "not a reading"),
        (b"{function: heat_rise, suply: 1}", "no argument 'suply'"),
        (b"[a]", "map"),
        (b"{function: heat_rise, supply: {a: b}}", "text"),
    ],
)
def test_a_replay_entry_that_can_not_be_worked_out_gets_a_sentence(line, needle):
    with pytest.raises(BadAnswer, match=needle):
        BENCH["work"](read(line, "t.yaml"), AT)


def test_a_list_may_stand_for_a_list():
    event = BENCH["work"](read(b"{function: unbalance, windings: [10.0, 10.4, 9.9]}", "t.yaml"), AT)
    assert event.result == "unbalance 2.97 %"


@pytest.mark.parametrize(
    ("text", "unit", "many", "said"),
    [
        ("120", "F", False, "120 F"),
        ("120 F", "C", False, "120 F"),
        ("1/2", "ft3", False, "1/2 ft3"),
        ("5", "", False, "5"),
        ("6,7 in", "in", True, "6 in, 7 in"),
    ],
)
def test_a_unit_only_where_there_is_none(text, unit, many, said):
    assert with_unit(text, unit, many) == said


def test_the_inputs_of_a_computation_of_the_walk():
    """Found again by their names in the same tree, with the units they were read in."""
    walk = Walker()
    assert just_worked_out(walk.visit) is None
    walk.saw("turning").typed_all({"t_supply": "130", "t_return": "20 C"}).plate(rise_min="30", rise_max="60")
    taken = just_worked_out(walk.visit)

    assert inputs_of(walk.visit, taken) == (
        "heat_rise",
        {"supply": "130", "return_air": "68"},
        {"supply": "F", "return_air": "F"},
    )
