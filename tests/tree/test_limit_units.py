"""The sort of number that a limit gives. Dimensions: BIPM, The International System of Units (9th edition,
2019), section 2.3; temperature and temperature difference are kept apart as its section 2.3.1 (degree
Celsius) does.
"""

import pytest

from assistant.house.place import Place
from assistant.tree.limit_units import sort_of_kind, unit_of
from assistant.tree.limits import BadLimit, parse_limit

PLACE = Place("f", 1, 1)
KINDS = {
    "v": "ac_voltage",
    "a": "ac_current",
    "w": "power",
    "va": "apparent_power",
    "r": "resistance",
    "hot": "temperature",
    "cold": "temperature",
    "d": "temperature_difference",
    "p": "percent",
    "n": "count",
    "q": "airflow",
    "area": "area",
    "speed": "velocity",
    "s": "duration",
    "length": "length",
}


def sort(text):
    return unit_of(parse_limit(text, PLACE), KINDS)


@pytest.mark.parametrize(
    ("text", "kind"),
    [
        ("0.9 * v", "ac_voltage"),
        ("5 V", "dc_voltage"),
        ("a * r", "ac_voltage"),
        ("v / a", "resistance"),
        ("v * a", "power"),
        ("w / v", "ac_current"),
        ("w - v * a", "power"),
        ("p * v", "ac_voltage"),
        ("v / v", "percent"),
        ("90 percent * v", "ac_voltage"),
        ("hot", "temperature"),
        ("hot - cold", "temperature_difference"),
        ("hot + d", "temperature"),
        ("d + hot", "temperature"),
        ("hot - d", "temperature"),
        ("d - d", "temperature_difference"),
        ("d * 2", "temperature_difference"),
        ("-d", "temperature_difference"),
        ("70 F", "temperature"),
        ("-5 F", "temperature"),
        ("hot - 32 F", "temperature_difference"),
        ("hot + 5 Fdiff", "temperature"),
        ("hot - cold + cold", "temperature"),
        ("speed * area", "airflow"),
        ("q / area", "velocity"),
        ("length / s", "velocity"),
        ("heat_rise(hot, cold)", "temperature_difference"),
        ("difference(hot, cold)", "temperature_difference"),
        ("difference(v, 5 V) + 1 V", "ac_voltage"),
        ("ratio_percent(v, v) * v", "ac_voltage"),
        ("n + 1 count", "count"),
    ],
)
def test_limits_whose_units_go_together(text, kind):
    assert sort(text) == sort_of_kind(kind)
    assert not sort(text).plain


@pytest.mark.parametrize("text", ["5", "2 * 3 - 1", "-(1 / 3)"])
def test_numbers_without_a_unit_are_plain(text):
    assert sort(text).plain


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("v + a", "can't be added"),
        ("v - r", "can't be taken from"),
        ("v + 5", "write its unit"),
        ("5 - v", "write its unit"),
        ("p + 1", "write its unit"),
        ("hot + cold", "two temperatures"),
        ("hot * 2", "multiplied"),
        ("hot / cold", "multiplied"),
        ("-hot", "opposite"),
        ("d - hot", "from a difference"),
        ("hot + v", "can't be added"),
        ("hot - 5", "write its unit"),
        ("x", "no reading"),
        ("vv * 2", "no reading"),
        ("no_such(v)", "no computation"),
        ("heat_ries(hot, cold)", "did you mean 'heat_rise'"),
        ("heat_rise(hot)", "takes supply, return_air"),
        ("heat_rise(hot, cold, cold)", "takes supply"),
        ("heat_rise(v, cold)", "supply is a temperature"),
        ("heat_rise(hot, 70)", "write its unit"),
        ("heat_rise(d, cold)", "supply is a temperature"),
        ("difference(hot, v)", "second is a temperature"),
        ("difference(5, 3)", "unit"),
        ("excess_air(5)", "write its unit"),
        ("supply_impedance(v, v, a)", "compute step"),
        ("air_density(5 ft)", "no unit"),
        ("coil_window(v)", "compute step"),
    ],
)
def test_limits_whose_units_do_not(text, words):
    with pytest.raises(BadLimit, match=words):
        sort(text)


@pytest.mark.parametrize(
    ("text", "sentence"),
    [
        ("v + a", "something in V can't be added to something in A"),
        ("v - a", "something in A can't be taken from something in V"),
        ("v - 5", "a number without a unit can't be taken from something in V; write its unit"),
        ("p + v", "a share such as percent, or a count can't be added to something in V"),
        ("hot + v", "a temperature can't be added to something in V"),
        ("v * v + v", "something that no unit here measures can't be added to something in V"),
    ],
)
def test_the_sentence_names_both_sides_in_their_order(text, sentence):
    with pytest.raises(BadLimit) as caught:
        sort(text)
    assert str(caught.value) == sentence
