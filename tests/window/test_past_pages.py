"""The list of visits while it is read, what our calls say, and what was usually found: in the window."""

import sys
from pathlib import Path

import pytest
from hand import ESCAPE, Hand
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLabel
from test_names import check

sys.path.insert(0, str(Path(__file__).resolve().parents[1] / "past"))
from shelved import LIBRARY, put

from assistant.window.page import start


@pytest.fixture(scope="module")
def past(tmp_path_factory):
    root = tmp_path_factory.mktemp("past") / "visits"
    for number in range(6):
        address = {"name": f"Customer {number}", "address": f"{number // 2} Sample St."}
        put(root, f"i{number}", "no_heat/igniter_open", number * 7, person=address)
    put(root, "f", "no_heat/fuse_blown", 1)
    return root


@pytest.fixture
def hand(qtbot, window, desk, past):
    desk.shelf = past
    desk.library = LIBRARY
    window.show_start()
    return Hand(qtbot, window).rest()


def words(hand):
    return "\n".join(label.text() for label in hand.page.findChildren(QLabel) if label.isVisible())


def settled(qtbot, page):
    qtbot.waitUntil(lambda: not page.reading.isActive(), timeout=20000)


def test_a_visit_is_found_by_a_part_and_by_a_finding(qtbot, hand):
    settled(qtbot, hand.page)
    assert hand.page.visits.count() == 7
    hand.tap(hand.page.find).type("part:igniter name:4")
    assert hand.page.visits.count() == 1
    assert "Customer 4" in hand.page.visits.item(0).text()
    hand.key(Qt.Key.Key_A, Qt.KeyboardModifier.ControlModifier).type("fuse")
    assert hand.page.visits.count() == 1


def test_the_list_shows_at_once_and_fills_while_it_is_looked_at(
    qtbot, window, desk, past, monkeypatch, tmp_path
):
    monkeypatch.setenv("FAULT_TRAIL_CACHE", str(tmp_path / "cache"))
    monkeypatch.setattr(start, "AT_ONCE", 0.0)
    desk.shelf = past
    desk.library = LIBRARY
    window.show_start()
    page = window.page
    assert page.visits.count() < 7
    assert page.reading.isActive()
    settled(qtbot, page)
    assert page.visits.count() == 7
    assert page.heading.text() == "Visits"


def test_what_our_calls_say(qtbot, hand, tmp_path):
    settled(qtbot, hand.page)
    hand.press("What our calls say")
    assert type(hand.page).__name__ == "CallsPage"
    said = words(hand)
    assert "From 7 visits of our own" in said
    assert "No heat: Igniter open – 6 in all, 3 held, 3 came back" in said
    check(hand.window)
    hand.digit(2)
    assert "min in all" in words(hand)
    hand.digit(3)
    assert "it led the same way every time" in words(hand)
    hand.page.save_to(tmp_path)
    assert {path.name for path in tmp_path.glob("*.csv")} == {
        "findings.csv", "where-the-time-goes.csv", "never-changed-anything.csv",
    }  # fmt: skip
    hand.page.save_to(tmp_path / "nowhere")
    assert "Choose another folder" in hand.verdict
    hand.key(ESCAPE)
    assert type(hand.page).__name__ == "StartPage"


def test_what_was_usually_found_opens_after_two_readings(qtbot, hand, tmp_path, desk):
    settled(qtbot, hand.page)
    from assistant.trail.live import LiveVisit
    from assistant.walk.event import Read, Saw, Typed
    from assistant.window.session import Driver

    at = "2026-11-25T09:00:00+00:00"
    live = LiveVisit.start(tmp_path / "now", LIBRARY, (("no_heat", "cold"),), at=at)
    live.send(Saw(at, "no_heat.kind", "gas with inducer and hot surface igniter"))
    hand.window.show_visit(Driver(live))
    hand.key(Qt.Key.Key_F3)
    assert not hand.page.usual.isEnabled()
    hand.key(ESCAPE)
    hand.driver.send(Read(at, "no_heat.room", {"room_gas": Typed("0"), "room_co": Typed("0")}))
    hand.window.show_ask()
    hand.rest().key(Qt.Key.Key_F3)
    assert hand.page.usual.isEnabled()
    check(hand.window)
    hand.press("What was usually found")
    said = words(hand)
    assert "6 of 7: Igniter open" in said
    assert "1 of 7: 24 V fuse blown" in said
    assert "The tree leads" in said
    assert "%" not in said
