"""What the report leaves to whom: slips in one line, no internal names, waits cut short, lines to sign on."""

from __future__ import annotations

from assistant.report.standing import NOT_FULLY_PROVED, NOT_FULLY_SHOWN
from assistant.report.story import Measured
from assistant.report.text import to_text
from assistant.walk.event import Back, Hazard, LeftOpen
from tests.report.told import Clock, customers_text, repaired, row


def test_a_stop_page_reached_by_a_slip_is_one_line_and_nothing_for_the_customer():
    clock = Clock().saw("still").plate(supply_volts="120").typed("140")
    clock.send(Back("", "cold_house.volts", "slip")).typed("118.4")
    story = clock.story()
    (stop,) = story.stops
    assert stop.taken_back == "slip of the key"
    text = " ".join(to_text(story).split())
    assert "Stop page: Leave it off - taken back: slip of the key" in text
    assert "Call the electrician" not in text
    assert row(story, "Stop page").taken_back == "slip of the key"
    page = customers_text(story)
    for words in ("140", "slip", "Leave it off", "leave it off", "stopped"):
        assert words not in page
    assert story.customer.cautions == ()


def test_a_stop_page_left_by_a_changed_mind_and_one_reached_again_stand_in_full():
    clock = Clock().saw("still").plate(supply_volts="120").typed("140")
    clock.send(Back("", "cold_house.volts", "slip")).typed("141")
    assert [stop.taken_back for stop in clock.story().stops] == ["slip of the key", ""]
    assert to_text(clock.story()).count("Call the electrician") == 1
    other = Clock().saw("still").plate(supply_volts="120").typed("140")
    other.send(Back("", "cold_house.volts", "changed"))
    assert "Call the electrician" in to_text(other.story())


def test_a_hazard_that_was_met_is_not_taken_back_with_a_slip():
    clock = Clock().saw("still").send(Hazard("", "gas_smell"))
    clock.send(Back("", "cold_house.fan", "slip"))
    assert clock.story().stops[0].taken_back == ""


def test_no_internal_name_stands_as_a_question_or_an_answer():
    clock = repaired()
    names = ("act.", "cause.", "cold_house", "fit_element", "part cold house")
    for each in clock.story().rows:
        for words in (each.asked, each.answer):
            assert not any(name in words for name in names), words
    assert row(clock.story(), "Fit the new element").where == "repair"
    open_point = Clock().to_finding()
    open_point.send(LeftOpen("", "part.cold_house.element_bad.fit_element", "the part comes on Friday"))
    assert row(open_point.story(), "Left open: Fit the new element").answer == "the part comes on Friday"


def test_a_going_back_to_an_act_or_to_the_conclusion_is_said_in_words():
    from assistant.report.asked import asked_words

    visit = repaired().visit
    assert asked_words(visit, "act.fit_element") == "Fit the new element"
    assert asked_words(visit, "cause.element_bad") == "Why did it fail?"


def test_times_are_local_with_their_offset():
    from assistant.report.times import clock, full

    # ISO 8601-1:2019, 5.3.4: local time with its difference from UTC
    assert full("2026-11-25T18:30:07+00:00") == "2026-11-25 18:30 (+00:00)"
    assert clock("2026-11-25T18:30:07-05:00") == ("18:30", "2026-11-25 (-05:00)")
    assert full("some day") == "some day"


def test_over_a_range_with_an_unknown_top_is_short_and_names_the_range_where_it_is_known():
    readings = [m for r in repaired().story().rows for m in r.measured if m.typed == "OL"]
    assert readings
    assert {m.understood for m in readings} == {"OL (over the meter's range)"}
    text = to_text(repaired().story())
    assert "not known" not in text
    assert "OL (over the meter's range)" in customers_text(repaired().story())


def test_a_wait_of_the_proof_that_was_cut_short_is_told_and_is_still_to_do():
    whole = Clock().to_finding().finish(waited=600).story().customer
    assert whole.complaints[0].standing == "Repaired, and shown to work by the readings below."
    assert whole.still_to_do == ()
    story = Clock().to_finding().finish(waited=60).story()
    page = story.customer
    assert page.complaints[0].standing == NOT_FULLY_SHOWN.customer
    assert story.complaints == (("No heat", NOT_FULLY_SHOWN.trade),)
    assert "repaired and proved" not in to_text(story), "one page says more than another"
    assert not page.complaints[0].found[0].works
    (to_do,) = page.still_to_do
    assert to_do == "Let it run: once more for the full 10 min; this time it had 1 min."
    assert story.findings[-1].proof.startswith(f"{NOT_FULLY_PROVED}: Let it run")
    assert "shown to work" not in customers_text(story)
    assert "How we know that it works" not in customers_text(story)


def test_more_than_one_wait_cut_short_is_said_as_more_than_one():
    from dataclasses import replace

    from assistant.report.customer import customer_page
    from assistant.walk.points import open_points

    visit = Clock().to_finding().finish(waited=60).visit
    short = "Let it cool: done, waited 90 s of 150 s: shorter than asked"
    found = replace(visit.found[-1], cut_short=("Let it run: short", short))
    visit = replace(visit, found=(*visit.found[:-1], found))
    page = customer_page(visit, (), open_points(visit), lambda record: Measured("", "", ""))
    assert page.complaints[0].standing == NOT_FULLY_SHOWN.customer
    assert page.still_to_do == (
        "Once more in full: Let it run: short. "
        "Let it cool: once more for the full 2.5 min; this time it had 90 s.",
    )


def test_an_earlier_finding_whose_repair_did_not_hold_is_not_told_as_repaired():
    """Its part is still open: no page says that all is shown to work."""
    from dataclasses import replace

    from assistant.report.standing import NOT_ALL_SHOWN, standing

    visit = Clock().to_finding().finish().visit
    assert standing(visit, visit.complaints[0]).trade == "repaired and proved"
    earlier = replace(visit.found[-1], step="cold_house.fan_bad", proof="not_proved", at="")
    visit = replace(visit, found=(earlier, *visit.found))
    assert standing(visit, visit.complaints[0]) == NOT_ALL_SHOWN
    assert "shown to work" not in NOT_ALL_SHOWN.customer


def test_the_customer_has_a_line_to_sign_on_and_one_for_the_date_at_the_foot():
    lines = [line for line in customers_text(repaired().story()).splitlines() if line.strip("= ")]
    assert lines[-2].startswith("Customer's signature: ____")
    assert lines[-1].startswith("Date: ____")


def test_shop_licence_and_furnace_are_printed_as_typed_and_only_where_given():
    person = {"name": "Mx Example", "shop": "Sample Heating", "licence": "X-12", "make": "Nonesuch",
              "model": "N 80", "serial": "0007"}  # fmt: skip
    text = customers_text(repaired().story(person=person))
    for line in ("Shop: Sample Heating", "Licence: X-12", "Furnace make: Nonesuch", "Furnace model: N 80",
                 "Furnace serial number: 0007"):  # fmt: skip
        assert line in text
    without = customers_text(repaired().story())
    for label in ("Shop", "Licence", "Furnace"):
        assert label not in without


def test_the_tree_texts_are_one_line_on_paper_and_in_full_in_the_text_and_the_table():
    from dataclasses import replace

    from assistant.report.csv import to_csv
    from assistant.report.html import to_html

    # SHA-256 of "a.yaml 00\nb.yaml 11\n", by sha256sum
    story = replace(repaired().story(), trees=(("a.yaml", "00"), ("b.yaml", "11")))
    line = "Walked with 2 tree texts, together 55e1 e74f a24b 0032 d518 d2c4."
    assert line in " ".join(to_text(story).split())
    page = to_html(story)
    assert line in page
    assert "a.yaml" not in page
    for whole in (to_text(story), to_csv(story)):
        assert "a.yaml 00" in whole
        assert "b.yaml 11" in whole


def test_where_a_step_stands_in_the_trees_is_faint_and_only_in_the_technicians_part():
    from assistant.report.html import to_html

    customer, technician = to_html(repaired().story()).split("The trail: every step")
    assert "(cold_house.volts)" not in customer
    assert '<small class="faint"><bdi>The house is cold (cold_house.volts)</bdi></small>' in technician
