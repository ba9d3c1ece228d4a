"""The demo visits as reports: stopped for gas, waiting for a part, a zone survey, a tune-up."""

from functools import cache

import pytest

from assistant.report.blocks import Pictures
from assistant.report.customer import STAYS
from assistant.report.outline import outline
from assistant.report.outline_customer import MOST_RESULTS
from assistant.report.standing import AFTER_CLEARING
from assistant.report.story import Story
from assistant.report.tell import tell
from assistant.report.text import to_text
from assistant.walk.event import AsFound, AsLeft, Filled
from assistant.walk.visit import asked, fold
from tests.played import ROOT, at, demo_until, play

ENDS = {"gas_stop": "paused", "waiting": "paused", "zone_survey": "signed", "tune_up": "signed"}


@cache
def story(name: str) -> Story:
    visit = play((ROOT / "resources" / "demo" / f"{name}.yaml").read_text(encoding="utf-8"))
    assert asked(visit).kind == ENDS[name]
    return tell(list(visit.events), visit.library, "0123456789abcdef" * 4)


@cache
def parts(name: str) -> tuple[str, str]:
    """The customer's part and the technician's, each on one line."""
    customer, trail = to_text(story(name)).split("THE TRAIL")
    return " ".join(customer.split()), " ".join(trail.split())


def test_a_visit_that_stopped_for_gas_tells_nobody_in_the_house_to_open_the_cock():
    customer, trail = parts("gas_stop")
    assert "Open the gas cock" not in customer
    assert STAYS in customer
    assert f"Open the gas cock at the furnace ({AFTER_CLEARING})" in trail
    assert "By us, or by another qualified person:" in customer


def test_power_that_is_off_when_a_danger_is_met_is_no_errand_for_anybody():
    """Proved dead for the igniter, then fire damage is seen."""
    visit = play("- hazard: fire_damage\n", play(demo_until("- no_heat.igniter_ohms")))
    told = tell(list(visit.events), visit.library, "0" * 64)
    assert STAYS in told.customer.still_to_do
    assert not [words for words in told.customer.still_to_do if "power" in words or "thermostat" in words]
    power = [words for words, _ in told.open_points if "circuit" in words]
    assert power and all(words.endswith(f"({AFTER_CLEARING})") for words in power)
    waits = play("- hazard: fire_damage\n- pause: the igniter\n", play(demo_until("- act.set_igniter")))
    told = tell(list(waits.events), waits.library, "0" * 64)
    put_back = [words for words in told.beside.next_time if "branch circuit" in words or "stat back" in words]
    assert put_back and all(words.endswith(f"({AFTER_CLEARING})") for words in put_back)


def test_what_the_telephone_told_stands_with_the_plan_for_the_night():
    customer, _ = parts("gas_stop")
    night = customer[customer.index("No heat tonight") :]
    assert "Who needs heat most?: a baby of four months" in night
    assert "other heat?: 61 \u00b0F, a wood stove in the living room" in night
    assert "It clicked all night" not in night


def test_a_sheet_is_told_in_the_order_of_its_page_and_not_by_letter():
    _, trail = parts("gas_stop")
    rows = [row for row in story("gas_stop").rows if row.kind == "sheet"]
    assert rows[0].answer.startswith("Do you smell gas or rotten eggs?: no; Is an alarm sounding")
    assert trail.index("Thermostat: heat 70, room 61") < trail.index("Gas cock: open")


def test_what_was_only_written_down_as_found_has_no_empty_column():
    _, trail = parts("waiting")
    settings = trail[trail.index("As found") : trail.index("Waiting for")]
    assert "not written down" not in settings and "As left" not in settings


def test_photos_found_and_left_stand_side_by_side_and_are_not_shown_twice():
    """In the order they were taken; one more as found has nothing beside it."""
    demo = (ROOT / "resources" / "demo" / "tune_up.yaml").read_text(encoding="utf-8")
    visit = play(demo.partition("- sign")[0])
    for event in (
        AsFound(at(300), {"filter": "grey"}, ("a" * 64, "b" * 64)),
        AsLeft(at(301), {"filter": "new"}, ("c" * 64,)),
        Filled(at(302), "unit", {"make": "Northfield"}, ("d" * 64,)),
    ):
        visit = fold(visit, event)
    blocks = list(outline(tell(list(visit.events), visit.library, "0" * 64)))
    pairs = [block.items for block in blocks if isinstance(block, Pictures)]
    assert [[each.photo.name[0] if each else "" for each in pair] for pair in pairs] == [
        ["a", "c"], ["b", ""], ["d", ""],
    ]  # fmt: skip
    assert pairs[0][0].caption.startswith("As found, ") and pairs[0][1].caption.startswith("As left, ")


def test_advice_that_was_declined_says_so_to_both_readers():
    customer, trail = parts("waiting")
    assert "there is none in the house (0 alarms). You said no." in customer
    assert "You are thinking about it." in customer
    assert "Number: 0 alarms Answer: declined" in trail


def test_a_long_proof_is_short_for_the_customer_and_whole_for_the_technician():
    (complaint,) = story("zone_survey").customer.complaints
    (found,) = complaint.found
    assert len(found.proof) > MOST_RESULTS
    customer, trail = parts("zone_survey")
    proof = customer[customer.index("After the repair we measured again") :]
    proof = proof[: proof.index("What is still to do")]
    assert proof.count("After:") == MOST_RESULTS
    assert f"And {len(found.proof) - MOST_RESULTS} more readings, in the technician's part." in proof
    for each in story("zone_survey").findings[0].proof_readings:
        assert each.what in trail


def test_a_spot_that_a_page_reads_twice_is_no_before_of_another_reading():
    """All zones open reads less static than one alone: one is not what the other was before."""
    before = {
        each.what: old.understood
        for finding in story("zone_survey").findings
        for each, old in zip(finding.proof_readings, finding.before, strict=True)
        if old is not None
    }
    assert "All zones open" not in before and "Smallest zone alone" not in before
    assert before["Highest air at a register that should be still"] == "120 fpm"


def test_a_result_of_several_is_called_by_its_own_name():
    names = [each.what for each in story("zone_survey").findings[0].facts]
    assert len(names) == len(set(names)), names
    whats = {each.what for finding in story("zone_survey").findings for each in finding.proof_readings}
    assert {"Fan share", "Cool share", "Heat share"} <= whats


def test_a_healthy_unit_gets_its_numbers_on_the_first_page():
    customer, trail = parts("tune_up")
    assert "Your heater is healthy today" in customer
    for words in ("26.4 V", "3.5 in. w.c.", "119 \u00b0F"):
        assert words in customer
    assert "None: nobody complained of anything" in trail


@pytest.mark.parametrize("name", sorted(ENDS))
def test_no_part_says_more_than_the_other_of_how_it_stands(name):
    """What the first part calls repaired is called so in the second, and nothing else is."""
    customer, trail = parts(name)
    assert ("shown to work" in customer) == ("repaired and proved" in trail)


def test_the_survey_names_the_grille_for_both_readers():
    customer, trail = parts("zone_survey")
    assert "air that was not asked for there came out of den." in customer
    assert "den (of quiet) has air when east or hall calls" in trail
    assert "has air when" not in customer
