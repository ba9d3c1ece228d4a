"""The zone survey's page, by keys and by touch: the grid, what it says, the draft on disk, the paper form."""

import sys
from pathlib import Path

import pytest
from hand import Hand
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLabel
from test_names import check

sys.path.insert(0, str(Path(__file__).resolve().parents[1] / "past"))
from shelved import BEGUN, LIBRARY, entries_of

from assistant.report.load import story_of
from assistant.report.zones import zone_blocks
from assistant.trail.live import LiveVisit
from assistant.walk.entries import events_of
from assistant.walk.visit import asked
from assistant.window.session import Driver

STEP = "zone_spillover.matrix"


def to_survey(folder):
    """A visit that has come to the survey."""
    entries, complaints = entries_of("zone_spillover/leaky_blade")
    live = LiveVisit.start(folder, LIBRARY, complaints, at=BEGUN.isoformat())
    for entry in entries:
        for make in events_of(entry, BEGUN.isoformat()):
            if asked(live.visit).step == STEP:
                return live
            event = make(live.visit)
            if event is not None:
                live.send(event)
    raise AssertionError("the walk has no survey")


@pytest.fixture
def folder(tmp_path):
    return tmp_path / "visit"


@pytest.fixture
def hand(qtbot, window, folder):
    window.show_visit(Driver(to_survey(folder), now=BEGUN.isoformat))
    return Hand(qtbot, window).rest()


def words(hand):
    return "\n".join(label.text() for label in hand.page.findChildren(QLabel) if label.isVisible())


def named(hand):
    hand.type("den, beds").enter()
    hand.type("den 1, bed 1, bath").enter()
    return hand.rest()


def fill(hand, *texts):
    for text in texts:
        hand.key(Qt.Key.Key_A, Qt.KeyboardModifier.ControlModifier).type(text).enter()
    return hand


def test_the_survey_has_its_own_page_and_is_walked_by_keys_alone(hand, folder):
    assert type(hand.page).__name__ == "SurveyPage"
    check(hand.window)
    named(hand)
    assert "den 1: den alone calls (fan)" in hand.verdict
    fill(hand, "120", "6", "n")
    assert "den 1: beds alone calls (fan)" in hand.verdict
    fill(hand, "5", "110", "f")
    check(hand.window)
    hand.alt("S")
    assert "whose each register should be" in hand.verdict
    assert not hand.page.saved
    fill(hand, "den", "2", "den")
    assert "So far: Bath is drawn under den and follows beds" in hand.page.so_far.text()
    hand.alt("S")
    assert hand.verdict.startswith("Saved: 6 of 6 cells")
    hand.page.grid.setCurrentCell(0, 0)
    assert not any(way.isVisible() for way in (*hand.page.quick.ways, hand.page.cell))
    assert hand.page.says.isVisible()
    hand.enter()
    record = next(r for r in hand.driver.visit.readings if r.name == "who_blows")
    assert (
        record.typed.text
        == "registers=den_1,bed_1,bath drawn=den,beds,den fan=den:120,6,none/beds:5,110,full"
    )
    assert hand.driver.ask().step != STEP


def seen(hand) -> list[QLabel]:
    """Every label that can be read without scrolling anything."""
    return [
        one
        for one in hand.page.findChildren(QLabel)
        if one.isVisible() and one.visibleRegion().boundingRect().height() > one.height() * 0.9
    ]


@pytest.mark.parametrize("size", [(1024, 600), (1360, 820)], ids=["small", "wide"])
def test_conclusions_stand_beside_the_grid_while_it_fills(hand, size):
    """Each with how sure it is and the reading that would settle it; the field keeps the focus."""
    hand.window.resize(*size)
    named(hand.rest())
    fill(hand, "120", "6", "n", "5", "110", "f")
    hand.page.grid.setCurrentCell(2, 0)
    assert hand.page.grid.isVisible()
    fill(hand.rest(), "den")
    told = "\n".join(one.text() for one in seen(hand))
    assert "Bath is drawn under den and follows beds: its run hangs on beds's duct (over 99 %)" in told
    assert "To settle it: Volts and shaft of beds's damper while bath blows" in told
    assert hand.page.grid.isVisible()
    assert hand.page.cell.hasFocus()
    check(hand.window)


def test_the_present_cell_is_in_sight_in_a_tiny_window(hand):
    hand.window.resize(512, 300)
    named(hand.rest())
    fill(hand, "120", "6", "n", "5")
    page = hand.page
    cell = page.grid.visualItemRect(page.grid.currentItem())
    assert page.grid.viewport().visibleRegion().contains(cell.center())
    check(hand.window)


def test_by_touch(qtbot, hand):
    named(hand)
    item = hand.page.grid.visualItemRect(hand.page.grid.item(1, 2)).center()
    qtbot.mouseClick(hand.page.grid.viewport(), Qt.MouseButton.LeftButton, pos=item)
    hand.type("77").enter()
    assert hand.page.sheet.cells == {("fan", "beds", "bed 1"): "77"}
    hand.page.sheet.cells.clear()
    hand.page.grid.setCurrentCell(0, 1)
    hand.rest()
    for quick in ("Full", "None", "Some"):
        hand.press(quick)
    assert [hand.page.sheet.cells["fan", "den", r] for r in ("den 1", "bed 1", "bath")] == [
        "full",
        "none",
        "some",
    ]
    hand.page.grid.setCurrentCell(2, 0)
    hand.rest().press("Beds")
    assert hand.page.sheet.drawn == {"bath": "beds"}
    hand.press("Heat")
    assert "(heat)" in hand.verdict
    hand.press("What it says")
    assert "What would settle the rest:" in words(hand)
    check(hand.window)
    hand.press("Back to the grid")
    assert hand.page.cell.isVisible()


def test_what_is_wrong_is_said_and_kept(hand):
    named(hand)
    fill(hand, "a lot")
    assert "a lot" in hand.verdict
    assert hand.page.grid.item(0, 1).text() == "? a lot"
    hand.alt("S").alt("S")
    assert not hand.page.saved
    hand.page.grid.setCurrentCell(0, 1)
    fill(hand.rest(), "90")
    assert hand.page.grid.item(0, 1).text() == "90"
    fill(hand, "9000")
    assert "slip of the key" in hand.verdict


def test_a_survey_half_done_is_there_after_the_program_was_closed(qtbot, window, hand, folder):
    named(hand)
    fill(hand, "120", "6")
    window.show_start()
    window.show_visit(Driver(LiveVisit.take_up(folder), now=BEGUN.isoformat))
    hand.rest()
    assert type(hand.page).__name__ == "SurveyPage"
    assert hand.page.grid.item(0, 1).text() == "120"
    assert hand.page.grid.item(1, 1).text() == "6"
    fill(hand, "121")
    assert "121" in (folder / "draft.json").read_text()


def test_the_paper_form_is_written(hand, tmp_path):
    hand.page.form_to(tmp_path / "blank.pdf")
    assert (tmp_path / "blank.pdf").read_bytes().startswith(b"%PDF")
    named(hand).page.form_to(tmp_path / "form.pdf")
    assert "The form is in" in hand.verdict
    hand.page.form_to(tmp_path / "no" / "such" / "folder.pdf")
    assert "can't be written" in hand.verdict


def test_the_report_shows_who_blows_where(hand, folder):
    named(hand)
    fill(hand, "120", "6", "90", "5", "110", "4")
    hand.page.grid.setCurrentCell(2, 0)
    fill(hand.rest(), "beds")
    hand.alt("S")
    hand.driver.close()
    story = story_of(folder)
    assert story.zone_picture.startswith(b"\x89PNG")
    rows = dict(story.zones.rows)
    assert "bath (over 99 %, should be of beds)" in rows["den"]
    assert len(list(zone_blocks(story))) == 3
