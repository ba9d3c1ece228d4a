"""Keys that were meant for another page choose nothing, and looking at the keys loses no page."""

import pytest
from hand import ESCAPE
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

from assistant.window.page import base


@pytest.mark.parametrize("key", [Qt.Key.Key_F1, Qt.Key.Key_F8, Qt.Key.Key_F11])
def test_from_as_found_to_what_is_only_looked_at_and_back(at, key):
    """Keys, hazards and the drawing lie over the page; Esc comes back to it, to the line that was written."""
    hand = at().key(Qt.Key.Key_F6).type("three flashes")
    page = hand.page
    hand.key(key)
    assert hand.page is not page
    hand.key(ESCAPE).type(", red")
    assert hand.page is page and page.lines["code_light"].text() == "three flashes, red"
    hand.key(ESCAPE)
    assert hand.driver.ask().step == "no_heat.fan" and hand.page is hand.window.step_page


def test_from_keys_to_hazards_to_as_found(at):
    """What is only looked at does not pile up."""
    hand = at().key(Qt.Key.Key_F6).key(Qt.Key.Key_F1).key(Qt.Key.Key_F8).key(ESCAPE)
    assert type(hand.page).__name__ == "AsFoundPage"


def test_words_written_to_no_field_choose_nothing(at):
    """Letters, then a space and digits in one go: as a person writes who did not see the page change."""
    hand = at().type("heat, 1 2")
    assert hand.page.choices.chosen == []


def test_a_digit_after_a_pause_chooses(at, monkeypatch):
    """A stray letter does not lock the page."""
    monkeypatch.setattr(base, "WRITING", 0.05)
    hand = at().type("h")
    QTest.qWait(80)
    assert hand.digit(1).page.choices.chosen


def test_a_digit_right_after_the_page_came_up_chooses_nothing(at, monkeypatch):
    """It was meant for the page before; a moment later it counts."""
    monkeypatch.setattr(base, "SETTLE", 0.3)
    hand = at().digit(1)
    assert hand.page.choices.chosen == []
    hand.key(Qt.Key.Key_Space)
    assert hand.page.choices.chosen == []
    QTest.qWait(320)
    assert hand.digit(1).page.choices.chosen
