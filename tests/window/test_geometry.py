"""Field, verdict and Next stay on the screen: at 1024x600, at twice the scale (the same in logical units
on a screen of 2048x1200), and at both together (512x300), where the rest may scroll.
"""

import pytest
from PySide6.QtCore import QRect
from PySide6.QtWidgets import QAbstractButton

from assistant.window import look

SIZES = {"1024x600": (1024, 600), "512x300": (512, 300), "1360x820": (1360, 820)}
WAYS = (
    "",
    "to_plate",
    "to_volts",
    "to_manifold",
    "to_wait",
    "to_dead_proof",
    "to_ohms",
    "to_watch",
    "to_finding",
    "to_conclude",
    "to_repair",
    "to_proved",
)


def inside(window, widget):
    """Whether the whole widget lies in the window and nothing of it is clipped away."""
    place = QRect(widget.mapTo(window, widget.rect().topLeft()), widget.size())
    return window.rect().contains(place) and widget.visibleRegion().boundingRect() == widget.rect()


@pytest.fixture(params=SIZES)
def size(request):
    return SIZES[request.param]


@pytest.mark.parametrize("way", WAYS)
def test_next_and_verdict_are_always_in_sight(at, size, way):
    """On every page, without scrolling."""
    hand = at(way)
    hand.window.resize(*size)
    hand.page.say("too close to call")
    hand.rest()
    assert (hand.window.width(), hand.window.height()) == size
    assert inside(hand.window, hand.page.next_button)
    assert inside(hand.window, hand.page.verdict)
    assert inside(hand.window, hand.window.head.hazard)


@pytest.mark.parametrize("way", ["to_volts", "to_manifold", "to_ohms"])
def test_the_field_is_always_in_sight(at, size, way):
    """Before and after Enter, with the pad and with a question back."""
    hand = at(way)
    hand.window.resize(*size)
    hand.rest()
    line = hand.page.entry.line
    assert inside(hand.window, line)
    hand.page.toggle_pad(line)
    hand.rest()
    assert inside(hand.window, line) and inside(hand.window, hand.page.next_button)
    assert all(inside(hand.window, key) for key in hand.page.pad.keys.values())
    hand.page.toggle_pad(line)
    hand.rest().type("99999").enter()
    assert inside(hand.window, line) and inside(hand.window, hand.page.next_button)
    assert inside(hand.window, hand.page.verdict)


@pytest.mark.parametrize("size", [SIZES["1024x600"], SIZES["512x300"]], ids=["1024x600", "512x300"])
def test_the_field_of_a_group_comes_into_sight_with_the_focus(at, size):
    """Enter by Enter down the page; the focused field is never outside."""
    hand = at("to_dead_proof")
    hand.window.resize(*size)
    hand.rest()
    for row, text in zip(hand.page.rows, ("121", "0", "0", "0", "121"), strict=True):
        hand.type(text[0])
        assert row.entry.line.hasFocus() and inside(hand.window, row.entry.line)
        hand.type(text[1:]).enter()
    assert inside(hand.window, hand.page.verdict)


@pytest.mark.parametrize("way", ["to_volts", "to_manifold", "to_ohms"])
def test_question_leads_and_scale_need_no_scrolling_at_1024x600(at, way):
    """Also with every caution in full."""
    hand = at(way)
    for part in (hand.page.question, hand.page.essential, hand.page.scale, hand.page.limits):
        assert inside(hand.window, part)


def test_the_question_is_at_least_24_points(at):
    """And the reading is written as large."""
    hand = at("to_volts")
    assert hand.page.question.font().pointSizeF() >= 24
    assert hand.page.entry.line.font().pointSizeF() >= 24


def test_digits_are_all_as_wide_as_each_other(qapp):
    """Tabular figures, so that numbers do not dance while they are typed."""
    from PySide6.QtGui import QFontMetricsF

    measure = QFontMetricsF(look.font(look.WRITTEN))
    assert len({measure.horizontalAdvance(digit) for digit in "0123456789"}) == 1


@pytest.mark.parametrize(
    "name", ["put_down", "back", "leave", "hazard", "pause", "as_found", "person", "sign", "more"]
)
def test_pages_beside_the_walk_keep_their_big_button_in_sight(at, size, name):
    """Whatever they list."""
    hand = at("to_dead_proof")
    hand.window.resize(*size)
    hand.window.open(name)
    hand.rest()
    assert inside(hand.window, hand.page.next_button)


@pytest.mark.parametrize("way", WAYS)
def test_what_can_be_pressed_is_44_or_more(at, size, way):
    """The pad's keys share the width of a tiny window and keep their height."""
    hand = at(way)
    hand.window.resize(*size)
    hand.rest()
    for button in hand.window.findChildren(QAbstractButton):
        if button.isVisible():
            assert button.height() >= look.TARGET and button.width() >= look.TARGET, button.text()


def test_a_wide_window_shows_path_and_drawing_beside_the_question(at):
    """And a narrow one folds them: the path into a line, the drawing under the question."""
    hand = at("to_dead_proof")
    window = hand.window
    window.resize(1360, 820)
    hand.rest()
    assert window.margin.isVisible() and not window.head.strip.isVisible()
    assert hand.page.picture.mapTo(window, hand.page.picture.rect().topLeft()).x() > 900
    window.resize(1024, 600)
    hand.rest()
    assert not window.margin.isVisible() and window.head.strip.isVisible()
    assert hand.page.scroll.isAncestorOf(hand.page.picture)


def test_folding_keeps_what_was_typed_and_the_focus_in_reach(at):
    """A tablet that is turned."""
    hand = at("to_volts").type("118.4")
    for size in ((512, 300), (1360, 820), (1024, 600)):
        hand.window.resize(*size)
        hand.rest()
    assert hand.page.entry.text == "118.4"
    hand.page.entry.line.setFocus()
    assert hand.enter().page.saved
