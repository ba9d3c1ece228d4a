"""Between walks: the next complaint, one without a tree, one handed over."""

from PySide6.QtWidgets import QLabel

from assistant.walk.event import Settled, TakeUp


def words(hand):
    return "\n".join(label.text() for label in hand.page.findChildren(QLabel) if label.isVisible())


def test_the_second_complaint_is_taken_up(at):
    """A digit, Enter; it has no tree, so words settle it."""
    hand = at("to_proved", "no_heat", "zone_spillover").digit(1).enter()
    assert isinstance(hand.driver.visit.events[-1], TakeUp)
    assert "The den blows when it should not." in words(hand)
    hand.type("Damper 2 stuck open, freed it.").alt("n")
    event = hand.driver.visit.events[-1]
    assert isinstance(event, Settled) and event.note == "Damper 2 stuck open, freed it."
    assert hand.driver.ask().kind == "leave"


def test_it_can_be_handed_over_as_it_is(at):
    """The last choice opens the open points."""
    hand = at("to_proved", "no_heat", "zone_spillover").digit(2).enter()
    assert type(hand.page).__name__ == "LeavePage"


def test_a_note_half_written_is_kept(at):
    """F3 and back: the words are still there."""
    from hand import ESCAPE
    from PySide6.QtCore import Qt

    hand = at("", "zone_spillover").type("Damper").key(Qt.Key.Key_F1).key(ESCAPE)
    assert hand.page.note.toPlainText() == "Damper"


def test_handing_over_to_another_complaint_is_said(at):
    """And it is no finding."""
    hand = at("to_volts").type("3").enter().enter()
    assert hand.driver.ask().kind == "handed_over"
    assert hand.page.question.text() == "Goes on as: Air where it should not be"
    hand.enter()
    assert hand.driver.visit.complaint == "zone_spillover"
