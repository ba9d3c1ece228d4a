"""Things to do, and waiting for them."""

from dataclasses import replace

from test_names import check

from assistant.resources import trees_folder
from assistant.tree.library import read_folder
from assistant.walk.event import Did
from assistant.window.page.do import DoPage


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


def test_a_caution_of_the_act_stands_on_its_page_and_so_does_how_it_was_found(qtbot, window, desk):
    """The thermostat goes back to HEAT among the steps put in front: the burners may light."""
    from hand import Hand
    from PySide6.QtWidgets import QLabel

    from assistant.walk.event import AsFound
    from assistant.walk.state import Frame, Position
    from assistant.window.caution import CautionSign
    from assistant.window.session import Driver
    from tests.played import at as time_of
    from tests.played import shipped

    desk.library = shipped()
    driver = desk.begin((("no_heat", "cold"),))
    assert isinstance(driver, Driver)
    driver.send(AsFound(time_of(1), {"thermostat": "HEAT 68, schedule on"}))
    live = driver.live
    live.visit = live.visit.at(Position((Frame("restore_line", "thermostat", circuit="line"),)))
    window.show_visit(driver)
    hand = Hand(qtbot, window).rest()
    assert hand.page.ask.act == "stat_on"
    said = [sign.accessibleName() for sign in hand.page.findChildren(CautionSign)]
    assert any(words.startswith("WARNING") and "burners" in words for words in said), said
    assert any("HEAT 68, schedule on" in text.text() for text in hand.page.findChildren(QLabel))


def test_bubbles_lead_to_the_same_question_again_and_then_to_a_stop(qtbot, window, desk):
    """By keys alone: what it showed is asked, nothing is done before it was said."""
    from hand import Hand

    from assistant.walk.state import Frame, Position
    from tests.played import shipped

    desk.library = shipped()
    driver = desk.begin((("no_heat", "cold"),))
    live = driver.live
    live.visit = live.visit.at(Position((Frame("close_up", "bubbles"),)))
    window.show_visit(driver)
    hand = Hand(qtbot, window).rest().enter()
    assert hand.verdict == "Say first what it showed." and hand.step == "close_up.bubbles"
    hand.digit(2).enter()
    assert hand.step == "close_up.bubbles" and hand.driver.visit.events[-1].saw == "bubbles"
    assert hand.page.results.chosen == []
    hand.press("Not good again: stop here")
    assert (hand.driver.ask().kind, hand.driver.ask().page) == ("stop", "joint_leaks")


def test_no_bubbles_is_one_digit_and_enter(qtbot, window, desk):
    """And it stands in the trail."""
    from hand import Hand

    from assistant.walk.state import Frame, Position
    from tests.played import shipped

    desk.library = shipped()
    driver = desk.begin((("no_heat", "cold"),))
    driver.live.visit = driver.visit.at(Position((Frame("close_up", "bubbles"),)))
    window.show_visit(driver)
    hand = Hand(qtbot, window).rest().digit(1).enter()
    assert hand.driver.visit.history[-1].answer == "done, closed and no bubbles"
    assert hand.step == "close_up.door"


def test_what_is_written_down_has_a_line_and_goes_into_the_trail(at):
    """One Enter does both; a draft outlives a look at another page, and an empty line is no note."""
    hand = at("to_stat")
    ask = hand.driver.ask()
    asked = replace(ask, body=replace(ask.body, notes="set points and fan settings"))

    def page():
        made = DoPage(hand.driver, asked)
        made.left.connect(hand.window.show_ask)
        hand.window.show_page(made)
        return hand.rest().page

    page()
    assert hand.page.notes.hasFocus()
    assert hand.page.notes.placeholderText().startswith("set points and fan settings")
    hand.type("den 70, fan AUTO")
    assert page().notes.text() == "den 70, fan AUTO"
    check(hand.window)
    hand.enter()
    note, did = hand.driver.visit.events[-2:]
    assert (note.text, note.step, type(did)) == ("den 70, fan AUTO", ask.step, Did)
    assert hand.step == "make_dead.off"


def test_the_zone_tree_asks_for_its_set_points_on_such_a_line():
    step = read_folder(trees_folder()).trees["zone_spillover"].steps["noted"]
    assert step.ask.startswith("Write down")
    assert "set points" in step.notes
