"""Entries by hand: each form that technicians use, what is asked back, and what is said where nothing fits.

What a technician types, and that ohms may read OL: common practice. A display's zero stands for anything
below half a count: JCGM 100:2008, F.2.2.1 (from memory).
"""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.quantity.entry import Blank, Doubt, NotUnderstood, Understood, understand
from assistant.quantity.interval import Interval
from assistant.quantity.kind import KINDS, to_si


def echo(text, kind, unit, **more):
    meaning = understand(text, kind, unit, **more)
    assert isinstance(meaning, Understood), meaning
    return meaning.echo


@pytest.mark.parametrize(
    ("text", "kind", "unit", "expected"),
    [
        ("118.4", "ac_voltage", "V", "118.4 V"),
        ("118,4", "ac_voltage", "V", "118.4 V"),
        (" 118.4 V ", "ac_voltage", "V", "118.4 V"),
        ("118.40", "ac_voltage", "V", "118.40 V"),
        ("12 mV", "ac_voltage", "V", "12 mV (0.012 V)"),
        ("24 Vac", "ac_voltage", "V", "24 V"),
        ("24VDC", "dc_voltage", "V", "24 V"),
        ("-0.15", "dc_voltage", "V", "-0.15 V"),
        ("\u22120.15", "dc_voltage", "V", "-0.15 V"),
        ("- 0.15", "pressure", "inwc", "-0.15 in. w.c."),
        ("+5", "ac_voltage", "V", "5 V"),
        (".5", "ac_voltage", "V", "0.5 V"),
        ("5.", "ac_voltage", "V", "5 V"),
        ("1.2k", "resistance", "ohm", "1.2 kohm (1200 ohm)"),
        ("1.2K", "resistance", "ohm", "1.2 kohm (1200 ohm)"),
        ("1.2", "resistance", "kohm", "1.2 kohm"),
        ("4.7 k\u2126", "resistance", "ohm", "4.7 kohm (4700 ohm)"),
        ("4.7 k\u03a9", "resistance", "ohm", "4.7 kohm (4700 ohm)"),
        ("20M", "insulation", "Mohm", "20 Mohm"),
        ("3.5 \u00b5A", "dc_current", "uA", "3.5 µA"),
        ("3.5 \u03bcA", "dc_current", "uA", "3.5 µA"),
        ("3.5u", "dc_current", "A", "3.5 µA (0.0000035 A)"),
        ("8 ma", "ac_current", "A", "8 mA (0.008 A)"),
        ("45 MFD", "capacitance", "uF", "45 µF"),
        ("0.5 in.w.c.", "pressure", "inwc", "0.5 in. w.c."),
        ('3.5"wc', "pressure", "inwc", "3.5 in. w.c."),
        ('3.5 "w.c.', "pressure", "inwc", "3.5 in. w.c."),
        ("3.5 in wc", "pressure", "inwc", "3.5 in. w.c."),
        ("3.5 inH2O", "pressure", "inwc", "3.5 in. w.c."),
        ("72\u00b0F", "temperature", "F", "72 °F"),
        ("72 degF", "temperature", "F", "72 °F"),
        ("72 \u2109", "temperature", "F", "72 °F"),
        ("22 C", "temperature", "F", "22 °C (71.6 °F)"),
        ("55 F", "temperature_difference", "Fdiff", "55 °F"),
        ("30 K", "temperature_difference", "Fdiff", "30 K (54 °F)"),
        ("4.5-6", "ac_voltage", "V", "4.5 to 6 V"),
        ("4.5 to 6", "ac_voltage", "V", "4.5 to 6 V"),
        ("4.5 - 6 V", "ac_voltage", "V", "4.5 to 6 V"),
        ("6-4.5", "ac_voltage", "V", "4.5 to 6 V"),
        ("6.0-6", "ac_voltage", "V", "6.0 to 6 V"),
        ("6-6", "ac_voltage", "V", "6 V"),
        ("1-3:14", "duration", "h", "1 h to 3 h 14 min (1 to 3.23 h)"),
        ("400 mV to 1.2 V", "ac_voltage", "V", "400 mV to 1.2 V (0.4 to 1.2 V)"),
        ("-0.2 to -0.15", "pressure", "inwc", "-0.2 to -0.15 in. w.c."),
        ("3/8 in", "length", "in", "3/8 in (0.375 in)"),
        ("1 1/2 in", "length", "in", "1 1/2 in (1.5 in)"),
        ("1\u00bd\u2033", "length", "in", "1 1/2 in (1.5 in)"),
        ("1/2 psi", "pressure", "psi", "1/2 psi (0.5 psi)"),
        ("5 ft 3 in", "length", "in", "5 ft 3 in (63 in)"),
        ("1:30", "duration", "s", "1 min 30 s (90 s)"),
        ("1:30", "duration", "h", "1 h 30 min (1.5 h)"),
        ("1:02:03", "duration", "s", "1 h 2 min 3 s (3723 s)"),
        ("0:07.5", "duration", "s", "0 min 7.5 s (7.5 s)"),
        ("90 s", "duration", "s", "90 s"),
        ("2 min", "duration", "s", "2 min (120 s)"),
        ("2 min 30 s", "duration", "s", "2 min 30 s (150 s)"),
        ("5%", "percent", "percent", "5 %"),
        ("0.04 %", "concentration", "ppm", "0.04 % (400 ppm)"),
        ("80 MBH", "heat_rate", "Btuh", "80 kBtu/h (80000 Btu/h)"),
        ("3", "count", "count", "3"),
        ("0.00", "ac_voltage", "V", "0.00 V: at most 0.005 V"),
        ("0 L", "volume", "ft3", "0 L (0 ft3)"),
        ("0,125", "ac_voltage", "V", "0.125 V"),
    ],
)
def test_understood(text, kind, unit, expected):
    assert echo(text, kind, unit) == expected


@pytest.mark.parametrize(
    ("text", "kind", "unit", "step"),
    [
        ("118.4", "ac_voltage", "V", 0.1),
        ("118", "ac_voltage", "V", 1.0),
        ("118.", "ac_voltage", "V", 1.0),
        ("12 mV", "ac_voltage", "V", 0.001),
        ("1.25k", "resistance", "ohm", 10.0),
        ("72.5", "temperature", "F", 1 / 18),
        ("4.5-6", "ac_voltage", "V", 0.1),
        ("1:30", "duration", "s", 1.0),
        ("3/8", "length", "in", None),
        ("OL", "resistance", "ohm", None),
    ],
)
def test_one_count_of_the_last_digit(text, kind, unit, step):
    assert understand(text, kind, unit).resolution_si == (
        None if step is None else pytest.approx(step, rel=1e-15)
    )


@pytest.mark.parametrize(("text", "count"), [
    ("0", 1), ("0.", 1), ("0.0", 0.1), ("0.00", 0.01), ("0,00", 0.01), ("+0.00", 0.01), ("0.00-0.0", 0.01),
])  # fmt: skip
def test_zero_on_a_display_is_up_to_half_a_count(text, count):
    for kind in KINDS.values():
        interval = understand(text, kind.name, kind.units[0]).interval
        one = understand("1", kind.name, kind.units[0]).interval.lo
        if kind.low_is_zero:
            assert interval.lo == 0
            assert interval.hi == pytest.approx(count / 2 * one, rel=1e-14)
        elif kind.name != "temperature":
            assert (interval.lo, interval.hi) == (0, 0)


@pytest.mark.parametrize(
    "text", ["OL", "O.L", "O.L.", "o l", "ol", ".OL", "0L", "0.L", " OL ", "over", "OL ohm", "OL Mohm"]
)
def test_ol_on_ohms_is_from_the_top_of_the_range_to_infinity(text):
    known = understand(text, "resistance", "ohm", range_top=40e6)
    assert (known.interval, known.over_range, known.top_known) == (Interval(40e6, math.inf), True, True)
    assert known.echo == "over the meter's range: more than 40 Mohm"
    unknown = understand(text, "resistance", "ohm")
    assert (unknown.interval, unknown.over_range, unknown.top_known) == (Interval(0, math.inf), True, False)
    assert unknown.echo == "over the meter's range: the top of the range is not known"


@pytest.mark.parametrize(
    "text", ["OL 40M", "OL 40 Mohm", ">40M", "> 40 M\u2126", "OL (40M)", "OL > 40M range", "OL 40000k"]
)
def test_the_typed_top_of_the_range_comes_first(text):
    meaning = understand(text, "insulation", "Mohm", range_top=1e9)
    assert (meaning.interval, meaning.over_range, meaning.top_known) == (Interval(40e6, math.inf), True, True)


@pytest.mark.parametrize("top", [0, -1, math.inf, math.nan, None])
def test_a_top_that_is_no_number_is_unknown(top):
    assert not understand("OL", "resistance", "ohm", range_top=top).top_known


def test_ol_elsewhere_is_a_reading_still_to_be_taken():
    for kind in KINDS.values():
        meaning = understand("OL", kind.name, kind.units[0])
        assert isinstance(meaning, Understood if kind.name in ("resistance", "insulation") else NotUnderstood)
    volts = understand("OL", "ac_voltage", "V").message
    assert volts.startswith(
        "OL on AC voltage means that the range is too low. Turn to a higher range and take it again"
    )
    assert "everybody leaves now" in understand("OL", "concentration", "ppm").message


@pytest.mark.parametrize(
    ("text", "kind", "unit", "choices"),
    [
        ("1,200", "ac_voltage", "V", ("1200", "1.200")),
        ("1,200 V", "ac_voltage", "V", ("1200 V", "1.200 V")),
        ("-1,200", "dc_voltage", "V", ("-1200", "-1.200")),
        ("1,200-1,300", "resistance", "ohm", ("1200-1300", "1.200-1.300")),
        ("46,800", "heat_rate", "Btuh", ("46800", "46.800")),
        ("1,200", "count", "count", ("1200",)),
        ("40m", "resistance", "ohm", ("40 Mohm", "0.040 ohm")),
        ("1.5 mohm", "insulation", "Mohm", ("1.5 Mohm", "0.0015 ohm")),
        ("OL 40m", "resistance", "ohm", ("OL 40 Mohm", "OL 0.040 ohm")),
        ("1-1/2 in", "length", "in", ("1 1/2 in", "1 to 1/2 in")),
        ("-0.15-0.20", "pressure", "inwc", ("-0.15 to -0.20", "-0.15 to 0.20")),
        ("-0.1-0,200", "pressure", "inwc", ("-0.1 to -0.200", "-0.1 to 0.200")),
        (
            "-1,200-1,300",
            "pressure",
            "Pa",
            ("-1200 to -1300", "-1200 to 1300", "-1.200 to -1.300", "-1.200 to 1.300"),
        ),
    ],
)
def test_asked_back(text, kind, unit, choices):
    """A person picks; each choice is understood, and no two mean the same."""
    meaning = understand(text, kind, unit)
    assert isinstance(meaning, Doubt)
    assert meaning.choices == choices
    intervals = [understand(choice, kind, unit).interval for choice in choices]
    assert len(set(intervals)) == len(choices)


@pytest.mark.parametrize(
    ("text", "kind", "unit", "says"),
    [
        (
            "12 psi",
            "ac_voltage",
            "V",
            '"psi" is a unit of pressure, and AC voltage is asked for. Write it in V, mV or kV',
        ),
        ("24 Vdc", "ac_voltage", "V", "is a reading in DC, and AC voltage is asked for"),
        ("45 F", "capacitance", "uF", "Write it in µF or nF"),
        ("5 MV", "ac_voltage", "V", "a large M is a million"),
        ("5 M", "ac_current", "A", "a large M is a million"),
        ("5 V V", "ac_voltage", "V", '"V V" is not a unit of AC voltage'),
        ("-5", "ac_voltage", "V", "AC voltage has no minus sign"),
        ("-0.2", "resistance", "ohm", "there is voltage on what you measure"),
        ("-OL", "resistance", "ohm", "there is voltage on what you measure"),
        ("-500", "temperature", "F", "colder than anything can be"),
        ("1e3", "resistance", "ohm", "Write it out, like 1000 or 1.2k"),
        ("1,200.5", "ac_voltage", "V", "without thousands marks: 1200.5."),
        ("1.200,5", "ac_voltage", "V", "without thousands marks: 1200.5."),
        ("1,200,000", "resistance", "ohm", "without thousands marks: 1200000."),
        ("1.2.3", "ac_voltage", "V", "more than one decimal mark"),
        ("120/240", "ac_voltage", "V", "is not one number"),
        ("3/7", "length", "in", "is not a usual fraction"),
        ("8/8", "length", "in", "is not a usual fraction"),
        ("5/0", "length", "in", "is not a usual fraction"),
        ("118 4", "ac_voltage", "V", "is more than one number"),
        ("5 ft 14 in", "length", "in", "does not add up"),
        ("2.5 min 30 s", "duration", "s", "does not add up"),
        ("30 s 2 min", "duration", "s", "is more than one number"),
        ("51m .2s", "duration", "s", "a dot between a unit and a number"),
        ("8 ft.11 in", "length", "in", "a dot between a unit and a number"),
        ("1:30", "ac_voltage", "V", '"1:30" is a time'),
        ("1:75", "duration", "s", "is not a time"),
        ("2.5", "count", "count", "Count is a whole number"),
        ("1-2-3", "ac_voltage", "V", "too many dashes"),
        ("1 to 2 to 3", "ac_voltage", "V", "A spread has two ends"),
        ("<1", "ac_voltage", "V", "Write the number that the display shows"),
        (">5", "ac_voltage", "V", "Write the number that the display shows"),
        ("OL 0", "resistance", "ohm", "Behind OL write one number"),
        ("OL 5-6M", "resistance", "ohm", "Behind OL write one number"),
        ("OL xyz", "resistance", "ohm", '"xyz" is not a unit of resistance'),
        ("nan", "ac_voltage", "V", '"nan" is not a reading. Write it like 118.4 V.'),
        ("inf", "ac_voltage", "V", '"inf" is not a reading'),
        ("open", "resistance", "ohm", "Write it like 1.2k or OL."),
        ("9" * 16, "ac_voltage", "V", "more than 15 digits"),
        ("\u0663\u0664", "ac_voltage", "V", "Write the number with the digits 0 to 9."),
        ("\uff11\uff12", "ac_voltage", "V", "Write the number with the digits 0 to 9."),
        ("5\u00b2", "ac_voltage", "V", "Write the number with the digits 0 to 9."),
        ("\x00", "ac_voltage", "V", '"?" is not a reading'),
        ("\ud800", "ac_voltage", "V", '"?" is not a reading'),
    ],
)
def test_not_understood_says_what_to_write_instead(text, kind, unit, says):
    meaning = understand(text, kind, unit)
    assert isinstance(meaning, NotUnderstood)
    assert says in meaning.message


@pytest.mark.parametrize("text", ["", " ", "\t\r\n", "\u00a0", "\u200b", " " * 100_000])
def test_blank_is_no_reading(text):
    assert understand(text, "ac_voltage", "V") == Blank()


@pytest.mark.parametrize("piece", ["9", "1,", "-", "1-", "OL", " ", "1 ", "1/2 ", "٣", "in ", ".", "to "])
def test_ten_thousand_of_anything_are_refused_before_they_are_read(piece):
    understand((piece * 70)[:70], "pressure", "inwc")
    long = understand((piece * 10_000)[:10_000], "pressure", "inwc")
    if piece.isspace():
        assert long == Blank()
    else:
        assert isinstance(long, NotUnderstood)
        assert "characters" in long.message


def test_a_short_long_entry_is_read_and_a_long_one_is_refused():
    assert echo("118.4" + " " * 60 + "V", "ac_voltage", "V") == "118.4 V"
    assert "81 characters" in understand("118.4" + " V" * 38, "ac_voltage", "V").message
    assert '"V V' in understand("118.4 V" + " V" * 36, "ac_voltage", "V").message
    assert "10000 characters" in understand("1" * 10_000, "ac_voltage", "V").message


def test_fifteen_digits_are_kept():
    assert understand(",123456789012345", "ac_voltage", "V").echo == "0.123456789012345 V"
    assert understand("123456789.012345", "ac_voltage", "V").echo == "123456789.012345 V"
    assert understand("123456789012345", "resistance", "Mohm").interval.lo == 123456789012345e6


def test_the_same_text_means_the_same_in_any_unit_it_names():
    """A named unit is stronger than the field's."""
    for kind in KINDS.values():
        for named in kind.units:
            read = {understand(f"4 {named}", kind.name, field).interval for field in kind.units}
            assert len(read) == 1


PLAIN_UNITS = [(kind.name, unit) for kind in KINDS.values() for unit in kind.units if not kind.whole]


@given(st.decimals(1, 99999, places=3), st.sampled_from(PLAIN_UNITS))
def test_a_reading_and_the_same_number_in_a_limit_are_one_float(number, kind_and_unit):
    """12.0 is not under 12, in whatever unit: the typed number and to_si() of it may not differ by a bit."""
    kind, unit = kind_and_unit
    assert understand(f"{number}", kind, unit).interval.lo == to_si(float(number), unit)


def test_wrong_kind_or_unit_is_the_callers_mistake():
    with pytest.raises(ValueError, match="unknown quantity 'volts'"):
        understand("5", "volts", "V")
    with pytest.raises(ValueError, match="ac_voltage has no unit 'A'"):
        understand("5", "ac_voltage", "A")
