"""Something seen: a digit or a tap chooses, Enter saves and goes on."""

from PySide6.QtCore import Qt

from assistant.walk.event import Cannot, Saw


def test_a_digit_chooses_and_enter_goes_on(at):
    """Nothing is saved before Enter, and the choice stands in words."""
    hand = at().digit(2)
    assert hand.verdict == "You see: still"
    assert not any(isinstance(event, Saw) for event in hand.driver.visit.events)
    hand.enter()
    assert hand.driver.visit.events[-1] == Saw("2026-11-25T09:14:00-05:00", "no_heat.fan", "still")
    assert hand.driver.ask().kind == "plate"


def test_a_digit_of_the_number_pad_counts_too(at):
    """The block at the right of a keyboard sends its own modifier."""
    hand = at().key(Qt.Key.Key_1, Qt.KeyboardModifier.KeypadModifier)
    assert hand.verdict == "You see: turning"


def test_enter_without_a_choice_does_nothing(at):
    """Next can't be pressed before something is chosen."""
    hand = at()
    assert not hand.page.next_button.isEnabled()
    hand.enter()
    assert hand.driver.ask().step == "no_heat.fan"


def test_another_choice_replaces_the_first(at):
    """One is chosen at a time; a tap works as a digit does."""
    hand = at().digit(1)
    hand.tap(hand.page.choices.buttons["humming without turning"])
    assert hand.page.choices.chosen == ["humming without turning"]


def test_arrows_and_space_choose(at):
    """For hands that know no digits."""
    hand = at().key(Qt.Key.Key_Down).key(Qt.Key.Key_Space)
    assert hand.page.choices.chosen


def test_cant_tell_has_its_own_way(at):
    """The tree says what follows."""
    hand = at().alt("c").digit(1)
    assert isinstance(hand.driver.visit.events[-1], Cannot)


def test_the_apprentice_can_ask_why(at):
    """Two sentences, shut until asked for."""
    from PySide6.QtWidgets import QLabel

    hand = at()
    text = next(
        label for label in hand.page.findChildren(QLabel) if label.text().startswith("A motor with a dead")
    )
    assert not text.isVisible()
    hand.alt("x")
    assert text.isVisible()
