"""What can come at any time: hazards, readings put down in any order, notes, open points."""

from __future__ import annotations

import pytest

from assistant.walk.event import Hazard, LeftOpen, Note, PutDown, Settled, Signed, TakeUp, Typed
from assistant.walk.points import open_points
from assistant.walk.reach import next_readings, still_unproved
from assistant.walk.visit import BadAnswer, OutOfOrder
from tests.walk.small import AT, Walker


def test_a_reading_put_down_first_answers_the_step_it_fits() -> None:
    """Leads swapped is the same alternating voltage; the step is passed with a note."""
    walker = Walker().send(PutDown(AT, "ac_voltage", ("n", "l"), Typed("118.4")))
    walker.saw("still").plate(supply_volts="120")

    assert walker.step == "make_dead.stat"
    assert walker.visit.path[-1].passed


def test_a_reading_put_down_from_before_a_switching_does_not_count() -> None:
    """'About 20 min ago' after the breaker moved is of the epoch before."""
    walker = Walker().to_ohms().send(PutDown(AT, "resistance", ("e1", "e2"), Typed("OL", ago=20)))

    assert walker.step == "cold_house.ohms"


def test_a_reading_put_down_is_used_once() -> None:
    """It answers one step; asked again after Back, the step offers it and waits."""
    walker = Walker().send(PutDown(AT, "ac_voltage", ("l", "n"), Typed("118.4")))
    walker.saw("still").plate(supply_volts="120")

    assert walker.visit.put_down == ()


@pytest.mark.parametrize(
    ("kind", "points", "text"),
    [
        ("ac_volts", ("l", "n"), "118"),
        ("ac_voltage", ("l", "x"), "118"),
        ("ac_voltage", (), "118"),
        ("ac_voltage", ("l", "n"), ""),
        ("ac_voltage", ("l", "n"), "about"),
    ],
)
def test_a_reading_that_cannot_be_put_down_is_a_sentence(kind: str, points: tuple, text: str) -> None:
    """Unknown quantity, unknown point, no points, no text."""
    with pytest.raises(BadAnswer):
        Walker().send(PutDown(AT, kind, points, Typed(text)))


def test_a_hazard_stops_anywhere() -> None:
    """Everybody out, from any step."""
    walker = Walker().to_ohms().send(Hazard(AT, "gas_smell"))

    assert (walker.ask.kind, walker.ask.page) == ("stop", "leave_the_house")
    assert walker.visit.complaints[0].status == "stopped"


def test_a_stop_pauses_the_walk_and_not_the_visit() -> None:
    """After the stop page the complaint can be taken up again, from its start."""
    walker = Walker("no_heat", "noise").send(Hazard(AT, "gas_smell")).go_on()
    assert walker.ask.choices == ("no_heat", "noise")

    walker.send(TakeUp(AT, "no_heat"))

    assert walker.step == "cold_house.fan"


def test_findings_still_unproved_shrink_as_the_walk_goes_on() -> None:
    """The list holds what can still be reached."""
    walker = Walker()
    at_start = [step.common.name for _, step in still_unproved(walker.visit)]
    walker.to_ohms()
    later = [step.common.name for _, step in still_unproved(walker.visit)]

    assert set(at_start) == {"fine", "airflow", "fine_too", "element_bad"}
    assert set(later) == {"fine_too", "element_bad"}


def test_next_readings_are_listed_nearest_first() -> None:
    """A list to take along to the unit."""
    names = [reading.name for _, reading in next_readings(Walker().saw("still").visit)]

    assert names == ["volts", "element_ohms"]


def test_open_points_are_what_is_not_closed() -> None:
    """Complaint, causes, part and proof of a finding; power that is off."""
    walker = Walker("no_heat", "noise").to_finding()
    kinds = [point.kind for point in open_points(walker.visit)]

    assert kinds == ["complaint", "complaint", "cause", "part", "proof", "power"]


def test_a_complaint_without_a_tree_is_settled_with_notes() -> None:
    """An empty note is no note."""
    walker = Walker("noise")
    assert walker.ask.kind == "notes"
    with pytest.raises(BadAnswer):
        walker.send(Settled(AT, "noise", " "))

    walker.send(Settled(AT, "noise", "loose grille, fixed"))

    assert walker.ask.kind == "leave"
    assert open_points(walker.visit) == ()


def test_signing_closes_the_visit() -> None:
    """After the signature only exports and notes are taken."""
    walker = Walker("noise").send(Settled(AT, "noise", "loose grille")).send(Signed(AT, "A. Example"))
    walker.send(Note(AT, "copy sent to the office"))

    assert walker.ask.kind == "signed"
    with pytest.raises(OutOfOrder):
        walker.send(TakeUp(AT, "noise"))


def test_an_open_point_left_with_a_reason_keeps_it() -> None:
    """The reason stands beside the point."""
    walker = Walker("noise").send(LeftOpen(AT, "complaint.noise", "tenant not at home"))

    assert [point.left for point in open_points(walker.visit)] == ["tenant not at home"]
