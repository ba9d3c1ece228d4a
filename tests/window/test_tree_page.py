"""The page that shows a tree as a diagram: at the step that is asked, found by words, read anew from disk."""

import shutil

import pytest
from hand import Hand
from PySide6.QtCore import QPointF, Qt
from scenes import FOLDER

from assistant.tree.chart.marks import Words
from assistant.window import look, tree_watch
from assistant.window.page.aside import tree as tree_page

KEY = Qt.Key


@pytest.fixture(autouse=True)
def watched(monkeypatch, desk, tmp_path):
    """The small trees in a folder that a test may change, looked at ten times a second."""
    folder = shutil.copytree(FOLDER, tmp_path / "trees")
    desk._trees = folder
    monkeypatch.setattr(tree_watch, "EVERY", 100)
    return folder


def opened(hand):
    hand.window.open("tree")
    hand.rest()
    watch = hand.page.watch
    if watch is not None:  # what comes of the first reading is on the page before a test goes on
        hand.bot.waitUntil(lambda: not watch.reading, timeout=20_000)
    return hand.rest()


def middle(page, step):
    """Where the middle of a step's box lies in the view."""
    return (page.view.place(step).center() - page.view.corner) * page.view.scale


def said(page):
    return " ".join(mark.text for sheet in page.view.chart.sheets for mark in sheet.marks
                    if isinstance(mark, Words))


def test_it_opens_at_the_step_that_is_asked_with_the_path_in_weight(at):
    hand = opened(at("to_volts"))
    page, here = hand.page, hand.step.partition(".")[2]
    assert page.view.rect().contains(middle(page, here).toPoint())
    assert "you are here" in said(page)
    assert page.walked.here == here
    assert page.walked.ways


def test_inside_a_procedure_the_complaints_tree_is_one_key_away_with_its_path(at):
    """The page showed five steps of making safe, and the path to them only after a hundred other trees."""
    hand = opened(at("to_dead_proof"))
    page = hand.page
    assert page.drawn.name == "make_dead"
    hand.key(KEY.Key_T)
    assert page.drawn.name == "no_heat"
    assert "the walk is in it" in page.verdict.text()
    assert page.walked.here == "ohms"  # the step that asks for it
    assert page.walked.ways
    assert "you are here" in said(page)
    assert page.view.rect().contains(middle(page, "ohms").toPoint())


def test_esc_leads_back_to_what_was_typed(at):
    hand = opened(at("to_volts").type("11"))
    hand.key(KEY.Key_Escape)
    assert hand.page.entry.line.text() == "11"


def test_keys_make_it_larger_and_smaller_and_move_it(at):
    hand = opened(at("to_volts"))
    view = hand.page.view
    before, corner = view.scale, QPointF(view.corner)
    hand.key(KEY.Key_Plus)
    assert view.scale > before
    hand.key(KEY.Key_Minus).key(KEY.Key_Minus)
    assert view.scale < before
    hand.key(KEY.Key_Plus).key(KEY.Key_Plus).key(KEY.Key_Plus).key(KEY.Key_Down)
    assert view.corner != corner
    hand.key(KEY.Key_Home)
    assert view.rect().contains(middle(hand.page, hand.page.walked.here).toPoint())
    hand.key(KEY.Key_0)
    assert view.scale == pytest.approx(view.width() / view.chart.width)


def test_a_step_is_found_by_its_words(at):
    hand = opened(at("to_volts"))
    page = hand.page
    hand.key(KEY.Key_Slash)
    title = next(step.title for step in page.drawn.tree.steps.values() if hasattr(step, "title"))
    hand.type(title[:12])
    assert page.found
    assert page.view.marked == tuple(page.found)
    assert title in page.verdict.text()
    hand.type("xyzzy")
    assert page.verdict.text() == "No step has these words."


def test_a_step_is_found_by_its_number_on_the_wall_and_by_the_small_words_of_its_box(at):
    hand = opened(at("to_volts"))
    page = hand.page
    here = page.walked.here
    page.find.setText(page.view.chart.numbers[here])
    assert page.found == [here]
    assert page.view.marked[0] == here
    page.find.setText("line voltage")
    cautioned = [name for name, step in page.drawn.tree.steps.items()
                 if "line_voltage" in step.common.caution]
    assert set(cautioned) <= set(page.found)
    page.find.setText("")
    assert page.view.marked == ()


def test_the_one_of_several_found_that_is_gone_to_is_framed_first(at):
    hand = opened(at("to_volts"))
    page = hand.page
    page.find.setText("the")
    assert len(page.found) > 1
    page.next_found()
    assert page.view.marked[0] == page.found[0] == page.view.kept


def test_keys_make_it_larger_about_the_step_gone_to(at):
    """It grew about the middle once, and at a sheet's edge "you are here" went out of sight."""
    hand = opened(at("to_volts"))
    page = hand.page
    for _ in range(4):
        hand.key(KEY.Key_Plus)
        box = page.view.place(page.walked.here)
        for corner in (box.topLeft(), box.bottomRight()):
            assert page.view.rect().contains(((corner - page.view.corner) * page.view.scale).toPoint())
    for _ in range(5):
        hand.key(KEY.Key_Plus)
    assert page.view.rect().contains(middle(page, page.walked.here).toPoint())


def test_a_press_on_a_box_says_its_question(at):
    hand = opened(at("to_volts"))
    page = hand.page
    step = page.view.step_at(middle(page, page.walked.here))
    assert step == page.walked.here
    page.view.picked.emit(step)
    assert page.verdict.text().startswith(f"{step}: ")


def test_the_rest_is_folded_away_and_back(at):
    hand = opened(at("to_volts"))
    before = said(hand.page)
    hand.key(KEY.Key_F)
    assert len(said(hand.page)) <= len(before)
    hand.key(KEY.Key_F)
    assert said(hand.page) == before


def test_without_a_visit_any_tree_can_be_seen(qtbot, window):
    window.begin()
    hand = opened(Hand(qtbot, window))
    first = hand.page.drawn.name
    hand.key(KEY.Key_T)
    assert hand.page.drawn.name != first
    hand.key(KEY.Key_Escape)
    assert type(hand.page).__name__ == "StartPage"


def complaint(folder):
    return next(path for path in (folder / "complaint").iterdir() if path.stem == "no_heat")


def test_a_changed_file_is_drawn_anew_and_the_visit_goes_on_with_its_own(at, qtbot, watched):
    hand = opened(at("to_volts"))
    page, path = hand.page, complaint(watched)
    before = hand.driver.library
    old = page.drawn.tree.title
    path.write_text(path.read_text().replace(f"title: {old}", "title: Quite another title"))
    qtbot.waitUntil(lambda: "Quite another title" in said(page), timeout=20_000)
    assert "the visit goes on with the text it began with" in page.verdict.text()
    assert hand.driver.library is before
    assert hand.driver.library.trees["no_heat"].title == old
    hand.key(KEY.Key_Escape)
    assert hand.driver.ask().step.endswith("volts")


def test_what_is_wrong_is_shown_where_it_is(at, qtbot, watched):
    hand = opened(at("to_volts"))
    page, path = hand.page, complaint(watched)
    lines = path.read_text().splitlines()
    at_line = next(number for number, line in enumerate(lines) if line.startswith("    causes:"))
    path.write_text("\n".join(lines[:at_line] + lines[at_line + 1:]))
    qtbot.waitUntil(lambda: "! causes:" in said(page), timeout=20_000)
    for _ in page.drawn.problems:  # the small trees have more that the checker would not pass
        hand.key(KEY.Key_E)
        if "causes:" in page.verdict.text():
            break
    assert "causes:" in page.verdict.text()
    (step,) = page.view.marked
    assert page.view.rect().contains(middle(page, step).toPoint())


def test_a_file_that_can_not_be_read_leaves_the_last_diagram(at, qtbot, watched):
    hand = opened(at("to_volts"))
    page, path = hand.page, complaint(watched)
    before = said(page)
    path.write_text("format: 1\nsteps: [")
    qtbot.waitUntil(lambda: "can't be drawn as it is now" in page.verdict.text(), timeout=20_000)
    assert said(page) == before


def test_it_is_saved_for_the_wall(at, monkeypatch, tmp_path):
    hand = opened(at("to_volts"))
    monkeypatch.setattr(tree_page.files, "pick_file", lambda *_: tmp_path / "wall.pdf")
    hand.key(KEY.Key_P)
    assert (tmp_path / "wall.pdf").read_bytes().startswith(b"%PDF")
    assert "wall.pdf" in hand.page.verdict.text()


@pytest.mark.parametrize("size", [(1024, 600), (512, 300)])
def test_everything_on_it_can_be_pressed_and_the_diagram_has_room(at, size):
    hand = at("to_volts")
    hand.window.resize(*size)
    hand.rest()
    page = opened(hand).page
    for button in hand.buttons():
        assert min(button.width(), button.height()) >= look.TARGET, button.text()
        assert hand.window.rect().contains(button.mapTo(hand.window, button.rect().center()))
    assert page.view.visibleRegion().boundingRect().height() >= (90 if size[1] < 400 else 300)


def test_a_drag_moves_it_and_a_press_does_not(at, qtbot):
    hand = opened(at("to_volts"))
    view = hand.page.view
    hand.key(KEY.Key_Plus).key(KEY.Key_Plus).key(KEY.Key_Plus)
    corner = QPointF(view.corner)
    qtbot.mousePress(view, Qt.MouseButton.LeftButton, pos=view.rect().center())
    qtbot.mouseMove(view, view.rect().center() - (view.rect().center() / 2))
    qtbot.mouseRelease(view, Qt.MouseButton.LeftButton, pos=view.rect().center() / 2)
    assert view.corner != corner


def test_a_page_that_is_closed_while_its_trees_are_read_harms_nothing(qtbot, monkeypatch, tmp_path):
    """The reading thread ended after the page was gone, and took the program with it."""
    import threading

    import shiboken6

    go, done = threading.Event(), threading.Event()

    def slow(folder):
        go.wait(10)
        done.set()
        return None, []

    monkeypatch.setattr(tree_watch, "read_and_check", slow)
    monkeypatch.setattr(tree_watch, "stamps", lambda folder: {"a": (1, 1)})
    watch = tree_watch.TreeWatch(tmp_path)
    heard = []
    watch.read.connect(lambda *answer: heard.append(answer))
    watch.start()
    shiboken6.delete(watch)
    go.set()
    assert done.wait(10)
    qtbot.wait(150)
    assert heard == []
