"""The scale: limits in order with words, the value's place, no meaning in colour alone."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from PySide6.QtGui import QImage

from assistant.quantity.interval import Interval
from assistant.window import spread
from assistant.window.scale import Drawn, ScaleView


def exact(*values):
    return [Interval.exact(value) for value in values]


def test_bands_and_stops_stand_in_order():
    """From low to high: a stop below, the bands, a stop above; the words are the tree's own."""
    parts = spread.stretches(
        [("low", False), ("right", True), ("high", False)],
        [*exact(10, 20), None],
        over=Interval.exact(2),
        under=Interval.exact(30),
    )
    assert [(p.words, p.kind, p.lo, p.hi) for p in parts] == [
        ("stop", "stop", -math.inf, 2),
        ("low", "band", 2, 10),
        ("right", "normal", 10, 20),
        ("high", "band", 20, 30),
        ("stop", "stop", 30, math.inf),
    ]


def test_a_band_beyond_the_safe_limit_is_not_drawn():
    """What can only be a stop is shown as one."""
    parts = spread.stretches([("low", False), ("high", False)], [*exact(10), None], under=Interval.exact(8))
    assert [(p.words, p.hi) for p in parts] == [("low", 8), ("stop", math.inf)]


@given(
    st.lists(st.floats(-1e3, 1e3), min_size=1, max_size=5, unique=True).map(sorted),
    st.lists(st.floats(-2e3, 2e3), min_size=2, max_size=2).map(sorted),
    st.floats(150, 1500),
)
def test_larger_values_never_stand_further_left(edges, values, room):
    """The scale bends, but it never turns back; everything stays on it."""
    parts = spread.stretches([("x", False)] * (len(edges) + 1), [*exact(*edges), None])
    ends = spread.bounds(parts, None)
    shares = spread.widths([40.0] * len(parts), [high - low for low, high in ends], room)
    assert sum(shares) == pytest.approx(room)
    lefts = [sum(shares[:index]) for index in range(len(shares))]
    low, high = (spread.place(value, ends, lefts, room) for value in values)
    assert -1e-9 <= low <= high + 1e-6 <= room + 1e-3


@given(st.lists(st.floats(-1e3, 1e3), min_size=1, max_size=5, unique=True).map(sorted), st.floats(-2e3, 2e3))
def test_a_value_stands_in_its_own_band(edges, value):
    """Strictly under a limit is left of it; at the limit is right of it or on it."""
    parts = spread.stretches([(str(i), False) for i in range(len(edges) + 1)], [*exact(*edges), None])
    band = next((i for i, edge in enumerate(edges) if value < edge), len(edges))
    ends = spread.bounds(parts, None)
    shares = spread.widths([40.0] * len(parts), [high - low for low, high in ends], 600)
    lefts = [sum(shares[:index]) for index in range(len(shares))]
    at = spread.place(value, ends, lefts, 600)
    assert lefts[band] - 1e-6 <= at <= lefts[band] + shares[band] + 1e-6


def test_the_shown_scale_speaks(at):
    """The same in words for a screen reader."""
    hand = at("to_volts")
    assert hand.page.scale.accessibleName() == (
        "Scale: under 12 V no supply; from 12 V low supply; from 108 V supplied; from 150 V stop"
    )


def test_the_pointer_stands_where_the_value_is(at):
    """Drawn in the band that the verdict names; the band's words are bold and the others soft."""
    hand = at("to_volts").type("104.5").enter()
    scale = hand.page.scale
    assert [scale.drawn.parts[i].words for i in scale.drawn.may] == ["low supply"]
    lefts, ends, room = scale.layout_of()
    at_value = spread.place(104.5, ends, lefts, room)
    assert lefts[1] < at_value < lefts[2]


def test_bands_differ_without_any_colour(window):
    """Turned to grey, a normal band, another and a stop still differ in how much of them is ink."""
    view = ScaleView()
    window.setCentralWidget(view)
    parts = spread.stretches([("low", False), ("right", True)], [*exact(10), None], under=Interval.exact(20))
    view.show_scale(Drawn(tuple(parts), ("", "10 V", "20 V"), (0, 30)))
    image = view.grab().toImage().convertToFormat(QImage.Format.Format_Grayscale8)
    lefts, _, _ = view.layout_of()
    top = int(view._label_height()) + 8

    def ink(left):
        pixels = [
            image.pixelColor(int(left) + 10 + x + 20, top + y).value() for x in range(40) for y in range(8)
        ]
        return sum(pixel < 160 for pixel in pixels) / len(pixels)

    low, right, stop = (ink(left) for left in lefts)
    assert right == 0 and 0.05 < low < stop
