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


def test_enter_on_a_row_goes_to_the_value_and_never_away(at):
    """Down, Enter: the value's line; Enter with nothing typed says so and the page stays."""
    hand = at().key(Qt.Key.Key_F2).type("blower")
    page = hand.page
    assert page.listed.count() > 1 and page.listed.currentRow() == 0
    hand.key(Qt.Key.Key_Down)
    assert page.listed.currentRow() == 1 and page.listed.hasFocus()
    hand.enter()
    assert hand.page is page and page.entry.line.hasFocus()
    hand.enter()
    assert hand.page is page and hand.verdict.startswith("Nothing typed yet")


def test_the_big_button_leads_back(at):
    """As it says."""
    hand = at().key(Qt.Key.Key_F2).press("Back to it")
    assert hand.page is hand.window.step_page


def test_every_row_says_what_is_read(at):
    """The quantity in words: volts and ohms at one spot are two readings."""
    listed = at().key(Qt.Key.Key_F2).page.listed
    rows = [listed.item(row).text() for row in range(listed.count())]
    assert any(" – AC volts\n" in row for row in rows) and any(" – ohms\n" in row for row in rows)


def test_what_was_put_down_is_said_with_its_unit(at):
    """Value, unit and quantity, and what to do about a slip; it stands until something else is done."""
    hand = at().key(Qt.Key.Key_F2).type("manifold").enter().type("3.4").enter()
    assert ", pressure: 3.4 " in hand.verdict and hand.page.entry.unit.text() != ""
    hand.type("winding").enter().type("12").enter()
    assert ", ohms: 12 ohm, just now" in hand.verdict
    assert hand.verdict.endswith("Wrong? Put it down again, the later one counts.")


def test_the_later_one_counts(at):
    """As that sentence says: the step is passed over with the second value."""
    hand = at().key(Qt.Key.Key_F2).type("manifold").enter().type("9.4").enter()
    hand.type("manifold").enter().type("3.4").enter().key(Qt.Key.Key_Escape)
    hand.digit(1).enter().type("3.5").enter()
    assert hand.driver.ask().kind == "watch"
    assert "3.4" in hand.driver.visit.path[-1].answer


def test_a_search_that_finds_nothing_says_so(at):
    """In words, and Enter stays."""
    hand = at().key(Qt.Key.Key_F2).type("zzz")
    assert hand.verdict.startswith("No reading has these words")
    page = hand.page
    hand.enter()
    assert hand.page is page and hand.verdict.startswith("No reading has these words")
    hand.key(Qt.Key.Key_Backspace).key(Qt.Key.Key_Backspace).key(Qt.Key.Key_Backspace)
    assert hand.verdict == ""


def test_no_row_is_scrolled_sideways(at):
    """What is read stands in one line, where it is read in the next."""
    listed = at().key(Qt.Key.Key_F2).page.listed
    assert not listed.horizontalScrollBar().isVisible()
    assert all(
        listed.visualItemRect(listed.item(row)).width() <= listed.viewport().width()
        for row in range(listed.count())
    )
