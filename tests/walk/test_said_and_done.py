"""What is said beside an answer: doubtful times, a leak check's result, the number of a part, who cleared a
house, what was seen on an earlier visit."""

import json
from dataclasses import replace

import pytest

from assistant.house.reader import read
from assistant.trail.encode import from_object, to_object
from assistant.trail.live import LiveVisit
from assistant.walk.asked import asked, results_of
from assistant.walk.cleared import who_clears
from assistant.walk.entries import events_of, read_entries
from assistant.walk.event import (
    Back,
    Cannot,
    Did,
    Filled,
    GoOn,
    Hazard,
    Read,
    Recalled,
    Saw,
    TakeUp,
    Typed,
    Watched,
)
from assistant.walk.follow import reached
from assistant.walk.past import look_before, summed_up
from assistant.walk.sense import doubts
from assistant.walk.state import BadAnswer, Frame, Position, begin
from assistant.walk.visit import fold
from tests.played import DEMO, at, play, shipped


@pytest.fixture(scope="module")
def watching():
    """The demo visit where its start is watched."""
    visit = play(DEMO.partition("- no_heat.cycle:")[0])
    assert asked(visit).kind == "watch"
    return visit


@pytest.mark.parametrize(
    ("times", "said"),
    [
        ((20, 5, 30), "before"),
        ((1, 2, 3), ""),
        ((-4, 2, 3), "no time after the start"),
        ((float("nan"), 2, 3), "no time after the start"),
        ((1, 2, 100_000), "later than the"),
        ((7, 7, 7), ""),
    ],
)
def test_watched_times_that_make_no_sense_are_doubted_in_a_sentence(watching, times, said):
    """Out of order, negative, past the end; two things in the same tenth of a second are none of these."""
    watch = asked(watching).body
    events = dict(zip(watch.events, times, strict=False))
    found = doubts(watch, events, watching.vocabulary)
    assert bool(found) == bool(said) and (not said or said in found[0])
    if times[0] == times[0]:
        visit = fold(watching, Watched(at(400), asked(watching).step, events))
        assert ("doubtful" in visit.history[len(watching.history)].answer) == bool(said)


@pytest.fixture(scope="module")
def bubbling():
    """Where the repair of the gas valve ends: bubbles on every joint."""
    visit = play("[]", None, "no_heat")
    steps = visit.library.trees["no_heat"].steps
    repair = ("set_manifold", "leak_check")
    name = next(name for name, step in steps.items() if getattr(step, "repair", ()) == repair)
    visit = reached(visit.at(Position((Frame("no_heat", name),))), steps[name], at(1))
    visit = replace(visit, position=replace(visit.position, stage="repair", index=1))
    assert asked(visit).step == "act.leak_check"
    return visit


def test_a_leak_check_asks_what_the_bubbles_showed(bubbling):
    """No bubbles: done. Bubbles: not done, asked again; bubbles again: the person may stop for it."""
    ask = asked(bubbling)
    assert ask.choices == ("closed and no bubbles", "bubbles")
    good = fold(bubbling, Did(at(2), ask.step, saw="closed and no bubbles"))
    assert asked(good).step != "act.leak_check" and "no bubbles" in good.history[-1].answer
    leaks = fold(bubbling, Did(at(2), ask.step, saw="bubbles"))
    assert asked(leaks).step == "act.leak_check" and leaks.history[-1].undecided
    assert "leak_check" not in leaks.found[-1].repaired
    stopped = fold(leaks, Cannot(at(3), ask.step, "bubbles still"))
    assert (asked(stopped).kind, asked(stopped).page) == ("stop", "joint_leaks")
    assert len(stopped.vocabulary.stops["joint_leaks"].lines) == 3
    with pytest.raises(BadAnswer):
        fold(bubbling, Cannot(at(3), ask.step, "no time"))
    with pytest.raises(BadAnswer, match="is not one of"):
        fold(bubbling, Did(at(2), ask.step, saw="a rainbow"))
    older = fold(bubbling, Did(at(2), ask.step))
    assert asked(older).step == asked(good).step, "a trail from before the question still reads"


def test_bubbles_are_not_asked_twice_where_the_next_step_looks():
    """The tree has its own look behind this leak check."""
    step = shipped().trees["no_heat"].steps["gas_bubbles"]
    visit = begin(shipped())
    assert results_of(visit, "leak_check", shipped().trees["no_heat"], step) == ()
    assert results_of(visit, "leak_check") == ("closed and no bubbles", "bubbles")


def test_the_number_of_a_fitted_part_is_kept_and_may_be_left_out():
    """In the trail, in the visit, in words; the same with nothing said."""
    visit = play(DEMO.partition("- act.fit_igniter")[0])
    assert asked(visit).step == "act.fit_igniter"
    done = fold(visit, Did(at(300), "act.fit_igniter", number="IG-2207 B"))
    assert done.numbers == {"igniter": "IG-2207 B"}
    assert done.history[len(visit.history)].answer == "done, part number IG-2207 B"
    assert fold(visit, Did(at(300), "act.fit_igniter")).numbers == {}


def test_a_house_that_was_left_is_entered_on_somebodys_word_only(tmp_path):
    """Refused without it, on disk too; with it nothing read before is offered again."""
    live = LiveVisit.start(tmp_path / "v", shipped(), (("no_heat", "cold"),), at=at(0))
    live.send(Filled(at(1), "before", {"room_co": "3"}))
    assert live.visit.put_down
    entries, _ = read_entries(
        read(b"- hazard: gas_smell\n- cleared: 'the gas supplier: K. Example'\n", "e.yaml")
    )
    first, second = (list(events_of(entry, at(5)))[-1] for entry in entries)
    live.send(first(live.visit))
    with pytest.raises(BadAnswer, match="gas supplier"):
        live.send(GoOn(at(6), live.ask().step))
    assert live.ask().kind == "stop"
    event = second(live.visit)
    assert event == GoOn(at(5), live.visit.position.top.address, "the gas supplier: K. Example")
    live.send(event)
    assert live.ask().kind == "choose" and not live.visit.put_down
    assert live.visit.fresh == len(live.visit.readings)
    live.close()


def test_no_other_way_leads_back_into_a_house_that_was_left(tmp_path):
    """Not back, not another complaint, not a second hazard on top; a slip of the key is no danger."""
    live = LiveVisit.start(tmp_path / "v", shipped(), (("no_heat", "cold"),), at=at(0))
    live.send(Saw(at(1), "no_heat.kind", "gas with inducer and hot surface igniter"))
    room = live.ask()
    names = [reading.name for reading in room.readings]
    high = {name: Typed("900" if "co" in name else "0") for name in names}
    live.send(Read(at(2), room.step, high))
    assert live.ask().kind == "stop" and live.visit.out
    live.send(Back(at(3), room.step, "slip"))
    assert live.ask().step == room.step and not live.visit.out
    live.send(Hazard(at(4), "gas_smell"))
    live.send(Hazard(at(5), "hot_panel"))
    assert live.ask().page == "electrician" and live.visit.out == "leave_the_house"
    for event in (
        GoOn(at(6), live.ask().step),
        Back(at(6), "no_heat.kind", "slip"),
        Back(at(6), "no_heat.kind"),
        TakeUp(at(6), "tripped_breaker"),
    ):
        with pytest.raises(BadAnswer, match="gas supplier"):
            live.send(event)
    live.send(GoOn(at(7), live.ask().step, "the fire service: Lt. Example"))
    assert live.ask().kind == "choose" and not live.visit.out
    live.close()


def test_every_page_that_sends_people_out_says_who_clears_it():
    """And no other page asks for anybody."""
    vocabulary = shipped().vocabulary
    out = {page for name, page in vocabulary.hazards.items() if who_clears(vocabulary, page)}
    assert out == {"leave_the_house", "out_for_carbon_monoxide"}
    assert {name for name, page in vocabulary.stops.items() if page.cleared_by} == out


def test_what_was_seen_comes_back_on_a_call_back():
    """The step itself first; through the trail and back; a replay file says the same."""
    before = play(DEMO.partition("- no_heat.cycle:")[0])
    past = summed_up(before, "v1")
    step = next(look for look in past.looks if look.thing == "code_light")
    assert step.step == "no_heat.code"
    event = Recalled(at(1), (past,))
    again, rest = from_object(json.loads(json.dumps(to_object(event))))
    assert again == event and not rest
    today = fold(play("[]", None, "no_heat"), event)
    assert look_before(today, "code_light", "no_heat.code")[1] == step
    assert look_before(today, "code_light", "elsewhere.code")[1] == step
    assert look_before(today, "burners.touched", "x") is None
    text = "- recalled: [{visit: a, began: b, looks: [{step: s, thing: code_light, value: dark, when: w}]}]\n"
    assert play(text, None, "no_heat").past[0].looks[0].value == "dark"


def test_a_trail_without_the_new_words_reads_as_before():
    """The same objects as before they were added."""
    assert to_object(Did(at(1), "a.b")) == {"kind": "did", "at": at(1), "step": "a.b"}
    assert to_object(GoOn(at(1), "a.b")) == {"kind": "go_on", "at": at(1), "step": "a.b"}
