"""The arithmetic holds every value that its inputs allow (Moore, Interval Analysis, 1966, from memory)."""

import math

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from assistant.quantity.interval import Interval

ENDS = st.floats(-1e6, 1e6)
INTERVALS = st.tuples(ENDS, ENDS).map(lambda ends: Interval(min(ends), max(ends)))
SHARE = st.floats(0, 1)


def inside(interval, share):
    """A value of the interval, at a share of its width."""
    return min(max(interval.lo + share * (interval.hi - interval.lo), interval.lo), interval.hi)


@given(INTERVALS, INTERVALS, SHARE, SHARE)
def test_sums_differences_and_products_hold_all_values(one, two, at_one, at_two):
    a, b = inside(one, at_one), inside(two, at_two)
    assert (one + two).holds(a + b)
    assert (one - two).holds(a - b)
    assert (one * two).holds(a * b)
    assert (-one).holds(-a)


@given(INTERVALS, INTERVALS, SHARE, SHARE)
def test_a_quotient_holds_all_values_or_is_refused(one, two, at_one, at_two):
    if two.holds(0):
        with pytest.raises(ZeroDivisionError):
            one / two
        return
    assume(min(abs(two.lo), abs(two.hi)) > 1e-9)
    quotient = one / two
    value = inside(one, at_one) / inside(two, at_two)
    slack = 1e-12 * max(abs(quotient.lo), abs(quotient.hi))
    assert quotient.lo - slack <= value <= quotient.hi + slack


@given(INTERVALS, INTERVALS)
def test_meeting_and_lying_within(one, two):
    assert one.meets(two) == two.meets(one) == (max(one.lo, two.lo) <= min(one.hi, two.hi))
    assert not one.within(two) or one.meets(two)
    assert one.within(one)


def test_ends_that_are_no_interval():
    with pytest.raises(ValueError, match="low end"):
        Interval(2, 1)
    with pytest.raises(ValueError, match="NaN"):
        Interval(math.nan, 1)


def test_an_open_end():
    above = Interval(40e6, math.inf)
    assert not above.finite
    assert above.middle == 40e6
    assert above.width == math.inf
    assert (above * Interval(0, 1)).lo == 0
    assert Interval.exact(5).width == 0
