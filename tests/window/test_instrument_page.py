"""The shop's instruments: chosen once, named in the trail, their accuracy counted."""

import pytest
from hand import Hand
from PySide6.QtCore import Qt

SHOP = """
instruments:
  - {name: clamp meter, covers: [ac_voltage, ac_current], percent: 1, counts: 3}
  - {name: bench meter, covers: [ac_voltage], percent: 0.1}
defaults: {ac_voltage: clamp meter}
"""


@pytest.fixture
def hand(qtbot, window, desk):
    (desk.shelf.parent / "shop.yaml").write_text(SHOP, encoding="utf-8")
    window.show_visit(desk.begin((("no_heat", "no heat"),)))
    hand = Hand(qtbot, window).rest()
    return hand.digit(2).enter().digit(1).enter()


def test_the_default_stands_beside_the_meter(hand):
    """Nobody has to choose it."""
    assert "Meter: AC voltage, low impedance (clamp meter)" in hand.page.essential.text()


def test_another_is_chosen_by_its_digit(hand):
    """From the next reading on, and the reading says so in the trail."""
    hand.key(Qt.Key.Key_I, Qt.KeyboardModifier.ControlModifier).digit(2).enter()
    assert "(bench meter)" in hand.page.essential.text()
    hand.type("118.4").enter()
    assert hand.driver.visit.history[-1].records[0].typed.instrument == "bench meter"


def test_what_is_within_the_meters_accuracy_of_a_limit_is_too_close(hand):
    """108 V is the limit; 1 percent and 3 counts of 107.9 V reach over it, 0.1 percent of 107.7 V does
    not.
    """
    hand.type("107.9").enter()
    assert "too close to call" in hand.verdict


def test_without_a_list_the_page_says_where_it_belongs(at):
    """And leads back."""
    from PySide6.QtWidgets import QLabel

    hand = at("to_volts").key(Qt.Key.Key_I, Qt.KeyboardModifier.ControlModifier)
    assert any("shop.yaml" in label.text() for label in hand.page.findChildren(QLabel))
    assert hand.enter().page.first_focus().hasFocus()
