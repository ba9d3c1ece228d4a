"""Instruments make a reading an interval; the interval decides, the chance is only kept."""

from __future__ import annotations

import pytest

from assistant.walk.event import InstrumentUsed, Opened, PlateRead, Read, Saw, Typed
from assistant.walk.shop import read_shop
from assistant.walk.visit import asked, begin, fold
from tests.walk.small import AT, library

SHOP = {
    "instruments": [
        {"name": "meter", "covers": ["ac_voltage", "resistance"], "percent": 1, "counts": 3,
         "resolution": {"ac_voltage": "0.1 V"}, "range_top": {"resistance": "40 Mohm"}},
        {"name": "probe", "covers": ["temperature"], "counts": {"temperature": 2}},
    ],
    "defaults": {"ac_voltage": "meter", "resistance": "meter", "temperature": "probe"},
}


def opened(shop: dict):
    visit = fold(begin(library()), Opened(AT, (("no_heat", "no heat"),), shop=shop))
    visit = fold(visit, Saw(AT, "cold_house.fan", "still"))
    return fold(visit, PlateRead(AT, "supply_volts", "120"))


def typed(visit, text: str, **more):
    return fold(visit, Read(AT, asked(visit).step, {"volts": Typed(text, **more)}))


def test_an_instrument_makes_a_near_reading_too_close_to_call() -> None:
    """109.0 V, plus or minus 1 % and three counts, holds the limit of 108 V; as typed it does not."""
    assert asked(typed(opened({}), "109.0")).step == "make_dead.stat"

    visit = typed(opened(SHOP), "109.0")

    assert asked(visit).retake
    record = visit.readings[-1]
    assert (record.value.lo, record.value.hi) == pytest.approx((107.61, 110.39))
    assert record.typed.instrument == "meter"


def test_the_chance_is_kept_and_decides_nothing() -> None:
    """The likelier band is not taken."""
    visit = typed(opened(SHOP), "109.0")
    chances = visit.readings[-1].verdict.chances

    assert sum(chances) == pytest.approx(1)
    assert chances[2] > 0.8
    assert not visit.readings[-1].verdict.decided


def test_the_reading_named_instrument_wins_over_the_default() -> None:
    """A better meter, named with the reading, has no accuracy on record: the value stands as typed."""
    visit = typed(opened(SHOP), "109.0", instrument="bench meter")

    assert visit.readings[-1].value.width == pytest.approx(2.78)

    visit = fold(opened(SHOP), InstrumentUsed(AT, "meter"))
    assert typed(visit, "118").readings[-1].typed.instrument == "meter"


def test_ol_begins_at_the_top_of_the_instruments_range() -> None:
    """40 Mohm and up, as the shop's list says."""
    from assistant.walk.event import Did
    from tests.walk.small import DEAD

    visit = typed(opened(SHOP), "118.4")
    visit = fold(fold(visit, Did(AT, "make_dead.stat")), Did(AT, "make_dead.off"))
    dead = {name: Typed(text) for name, text in DEAD.items()}
    visit = fold(visit, Read(AT, "make_dead.prove", dead))
    visit = fold(visit, Read(AT, "cold_house.ohms", {"element_ohms": Typed("OL")}))

    assert visit.readings[-1].value.lo == pytest.approx(40e6)


def test_a_computed_value_is_two_standard_uncertainties_wide() -> None:
    """Two probes, each within 2 counts of 0.1 °F: the rise has u = root 2 x 0.2 °F / root 3."""
    visit = fold(begin(library()), Opened(AT, (("no_heat", "no heat"),), shop=SHOP))
    visit = fold(visit, Saw(AT, "cold_house.fan", "turning"))
    readings = {"t_supply": Typed("120.0"), "t_return": Typed("70.0")}
    visit = fold(visit, Read(AT, "cold_house.warm", readings))
    visit = fold(visit, PlateRead(AT, "rise_min", "35"))
    visit = fold(visit, PlateRead(AT, "rise_max", "50.3"))
    rise = visit.path[-1].records[0]

    half_width = 2 * 2**0.5 * 0.2 / 3**0.5 / 1.8
    assert rise.value.width / 2 == pytest.approx(half_width)
    assert rise.verdict.words == "too close to call"


def test_a_shop_list_with_mistakes_gives_sentences() -> None:
    """What could be read counts; nothing raises."""
    listed = {"instruments": [{"name": "x"}], "defaults": {"ac_voltage": "x"}, "may": "gas"}
    shop, problems = read_shop(listed)

    assert shop.instruments == {}
    assert len(problems) >= 3
