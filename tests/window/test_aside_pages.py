"""Pages beside the walk: opened by a key from any step, left by Esc, and the step waits unharmed."""

import pytest
from hand import ESCAPE
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLabel

from assistant.walk.event import AsFound, Back, Note, Paused, Resumed
from assistant.window import files
from assistant.window.keys import ACTIONS


def words(hand):
    return "\n".join(label.text() for label in hand.page.findChildren(QLabel) if label.isVisible())


def press(hand, key):
    """F2, or Ctrl+I."""
    letter = getattr(Qt.Key, f"Key_{key.rsplit('+', 1)[-1]}")
    hand.key(letter, Qt.KeyboardModifier.ControlModifier if "+" in key else Qt.KeyboardModifier.NoModifier)


@pytest.mark.parametrize("action", ACTIONS, ids=lambda action: action.name)
def test_every_key_opens_its_page_and_escape_leads_back(at, action):
    """The same step page, with the same text in it."""
    hand = at("to_volts").type("11")
    step = hand.page
    press(hand, action.key)
    assert hand.page is not step
    hand.key(ESCAPE)
    assert hand.page is step and step.entry.text == "11"


def test_a_verdict_that_stands_is_still_there_after_looking_elsewhere(at):
    """Saved, a note made meanwhile, and back: Enter has still to be pressed."""
    hand = at("to_volts").type("118.4").enter()
    page = hand.page
    hand.key(Qt.Key.Key_F5).type("warm").alt("v")
    assert hand.page is page and hand.verdict == "118.4 V – supplied"
    assert hand.enter().driver.ask().step == "make_dead.stat"


def test_every_key_is_on_the_help_page(at):
    """F1 lists all of them."""
    said = words(at("to_volts").key(Qt.Key.Key_F1))
    for action in ACTIONS:
        assert action.key in said and action.words in said


def test_back_to_any_step_with_its_reason(at):
    """The list holds the path; the reason goes into the trail; the house does not move."""
    hand = at("to_dead_proof").key(Qt.Key.Key_F4)
    assert "1. What does the blower do" in hand.page.steps.item(3).text()
    for _ in range(2):
        hand.key(Qt.Key.Key_Down)
    hand.digit(2).enter()
    event = hand.driver.visit.events[-1]
    assert isinstance(event, Back) and (event.step, event.why) == ("no_heat.volts", "changed")
    assert hand.driver.visit.house.circuits["line"] == "off"
    assert hand.page.question.text() == "Covers on, tag off, then switch the furnace on"


def test_a_margin_note_leads_back_to_its_step(at):
    """Pressed in the wide window, the list opens with that step chosen."""
    hand = at("to_dead_proof")
    hand.window.resize(1360, 820)
    hand.rest()
    hand.window.margin.notes.itemClicked.emit(hand.window.margin.notes.item(1))
    hand.rest()
    assert "2. Voltage at the blower" in hand.page.steps.currentItem().text()


def test_a_note_is_kept_at_its_step(at):
    """Words; Alt+V saves; left unsaved it waits."""
    hand = at("to_volts").key(Qt.Key.Key_F5).type("Burnt smell 1 m from the board")
    hand.key(ESCAPE).key(Qt.Key.Key_F5)
    assert hand.page.note.toPlainText() == "Burnt smell 1 m from the board"
    hand.alt("v")
    event = hand.driver.visit.events[-1]
    assert isinstance(event, Note) and (event.text, event.step) == (
        "Burnt smell 1 m from the board",
        "no_heat.volts",
    )


def picture(folder, name="board.png"):
    from PySide6.QtGui import QImage

    path = folder / name
    image = QImage(20, 20, QImage.Format.Format_RGB32)
    image.fill(0)
    image.save(str(path))
    return path


def test_a_picture_is_kept_with_the_visit(at, tmp_path, monkeypatch):
    """By its hash; the file lies in kept/."""
    path = picture(tmp_path)
    monkeypatch.setattr(files, "pick_pictures", lambda _: [path])
    hand = at("to_volts").key(Qt.Key.Key_F5).alt("p")
    assert "Kept: board.png" in words(hand)
    hand.alt("v")
    event = hand.driver.visit.events[-1]
    kept = (hand.driver.folder / "kept" / event.photo).read_bytes()
    assert kept.startswith(b"\xff\xd8\xff") and b"Exif" not in kept


def test_a_picture_that_can_not_be_read_says_so(at, tmp_path, monkeypatch):
    """A sentence, and the others are kept all the same."""
    good, gone, empty = picture(tmp_path), tmp_path / "gone.png", tmp_path / "empty.png"
    empty.touch()
    monkeypatch.setattr(files, "pick_pictures", lambda _: [gone, empty, good])
    hand = at("to_volts").key(Qt.Key.Key_F5).alt("p")
    assert "Kept: board.png" in words(hand)
    monkeypatch.setattr(files, "pick_pictures", lambda _: [gone])
    hand.alt("p")
    assert "gone.png can't be read" in hand.verdict or "Alt+V saves" in hand.verdict


def test_as_found_is_four_lines_and_enter(at):
    """Any of them may stay empty."""
    hand = (
        at()
        .key(Qt.Key.Key_F6)
        .type("three flashes, red")
        .enter()
        .enter()
        .type("heat, 70, 61")
        .enter()
        .enter()
    )
    event = hand.driver.visit.events[-1]
    assert isinstance(event, AsFound)
    assert event.seen == {"code_light": "three flashes, red", "thermostat": "heat, 70, 61"}
    assert hand.driver.ask().step == "no_heat.fan"


def test_as_found_can_be_skipped(at):
    """Nothing typed, nothing recorded."""
    hand = at().key(Qt.Key.Key_F6).alt("k")
    assert hand.driver.visit.as_found is None and hand.page.question.text().startswith("What does the blower")


def test_pause_and_go_on(at):
    """A reason as a digit; on going on every circuit is unknown, and the page says so."""
    hand = at("to_dead_proof").key(Qt.Key.Key_F9).digit(1).enter()
    assert hand.driver.visit.events[-1] == Paused("2026-11-25T09:14:00-05:00", "Waiting for a part")
    assert "every circuit counts as not known" in words(hand)
    hand.enter()
    assert isinstance(hand.driver.visit.events[-1], Resumed)
    assert set(hand.driver.visit.house.circuits.values()) == {"unknown"}


def test_what_is_open_stands_on_the_pause_page(at):
    """Power that is off is on the list."""
    assert "switched off, not proved dead" in words(at("to_dead_proof").key(Qt.Key.Key_F9))


def test_still_unproved_lists_what_can_be_reached(at):
    """And no percentage anywhere."""
    said = words(at().key(Qt.Key.Key_F3))
    assert "Blower motor winding open" in said and "Nothing wrong today" in said
    assert "%" not in said


def test_the_list_to_take_along_can_be_saved(at, tmp_path, monkeypatch):
    """A page with what to read and where, as a PDF."""
    path = tmp_path / "list.pdf"
    monkeypatch.setattr(files, "pick_file", lambda *_: path)
    hand = at("to_volts").key(Qt.Key.Key_F7)
    assert "Resistance of the motor winding" in words(hand)
    hand.press("Save as PDF")
    assert hand.verdict == "Saved: list.pdf"
    assert path.read_bytes().startswith(b"%PDF")


def test_without_a_printer_it_says_so_and_what_to_do_instead(at, monkeypatch):
    """No dialog of a system that has nothing to print on."""
    from PySide6.QtPrintSupport import QPrinterInfo

    monkeypatch.setattr(QPrinterInfo, "availablePrinterNames", staticmethod(list))
    hand = at("to_volts").key(Qt.Key.Key_F7)
    hand.press("Print")
    assert hand.verdict == "No printer is set up on this computer. Save it as a PDF instead."


def test_a_place_that_can_not_be_written_is_said(at, tmp_path, monkeypatch):
    """No traceback, no file, a sentence."""
    monkeypatch.setattr(files, "pick_file", lambda *_: tmp_path / "no" / "such" / "list.pdf")
    hand = at("to_volts").key(Qt.Key.Key_F7)
    hand.press("Save as PDF")
    assert "can't be written" in hand.verdict


def test_going_back_shows_six_steps_and_its_button_works_at_once(at):
    """At 1024 by 600: six rows whole, none scrolled sideways; To look again is chosen already."""
    hand = at("to_ohms").key(Qt.Key.Key_F4)
    steps = hand.page.steps
    assert (hand.window.width(), hand.window.height()) == (1024, 600)
    row = steps.visualItemRect(steps.item(0))
    assert steps.visibleRegion().boundingRect().height() >= 6 * row.height() >= 6 * 44
    assert row.width() <= steps.viewport().width() and not steps.horizontalScrollBar().isVisible()
    assert steps.item(0).toolTip() == steps.item(0).text()
    hand.press("Go back there")
    assert hand.driver.visit.events[-1].why == "look"


def test_the_arrows_move_on_the_page_of_everything_else(at):
    """Down its rows and across its columns; Enter opens."""
    hand = at("to_volts").key(Qt.Key.Key_F12)
    buttons = hand.page.buttons
    assert buttons[0].hasFocus()
    hand.key(Qt.Key.Key_Down)
    assert buttons[1].hasFocus()
    hand.key(Qt.Key.Key_Right)
    assert buttons[1 + hand.page.rows].hasFocus()
    hand.key(Qt.Key.Key_Left).key(Qt.Key.Key_Up).key(Qt.Key.Key_Up)
    assert buttons[0].hasFocus()
    hand.enter()
    assert type(hand.page).__name__ == "PutDownPage"


def test_everything_else_is_in_sight_at_1024_by_600(at):
    """No row is cut off."""
    hand = at("to_volts").key(Qt.Key.Key_F12)
    for button in hand.page.buttons:
        assert button.visibleRegion().boundingRect() == button.rect(), button.text()


def test_a_visit_is_closed_with_its_key(at):
    """Ctrl+W, as its button says; where no visit is open it does nothing."""
    hand = at("to_volts").key(Qt.Key.Key_F12)
    assert hand.button("Close this visit").text().endswith("(Ctrl+W)")
    hand.key(Qt.Key.Key_W, Qt.KeyboardModifier.ControlModifier)
    page = hand.page
    assert type(page).__name__ == "StartPage" and hand.window.driver is None
    hand.key(Qt.Key.Key_W, Qt.KeyboardModifier.ControlModifier)
    assert hand.page is page


def test_a_step_without_a_drawing_says_so(at):
    """In a sentence, under the page's title."""
    hand = at()
    assert hand.page.picture is None
    hand.key(Qt.Key.Key_F11)
    assert "Large drawing" in words(hand) and "This question has no drawing" in words(hand)
