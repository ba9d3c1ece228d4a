"""Going back: the position moves, the house does not, and nothing is erased."""

from __future__ import annotations

import pytest

from assistant.walk.event import Back, Did, Paused, Resumed, StillTrue
from assistant.walk.house import acted, already, resumed
from assistant.walk.visit import BadAnswer, OutOfOrder
from tests.walk.small import AT, Walker


def test_back_puts_the_make_safe_procedure_in_front_where_it_must() -> None:
    """Winding, breaker on, volts, back to the winding: first dead again."""
    walker = Walker().to_ohms().typed("OL").go_on().saw("dirty").did().did().did().did(600)
    assert walker.step == "warm_again.volts"
    assert walker.visit.house.circuits["line"] == "live"

    walker.send(Back(AT, "cold_house.ohms"))

    assert walker.step == "make_dead.stat"
    walker.make_dead()
    assert walker.step == "cold_house.ohms"


def test_back_never_rewinds_the_house() -> None:
    """Circuits, fitted parts and acts stay as they are."""
    walker = Walker().to_finding()
    house = walker.visit.house

    walker.send(Back(AT, "cold_house.fan"))

    assert walker.visit.house == house


def test_back_to_a_finding_made_earlier_takes_the_finding_back() -> None:
    """The finding counts no more, but the history keeps every step ever taken."""
    walker = Walker().to_finding()
    taken = len(walker.visit.history)

    walker.send(Back(AT, "cold_house.ohms", "slip"))

    assert walker.visit.found == ()
    assert len(walker.visit.history) == taken
    assert walker.step == "cold_house.ohms"


def test_an_earlier_reading_counts_again_by_one_key() -> None:
    """'118.4 V: still true?' in the same epoch; the record keeps its own time and text."""
    walker = Walker().saw("still").plate(supply_volts="120").typed("100").send(Back(AT, "cold_house.volts"))
    assert [record.typed.text for record in walker.ask.offer] == ["100"]

    walker.send(StillTrue(AT, walker.step))

    assert walker.step == "cold_house.low"


def test_an_earlier_reading_of_another_epoch_is_not_offered() -> None:
    """After the circuit was switched, its readings are of the past."""
    walker = Walker().to_ohms()
    walker.send(Back(AT, "cold_house.volts"))
    assert walker.step == "restore.on"
    walker.did()

    assert walker.step == "cold_house.volts"
    assert walker.ask.offer == ()
    with pytest.raises(BadAnswer, match="Take it now"):
        walker.send(StillTrue(AT, walker.step))


def test_back_into_a_procedure_that_no_longer_holds_begins_it_anew() -> None:
    """The dead-proof is not asked on a circuit that was switched on meanwhile."""
    walker = Walker().to_finding().go_on().saw("dirty").did().did().did()
    walker.send(Back(AT, "make_dead.prove"))

    assert walker.step == "make_dead.stat"


def test_back_to_a_step_never_taken_is_a_sentence() -> None:
    """There is nothing to go back to."""
    with pytest.raises(BadAnswer, match="nothing to go back to"):
        Walker().send(Back(AT, "cold_house.ohms"))


def test_after_a_resume_every_circuit_is_unknown() -> None:
    """An interruption of one minute is enough: dead must be proved again."""
    walker = Walker().to_ohms().send(Paused(AT, "waiting for a part"))
    assert walker.ask.kind == "paused"
    with pytest.raises(OutOfOrder, match="paused"):
        walker.send(Did(AT, "cold_house.ohms"))

    walker.send(Resumed(AT))

    assert set(walker.visit.house.circuits.values()) == {"unknown"}
    assert walker.step == "make_dead.stat"
    assert walker.make_dead().step == "cold_house.ohms"


def test_what_was_held_or_turned_off_before_a_pause_is_done_again_after_it() -> None:
    """The door switch that is held in is not asked twice, but after an interruption nobody knows."""
    walker = Walker().saw("turning").send(Back(AT, "cold_house.fan"))
    house = acted(walker.visit.house, walker.visit.vocabulary, "hold_door", "x", AT)

    assert already(house, walker.visit.vocabulary, "hold_door")
    assert not already(resumed(house, walker.visit.vocabulary), walker.visit.vocabulary, "hold_door")


def test_a_resume_in_the_middle_of_a_procedure_begins_it_anew() -> None:
    """Switched off before the pause is not switched off after it."""
    walker = Walker().saw("still").plate(supply_volts="120").typed("118").did().did()
    assert walker.step == "make_dead.prove"

    walker.send(Paused(AT, "lunch")).send(Resumed(AT))

    assert walker.step == "make_dead.stat"


def test_a_circuit_left_off_before_an_interruption_is_switched_on_again_before_it_is_read() -> None:
    """0 V on a locked-out circuit would read as no supply: the way to switch it on comes in front."""
    walker = Walker().to_ohms().send(Paused(AT, "lunch")).send(Resumed(AT))
    walker.send(Back(AT, "cold_house.volts"))

    assert walker.step == "restore.on"
    assert walker.did().step == "cold_house.volts"


def test_after_a_stop_that_was_made_safe_power_comes_back_by_its_own_steps() -> None:
    """The stop page had the furnace switched off; leaving it as done says so."""
    walker = Walker().saw("still").plate(supply_volts="120").typed("132").go_on()
    walker.send(Back(AT, "cold_house.volts", "slip"))

    assert walker.step == "restore.on"


def test_a_slip_is_not_offered_again() -> None:
    """A value that was just called a slip of the key is on record and nothing more."""
    walker = Walker().saw("still").plate(supply_volts="120").typed("100")
    walker.send(Back(AT, "cold_house.volts", "slip"))

    assert walker.ask.offer == ()
    assert walker.visit.readings[-1].typed.text == "100"
