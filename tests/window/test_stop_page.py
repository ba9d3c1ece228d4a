"""Three lines that can be read from two metres, nothing to type, one key to go on."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QFontMetricsF
from PySide6.QtWidgets import QLabel, QLineEdit, QPlainTextEdit

from assistant.walk.event import GoOn, Hazard


def test_a_hazard_is_two_keys_from_any_page(at):
    """F8 and a digit; the stop page stands and the trail has it."""
    hand = at("to_dead_proof").key(Qt.Key.Key_F8).digit(1)
    assert hand.driver.visit.events[-1] == Hazard("2026-11-25T09:14:00-05:00", "gas_smell")
    assert [line.text() for line in hand.page.lines] == [
        "Everybody out now. Touch no switch.",
        "Leave the door open behind you.",
        "Call the gas supplier from the street.",
    ]


def test_the_hazard_button_is_on_every_page(at):
    """Also over a page beside the walk."""
    hand = at("to_volts").key(Qt.Key.Key_F2)
    assert hand.window.head.hazard.isVisible()
    hand.tap(hand.window.head.hazard).tap(hand.page.choices.buttons["carbon_monoxide"])
    assert hand.driver.ask().kind == "stop"


def test_nothing_can_be_typed_on_it(at):
    """No field, and no confirmation before it."""
    hand = at("to_volts").key(Qt.Key.Key_F8).digit(1)
    assert not hand.page.findChildren(QLineEdit) and not hand.page.findChildren(QPlainTextEdit)


def test_the_lines_are_large_and_whole_on_the_small_screen(at):
    """Capitals of a three-hundredth of two metres at 96 dots an inch (ISO 3864-1, distance factor, from
    memory), and none of the three lines cut off at 1024 by 600.
    """
    hand = at("to_volts").key(Qt.Key.Key_F8).digit(1)
    for line in hand.page.lines:
        assert QFontMetricsF(line.font()).capHeight() >= 2000 / 300 / 25.4 * 96
    last = hand.page.lines[-1]
    bottom = last.mapTo(hand.page.scroll.viewport(), last.rect().bottomLeft()).y()
    assert bottom <= hand.page.scroll.viewport().height()


def test_people_who_leave_take_the_machine_along(at):
    """Only where everybody leaves; a hot panel needs other words, and what comes on top of gas does not undo
    it.
    """
    hand = at("to_volts").key(Qt.Key.Key_F8).digit(5)
    assert hand.verdict == "The work stops here."
    hand.key(Qt.Key.Key_F8).digit(1)
    assert "Take this machine out with you" in hand.verdict
    hand.key(Qt.Key.Key_F8).digit(5)
    assert hand.button("It was cleared").isVisible()


def test_enter_goes_on_once_it_is_done(at):
    """A stop pauses the walk, not the visit."""
    hand = at("to_volts").key(Qt.Key.Key_F8).digit(5).enter()
    assert isinstance(hand.driver.visit.events[-1], GoOn)
    assert hand.driver.ask().kind == "choose"


def test_one_key_does_not_clear_a_house_that_everybody_left(at):
    """Enter closes the visit, which stays stopped; it is taken up on somebody's word, and the room is asked
    again.
    """
    hand = at("to_volts").key(Qt.Key.Key_F8).digit(1)
    folder = hand.driver.folder
    hand.enter()
    assert type(hand.page).__name__ == "StartPage"
    hand.window.take_up(folder)
    hand.rest().enter()
    assert type(hand.page).__name__ == "StartPage"
    hand.window.take_up(folder)
    hand.rest().alt("e")
    assert hand.page.title.startswith("Who says")
    hand.digit(1).enter()
    assert "name or number" in hand.verdict and hand.driver.ask().kind == "stop"
    hand.page.line.setFocus()
    hand.type("K. Example, 555-0100, 22:40").enter()
    event = hand.driver.visit.events[-1]
    assert isinstance(event, GoOn) and event.cleared == "the gas supplier: K. Example, 555-0100, 22:40"
    hand.key(Qt.Key.Key_Escape)
    assert hand.driver.ask().kind == "choose" and "no_heat" in hand.page.choices.buttons
    assert any("Cleared by the gas supplier" in text.text() for text in hand.page.findChildren(QLabel))


def test_before_there_is_a_visit_the_page_still_tells_what_to_do(qtbot, window):
    """From the list of visits: the same lines, and back."""
    from hand import Hand

    window.begin()
    hand = Hand(qtbot, window).rest()
    hand.key(Qt.Key.Key_F8).digit(1)
    assert hand.page.lines[0].text().startswith("Everybody out")
    hand.enter()
    assert type(hand.page).__name__ == "StartPage"


def test_an_unsafe_reading_says_stop_at_once(at):
    """Saved with the first Enter: STOP and its title across the foot, and what the button brings. Nothing
    friendly stands there; the second Enter shows the lines.
    """
    hand = at("to_volts").type("190").enter()
    page = hand.page
    assert page.saved and hand.driver.ask().kind == "stop"
    title = hand.driver.vocabulary.stops[hand.driver.ask().page].title
    assert hand.verdict == f"STOP: {title}" and "supplied" not in hand.verdict
    assert page.next_button.text().replace("&", "") == "What to do now"
    foot = page.verdict.parentWidget()
    assert page.verdict.width() >= foot.width() - 48
    assert page.verdict.height() >= 44
    shot = page.verdict.grab().toImage()
    assert shot.pixelColor(2, 2).lightness() < 60
    hand.enter()
    assert type(hand.page).__name__ == "StopPage"


def test_an_unsafe_reading_among_several_says_stop(at):
    """Where one reading of a page is unsafe the foot says STOP, never that all was saved."""
    from assistant.window.page.group import GroupPage

    hand = at("to_dead_proof")
    page = hand.page
    assert isinstance(page, GroupPage)
    for text in ("121", "0", "118", "0", "121"):
        hand.type(text).enter()
    assert hand.driver.ask().kind == "stop"
    assert hand.verdict.startswith("STOP: ") and page.next_button.text() == "What to do &now"
