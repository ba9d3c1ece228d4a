"""What was typed and not saved: on disk while the program runs, and there again at the next start."""

import json

import pytest
from hand import ESCAPE, Hand
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QLabel

from assistant.past.erase import erase_customer
from assistant.trail.calls import Call, interrupted
from assistant.trail.draft import drafts_of
from assistant.window.desk import Desk
from assistant.window.frame import Window
from tests.played import shipped

OUT = "yes, or not sure"


@pytest.fixture
def shipped_desk(desk):
    desk.library = shipped()
    return desk


def killed(qtbot, desk):
    """Another program on the same shelf, as it starts after the first was killed: its locks are stale."""
    made = Desk(desk.shelf)
    made.library, made.problems = desk.library, []
    window = Window(made)
    qtbot.addWidget(window)
    window.resize(1024, 600)
    window.show()
    window.begin()
    return Hand(qtbot, window).rest()


def words(hand):
    return "\n".join(text.text() for text in hand.page.findChildren(QLabel) if not text.isHidden())


def on_disk(root):
    """Every text in the drafts under a folder, read from the disk alone."""
    return {text for path in root.rglob("draft.json") for text in json.loads(path.read_bytes()).values()}


def test_a_call_is_on_disk_after_every_answer_and_offered_at_the_next_start(qtbot, window, shipped_desk):
    """Killed in the middle: nothing of it is lost, and the danger in it is said again at once."""
    window.begin()
    hand = Hand(qtbot, window).rest().press("New visit").press("On the telephone")
    hand.digit(2)
    assert OUT in on_disk(shipped_desk.calls)
    hand.page.parts[1].fields["name"].setFocus()
    hand.type("Mx Example")
    QTest.qWait(300)
    assert "Mx Example" in on_disk(shipped_desk.calls)
    call = window.beginning.call
    call._lock.release()  # as a program that is gone has let go of it
    again = killed(qtbot, shipped_desk)
    again.press("Go on with the interrupted call: Mx Example")
    assert again.page.answers() == {"smell": OUT} and again.page.person() == {"name": "Mx Example"}
    assert "GAS. Everybody out." in words(again)
    again.press("Write it down")
    assert again.driver.visit.sheets["triage"] == {"smell": OUT}
    assert list(shipped_desk.calls.iterdir()) == []
    again.window.close()


def test_a_call_that_another_window_is_writing_is_not_offered(qtbot, window, shipped_desk):
    """Two people answer two telephones on one shelf."""
    window.begin()
    hand = Hand(qtbot, window).rest().press("New visit").press("On the telephone").digit(1)
    assert on_disk(shipped_desk.calls) == {"no"}
    assert interrupted(shipped_desk.calls) == []
    hand.key(ESCAPE).key(ESCAPE)
    assert len(interrupted(shipped_desk.calls)) == 1


def test_a_call_is_thrown_away_by_two_deliberate_keys(qtbot, window, shipped_desk):
    """The first answer offered is to keep it."""
    call = Call(shipped_desk.calls, "2026-11-25T22:10:00-05:00")
    call.texts["name"] = "Mx Example"
    assert call.keep() == ""
    call.let_go()
    window.begin()
    hand = Hand(qtbot, window).rest().press("Go on with the interrupted call: Mx Example")
    hand.alt("a").enter()
    assert hand.page.person() == {"name": "Mx Example"}
    hand.alt("a").press("Throw it away for good")
    assert list(shipped_desk.calls.iterdir()) == []
    assert "thrown away" in hand.verdict


def test_a_disk_that_takes_no_call_is_said_and_the_call_goes_on(qtbot, window, shipped_desk):
    """A file stands where the folder should be."""
    shipped_desk.calls.parent.mkdir(parents=True, exist_ok=True)
    shipped_desk.calls.write_text("in the way", encoding="ascii")
    window.begin()
    hand = Hand(qtbot, window).rest().press("New visit").press("On the telephone").digit(1)
    assert hand.page.answers() == {"smell": "no"} and hand.verdict


SHEETS = {
    "before": ("sheet.before", "says_yes", "the owner"),
    "advise": ("advise", "what", "larger return"),
    "as_found": ("as_found", "thermostat", "heat 68"),
    "tonight": ("sheet.tonight", "done", "left off"),
    "who": ("person", "name", "Mx Example"),
    "baseline": ("baseline", "supply_volts", "121"),
}


@pytest.mark.parametrize("page", SHEETS)
def test_a_sheet_that_is_left_with_ctrl_w_is_there_again(qtbot, window, shipped_desk, page):
    """And its page says that it was typed before; the list opens it with a word about it."""
    key, name, text = SHEETS[page]
    window.show_visit(shipped_desk.begin((("no_heat", "cold"),)))
    hand = Hand(qtbot, window).rest()
    folder = hand.driver.folder
    window.open(page)
    hand.rest()
    lines = hand.page.lines
    (lines if isinstance(lines, dict) else lines.fields)[name].setFocus()
    hand.type(text).key(Qt.Key.Key_W, Qt.KeyboardModifier.ControlModifier)
    assert type(hand.page).__name__ == "StartPage"
    assert drafts_of(folder) == {(key, name): text}
    window.take_up(folder)
    hand.rest()
    assert "Typed before and not saved yet" in words(hand)
    window.open(page)
    hand.rest()
    lines = hand.page.lines
    assert (lines if isinstance(lines, dict) else lines.fields)[name].text() == text
    assert "typed before and not saved" in words(hand)


def test_a_sheet_is_on_disk_before_the_window_is_closed_and_gone_once_it_is_saved(
    qtbot, window, shipped_desk
):
    """A quarter of a second after the last key."""
    window.show_visit(shipped_desk.begin((("no_heat", "cold"),)))
    hand = Hand(qtbot, window).rest()
    window.open("advise")
    hand.rest().type("larger return")
    QTest.qWait(300)
    assert on_disk(hand.driver.folder) == {"larger return"}
    hand.page.lines.fields["why"].setFocus()
    hand.type("too loud").alt("v")
    assert hand.driver.visit.advice[0].what == "larger return"
    hand.driver.drafts.keep()
    assert on_disk(hand.driver.folder) == set()


def test_a_reading_that_was_typed_and_not_saved_does_not_come_back_another_day(at):
    """It would stand there as if it had been taken then."""
    hand = at("to_volts").type("118.4")
    folder = hand.driver.folder
    hand.key(Qt.Key.Key_W, Qt.KeyboardModifier.ControlModifier)
    assert drafts_of(folder) == {}
    hand.window.take_up(folder)
    assert hand.rest().page.entry.text == ""


def test_erasing_a_customer_takes_what_was_typed_and_never_saved(qtbot, window, shipped_desk):
    """A name in a draft is a name."""
    window.show_visit(shipped_desk.begin((("no_heat", "cold"),)))
    hand = Hand(qtbot, window).rest()
    folder = hand.driver.folder
    window.open("who")
    hand.rest().type("Mx Example").key(Qt.Key.Key_W, Qt.KeyboardModifier.ControlModifier)
    assert on_disk(folder) == {"Mx Example"}
    gone = erase_customer(folder, "2026-11-26T01:00:00-05:00", "A. Foreman")
    assert [each.what for each in gone.gone] == ["draft"] and on_disk(folder) == set()


def test_signing_says_what_was_typed_and_not_saved(qtbot, window, shipped_desk):
    """Afterwards it would be too late."""
    window.show_visit(shipped_desk.begin((("no_heat", "cold"),)))
    hand = Hand(qtbot, window).rest()
    window.open("advise")
    hand.rest().type("larger return").key(ESCAPE)
    window.open("sign")
    hand.rest()
    assert "Typed and not saved: Recommend." in words(hand)


def test_a_name_at_the_signature_is_not_kept_for_whoever_signs_another_day(qtbot, window, shipped_desk):
    """Somebody else takes the visit up: that name is offered."""
    window.show_visit(shipped_desk.begin((("no_heat", "cold"),)))
    hand = Hand(qtbot, window).rest()
    folder = hand.driver.folder
    window.open("sign")
    hand.rest().type("A. First").key(Qt.Key.Key_W, Qt.KeyboardModifier.ControlModifier)
    assert drafts_of(folder) == {}
