"""What number boxes were seen to do to readings, none of which may happen here.

Each case was recorded on a spin box of a widget library (US locale unless said): what was typed, and the
other number that it kept. The right answer is what was typed, or a question; the id says what the box made of
it.
"""

import pytest

from assistant.quantity.entry import Blank, Doubt, Understood, understand


@pytest.mark.parametrize(
    ("typed", "volts"),
    [
        pytest.param("480", 480.0, id="range 0 to 300 made 48.0 of it"),
        pytest.param("301", 301.0, id="range 0 to 300 made 30.0 of it"),
        pytest.param("5", 5.0, id="range 10 to 300 kept the last reading, 120"),
        pytest.param("2,1", 2.1, id="made 21.0 of it"),
        pytest.param("0,5", 0.5, id="made 5.0 of it"),
        pytest.param("2.1", 2.1, id="a German locale made 21.0 of it"),
        pytest.param("120", 120.0, id="a range that tops out at 99.99 dropped a digit"),
        pytest.param("0.0034", 0.0034, id="two decimals made 0.0 of it"),
        pytest.param("0.125", 0.125, id="two decimals made 0.12 of it"),
        pytest.param("1234.5678", 1234.5678, id="two decimals rounded it"),
    ],
)
def test_the_number_typed_is_the_number_kept(typed, volts):
    meaning = understand(typed, "ac_voltage", "V")
    assert (meaning.interval.lo, meaning.interval.hi) == (volts, volts)
    assert meaning.echo == f"{typed.replace(',', '.')} V"


def test_clearing_the_field_is_no_reading():
    """A box kept the previous value, 120, when it was cleared; an untouched one held a 0.0 as if measured."""
    assert understand("", "ac_voltage", "V") == Blank()
    assert understand("   ", "ac_voltage", "V") == Blank()


def test_a_measured_zero_is_not_a_blank():
    meaning = understand("0.0", "ac_voltage", "V")
    assert isinstance(meaning, Understood)
    assert (meaning.interval.lo, meaning.interval.hi) == (0, 0.05)


def test_a_possible_thousands_mark_is_asked_about():
    """Refusing group separators on the locale did not keep a box from taking 1,200 for either."""
    meaning = understand("1,200", "resistance", "ohm")
    assert isinstance(meaning, Doubt)
    assert meaning.choices == ("1200", "1.200")
    assert [understand(choice, "resistance", "ohm").interval.lo for choice in meaning.choices] == [1200, 1.2]


def test_no_limit_of_any_kind_is_held_here():
    """A reading that can't be is still what was typed: a box that clips hides a slip of the key."""
    assert understand("118400", "ac_voltage", "V").interval.lo == 118400
    assert understand("99999999", "temperature", "F").echo == "99999999 °F"
    assert understand("250 %", "percent", "percent").interval.lo == 2.5
