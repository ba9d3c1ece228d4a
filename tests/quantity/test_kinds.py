"""The table of quantities: every flag has its reason, every unit its spelling, nothing means two things."""

import math

import pytest

from assistant.quantity.entry import Understood, understand
from assistant.quantity.kind import KINDS, UNITS
from assistant.quantity.spelling import compact, unit_named, units_that_fit

LISTED = [
    "ac_voltage", "dc_voltage", "resistance", "insulation", "ac_current", "dc_current", "capacitance",
    "frequency", "power", "apparent_power", "pressure", "temperature", "temperature_difference",
    "concentration", "percent", "duration", "heat_rate", "airflow", "gas_flow", "velocity", "length", "area",
    "volume", "heating_value", "speed", "count",
]  # fmt: skip


def flagged(name):
    return {kind.name for kind in KINDS.values() if getattr(kind, name)}


def test_every_quantity_that_a_tree_may_name():
    assert list(KINDS) == LISTED
    for kind in KINDS.values():
        assert kind.units
        assert set(kind.units) <= set(UNITS)


def test_us_units_come_first():
    """US technicians read gas in inches of water, air in cfm, heat in Btu/h, F and feet (common practice)."""
    firsts = {name: kind.units[0] for name, kind in KINDS.items()}
    assert firsts["pressure"] == "inwc"
    assert firsts["temperature"] == "F"
    assert firsts["temperature_difference"] == "Fdiff"
    assert firsts["airflow"] == "cfm"
    assert firsts["gas_flow"] == "cfh"
    assert firsts["heat_rate"] == "Btuh"
    assert firsts["velocity"] == "fpm"
    assert firsts["length"] == "in"


def test_the_order_of_the_leads():
    """Exchanged leads change the sign of a direct reading and nothing else (circuit theory, from memory)."""
    symmetric = flagged("symmetric")
    assert {"ac_voltage", "resistance", "insulation", "capacitance", "ac_current", "frequency"} == symmetric
    assert not symmetric & flagged("can_be_negative")


def test_what_can_be_below_zero():
    assert flagged("can_be_negative") == {
        "dc_voltage", "dc_current", "pressure", "temperature", "temperature_difference",
    }  # fmt: skip
    for kind in KINDS.values():
        meaning = understand("-1", kind.name, kind.units[0])
        assert isinstance(meaning, Understood) == kind.can_be_negative


def test_only_ohms_read_ol():
    assert flagged("over_range") == {"resistance", "insulation"}


def test_a_display_that_can_go_below_zero_does_not_hide_half_a_count_above_it():
    assert not flagged("low_is_zero") & flagged("can_be_negative")


def test_sentences_are_filled_in():
    for kind in KINDS.values():
        for sentence in (kind.minus_sentence, kind.over_sentence):
            assert sentence.endswith(".")
            assert "{" not in sentence
    assert KINDS["temperature"].words == "temperature"
    assert KINDS["ac_voltage"].words == "AC voltage"


@pytest.mark.parametrize("name", LISTED)
def test_the_example_is_understood(name):
    """What a sentence tells people to write must work."""
    for example in KINDS[name].example.split(" or "):
        assert isinstance(understand(example, name, KINDS[name].units[0]), Understood)


@pytest.mark.parametrize("name", LISTED)
def test_every_unit_is_known_by_its_name_its_symbol_and_its_spellings(name):
    kind = KINDS[name]
    for unit in map(UNITS.__getitem__, kind.units):
        for field in kind.units:
            for spelling in (unit.name, unit.symbol, *unit.spellings, *unit.strict):
                known = unit_named(spelling.replace("°", "deg").replace("µ", "u"), kind, field)
                assert known == unit.name or (not spelling and known == field)


@pytest.mark.parametrize("name", LISTED)
def test_no_spelling_means_two_units_of_one_kind(name):
    owner = {}
    for unit in map(UNITS.__getitem__, KINDS[name].units):
        for spelling in {*(s.lower() for s in unit.spellings), *("strict " + s for s in unit.strict)}:
            assert owner.setdefault(spelling, unit.name) == unit.name
            assert compact(spelling.removeprefix("strict ")) == spelling.removeprefix("strict ")


def test_m_is_a_thousandth_and_capital_m_a_million():
    volts, ohms = KINDS["ac_voltage"], KINDS["resistance"]
    assert unit_named("mV", volts, "V") == unit_named("mv", volts, "V") == unit_named("m", volts, "V") == "mV"
    assert unit_named("MV", volts, "V") is unit_named("M", volts, "V") is None
    assert (
        unit_named("Mohm", ohms, "ohm")
        == unit_named("MOHM", ohms, "ohm")
        == unit_named("M", ohms, "kohm")
        == "Mohm"
    )
    assert unit_named("mohm", ohms, "ohm") is unit_named("m", ohms, "ohm") is None


def test_the_sentence_of_units_that_fit():
    assert units_that_fit(KINDS["ac_voltage"]) == "V, mV or kV"
    assert units_that_fit(KINDS["speed"]) == "rpm"
    assert units_that_fit(KINDS["pressure"]) == "inwc, Pa, kPa, psi, mbar or oz/in2"


def test_temperature_and_difference_are_different_things():
    """20 F is 266.48 K; a rise of 20 F is 11.11 K (NIST SP 811 (2008), 8.5 and B.8, from memory)."""
    assert understand("20 F", "temperature", "F").interval.lo == pytest.approx(266.4833, abs=5e-5)
    assert understand("20 F", "temperature_difference", "Fdiff").interval.lo == pytest.approx(
        11.1111, abs=5e-5
    )
    assert math.isclose(understand("20 C", "temperature_difference", "K").interval.lo, 20)
