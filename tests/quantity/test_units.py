"""Units against published values (tests/outside/data/quantity_units.yaml), and how numbers are shown."""

import math
from decimal import Decimal
from fractions import Fraction
from pathlib import Path

import pytest
import yaml
from hypothesis import given
from hypothesis import strategies as st

from assistant.quantity.interval import Interval
from assistant.quantity.kind import KINDS
from assistant.quantity.units import UNITS, from_si, show, show_interval, to_si

DATA = Path(__file__).parents[1] / "outside" / "data" / "quantity_units.yaml"
ROWS = yaml.safe_load(DATA.read_text(encoding="utf-8"))
BASE = {"V", "A", "ohm", "Hz", "W", "VA", "Pa", "K", "s", "mps", "m", "m2", "m3", "count"}
DECIMAL = {
    "mV": -3,
    "kV": 3,
    "mA": -3,
    "uA": -6,
    "kohm": 3,
    "Mohm": 6,
    "Gohm": 9,
    "uF": -6,
    "nF": -9,
    "kHz": 3,
    "kW": 3,
    "kVA": 3,
    "kPa": 3,
    "mm": -3,
    "cm": -2,
    "L": -3,
    "MJm3": 6,
    "ppm": -6,
    "percent": -2,
}
CLOCK = {"min": 60, "h": 3600}


def row_name(row):
    return f"{row['unit']}-{row['source'][:30]}"


def last_digit(text):
    """Half a step of the last printed digit, relative."""
    number = Decimal(text)
    return float(Decimal(1).scaleb(number.as_tuple().exponent) / 2 / number)


@pytest.mark.parametrize("row", ROWS["factors"], ids=row_name)
def test_one_of_a_unit_is_what_the_source_says(row):
    unit = UNITS[row["unit"]]
    assert float(unit.factor) == pytest.approx(
        float(row["expect"]), rel=row.get("tol", last_digit(row["expect"]))
    )


@pytest.mark.parametrize("row", ROWS["not_these"], ids=row_name)
def test_a_unit_is_not_another_one_of_the_same_name(row):
    assert float(UNITS[row["unit"]].factor) != pytest.approx(float(row["expect"]), rel=row["tol"])


@pytest.mark.parametrize("row", ROWS["temperatures"], ids=lambda row: f"{row['given']}{row['unit']}")
def test_a_temperature_in_kelvin(row):
    assert to_si(row["given"], row["unit"]) == pytest.approx(row["kelvin"], abs=1e-12)
    assert from_si(row["kelvin"], row["unit"]) == pytest.approx(row["given"], abs=1e-12)


@pytest.mark.parametrize("row", ROWS["pairs"], ids=lambda row: f"{row['given']}{row['unit']}-{row['to']}")
def test_numbers_that_trade_texts_print_side_by_side(row):
    assert from_si(to_si(row["given"], row["unit"]), row["to"]) == pytest.approx(
        row["expect"], abs=row["tol"]
    )


def test_every_unit_has_its_factor_from_outside_or_is_a_power_of_ten():
    """Decimal prefixes and the clock need no table; whatever else stands in UNITS has a row."""
    for name in BASE:
        assert UNITS[name].factor == 1
    for name, power in DECIMAL.items():
        assert UNITS[name].factor == Fraction(10) ** power
    for name, seconds in CLOCK.items():
        assert UNITS[name].factor == seconds
    sourced = {row["unit"] for row in ROWS["factors"]} | {row["unit"] for row in ROWS["temperatures"]}
    assert set(UNITS) == BASE | set(DECIMAL) | set(CLOCK) | sourced


def test_units_of_one_kind_have_one_dimension():
    for kind in KINDS.values():
        assert {UNITS[unit].dimension for unit in kind.units} == {kind.dimension}


def test_ohm_times_ampere_is_volt_and_so_on():
    """Dimensions multiply as the units do: Ohm's law, V A = W, farad x ohm = second, Pa m3/s = W."""

    def product(*names):
        return tuple(
            sum(exponents) for exponents in zip(*(UNITS[name].dimension for name in names), strict=True)
        )

    assert product("ohm", "A") == UNITS["V"].dimension
    assert product("V", "A") == UNITS["W"].dimension == UNITS["VA"].dimension == UNITS["Btuh"].dimension
    assert product("uF", "ohm") == UNITS["s"].dimension
    assert product("inwc", "cfm") == UNITS["W"].dimension
    assert product("btuft3", "cfh") == UNITS["Btuh"].dimension
    assert product("fpm", "ft2") == UNITS["cfm"].dimension
    assert product("Hz", "s") == UNITS["count"].dimension == (0, 0, 0, 0, 0)


def test_a_temperature_is_a_point_and_a_difference_is_not():
    assert [name for name, unit in UNITS.items() if unit.is_point] == ["F", "C"]
    assert to_si(18, "Fdiff") == 10


def test_names_can_stand_in_an_expression():
    for name, unit in UNITS.items():
        assert unit.name == name
        assert name.isidentifier()
        assert name.isascii()


@given(st.decimals(-99999, 99999, places=4), st.sampled_from(sorted(UNITS)))
def test_what_was_typed_comes_back(number, unit):
    """To SI and back shows every digit that was typed, in every unit."""
    shown = show(to_si(float(number), unit), unit)
    assert Decimal(shown.removesuffix(UNITS[unit].symbol).strip()) == number


@given(
    st.floats(allow_nan=False, allow_infinity=False, min_value=-1e30, max_value=1e30),
    st.sampled_from(sorted(UNITS)),
)
def test_a_number_is_shown_without_powers_of_ten_and_close(value, unit):
    """Any number is shown in plain digits, true to three figures or to the unit's decimals."""
    shown = show(value, unit).removesuffix(UNITS[unit].symbol).strip()
    assert set(shown) <= set("-0123456789.")
    inside = from_si(value, unit)
    assert float(shown) == pytest.approx(inside, rel=0.006, abs=1e-300)


@pytest.mark.parametrize(
    ("value", "unit", "digits", "expected"),
    [
        (118.4, "V", None, "118.4 V"),
        (118.4, "V", 2, "118.40 V"),
        (120 / 7, "V", None, "17.1 V"),
        (0.012, "mV", None, "12 mV"),
        (0.0034, "V", None, "0.0034 V"),
        (0.125, "V", None, "0.125 V"),
        (1 / 3000, "V", None, "0.000333 V"),
        (871.811185, "inwc", None, "3.5 in. w.c."),
        (40e6, "Mohm", None, "40 Mohm"),
        (40e6, "ohm", None, "40000000 ohm"),
        (7.4e-6, "uF", None, "7.4 µF"),
        (3.0, "count", None, "3"),
        (-0.0, "V", None, "0 V"),
        (-0.001, "V", 1, "0.0 V"),
        (0.05, "percent", None, "5 %"),
        (55 / 1.8, "Fdiff", None, "55 °F"),
        (math.inf, "ohm", None, "unlimited ohm"),
    ],
)
def test_show(value, unit, digits, expected):
    assert show(value, unit, digits) == expected


@pytest.mark.parametrize(
    ("low", "high", "unit", "expected"),
    [
        (118.4, 118.4, "V", "118.4 V"),
        (4.5, 6, "V", "4.5 to 6 V"),
        (40e6, math.inf, "Mohm", "more than 40 Mohm"),
        (-math.inf, 6, "V", "less than 6 V"),
        (-math.inf, math.inf, "V", "anything"),
    ],
)
def test_show_interval(low, high, unit, expected):
    assert show_interval(Interval(low, high), unit) == expected


def test_nothing_that_floats_hold_breaks_showing():
    for value in (math.nan, math.inf, -math.inf, 1e308, -1e308, 5e-324):
        for unit in UNITS:
            assert show(value, unit)
    assert math.isnan(to_si(math.nan, "F"))
    assert to_si(-math.inf, "F") == -math.inf
