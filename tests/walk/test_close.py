"""Too close to call, spreads, unreadable plates, OL: declared ways, never a guess."""

from __future__ import annotations

from assistant.walk.event import PlateRead, Read, Typed
from tests.walk.small import AT, DEAD, Walker


def at_volts(text: str = "120") -> Walker:
    return Walker().saw("still").send(PlateRead(AT, "supply_volts", text))


def test_a_spread_over_a_limit_is_taken_once_more_and_then_goes_the_declared_way() -> None:
    """106-110 V holds the limit of 108 V: once more, then `close`."""
    walker = at_volts().typed("106-110")
    assert walker.step == "cold_house.volts"
    assert walker.ask.retake

    walker.typed("107-109")

    assert walker.step == "cold_house.low"
    assert walker.visit.path[-1].undecided


def test_a_retake_that_decides_goes_on_as_decided() -> None:
    """The second reading is the one that counts."""
    walker = at_volts().typed("106-110").typed("118")

    assert walker.step == "make_dead.stat"
    assert not walker.visit.path[-1].undecided


def test_a_spread_inside_one_band_is_decided() -> None:
    """A needle that swings between 110 and 119 V is still supplied."""
    assert at_volts().typed("110-119").step == "make_dead.stat"


def test_an_unreadable_plate_is_its_whole_range() -> None:
    """120 or 240 V: 118 V may be supplied or low, so the step's `cannot` way is taken without a retake."""
    walker = at_volts("not readable").typed("118")

    assert (walker.ask.kind, walker.step) == ("stop", "cold_house.leave")


def test_an_unreadable_plate_that_makes_no_difference_is_no_matter() -> None:
    """5 V is no supply on either plate."""
    assert at_volts("not readable").typed("5").step == "cold_house.no_supply"


def test_ol_on_ohms_is_from_the_last_limit_up() -> None:
    """An open element reads OL, and OL is judged."""
    walker = Walker().to_ohms().typed("OL")

    assert walker.step == "cold_house.element_bad"


def test_a_fact_is_only_what_its_own_bands_decided() -> None:
    """A reading that was too close to call is not among the finding's facts."""
    walker = Walker().to_ohms().typed("39-41").typed("OL")

    assert [fact.typed.text for fact in walker.visit.found[-1].facts] == ["118.4", "OL"]


def test_a_dead_proof_that_is_not_decided_proves_nothing() -> None:
    """0.8-1.2 V is neither dead nor live: once more, then the stop."""
    walker = at_volts().typed("118").did().did()
    unsteady = {**DEAD, "hot_ground": "0.8-1.2"}
    walker.typed_all(unsteady)
    assert walker.ask.retake
    walker.typed_all(unsteady)

    assert walker.ask.kind == "stop"
    assert walker.visit.house.circuits["line"] == "off"


def test_two_bands_with_one_way_need_no_retake() -> None:
    """Where every possible band leads the same way, the walk goes on; but it is no fact."""
    walker = Walker().to_ohms()
    walker.send(Read(AT, "cold_house.ohms", {"element_ohms": Typed("4-6")}))

    assert walker.ask.retake
