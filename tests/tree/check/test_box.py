"""That one limit lies under another for every plate: the proof against points taken inside the box."""

import itertools

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from assistant.house.model import PlateValue
from assistant.house.place import Place
from assistant.quantity.interval import Interval
from assistant.tree.check.box import Bound, not_under
from assistant.tree.limits import evaluate, parse_limit

HERE = Place("t.yaml", 1, 1)


def plate(name, low, high, choices=(), over=None, by=None):
    return PlateValue(name, name, "count", "count", Interval(low, high), choices, over, by, "", HERE)


def bound(text):
    return Bound(parse_limit(text, HERE), unit="count") if isinstance(text, str) else Bound(None, float(text))


def spans(plate_values):
    return {name: value.span for name, value in plate_values.items()}


def said(low, high, *values):
    known = {value.name: value for value in values}
    return not_under(bound(low), bound(high), spans(known), known)


V = plate("v", 100, 300)
LOW = plate("low", 15, 80)
HIGH = plate("high", 20, 140, over="low", by=Interval(5, 60))


@pytest.mark.parametrize(("low", "high", "values"), [
    ("0.1 * v", "0.9 * v", [V]),
    ("v - 10", "v", [V]),
    (0, "v", [V]),
    ("v", 300, [V]),  # equal at one end of the box, under everywhere else
    ("low", "high", [LOW, HIGH]),
    ("low + 4", "high", [LOW, HIGH]),
    ("v * low", "v * high", [V, LOW, HIGH]),
    ("v * v", "v * v + 2000", [V]),
    ("v * v / (v + 1)", "v", [V]),
    ("100 / v", "200 / v", [V]),
    ("0.5 * pick", "pick", [plate("pick", 120, 240, (120.0, 240.0))]),
])
def test_proved(low, high, values):
    assert said(low, high, *values) is None


@pytest.mark.parametrize(("low", "high", "values"), [
    ("0.9 * v", "0.9 * v", [V]),  # never under: the second band could not be entered
    ("v", 250, [V]),
    ("low + 6", "high", [LOW, HIGH]),
    ("low", "high", [LOW, plate("high", 20, 140)]),  # two ranges alone can't show it
    ("v * v", "300 * v - 1", [V]),
    ("pick", 200, [plate("pick", 120, 240, (120.0, 240.0))]),
    (5, 5, []),
])
def test_refuted_at_a_point_where_it_is_not_so(low, high, values):
    doubt = said(low, high, *values)
    assert doubt is not None
    assert doubt.settled
    at = {name: Interval.exact(value) for name, value in doubt.at.items()}
    assert bound(low).span(at).lo >= bound(high).span(at).hi


def test_the_only_choices_there_are_decide_not_the_range_between_them():
    # (pick - 200)^2 is over 1000 at 120 and at 240, but not between them.
    doubt = said(1000, "(pick - 200) * (pick - 200)", plate("pick", 120, 240, (120.0, 240.0)))
    assert doubt is None
    assert said(1000, "(pick - 200) * (pick - 200)", plate("pick", 120, 240)) is not None


def test_a_name_that_can_be_anything_is_not_proved():
    limit = bound("x")
    doubt = not_under(Bound(None, 0.0), limit, {}, {})
    assert doubt is not None
    assert not doubt.settled or doubt.at["x"] <= 0


NUMBERS = st.integers(-9, 9).map(lambda number: f"({number})" if number >= 0 else f"(0 - {-number})")
NAMES = st.sampled_from(["a", "b", "a * b", "b / 4", "a * a"])
TERMS = st.one_of(NUMBERS, NAMES, st.tuples(NUMBERS, NAMES).map(" * ".join))
LIMITS = st.lists(TERMS, min_size=1, max_size=3).map(" + ".join)


@settings(max_examples=40)
@given(LIMITS, LIMITS)
def test_what_is_proved_holds_at_every_point_that_is_tried(low, high):
    a, b = plate("a", -2, 3), plate("b", 1, 8, over="a", by=Interval(0, 5))
    doubt = said(low, high, a, b)
    if doubt is None:
        first, second = parse_limit(low, HERE), parse_limit(high, HERE)
        for x, more in itertools.product([-2, -1.5, -0.1, 0, 0.7, 2, 3], [0, 0.3, 1, 2.5, 5]):
            at = {"a": Interval.exact(x), "b": Interval.exact(x + more)}
            if a.span.holds(x) and b.span.holds(x + more):
                assert evaluate(first, at, "count").lo <= evaluate(second, at, "count").hi + 1e-9
    elif doubt.settled:
        at = {name: Interval.exact(value) for name, value in doubt.at.items()}
        gap = bound(high).span(at) - bound(low).span(at)
        assert gap.lo <= 1e-9


def test_giving_up_is_said_and_not_guessed():
    """Squares a hair apart: true, but no 4,000 halves of the box show it."""
    doubt = said("v * v", "v * v + 0.01", V)
    assert doubt is not None
    assert not doubt.settled
