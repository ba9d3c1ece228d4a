"""Values from the rating plate: few as buttons, others on a line, 'not readable' as an answer."""

from PySide6.QtWidgets import QLabel

from assistant.walk.event import PlateRead


def words(hand):
    return "\n".join(label.text() for label in hand.page.findChildren(QLabel) if label.isVisible())


def test_where_it_stands_on_the_plate_is_said(at):
    """With the words of the vocabulary."""
    hand = at("to_plate")
    assert hand.page.question.text() == "From the rating plate: rated supply voltage"
    assert "'V' beside '60 Hz'" in words(hand)


def test_one_of_a_few_is_chosen(at):
    """A digit, Enter."""
    hand = at("to_plate").digit(1).enter()
    assert hand.driver.visit.plate["supply_volts"].value.lo == 120
    assert hand.driver.ask().kind == "measure"


def test_not_readable_is_an_answer(at):
    """The limits then span everything the plate could say."""
    hand = at("to_plate").alt("r")
    assert hand.driver.visit.events[-1].text == "not readable"
    assert hand.driver.ask().kind == "measure"


def test_a_value_is_typed(at):
    """And goes to the step that needs it."""
    hand = at()
    hand.digit(1).enter()
    assert hand.driver.ask().plate == "manifold"
    hand.type("3.5").enter()
    assert isinstance(hand.driver.visit.events[-1], PlateRead)
    assert hand.page.question.text().startswith("Gas pressure at the manifold")


def test_a_value_that_no_plate_can_have_is_refused_and_kept(at):
    """The sentence says so, the text stays."""
    hand = at().digit(1).enter().type("350").enter()
    assert "can't stand on a plate" in hand.verdict
    assert hand.page.entry.text == "350"


def test_the_scale_shows_a_limit_that_is_not_sure(at):
    """An unread plate value spreads the limit: both ends are printed."""
    hand = at("to_plate").alt("r")
    assert any("12 to 24 V" in number for number in hand.page.scale.drawn.numbers)
