"""What an instrument's accuracy makes of a reading, against published examples, and the shop's list."""

import math
from pathlib import Path

import pytest
import yaml
from hypothesis import given
from hypothesis import strategies as st

from assistant.quantity.entry import understand
from assistant.quantity.instrument import Instrument
from assistant.quantity.interval import Interval
from assistant.quantity.shop import read_instruments

DATA = Path(__file__).parents[1] / "outside" / "data" / "quantity_accuracy.yaml"
ROWS = yaml.safe_load(DATA.read_text(encoding="utf-8"))["accuracy"]

SHOP = [
    {
        "name": "pocket meter",
        "covers": ["ac_voltage", "resistance", "dc_current"],
        "percent": {"ac_voltage": "1 %", "resistance": "0.9"},
        "counts": 3,
        "range_top": {"resistance": "40 Mohm", "ac_voltage": "600 V"},
        "impedance": "high",
        "lead_resistance": "0.2 ohm",
    },
    {
        "name": "manometer",
        "covers": ["pressure"],
        "percent": "1",
        "counts": "1",
        "range_top": {"pressure": "60"},
    },
]


def one(kind, percent=0.0, counts=0.0):
    return Instrument("meter", (kind,), {kind: percent}, {kind: counts})


@pytest.mark.parametrize(
    "row", ROWS, ids=lambda row: f"{row['typed']} at {row['percent']} % + {row['counts']}"
)
def test_published_limits_of_a_reading(row):
    reading = understand(row["typed"], row["kind"], row["unit"])
    wide = one(row["kind"], row["percent"], row["counts"]).widen(reading)
    assert (wide.lo, wide.hi) == (
        pytest.approx(row["low"], abs=row["tol"]),
        pytest.approx(row["high"], abs=row["tol"]),
    )


def test_percent_is_of_the_number_on_the_display():
    """1 % of 70 F is 0.7 F, not 1 % of 294 K (common practice: makers state it for the reading shown)."""
    wide = one("temperature", 1).widen(understand("70", "temperature", "F"))
    assert wide.lo == pytest.approx((69.3 + 459.67) / 1.8)
    assert wide.hi == pytest.approx((70.7 + 459.67) / 1.8)


def test_a_spread_is_widened_at_both_ends():
    wide = one("ac_voltage", 10, 1).widen(understand("4.0-6.0", "ac_voltage", "V"))
    assert (wide.lo, wide.hi) == (pytest.approx(3.5), pytest.approx(6.7))


def test_below_zero_only_where_that_can_be():
    wide = one("ac_voltage", 1, 3).widen(understand("0.1", "ac_voltage", "V"))
    assert (wide.lo, wide.hi) == (0, pytest.approx(0.401))
    negative = one("pressure", 10).widen(understand("-1", "pressure", "Pa"))
    assert (negative.lo, negative.hi) == (pytest.approx(-1.1), pytest.approx(-0.9))


def test_an_ol_stays_an_ol():
    reading = understand("OL", "resistance", "ohm", range_top=40e6)
    assert one("resistance", 1, 5).widen(reading) == Interval(40e6, math.inf)


def test_a_fraction_has_no_counts():
    wide = one("length", 0, 5).widen(understand("3/8", "length", "in"))
    assert wide == Interval(0.009525, 0.009525)


def test_a_kind_that_the_instrument_does_not_read():
    with pytest.raises(ValueError, match="meter does not read pressure"):
        one("ac_voltage").widen(understand("1", "pressure", "Pa"))


@given(
    st.decimals(0, 9999, places=2), st.floats(0, 100), st.integers(0, 50), st.sampled_from(("V", "mV")),
)  # fmt: skip
def test_a_widened_reading_holds_the_reading(number, percent, counts, unit):
    reading = understand(f"{number} {unit}", "ac_voltage", "V")
    assert reading.interval.within(one("ac_voltage", percent, counts).widen(reading))


def test_an_instrument_does_not_change():
    ranges = {"resistance": 40e6}
    meter = Instrument("meter", ("resistance",), range_top=ranges)
    ranges["resistance"] = 0
    assert meter.range_top["resistance"] == 40e6
    with pytest.raises(TypeError):
        meter.range_top["resistance"] = 1
    assert hash(meter) == hash(Instrument("meter", ("resistance",)))


def test_the_shops_list():
    instruments, problems = read_instruments(SHOP)
    assert problems == []
    assert list(instruments) == ["pocket meter", "manometer"]
    meter = instruments["pocket meter"]
    assert meter.percent == {"ac_voltage": 1, "resistance": 0.9}
    assert meter.counts == {"ac_voltage": 3, "resistance": 3, "dc_current": 3}
    assert meter.range_top == {"resistance": 40e6, "ac_voltage": 600}
    assert (meter.impedance, meter.lead_resistance) == ("high", 0.2)
    assert instruments["manometer"].range_top["pressure"] == pytest.approx(60 * 249.08891)


@pytest.mark.parametrize(
    ("change", "says"),
    [
        ({"covers": None}, "covers lists the quantities that it reads"),
        ({"covers": []}, "covers lists the quantities that it reads"),
        ({"covers": ["ac_volts"]}, '"ac_volts" is not a quantity. Did you mean ac_voltage?'),
        ({"covers": [["ac_voltage"]]}, "is not a quantity"),
        ({"impedence": "low"}, '"impedence" is not a field. Did you mean impedance?'),
        ({7: 8}, '"7" is not a field.'),
        ({"impedance": "medium"}, 'impedance is low or high (got "medium").'),
        ({"impedance": ["low"]}, "impedance is low or high"),
        ({"percent": "lots"}, '"lots" is not a reading'),
        ({"percent": "101"}, "percent for ac_voltage is at most 100."),
        ({"percent": "-1"}, "has no minus sign"),
        ({"percent": ""}, "percent for ac_voltage: it is empty."),
        ({"percent": True}, "write a number with its unit"),
        ({"percent": {"pressure": 1}}, 'percent names "pressure", which is not in covers.'),
        ({"counts": "2.5"}, "Count is a whole number"),
        ({"counts": "1-2"}, "write one number, not a spread."),
        ({"range_top": "600 V"}, "write range_top for each quantity"),
        ({"range_top": {"ac_voltage": "600 psi"}}, '"psi" is a unit of pressure'),
        ({"range_top": {"ac_voltage": math.nan}}, '"nan" is not a reading'),
        ({"lead_resistance": "OL"}, "write a number with its unit, not OL."),
        ({"name": " "}, "instrument 1: it has no name."),
        ({"name": 5}, "instrument 1: it has no name."),
    ],
)
def test_a_mistake_in_the_list_is_a_sentence(change, says):
    entry = {"name": "meter", "covers": ["ac_voltage"], **change}
    instruments, problems = read_instruments([entry])
    assert instruments == {}
    assert any(says in problem for problem in problems), problems


@pytest.mark.parametrize("listed", [None, "meter", 5, {"name": "meter"}])
def test_a_list_that_is_none(listed):
    assert read_instruments(listed) == ({}, ["instruments is a list with one entry for each instrument."])


def test_all_mistakes_at_once_and_the_good_ones_are_kept():
    listed = [5, SHOP[1], SHOP[1], {"name": "a", "covers": ["x"], "counts": "y", "impedance": "z"}]
    instruments, problems = read_instruments(listed)
    assert list(instruments) == ["manometer"]
    assert len(problems) == 4
    assert problems[0].startswith("instrument 1: write it as fields")
    assert problems[1] == 'instrument 3: there is already one named "manometer".'


JSON_LIKE = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats() | st.text(max_size=5),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.sampled_from(
        ("name", "covers", "percent", "counts", "range_top", "impedance", "lead_resistance", "ac_voltage")
    ), inner, max_size=4),
    max_leaves=12,
)  # fmt: skip


@given(JSON_LIKE)
def test_no_list_raises(listed):
    """Whatever a shop file holds, there are instruments and sentences."""
    _, problems = read_instruments(listed)
    assert all(problem.endswith((".", "?")) for problem in problems)


def test_a_stated_resolution_counts_instead_of_the_digits_typed():
    """People type 0 where the display shows 0.0: three counts of 0.1 V then, not of 1 V; and half a count."""
    from assistant.quantity.entry import understand

    meter = Instrument("meter", ("ac_voltage",), counts={"ac_voltage": 3}, resolution={"ac_voltage": 0.1})
    zero, volts = (meter.widen(understand(text, "ac_voltage", "V")) for text in ("0", "120"))

    assert (zero.lo, zero.hi) == pytest.approx((0.0, 0.35))
    assert (volts.lo, volts.hi) == pytest.approx((119.7, 120.3))


def test_a_step_of_a_thermometer_is_a_difference():
    """Ten counts of 0.1 F around 70 F: half a kelvin and a bit, not ten times 255 K."""
    from assistant.quantity.entry import understand
    from assistant.quantity.shop import read_instruments

    thermometer = {"name": "probe", "covers": ["temperature"], "counts": "10"}
    listed = [{**thermometer, "resolution": {"temperature": "0.1 F"}}]
    instruments, problems = read_instruments(listed)
    span = instruments["probe"].widen(understand("70", "temperature", "F"))

    assert problems == []
    assert span.width == pytest.approx(2 / 1.8)
