"""What a story tells, and what the customer's page leaves out."""

from __future__ import annotations

import pytest

from assistant.report.outline import outline
from assistant.report.story import Measured
from assistant.report.tell import tell
from assistant.report.text import to_text
from assistant.walk.event import Back, Cannot, Hazard, LeftOpen, Note, PutDown, Signed, Typed, Unknown
from assistant.walk.visit import asked
from tests.report.told import FINGERPRINT, Clock, customers_text, repaired, row
from tests.walk.small import DEAD, library


def test_the_customers_page_says_what_why_done_and_proved():
    page = repaired().story().customer
    cold, noise = page.complaints
    assert cold.words == "The bedroom is cold"
    (found,) = cold.found
    assert found.what == "The part that makes the heat had burnt through."
    assert found.why == ("The filter was full of dust.",)
    assert found.done == ("Put in a clean filter", "Fit the new element")
    assert [(m.what, m.understood, m.verdict) for m in found.how] == [
        ("Voltage at the element", "118.4 V", "supplied"),
        ("Resistance of the element, wires off", found.how[1].understood, "open"),
    ]
    (proof,) = found.proof
    # 0.90 x 120 V, the plate's value beside it
    assert (proof.understood, proof.should, proof.plate) == ("119 V", "from 108 V", "supply voltage 120 V")
    assert noise.standing == "Settled. A loose cover, tightened."
    assert page.still_to_do == ()
    assert page.cautions == ()
    assert dict(page.person)["name"] == "Mx Example"


def test_the_customers_page_shows_results_and_not_the_typing():
    """Neither what was typed and taken back, nor a word about anybody's slip or change of mind."""
    text = customers_text(repaired().story()).lower()
    for typed in ("111", "118,4", "slip", "mind", "taken back", "went back", "tape", "cold_house", "clamp"):
        assert typed not in text
    assert "118.4 v" in text


def test_the_two_sentences_stand_on_every_report():
    text = " ".join(to_text(repaired().story()).replace("|", " ").split())
    assert "helps a qualified person" in text
    assert "Local codes, the equipment's own instructions and licensed practice come first." in text


def test_a_slip_and_a_changed_mind_are_told_apart_and_nothing_is_left_out():
    story = repaired().story()
    assert row(story, "Is the fan turning?", taken_back="slip of the key").answer == "turning"
    assert row(story, "Is the fan turning?", taken_back="").answer == "still"
    first = row(story, "Voltage at the element", taken_back="changed my mind").measured[0]
    assert (first.typed, first.understood) == ("111,7", "111.7 V")
    assert row(story, "Voltage at the element", taken_back="").measured[0].typed == "118.4"
    assert row(story, "Went back: a slip of the key").answer == "to: Is the fan turning?"
    assert row(story, "Went back: changed my mind").answer == "to: Voltage at the element"


def test_each_reading_has_its_limit_its_source_with_mark_and_its_instrument():
    reading = row(repaired().story(), "Voltage at the element", taken_back="").measured[0]
    assert reading == Measured(
        what="Voltage at the element",
        typed="118.4",
        understood="118.4 V",
        verdict="supplied",
        limit="from 108 V, under 132 V",
        source="custom of the trade",
        mark="common practice",
        instrument="clamp meter 2",
        plate="supply voltage 120 V",
        should="from 108 V, under 132 V",
    )


def test_a_page_of_readings_tells_all_of_them():
    story = repaired().story()
    (first, second) = [r for r in story.rows if r.asked == "Prove it dead"]
    for each in (first, second):
        assert [m.verdict for m in each.measured] == ["live", "dead", "dead", "dead", "dead", "live"]
    assert "asked first" in first.remarks[0]


def test_every_row_has_its_time_with_offset_in_order():
    story = repaired().story()
    times = [r.at for r in story.rows]
    assert times == sorted(times)
    assert all(at.endswith("-05:00") for at in times)
    assert story.rows[0].asked == "Visit opened"
    assert story.rows[-1].asked == "Signed"


def test_pause_note_plate_as_found_and_finding_are_rows():
    story = repaired().story()
    assert row(story, "Paused").answer == "waiting for a part"
    assert row(story, "Taken up again").answer == "by B. Technician"
    assert row(story, "Note").answer == "Door held by tape"
    assert row(story, "Rating plate: supply voltage").answer == "120 (understood: 120 V)"
    assert row(story, "Finding").answer == "Element open"
    found = [(each.what, each.found) for each in story.beside.settings]
    assert found == [("the fan", "still"), ("the filter", "not looked at")]
    assert story.instruments == ("clamp meter 2",)
    assert [each.title for each in story.parts_fitted] == ["heating element"]
    hour = story.rows[-1].at[11:16]
    assert story.standing == f"Signed by A. Technician on November 25, 2026, {hour} (-05:00)."


def test_a_finding_has_its_causes_its_repair_and_its_proof():
    (finding,) = repaired().story().findings
    assert (finding.title, finding.kind, finding.part) == ("Element open", "part", "heating element")
    assert finding.causes == (("Too little air", "found: A clogged filter cooked the element"),)
    assert finding.repaired == ("Put in a clean filter", "Fit the new element")
    assert finding.proof == "repair proved"
    assert [m.understood for m in finding.proof_readings] == ["119 V"]


@pytest.mark.parametrize(("answer", "word"), [("worn", "worn out"), ("not found", "found none")])
def test_a_failure_without_a_cause_is_told_with_what_was_ruled_out(answer, word):
    from assistant.walk.event import Concluded

    clock = Clock().to_finding().go_on().saw("clean")
    clock.send(Concluded("", asked(clock.visit).step, answer))
    (complaint,) = clock.story().customer.complaints
    why = complaint.found[0].why
    assert word in why[0]
    assert "Too little air" not in " ".join(why), "what a tree calls a cause is no sentence for a customer"
    assert why[1] == "The technician's part names what we looked at and ruled out."
    assert ("Too little air", "ruled out") in clock.story().findings[0].causes


def test_an_unfinished_visit_says_what_is_still_to_do_and_what_could_still_be_found():
    story = Clock().saw("still").story()
    assert story.standing == "Not signed yet."
    assert "Element open" in story.still_unproved
    assert story.customer.complaints[0].standing == "Not finished yet."
    assert story.customer.still_to_do == ("Go on finding out what is wrong: \u201cThe bedroom is cold\u201d",)
    found = Clock().to_finding().story()
    assert found.customer.complaints[0].standing == "Found. The repair is not finished yet."
    to_do = found.customer.still_to_do
    assert "Find out why it failed, so that it does not fail again." in to_do
    assert "Fit the new element." in to_do
    assert "Show by measuring that the repair works." in to_do
    assert to_do.count("Switch the power back on when the work is finished.") == 1
    assert "We left the power to the heater off." in found.customer.cautions



def test_a_proof_that_failed_is_told_as_that():
    clock = Clock().to_finding().go_on().saw("dirty")
    while (ask := asked(clock.visit)).kind in ("do", "measure"):
        if ask.kind == "do":
            clock.did()
        elif ask.step.startswith("make_dead"):
            clock.typed_all(DEAD)
        else:
            clock.typed("90")
    story = clock.story()
    (complaint,) = story.customer.complaints
    (found,) = complaint.found
    assert complaint.standing == "Not finished yet."
    assert "does not work as it should" in found.proved
    assert not found.works
    assert "How we know that it works" not in to_text(story)
    assert story.findings[0].proof == "the proof of repair failed"
    (to_do,) = [words for words in story.customer.still_to_do if "repair did not hold" in words]
    assert to_do.startswith("Find out why")


def test_a_point_left_open_carries_its_reason():
    clock = Clock().to_finding()
    clock.send(LeftOpen("", "part.cold_house.element_bad.fit_element", "the part comes on Friday"))
    story = clock.story()
    assert ("Fit the new element", "the part comes on Friday") in story.open_points
    assert "Fit the new element. Left open because: The part comes on Friday." in story.customer.still_to_do


def test_a_stop_is_told_with_its_page_and_the_customer_is_asked_to_leave_it_off():
    story = Clock().saw("still").plate(supply_volts="120").typed("140").story()
    (stop,) = story.stops
    assert stop.title == "Leave it off"
    assert stop.lines == ("Stop here", "Leave it off", "Call the electrician")
    reading = row(story, "Voltage at the element").measured[0]
    assert reading.verdict == "unsafe"
    assert reading.limit == "safe only under 132 V"  # 1.10 x 120 V
    assert "leave it off" in story.customer.complaints[0].standing
    assert story.customer.still_to_do == ("Clear what we stopped for: \u201cThe bedroom is cold\u201d",)
    assert "do not switch it on" in story.customer.cautions[0]


def test_a_stop_that_is_a_finding_counts_as_one():
    clock = Clock().saw("turning").plate(rise_min="35", rise_max="65")
    clock.typed_all({"t_supply": "180", "t_return": "70"})
    story = clock.story()
    (finding,) = story.findings
    assert (finding.title, finding.kind) == ("Too little air", "stop")
    # 180 F - 70 F = 110 F, by hand
    assert finding.facts[0].understood.startswith("110")
    assert story.customer.complaints[0].found[0].what == "Too little air moves."


def test_a_hazard_is_told_to_the_customer():
    story = Clock().send(Hazard("", "gas_smell")).story()
    assert any("Everybody out" in caution for caution in story.customer.cautions)
    assert row(story, "Hazard: gas smell").answer == "Everybody out"
    assert story.stops[0].title == "Everybody out"


def test_a_hand_over_is_told():
    story = Clock().saw("still").plate(supply_volts="120").typed("2").story()
    assert len(story.hand_overs) == 1
    assert story.hand_overs[0].endswith("No heat handed over to Noise")
    assert row(story, "Handed over to").answer == "Noise"
    assert "another question" in story.customer.complaints[0].standing


def test_nothing_wrong_is_told_kindly():
    clock = Clock().saw("turning").plate(rise_min="35", rise_max="65")
    clock.typed_all({"t_supply": "120", "t_return": "70"}).go_on()
    (complaint,) = clock.story().customer.complaints
    assert complaint.found[0].what == "The heat works today."
    assert complaint.found[0].why == ("The rise is in range.",)


def test_a_reading_put_down_before_it_was_asked_is_marked():
    clock = Clock()
    clock.send(PutDown("", "ac_voltage", ("l", "n"), Typed("118.4", "clamp meter 2")))
    clock.saw("still").plate(supply_volts="120")
    story = clock.story()
    first = row(story, "AC voltage, put down before it was asked")
    assert first.measured[0].understood == "118.4 V"
    answered = row(story, "Voltage at the element")
    assert answered.remarks == ("not asked: a reading put down before answers it",)


def test_a_reading_from_before_says_so():
    clock = Clock()
    clock.send(PutDown("", "ac_voltage", ("l", "n"), Typed("118.4", ago=20)))
    reading = row(clock.story(), "AC voltage, put down before it was asked").measured[0]
    assert reading.remark == "taken about 20 min before it was typed"


def test_what_can_not_be_taken_is_told_with_why():
    clock = Clock().saw("still").plate(supply_volts="120")
    clock.send(Cannot("", "cold_house.volts", "no meter"))
    assert row(clock.story(), "Voltage at the element").answer == "can't be taken: no meter"


def test_too_close_to_call_is_told_with_the_limit_it_lies_on():
    clock = Clock().saw("still").plate(supply_volts="120").typed("107-109")
    told = row(clock.story(), "Voltage at the element")
    assert told.answer == "to be taken once more: too close to call"
    assert told.measured[0].limit == "on the limit of 108 V"
    assert told.measured[0].verdict == "too close to call"
    assert "Let it settle" in told.measured[0].settles


def test_events_that_can_not_be_followed_are_shown_and_remarked():
    clock = repaired()
    odd = [
        *clock.visit.events,
        Unknown("2026-11-25T12:00:00-05:00", "weighed", {"grams": 12}),
        Back("2026-11-25T12:01:00-05:00", "nowhere.at_all"),
    ]
    story = tell(odd, clock.visit.library, FINGERPRINT)
    assert story.rows[-2].asked == "Weighed"
    assert '"grams": 12' in story.rows[-2].answer
    assert story.rows[-1].kind == "not followed"
    assert "can't be followed" in story.remarks[-1]


def test_a_story_of_nothing_is_a_story():
    story = tell([], library(), FINGERPRINT)
    assert list(outline(story))
    assert story.rows == ()


def test_every_part_of_the_story_reaches_the_page():
    """A text put into each field of each row is found in the outline's text."""
    story = repaired().story(remarks=["The clock was set back."])
    text = "".join(to_text(story).split())
    for each in story.rows:
        for words in (each.asked, each.answer, *each.remarks, each.taken_back):
            if not each.measured or words != each.asked:
                assert "".join(words.split()) in text, words
        for m in each.measured:
            for words in (m.typed, m.understood, m.verdict, m.limit, m.source, m.mark, m.instrument, m.plate):
                assert "".join(words.split()) in text, words
    assert "Theclockwassetback." in text
    for file, _ in story.trees:
        assert file in text


def test_practice_is_said_on_the_first_page():
    from assistant.walk.event import Opened

    events = [Opened("2026-11-25T09:00:00-05:00", (("no_heat", "cold"),), practice=True), Signed("x", "y")]
    assert "PRACTICE" in customers_text(tell(events, library(), FINGERPRINT))


def test_a_note_with_a_photo_that_is_gone_says_so():
    clock = Clock().send(Note("", "the plate", photo="ab" * 32))
    text = to_text(clock.story())
    assert "no longer kept" in text
    assert "abababababab" in text
