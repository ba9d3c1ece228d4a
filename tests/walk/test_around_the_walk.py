"""Around the walk: sheets whose answers send everybody out, recommendations, leaving, and earlier visits."""

from dataclasses import replace

import pytest

from assistant.quantity.interval import Interval
from assistant.quantity.kind import to_si
from assistant.trail.live import may_sign
from assistant.walk.around import unanswered
from assistant.walk.event import Advised, Filled, LeftOpen, Paused, Resumed, Signed, TakeUp
from assistant.walk.past import change, earlier_of, expected_words, fitted_before, said_today, summed_up
from assistant.walk.points import blocks_signing
from assistant.walk.state import BadAnswer
from assistant.walk.visit import asked, fold
from assistant.walk.waiting import UNKNOWN_AGAIN, next_time
from tests.played import at, demo_until, play, shipped

OUT = "yes, or not sure"


@pytest.mark.parametrize(
    ("answers", "page"),
    [
        ({"smell": OUT}, "leave_the_house"),
        ({"ill": OUT, "water": "yes"}, "out_for_carbon_monoxide"),
        ({"smell": OUT, "ill": OUT}, "leave_the_house"),
    ],
)
def test_two_answers_on_the_telephone_send_everybody_out(answers, page):
    """Three lines before anyone drives; the visit that begins so stands stopped."""
    visit = fold(play("[]", None, "no_heat"), Filled(at(1), "triage", answers))
    ask = asked(visit)
    assert (ask.kind, ask.page) == ("stop", page)
    assert 1 <= len(visit.vocabulary.stops[page].lines) <= 3
    assert visit.state_of("no_heat").status == "stopped"


def test_no_other_answer_on_the_telephone_sends_anybody_out():
    """Two answers of the whole sheet, and no more."""
    sheet = shipped().vocabulary.sheets["triage"]
    out = [(name, answer) for name, question in sheet.questions.items() for answer in question.leave]
    assert out == [("smell", OUT), ("ill", OUT)]
    visit = play("[]", None, "no_heat")
    for name, question in sheet.questions.items():
        for answer in question.choices:
            if answer not in question.leave:
                assert asked(fold(visit, Filled(at(1), "triage", {name: answer}))).kind != "stop"


def test_a_call_that_sent_everybody_out_can_be_walked_later():
    """The stop is left, the complaint taken up from its start."""
    visit = fold(play("[]"), Filled(at(1), "triage", {"smell": OUT}))
    assert asked(visit).kind == "stop"
    from assistant.walk.event import GoOn

    visit = fold(visit, GoOn(at(2), ""))
    assert asked(visit).kind == "choose"
    assert asked(fold(visit, TakeUp(at(3), "no_heat"))).step == "no_heat.kind"


def test_what_was_read_before_starting_answers_the_walk():
    """Gas and CO of the room, put down at the door, are not asked again; what was not said is known."""
    visit = play(
        "- before: {monitor: zeroed outdoors, room_gas: '0', room_co: '2', says_yes: the owner}\n",
        None,
        "no_heat",
    )
    visit = play("- no_heat.kind: gas with inducer and hot surface igniter\n", visit)
    assert asked(visit).step == "no_heat.code"
    assert visit.sheets["before"]["says_yes"] == "the owner"
    sheet = visit.vocabulary.sheets["before"]
    assert "Up to what sum without asking again" in unanswered(sheet, visit.sheets["before"])


@pytest.mark.parametrize(("name", "text"), [("room_co", "71"), ("room_co", "40-90"), ("room_gas", "11")])
def test_a_room_that_is_not_safe_stops_the_visit_at_the_door(name, text):
    """The same limits as the walk's own."""
    assert asked(play(f"- before: {{{name}: '{text}'}}\n", None, "zone_spillover")).kind == "stop"
    step = shipped().step("no_heat.room")[1]
    reading = next(r for r in step.readings if r.name == name)
    question = shipped().vocabulary.sheets["before"].questions[name]
    assert question.over_page == reading.safe.stop
    assert asked(play("- before: {room_co: '70', room_gas: '9'}\n", None, "zone_spillover")).kind != "stop"


@pytest.mark.parametrize(
    "answers",
    [{"monitor": "somewhere"}, {"room_co": "lots"}, {"colour": "red"}, {"says_yes": "x" * 2001}],
)
def test_an_answer_that_is_none_gets_a_sentence(answers):
    """And nothing of the sheet is taken."""
    with pytest.raises(BadAnswer, match=r"[a-z]{3}"):
        fold(play("[]"), Filled(at(1), "before", {"outside": "snow", **answers}))
    with pytest.raises(BadAnswer, match="no sheet"):
        fold(play("[]"), Filled(at(1), "weather", {}))


def test_a_sheet_is_added_to_and_nothing_is_lost():
    """A second page of answers keeps the first's."""
    visit = play("- unit: {make: Northfield, serial: A 1}\n- unit: {model: N90, serial: A 12}\n")
    assert visit.sheets["unit"] == {"make": "Northfield", "model": "N90", "serial": "A 12"}


def test_a_recommendation_has_a_reason_and_an_answer():
    """The answer takes the place of the question; without a reason it is refused."""
    visit = play(
        "- advise: {what: larger return, why: the static is over the plate's, number: 0.84 against 0.5}\n"
        "- advise: {what: surge guard, why: two boards in a year}\n"
        "- advise: {what: larger return, why: the static is over the plate's, number: 0.84 against 0.5,"
        " answer: declined}\n"
    )
    assert [(a.what, a.answer) for a in visit.advice] == [("surge guard", ""), ("larger return", "declined")]
    for bad in (
        Advised(at(1), " ", "why"),
        Advised(at(1), "what", ""),
        Advised(at(1), "a", "b", "", "maybe"),
    ):
        with pytest.raises(BadAnswer):
            fold(visit, bad)


def dead():
    """The demo visit, furnace switched off and proved dead, before the igniter is read."""
    return play(demo_until("- no_heat.igniter_ohms"))


def test_power_that_is_off_blocks_signing_until_it_is_said_why():
    """It is the last thing that a technician forgets in a warm basement."""
    visit = dead()
    assert [p.key for p in blocks_signing(visit) if p.kind == "power"] == ["power.line"]
    with pytest.raises(BadAnswer, match="furnace branch circuit"):
        may_sign(visit)
    for point in blocks_signing(visit):
        visit = fold(visit, LeftOpen(at(99), point.key, "red tag, exchanger"))
    may_sign(visit)


def test_a_circuit_that_was_off_before_a_pause_is_still_told():
    """The next day nobody knows: every circuit unknown, and the list says which one was off."""
    visit = fold(fold(dead(), Paused(at(90), "Another day")), Resumed(at(91), "B."))
    assert set(visit.house.circuits.values()) == {"unknown"}
    words = [p.words for p in blocks_signing(visit) if p.kind == "power"]
    assert words and all("not known to be on again" in line for line in words)


def test_a_signature_of_an_older_rule_still_reads():
    """The fold follows what was signed then; only who signs now is held to the power."""
    visit = dead()
    for point in blocks_signing(visit):
        if point.kind == "undo":
            visit = fold(visit, LeftOpen(at(99), point.key, "as found"))
    assert fold(visit, Signed(at(100), "A.")).signed == "A."


def test_a_part_can_not_be_recorded_as_fitted_while_its_causes_are_open():
    """At the finding, and in the middle of its causes; after the last it is asked."""
    from assistant.walk.event import Did
    from assistant.walk.state import OutOfOrder

    visit = play(demo_until("- no_heat.igniter_open"))
    while asked(visit).kind != "do" or not asked(visit).step.startswith("act."):
        with pytest.raises(OutOfOrder):
            fold(visit, Did(at(200), "act.fit_igniter"))
        assert not visit.house.fitted
        if asked(visit).step == "igniter_harm.state":
            break
        visit = play("- igniter_harm.state: water drip above\n", visit)
    full = play(demo_until("- act.fit_igniter"))
    assert [part for part, _ in full.house.fitted] == ["igniter"]


def test_no_step_of_a_tree_fits_a_part():
    """Only a repair after its causes does, so that no way leads round them."""
    library = shipped()
    fits = {name for name, act in library.vocabulary.acts.items() if act.fits}
    wrong = [
        f"{tree.name}.{name}"
        for tree in library.trees.values()
        for name, step in tree.steps.items()
        if getattr(step, "act", None) in fits
    ]
    assert wrong == []


def test_an_earlier_visit_tells_what_was_touched_left_and_doubted():
    """The demo visit, as a call-back sees it."""
    past = summed_up(play(demo_until("- sign")), "2026-11-25-0900")
    assert past.found[0] == "Igniter open"
    assert [part for part, _ in past.fitted] == ["igniter"]
    assert any("igniter" in words for words in past.touched)
    assert past.signed.startswith("The second technician")
    assert {("ac_voltage", ("igniter.line", "igniter.neutral"))} <= {
        (r.kind, r.points) for r in past.readings
    }
    assert not past.healthy


def test_the_earlier_reading_stands_beside_todays_with_the_change():
    """24.0 V before, 26.4 V today: +2.4 V, a tenth more."""
    visit = play(
        "- recalled: [{visit: a, began: 2026-01-05T09:00:00-05:00,"
        " readings: [{quantity: ac_voltage, at: [r, c], text: '24.0'}]}]\n"
    )
    earlier = earlier_of(visit, "ac_voltage", ("c", "r"))
    assert earlier is not None and earlier.expected is None and expected_words(earlier) == ""
    assert change(earlier, Interval(26.4, 26.4)) == "+2.4 V (+10 %)"
    assert change(earlier, Interval(24.0, 24.0)) == "as before"
    assert earlier_of(visit, "dc_voltage", ("r", "c")) is None
    assert earlier_of(visit, "ac_voltage", ()) is None


def test_volts_of_a_dead_circuit_are_compared_with_nothing():
    """The dead-proof's 0.0 V between R and C is no earlier reading of a live 24 V."""
    past = summed_up(play(demo_until("- no_heat.igniter_ohms")), "x")
    volts = [r.text for r in past.readings if r.kind == "ac_voltage" and r.points == ("r", "c")]
    assert volts and not any(text.startswith("0") for text in volts)
    assert any(r.kind == "resistance" for r in past.readings), "ohms are read dead and do count"


def test_the_same_step_comes_before_the_same_spot():
    """25.1 V on a call and 0.2 V at rest, between the same points: the step says which."""
    past = summed_up(play(demo_until("- zone_spillover.g_dry")), "x")
    visit = replace(play("[]", None, "zone_spillover"), past=(past,))
    where = next(r for r in past.readings if r.asked.startswith("zone_spillover.g_humidity"))
    asked = [r.asked for r in past.readings if r.points == where.points]
    assert len(asked) > 1
    for name in asked:
        assert earlier_of(visit, where.kind, where.points, name).reading.asked == name


def test_healthy_numbers_become_the_expected_range_of_this_unit():
    """0.50 in. w.c. and a spread of 20 percent: 0.40 to 0.60, before any later reading."""
    visit = play(
        "- recalled:\n"
        "  - {visit: b, began: 2026-03-05T09:00:00-05:00,"
        " readings: [{quantity: pressure, at: [static.supply], text: '0.90'}]}\n"
        "  - {visit: a, began: 2026-01-05T09:00:00-05:00, healthy: 'yes',"
        " readings: [{quantity: pressure, at: [static.supply], text: '0.50'}]}\n"
    )
    earlier = earlier_of(visit, "pressure", ("static.supply",))
    assert earlier.visit.visit == "a"
    assert earlier.expected.lo == pytest.approx(to_si(0.40, "inwc"))
    assert earlier.expected.hi == pytest.approx(to_si(0.60, "inwc"))
    assert "0.4 to 0.6" in expected_words(earlier).replace("0.40", "0.4").replace("0.60", "0.6")
    high = Interval(to_si(0.84, "inwc"), to_si(0.84, "inwc"))
    assert said_today(earlier, high).endswith("outside what this unit had")
    usual = Interval(to_si(0.55, "inwc"), to_si(0.55, "inwc"))
    assert said_today(earlier, usual).endswith("as expected of this unit")


def test_a_temperature_differs_by_degrees_and_by_no_percentage():
    """120 F before, 140 F today."""
    visit = play(
        "- recalled: [{visit: a, began: 2026-01-05T09:00:00-05:00,"
        " readings: [{quantity: temperature, at: [supply.air], text: '120'}]}]\n"
    )
    earlier = earlier_of(visit, "temperature", ("supply.air",))
    hot = to_si(140, "F")
    assert change(earlier, Interval(hot, hot)) == "+20.0 degrees"


def test_a_part_that_we_fitted_before_is_known():
    """Its times, the latest first."""
    visit = play(
        "- recalled: [{visit: b, began: x, fitted: {igniter: 2026-03-01}}, "
        "{visit: a, began: x, fitted: {igniter: 2025-11-01, board: 2025-11-01}}]\n"
    )
    assert fitted_before(visit, "igniter") == (("b", "2026-03-01"), ("a", "2025-11-01"))
    assert fitted_before(visit, "gas_valve") == ()


def test_what_is_put_back_comes_after_the_repair_in_the_list_for_next_time():
    """Nobody turns the thermostat back to HEAT before the part is in."""
    said = next_time(play(demo_until("- act.set_igniter")))
    part = next(i for i, words in enumerate(said) if words.startswith("Fit an igniter"))
    heat = next(i for i, words in enumerate(said) if words.startswith("Turn the thermostat back"))
    assert said[0] == UNKNOWN_AGAIN and part < heat
