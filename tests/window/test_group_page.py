"""The dead-proof and other groups: all fields straight down one page, saved at once."""

from hand import ENTER, ESCAPE
from PySide6.QtCore import Qt
from scenes import DEAD

from assistant.walk.event import Cannot, Read


def test_enter_goes_down_and_the_last_one_saves(at):
    """Five values and five Enters; the circuits are dead, and the next question is the ohms."""
    hand = at("to_dead_proof")
    for text in DEAD.values():
        hand.type(text).enter()
    assert hand.verdict == "Saved: live, dead"
    assert hand.driver.visit.house.circuits["line"] == "dead"
    assert {n: t.text for n, t in hand.driver.visit.events[-1].readings.items()} == DEAD
    hand.enter()
    assert hand.page.question.text().startswith("Resistance of the motor winding")


def test_every_row_says_its_verdict_in_words(at):
    """Beside the field, as soon as Enter has judged it."""
    hand = at("to_dead_proof").type("121.4").enter().type("0").enter().type("3.2").enter()
    assert [row.verdict.text() for row in hand.page.rows[:3]] == ["live", "dead", "still live"]


def test_the_leads_of_the_row_with_the_focus_are_shown(at):
    """In words above the fields and on the drawing."""
    hand = at("to_dead_proof")
    assert hand.page.picture.points == ("known.line", "ground")
    hand.key(Qt.Key.Key_Down)
    assert hand.page.picture.points == ("box.line", "box.neutral")
    assert "1 to hot in the junction box, 2 to neutral in the junction box" in hand.page.essential.text()
    hand.key(Qt.Key.Key_Up)
    assert hand.page.picture.points == ("known.line", "ground")


def test_a_field_left_out_is_asked_for(at):
    """Filling the last first does not save: the first empty one gets the focus."""
    hand = at("to_dead_proof")
    for _ in range(4):
        hand.key(Qt.Key.Key_Down)
    hand.type("121").enter()
    assert hand.page.rows[0].entry.line.hasFocus()
    assert not any(
        isinstance(event, Read) and event.step.endswith("prove") for event in hand.driver.visit.events
    )


def test_changing_a_judged_field_judges_it_again(at):
    """A verdict never stands beside a text it was not made from."""
    hand = at("to_dead_proof").type("121.4").enter()
    row = hand.page.rows[0]
    row.entry.line.setFocus()
    hand.rest().type("9")
    assert row.typed is None and row.verdict.text().startswith("understood")


def test_an_implausible_field_asks_back_and_keeps_the_rest(at):
    """The question is about this field only; Esc leads back into it."""
    hand = at("to_dead_proof").type("121.4").enter().type("1200").enter()
    assert hand.page.offers.isVisible()
    hand.key(ESCAPE)
    assert hand.page.rows[1].entry.line.hasFocus() and hand.page.rows[1].entry.text == "1200"
    assert hand.page.rows[0].entry.text == "121.4"
    hand.key(ENTER).digit(1)
    assert hand.page.rows[1].typed is not None


def test_what_is_typed_survives_another_page(at):
    """Unsent fields are found again after a page beside the walk and after the page is built anew."""
    hand = at("to_dead_proof").type("121.4").enter().type("0")
    hand.window.show_ask()
    hand.rest()
    assert [row.entry.text for row in hand.page.rows[:2]] == ["121.4", "0"]


def test_a_dead_proof_that_cannot_be_taken_goes_its_own_way(at):
    """Cannot with its reason, and never dead by default."""
    hand = at("to_dead_proof").alt("c").digit(1)
    assert isinstance(hand.driver.visit.events[-1], Cannot)
    assert hand.driver.visit.house.circuits["line"] != "dead"


def test_mending_a_slip_brings_all_texts_back(at):
    """The whole page again, to change one value."""
    hand = at("to_dead_proof")
    for text in DEAD.values():
        hand.type(text).enter()
    hand.alt("m")
    assert [row.entry.text for row in hand.page.rows] == list(DEAD.values())


def test_a_group_with_a_computed_step_tells_it_on_the_next_page(at):
    """Temperatures in, and the rise stands on the next page with its numbers."""
    hand = at("to_watch")
    hand.page.start()
    hand.enter().enter()
    hand.type("130").enter().type("70").enter().enter()
    from PySide6.QtWidgets import QLabel

    said = [label.text() for label in hand.page.findChildren(QLabel)]
    told = next(text for text in said if text.startswith("Worked out"))
    assert "130" in told and "70" in told and "60 °F – in range" in told
