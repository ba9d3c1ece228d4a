"""Things to do, and waiting for them."""

from assistant.walk.event import Did


def test_enter_says_done(at):
    """The act is on record and changes the house."""
    hand = at("to_stat").enter()
    assert isinstance(hand.driver.visit.events[-1], Did)
    assert hand.driver.ask().step == "make_dead.off"


def test_why_a_procedure_stands_in_front_is_said(at):
    """The reason stands above the first thing to do."""
    from PySide6.QtWidgets import QLabel

    hand = at("to_stat")
    assert any("proved dead" in label.text() for label in hand.page.findChildren(QLabel))


def test_the_waiting_time_runs_and_is_recorded(at):
    """The time left in words; the answer carries the seconds waited."""
    hand = at("to_wait")
    page, begun = hand.page, hand.page.begun
    page.clock = lambda: begun + 20
    page.tick()
    assert page.left_to_wait.text() == "Wait 40 s more"
    page.clock = lambda: begun + 61
    page.tick()
    assert page.left_to_wait.text() == "1 min are over"
    assert not page.timer.isActive()
    hand.enter()
    assert hand.driver.visit.events[-1].waited == 61


def test_a_short_wait_is_taken_and_said(at):
    """Nobody is held up by a clock, but the trail says how long it was."""
    hand = at("to_wait")
    begun = hand.page.begun
    hand.page.clock = lambda: begun + 12
    hand.page.tick()
    assert hand.page.next_button.text() == "&Done, after 12 s"
    hand.enter()
    assert hand.verdict == "48 s more to wait. Once more goes on without, and the trail says so."
    assert type(hand.page).__name__ == "DoPage"
    hand.enter()
    assert "shorter than asked" in hand.driver.visit.path[-1].answer


def test_the_clock_goes_on_under_another_page(at):
    """Looking at something else meanwhile costs no waiting time."""
    from hand import ESCAPE
    from PySide6.QtCore import Qt

    hand = at("to_wait")
    page, begun = hand.page, hand.page.begun
    hand.key(Qt.Key.Key_F1)
    assert page.timer.isActive()
    page.clock = lambda: begun + 50
    hand.key(ESCAPE)
    assert page.waited() == 50
