"""When a reading is taken is read from its page, as a person would read it."""

from __future__ import annotations

import pytest

from assistant.drill import moment
from assistant.drill.moment import Moment, moments
from assistant.house.place import Place
from assistant.tree.model import Common, Measure, Reading

HERE = Place("t.yaml", 1, 1)


def one(ask: str, own: str = "", meter: str = "manometer", how: tuple[str, ...] = ()) -> Moment:
    """The moment of a single reading of a page that says this."""
    reading = Reading(None, own or ask, "pressure", "inwc", (), meter, None, None, (), False, None, HERE)
    page = Measure(Common("step", HERE, how=how), ask, (reading,), False, None, None, None, ())
    return moments(page)[0]


@pytest.mark.parametrize(
    ("words", "when"),
    [
        ("Volts at the junction box, hot to neutral", moment.NOW),
        ("Vacuum at the switch with the inducer at rest", moment.REST),
        ("Flame current with no trial under way", moment.REST),
        ("Volts at the gas valve during the trial, connected", moment.START),
        ("The igniter during warm-up, connected", moment.START),
        ("Vacuum at the port, inducer running", moment.RUNNING),
        ("Inlet and manifold, burning", moment.FIRE),
        ("Flame current while the flame is there", moment.FIRE),
        ("The board's pin as the flame goes out, lowest value", moment.LOSS),
        ("Flame current after the call has ended", moment.AFTER_CALL),
    ],
)
def test_the_question_says_when(words: str, when: str):
    assert one(words).when == when


def test_a_readings_own_words_go_before_the_pages():
    page = "Inlet at rest, and in the trial"
    assert one(page, own="Inlet at rest, valve shut").when == moment.REST
    assert one(page, own="Inlet in the trial") == Moment(moment.START, "highest")
    assert one(page, own="Volts at the gas valve in this trial, highest") == Moment(moment.START, "highest")


@pytest.mark.parametrize(
    ("meter", "hold"),
    [("manometer, lowest value held", "lowest"), ("highest value held", "highest"), ("manometer", "")],
)
def test_the_meters_note_says_which_value(meter: str, hold: str):
    assert one("R to C", meter=meter).hold == hold


def test_in_a_start_the_display_is_watched_for_what_it_reaches():
    assert one("Volts at the valve", how=("From the call on.",)) == Moment(moment.START, "highest")


def test_hot_to_ground_is_no_fire():
    assert one("Hot to ground and neutral to ground").when == moment.NOW
