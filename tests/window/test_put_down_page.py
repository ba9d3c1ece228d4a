"""Readings already taken, put down in any order."""

from PySide6.QtCore import Qt

from assistant.walk.event import PutDown


def test_found_by_a_word_typed_and_passed_over(at):
    """Put down before it is asked; the step it answers is passed over with a note."""
    hand = at().key(Qt.Key.Key_F2).type("manifold").enter().type("3.4").enter()
    event = hand.driver.visit.events[-1]
    assert isinstance(event, PutDown)
    assert (event.kind, event.points, event.typed.ago) == ("pressure", ("port.manifold",), None)
    assert hand.verdict.startswith("Put down: Gas pressure at the manifold")


def test_the_step_it_answers_is_passed_over(at):
    """The next page tells which, and with what value."""
    from PySide6.QtWidgets import QLabel

    hand = at().key(Qt.Key.Key_F2).type("manifold").enter().type("3.4").enter().key(Qt.Key.Key_Escape)
    hand.digit(1).enter().type("3.5").enter()
    assert hand.driver.ask().kind == "watch"
    said = [label.text() for label in hand.page.findChildren(QLabel)]
    assert any(text.startswith("Passed over: Gas pressure at the manifold") for text in said)


def test_about_when_it_was_taken(at):
    """Twenty minutes ago, honestly marked."""
    hand = at().key(Qt.Key.Key_F2).type("plug").press("20 min ago").type("118").enter()
    assert hand.driver.visit.events[-1].typed.ago == 20


def test_the_unit_is_the_readings_own(at):
    """Inches of water for a gas pressure, degrees for air; what was typed keeps standing."""
    hand = at().key(Qt.Key.Key_F2).type("supply air").enter().type("128")
    assert hand.page.entry.unit.text() == "°F"
    assert hand.page.entry.text == "128"


def test_what_is_not_understood_is_kept(at):
    """The text stays and the sentence says what to write."""
    hand = at().key(Qt.Key.Key_F2).type("plug").enter().type("lots").enter()
    assert hand.page.entry.text == "lots" and hand.verdict
    assert not any(isinstance(event, PutDown) for event in hand.driver.visit.events)


def test_a_doubt_is_chosen(at):
    """1,200: two big buttons."""
    hand = at().key(Qt.Key.Key_F2).type("winding").enter().type("1,200").enter()
    hand.digit(1)
    assert hand.driver.visit.events[-1].typed.chosen == "1200"
