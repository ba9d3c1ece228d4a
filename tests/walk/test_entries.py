"""Replay files: each entry is the event a person's answer would be."""

from __future__ import annotations

import pytest

from assistant.house.reader import read
from assistant.walk.entries import complaints_of, events_of, read_entries
from assistant.walk.event import Opened
from assistant.walk.state import BadAnswer, OutOfOrder
from assistant.walk.visit import asked, begin, fold
from tests.walk.small import AT, library

WHOLE = """
- note: as found
- as_found: {code light: steady, switch: "on"}
- instrument: clamp meter
- cold_house.fan: still
- plate.supply_volts: "120"
- cold_house.volts: 118,4
- make_dead.stat: done
- make_dead.off: done
- make_dead.prove: {live_before: "121", hot_neutral: "0", hot_ground: "0", neutral_ground: "0.2", r_c: "0", live_after: "121"}
- cold_house.ohms: OL
- cold_house.element_bad: go on
- airless.filter: clean
- cause.element_bad: worn
- act.fit_element: done
- restore.on: done
- warm_again.warm_up: waited 10 min
- warm_again.volts: {text: "119", ago: 5 min}
- noise.x: ignored
"""  # noqa: E501


def replayed(text: str, upto: int | None = None):
    """The visit after the entries of `text`."""
    entries, problems = read_entries(read(text.encode(), "entries.yaml"))
    assert not problems
    visit = fold(begin(library()), Opened(AT, (("no_heat", "no heat"),)))
    for entry in entries[:upto]:
        for make in events_of(entry, AT):
            if (event := make(visit)) is not None:
                visit = fold(visit, event)
    return visit


def test_a_whole_visit_from_a_list() -> None:
    """From the first look to the proof of repair."""
    visit = replayed(WHOLE, -1)

    assert visit.complaints[0].status == "proved"
    assert visit.found[-1].concluded == "worn"
    assert visit.as_found is not None
    assert visit.readings[-1].typed.ago == 5
    assert visit.readings[-1].typed.instrument == "clamp meter"


def test_an_entry_for_a_step_that_is_not_asked_is_refused() -> None:
    """With what is asked instead."""
    with pytest.raises(BadAnswer, match=r"asked is: look cold_house\.fan"):
        replayed('- cold_house.volts: "118"')


def test_a_page_that_asks_nothing_is_left_by_itself() -> None:
    """The go-on entry may be missing."""
    text = WHOLE.replace("- cold_house.element_bad: go on\n", "")

    assert replayed(text, -1).complaints[0].status == "proved"


def test_a_missing_plate_value_is_said() -> None:
    """The entry to write is named."""
    with pytest.raises(BadAnswer, match=r"plate\.supply_volts"):
        replayed("- cold_house.fan: still\n- cold_house.volts: \"118\"")


@pytest.mark.parametrize(("text", "kind"), [
    ("- hazard: gas_smell", "stop"),
    ("- cold_house.fan: still\n- plate.supply_volts: not readable\n- cannot: cold_house.volts", "stop"),
    ("- pause: waiting for a part", "paused"),
    ("- pause: lunch\n- resume: B. Example", "look"),
    ("- cold_house.fan: turning\n- back: cold_house.fan", "look"),
    ("- cold_house.fan: turning\n- back: {step: cold_house.fan, why: slip}", "look"),
    ("- reading: {quantity: ac_voltage, at: [l, n], text: 118.4, ago: 20}", "look"),
    ("- settle: {complaint: no_heat, note: it works}", "leave"),
    ("- settle: {complaint: no_heat, note: it works}\n- sign: A. Example", "signed"),
    ("- left: {point: complaint.no_heat, why: not at home}", "look"),
    ("- complaint: noise", "notes"),
    ("- hazard: gas_smell\n- cold_house.fan: still", "do"),
])
def test_every_word_is_an_event(text: str, kind: str) -> None:
    """Each kind of entry leads where the event does."""
    assert asked(replayed(text)).kind == kind


def test_still_true_takes_the_earlier_reading() -> None:
    """One entry, no value."""
    text = '- cold_house.fan: still\n- plate.supply_volts: "120"\n- cold_house.volts: "100"\n'
    visit = replayed(text + "- back: cold_house.volts\n- still_true: cold_house.volts")

    assert asked(visit).step == "cold_house.low"


@pytest.mark.parametrize("text", [
    "cold_house.fan: still", "- [a, b]", "- a.b: 1\n  c.d: 2", "- nte: hello", "- just text",
])
def test_a_list_of_another_shape_is_a_problem_with_a_place(text: str) -> None:
    """Each with its line and column."""
    _, problems = read_entries(read(text.encode(), "entries.yaml"))

    assert problems
    assert problems[0].line == 1


@pytest.mark.parametrize("text", [
    "- cold_house.fan: [still]", "- cold_house.fan: hovering", "- plate.volts: 120", "- hazard: [gas]",
    "- reading: 118", "- back: {step: cold_house.fan, why: bored}", "- settle: {complaint: no_heat}",
    "- cold_house.nowhere: 5", "- reading: {quantity: ac_voltage, at: [l, n], text: 118, ago: soon}",
])
def test_an_entry_that_is_no_answer_is_a_sentence(text: str) -> None:
    """Never another exception."""
    with pytest.raises((BadAnswer, OutOfOrder)):
        replayed(text)


def test_complaints_are_listed_or_follow_from_the_trees() -> None:
    """The list at the top wins."""
    entries, _ = read_entries(read(b"- complaints: [noise, no_heat]\n- cold_house.fan: still", "e"))
    assert complaints_of(entries, {"cold_house": "no_heat"}) == ("noise", "no_heat")
    assert complaints_of(entries[1:], {"cold_house": "no_heat"}) == ("no_heat",)
