"""A walk through the small house: one question at a time, to a finding and what follows it."""

from __future__ import annotations

import pytest

from assistant.walk.event import Cannot, Concluded, Opened, Read, Saw, Typed
from assistant.walk.points import open_points
from assistant.walk.visit import BadAnswer, OutOfOrder, asked, begin, fold
from tests.walk.small import AT, Walker, library


def test_the_first_question_is_the_trees_start() -> None:
    """A visit opened with a complaint asks that complaint's first step."""
    assert Walker().ask.kind == "look"
    assert Walker().step == "cold_house.fan"


def test_a_plate_value_is_asked_when_a_limit_needs_it_and_not_before() -> None:
    """The supply voltage is asked in front of the step whose limits use it."""
    walker = Walker().saw("still")
    assert (walker.ask.kind, walker.ask.plate) == ("plate", "supply_volts")

    walker.plate(supply_volts="120")

    assert (walker.ask.kind, walker.step) == ("measure", "cold_house.volts")


@pytest.mark.parametrize(
    ("text", "step"),
    [
        ("0.4", "cold_house.no_supply"),
        ("11.9", "cold_house.no_supply"),
        ("100", "cold_house.low"),
        ("107.9", "cold_house.low"),
        ("108", "make_dead.stat"),
        ("120", "make_dead.stat"),
    ],
)
def test_a_reading_goes_where_its_band_says(text: str, step: str) -> None:
    """Bands are under, strictly: 108 V is not under 0.9 x 120 V."""
    walker = Walker().saw("still").plate(supply_volts="120").typed(text)

    assert walker.step == step


def test_an_unsafe_reading_stops_on_the_stop_page() -> None:
    """132 V on a 120 V plate is at the safe limit: the work stops."""
    walker = Walker().saw("still").plate(supply_volts="120").typed("132")

    assert (walker.ask.kind, walker.ask.page) == ("stop", "unsafe_reading")


def test_ohms_are_never_asked_before_the_circuit_is_proved_dead() -> None:
    """The walker puts the make-dead procedure in front by itself, with the reason."""
    walker = Walker().saw("still").plate(supply_volts="120").typed("118")

    assert walker.step == "make_dead.stat"
    assert walker.ask.in_front and "the line circuit" in walker.ask.in_front

    walker.make_dead()

    assert walker.step == "cold_house.ohms"
    assert walker.visit.house.circuits == {"line": "dead", "low": "dead"}


def test_a_circuit_that_is_still_live_stops_the_work() -> None:
    """One volt on any pair is not dead."""
    walker = Walker().saw("still").plate(supply_volts="120").typed("118").did().did()
    walker.typed_all(
        {
            "live_before": "121",
            "hot_neutral": "0",
            "hot_ground": "1",
            "neutral_ground": "0",
            "r_c": "0",
            "live_after": "121",
        }
    )

    assert walker.ask.kind == "stop"
    assert walker.visit.house.circuits["line"] == "off"


def test_a_finding_brings_its_causes_the_repair_and_the_proof() -> None:
    """After the finding: the cause is walked, its cure and the part are done, the proof is read."""
    walker = Walker().to_finding()
    assert walker.ask.kind == "finding"
    assert [fact.name for fact in walker.ask.finding.facts] == ["volts", "element_ohms"]

    walker.go_on()
    assert walker.step == "airless.filter"
    walker.saw("dirty")
    assert (walker.step, walker.ask.say) == ("act.clean_filter", "Put in a clean filter")
    walker.did()
    assert walker.step == "act.fit_element"
    walker.did()
    assert walker.step == "restore.on"
    walker.did()
    assert walker.step == "warm_again.warm_up"
    walker.did(600)
    assert walker.step == "warm_again.volts"
    walker.typed("119")

    assert walker.ask.kind == "leave"
    assert walker.visit.complaints[0].status == "proved"
    assert walker.visit.found[-1].causes[0].outcome == "found"
    assert walker.visit.found[-1].proof == "proved"
    assert [part for part, _ in walker.visit.house.fitted] == ["element"]
    assert [record.name for record in walker.visit.found[-1].proof_records] == ["volts_again"]


@pytest.mark.parametrize("answer", ["worn", "not found"])
def test_worn_and_not_found_are_full_answers(answer: str) -> None:
    """Where every cause is ruled out, the person concludes; both answers go on to the repair."""
    walker = Walker().to_finding().go_on().saw("clean")
    assert (walker.ask.kind, walker.step) == ("conclude", "cause.element_bad")

    walker.send(Concluded(AT, walker.step, answer))

    assert walker.step == "act.fit_element"
    assert walker.visit.found[-1].concluded == answer


def test_a_wait_cut_short_in_the_proof_stays_an_open_point() -> None:
    """Ten seconds of ten minutes show nothing: proved, but to be shown once more in full."""
    walker = Walker().to_finding().go_on().saw("dirty").did().did().did().did(10).typed("119")

    assert walker.visit.found[-1].proof == "proved"
    assert walker.visit.found[-1].cut_short == ("Let it run: done, waited 10 s of 600 s: shorter than asked",)
    assert [point.kind for point in open_points(walker.visit)] == ["proof"]


def test_nothing_read_before_is_offered_in_a_proof() -> None:
    """The same volts of before the repair prove nothing, whatever the epoch."""
    walker = Walker().to_finding().go_on().saw("dirty").did().did().did().did(600)

    assert walker.step == "warm_again.volts"
    assert walker.ask.offer == ()


def test_a_proof_that_fails_leaves_the_complaint_open() -> None:
    """The complaint is asked again as a new walk; the finding's proof stays an open point."""
    walker = Walker().to_finding().go_on().saw("dirty").did().did().did().did(600).typed("90")

    assert walker.ask.kind == "choose"
    assert walker.ask.choices == ("no_heat",)
    assert walker.visit.found[-1].proof == "not_proved"


def test_nothing_wrong_settles_the_complaint() -> None:
    """A finding with fault none needs no repair and no proof."""
    walker = Walker().saw("turning").typed_all({"t_supply": "120", "t_return": "70"})
    walker.plate(rise_min="35", rise_max="65")
    assert walker.ask.kind == "finding"
    walker.go_on()

    assert walker.ask.kind == "leave"
    assert walker.visit.complaints[0].status == "settled"


def test_a_compute_shows_its_formula_with_the_numbers() -> None:
    """The heat rise is worked out by the trade's function and judged like a reading."""
    walker = Walker().saw("turning").typed_all({"t_supply": "120", "t_return": "70"})
    walker.plate(rise_min="35", rise_max="65")
    rise = walker.visit.path[-1].records[0]

    assert rise.verdict.words == "in range"
    assert "120" in rise.computed
    assert "50" in rise.computed


def test_a_hand_over_opens_the_other_complaint() -> None:
    """A complaint without a tree is then settled with notes."""
    walker = Walker().saw("still").plate(supply_volts="120").typed("0")
    assert (walker.ask.kind, walker.ask.complaint) == ("handed_over", "noise")

    walker.go_on()

    assert (walker.ask.kind, walker.ask.complaint) == ("notes", "noise")


def test_cannot_takes_the_declared_way() -> None:
    """'Can't take it' always leads somewhere."""
    walker = Walker().saw("still").plate(supply_volts="120")
    walker.send(Cannot(AT, walker.step, "no meter"))

    assert (walker.ask.kind, walker.step) == ("stop", "cold_house.leave")


def test_an_implausible_value_is_asked_about_and_kept_out_until_sure() -> None:
    """1184 V is a slip of the key; the person may insist."""
    walker = Walker().saw("still").plate(supply_volts="120")
    with pytest.raises(BadAnswer, match="slip of the key"):
        walker.typed("1184")
    assert walker.step == "cold_house.volts"

    walker.typed("1184", sure=True)

    assert walker.ask.kind == "stop"


@pytest.mark.parametrize("text", ["", "   ", "lots", "12 ohm", "1,184"])
def test_what_is_not_a_reading_changes_nothing(text: str) -> None:
    """Every such text raises a sentence and leaves the visit as it was."""
    walker = Walker().saw("still").plate(supply_volts="120")
    before = walker.visit
    with pytest.raises(BadAnswer):
        walker.typed(text)

    assert walker.visit is before


def test_an_answer_to_another_step_is_out_of_order() -> None:
    """A driver that answers what is not asked has a fault of its own."""
    with pytest.raises(OutOfOrder):
        Walker().send(Read(AT, "cold_house.volts", {"volts": Typed("118")}))
    with pytest.raises(OutOfOrder):
        Walker().send(Saw(AT, "cold_house.fan_again", "clean"))


def test_a_complaint_nobody_knows_is_refused() -> None:
    """The names of complaints are the vocabulary's."""
    with pytest.raises(BadAnswer, match="no_heat"):
        fold(begin(library()), Opened(AT, (("no_hot", "no heat"),)))


def test_two_complaints_are_taken_up_one_after_the_other() -> None:
    """When the first is settled, the second is offered."""
    walker = Walker("no_heat", "noise").saw("turning").typed_all({"t_supply": "120", "t_return": "70"})
    walker.plate(rise_min="35", rise_max="65").go_on()

    assert asked(walker.visit).choices == ("noise",)
