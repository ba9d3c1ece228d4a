"""The list of visits, a new visit, and the notice at the very first start."""

import subprocess
import sys

import pytest
from hand import ESCAPE, Hand
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLabel

from assistant.report.notice import NOTICE
from assistant.walk.event import Note

HOLD = """
import sys
from pathlib import Path
from assistant.trail.lock import take
held = take(Path(sys.argv[1]))
print("held", flush=True)
sys.stdin.readline()
"""
"""Another program that has a visit open until it is told to end."""


@pytest.fixture
def hand(qtbot, window):
    return Hand(qtbot, window)


def words(hand):
    return "\n".join(label.text() for label in hand.page.findChildren(QLabel) if label.isVisible())


def test_the_first_start_says_for_whom_this_is(hand, desk, monkeypatch):
    """Two sentences, read once; the next start goes to the list at once."""
    (desk.shelf.parent / "notice-was-read").unlink()
    hand.window.begin()
    hand.rest()
    assert all(sentence in words(hand) for sentence in NOTICE)
    hand.enter()
    assert type(hand.page).__name__ == "StartPage"
    hand.window.begin()
    assert type(hand.page).__name__ == "StartPage"


def test_a_new_visit_asks_only_what_the_customer_says(hand, desk):
    """Complaints in their order, words of the customer's own, and the first question follows."""
    hand.window.begin()
    hand.rest().press("New visit")
    hand.digit(2).digit(1)
    assert hand.verdict == "Air where it should not be, then no heat"
    hand.tap(hand.page.own_words).type("It blows all night").enter()
    said = [(c.name, c.words) for c in hand.driver.visit.complaints]
    assert said == [("zone_spillover", "It blows all night"), ("no_heat", "The furnace does not heat.")]
    assert type(hand.page).__name__ == "AsFoundPage"


def test_a_new_visit_can_be_left(hand, desk):
    """Esc before anything is chosen: no visit is made."""
    hand.window.begin()
    hand.rest().press("New visit").key(ESCAPE)
    assert type(hand.page).__name__ == "StartPage" and desk.visits() == []


def test_a_visit_goes_on_where_it_stopped(hand, scene):
    """Closed in the middle, found in the list, opened with Enter: the same question."""
    scene().to_volts().driver.close()
    hand.window.begin()
    hand.rest().enter()
    assert hand.driver.ask().step == "no_heat.volts"
    assert hand.driver.visit.house.circuits["line"] == "unknown"


def test_visits_are_found_by_their_words(hand, scene):
    """A word of the complaint is enough; one that no visit has shows none."""
    scene("no_heat", name="one").driver.close()
    scene("zone_spillover", name="two").driver.close()
    hand.window.begin()
    hand.rest()
    assert hand.page.visits.count() == 2
    hand.tap(hand.page.find).type("den blows")
    assert hand.page.visits.count() == 1 and "The den blows" in hand.page.visits.item(0).text()
    hand.type(" xyz")
    assert hand.page.visits.count() == 0 and hand.verdict == "No visit has these words."


def test_a_visit_open_elsewhere_says_so(hand, scene):
    """One window at a time, in a sentence, and the list stays."""
    elsewhere = scene().to_volts().driver
    hand.window.begin()
    hand.rest().enter()
    assert hand.verdict.startswith("This visit is open")
    assert type(hand.page).__name__ == "StartPage" and hand.window.driver is None
    elsewhere.close()


def test_a_visit_left_open_on_a_dead_computer_can_be_taken_over(hand, scene):
    """A person says that nobody has it open; nothing of it is lost."""
    visit = scene().to_volts().driver
    visit.close()
    with subprocess.Popen(
        [sys.executable, "-c", HOLD, str(visit.folder)], stdin=-1, stdout=-1, text=True
    ) as other:
        assert other.stdout.readline() == "held\n"
        hand.window.begin()
        hand.rest().enter()
        assert "open in another window" in words(hand)
        hand.digit(1)
        assert type(hand.page).__name__ == "StartPage" and hand.window.driver is None
        hand.enter().digit(2)
        assert hand.driver.ask().step == "no_heat.volts" and not hand.driver.read_only
        other.communicate("\n", timeout=20)


def test_trees_with_an_error_begin_no_visit(hand, desk):
    """The first error is said with its place; visits that are open go on."""
    from assistant.house.place import Problem

    desk.problems = [Problem("complaint/no_heat.yaml", 12, 5, "bands", "the bands are not in order")]
    hand.window.begin()
    hand.rest().press("New visit")
    assert "complaint/no_heat.yaml:12:5" in hand.verdict
    assert type(hand.page).__name__ == "StartPage"


def test_a_mistake_in_the_shops_file_is_said(hand, desk):
    """And no accuracy is guessed."""
    (desk.shelf.parent / "shop.yaml").write_text(
        "instruments:\n  - {covers: [ac_voltage]}\n", encoding="utf-8"
    )
    hand.window.begin()
    hand.rest()
    assert "instrument 1: it has no name." in words(hand)


def test_an_altered_visit_opens_to_read_only(hand, scene):
    """Why, what was done, and no way to go on."""
    visit = scene().to_volts()
    visit.driver.close()
    path = next(visit.driver.folder.glob("*.jsonl"))
    path.write_bytes(path.read_bytes().replace(b'"still"', b'"turns"'))
    hand.window.begin()
    hand.rest()
    assert hand.page.visits.item(0).text().endswith("(can't be followed)")
    hand.enter()
    assert type(hand.page).__name__ == "ReadOnlyPage"


def test_what_is_listed_says_how_it_stands(hand, scene):
    """Paused with its reason."""
    from scenes import AT

    from assistant.walk.event import Paused

    scene().send(Paused(AT, "Waiting for a part")).driver.close()
    hand.window.begin()
    hand.rest()
    assert "(paused: Waiting for a part)" in hand.page.visits.item(0).text()


def test_closing_a_visit_leads_back_to_the_list(at):
    """From the page of everything else; the visit stays open there."""
    hand = at("to_volts").key(Qt.Key.Key_F12).press("Close this visit")
    assert type(hand.page).__name__ == "StartPage" and hand.window.driver is None
    assert hand.page.visits.count() == 1


def test_a_complaint_without_a_tree_is_marked(hand, desk):
    """Notes only, before it is chosen; the others are not marked."""
    from PySide6.QtWidgets import QAbstractButton

    hand.window.begin()
    hand.rest().press("New visit")
    for name, known in desk.library.vocabulary.complaints.items():
        button: QAbstractButton = hand.page.choices.buttons[name]
        assert button.text() == known.title + ("" if known.tree else " (notes only)")
    assert any(not known.tree for known in desk.library.vocabulary.complaints.values())


def test_a_visit_written_on_two_computers_is_read_and_joined(hand, scene, desk):
    """Both sides are shown; nothing can be added before somebody has put a name to it."""
    import shutil

    scene().driver.close()
    here = desk.shelf / "visit"
    there = shutil.copytree(here, desk.shelf.parent / "there")
    for folder, note in ((here, "two lines here"), (here, "and one more"), (there, "written in the van")):
        driver = desk.take_up(folder)
        driver.send(Note("2026-11-25T10:00:00-05:00", note))
        driver.close()
    for file in there.glob("trail-002*"):
        shutil.copy(file, here)
    hand.window.begin()
    hand.rest().enter()
    assert type(hand.page).__name__ == "ReadOnlyPage"
    assert "written on two computers" in words(hand)
    assert "written in the van" in words(hand)
    hand.press("I have read both")
    assert "Type your name" in hand.verdict
    hand.type("A. Technician").enter()
    assert hand.driver.read_only is None
    assert any("A. Technician has read them" in note.text for note in hand.driver.visit.notes)


def test_no_button_says_the_same_as_the_big_one(hand, scene):
    """Without a visit, or where no visit has the words, one button begins a new one; with one, two do two
    things.
    """
    hand.window.begin()
    hand.rest()
    assert [b.text() for b in hand.buttons() if "ew" in b.text() and "isit" in b.text()] == ["&New visit"]
    assert hand.page.next_button.hasFocus()
    scene("no_heat", name="one").driver.close()
    hand.window.show_start()
    hand.rest()
    assert hand.page.new.isVisible()
    assert hand.page.next_button.text() == "&Open it"
    hand.tap(hand.page.find).type("xyz")
    assert not hand.page.new.isVisible()
    assert hand.page.next_button.text() == "&New visit"


def test_as_found_waits_under_the_list_of_what_else_can_be_done(hand):
    """F12 and Esc lead back to it: it is asked once, before anything is touched."""
    hand.window.begin()
    hand.rest().press("New visit")
    hand.digit(1).enter()
    page = hand.page
    assert type(page).__name__ == "AsFoundPage"
    hand.type("three flashes")
    hand.key(Qt.Key.Key_F12)
    assert type(hand.page).__name__ == "MorePage"
    hand.key(ESCAPE)
    assert hand.page is page
    assert page.lines["code_light"].text() == "three flashes"
