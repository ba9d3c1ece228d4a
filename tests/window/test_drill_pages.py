"""A drill in the window, from the list to looking back: by keyboard, by touch, free and along the tree."""

from __future__ import annotations

from dataclasses import replace
from functools import cache

import pytest
from hand import Hand
from PySide6.QtCore import QPoint, QRect, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QAbstractButton, QApplication, QLabel
from test_names import check

from assistant.drill.practice import record
from assistant.drill.practice.drill_file import load_drills
from assistant.drill.practice.drills import from_fault
from assistant.resources import trees_folder
from assistant.rig.fault_file import load_faults, shipped
from assistant.tree.library import read_folder
from assistant.walk.event import Cannot, GoOn
from assistant.walk.path import go, stopped
from assistant.window import files, look
from assistant.window.frame import Window
from assistant.window.page.drill import room as rooms
from assistant.window.page.drill.along import TakeBar, fill
from assistant.window.page.drill.display import Display
from assistant.window.page.drill.end import EndPage
from assistant.window.page.drill.foreman import ForemanPage
from assistant.window.page.drill.free import SAY_FIRST, FreePage
from assistant.window.page.drill.history import HistoryPage
from assistant.window.page.drill.kept import KeptPage
from assistant.window.page.drill.lobby import LobbyPage
from assistant.window.page.drill.told import ToldPage
from assistant.window.page.survey import SurveyPage
from tests.report.pdf_reader import pages

FAULTS = b"""\
format: 1
faults:
  handle_off:
    title: Somebody took the service switch for a light switch
    complaint: no_heat
    finding: switch_off
    cause: switched_off
    change: [{part: service_switch, change: "off"}]
  lead_off:
    title: The gas valve's lead is off
    complaint: no_heat
    finding: valve_wire
    cause: rough_wiring
    change: [{part: valve_harness, change: hot open}]
"""
DRILLS = b"""\
format: 1
drills:
  dark:
    title: The service switch is off
    complaint: no_heat
    difficulty: easy
    words: We cleaned the basement.
    fault: handle_off
  sound:
    title: Nothing is wrong
    complaint: no_heat
    difficulty: hard
    words: It smelled once.
"""


@cache
def trees():
    return read_folder(trees_folder())


@cache
def matter():
    faults, problems = load_faults(FAULTS, "f.yaml")
    drills, also = load_drills(DRILLS, "d.yaml", faults, trees().vocabulary)
    assert not problems and not also
    return faults, drills


@pytest.fixture(autouse=True)
def few(monkeypatch, tmp_path, desk):
    """Two drills and two faults on the shipped trees, a user folder of its own, no wait for the meter."""
    monkeypatch.setenv("FAULT_TRAIL_HOME", str(tmp_path / "home"))
    monkeypatch.setattr(rooms, "all_faults", lambda: (matter()[0], []))
    monkeypatch.setattr(rooms, "all_drills", lambda *_: (matter()[1], []))
    monkeypatch.setattr(Display, "pace", 0.0)
    desk.library = trees()


@pytest.fixture
def hand(qtbot, window):
    """A hand in front of the list of visits."""
    window.begin()
    return Hand(qtbot, window).rest()


@pytest.fixture
def lobby(hand):
    hand.press("Drills")
    assert isinstance(hand.page, LobbyPage)
    return hand


def begun(hand: Hand, way: str, drill: str = "dark") -> Hand:
    """A drill under way, in the quickest way."""
    page = hand.page
    page.begun.emit(matter()[1][drill], "Ed", way)
    return hand.rest()


@pytest.fixture
def free(lobby):
    return begun(lobby, "free")


@pytest.fixture
def tree(lobby):
    return begun(lobby, "tree")


def told(hand: Hand) -> Hand:
    """The debrief, waited for."""
    hand.bot.waitUntil(lambda: hand.page.told is not None, timeout=60_000)
    return hand.rest()


def words(page) -> str:
    return "\n".join(one.title + "\n" + "\n".join(one.lines) for one in page.told.sections)


# -- free


def test_a_drill_by_keyboard_alone_from_the_list_to_looking_back(hand):
    """No mouse: the name, the drill, points from the list with a search, what is seen, the end."""
    hand.key(Qt.Key.Key_D, Qt.KeyboardModifier.ControlModifier)
    hand.type("Ed").enter()
    hand.alt("f")
    hand.alt("b")
    assert isinstance(hand.page, FreePage)
    hand.type("low imp").enter()
    assert hand.page.sitting.meter.function == "low"
    hand.type("hot leaving").enter()
    hand.type("neutral (white)").enter()
    assert hand.page.sitting.meter.points() == ("switch.load", "box.neutral")
    hand.alt("r")
    assert hand.verdict == SAY_FIRST
    assert hand.page.expected.hasFocus()
    hand.type("120").enter()
    assert "You expected 120" in hand.verdict
    assert hand.page.display.text().endswith("V")
    hand.alt("l")
    hand.type("service switch").key(Qt.Key.Key_Tab)
    assert hand.page.picker.list.hasFocus()
    hand.key(Qt.Key.Key_Tab)
    assert hand.page.expected.hasFocus()
    hand.type("on").enter()
    assert "off" in hand.verdict
    hand.alt("e")
    assert isinstance(hand.page, EndPage)
    hand.type("service switch is off").enter()
    hand.type(trees().trees["switched_off"].title).enter()
    hand.type("Somebody had switched it off.").enter()
    assert isinstance(hand.page, ToldPage)
    told(hand)
    said = words(hand.page)
    assert "You found it" in said
    assert "you expected on, it was off" in said
    hand.alt("b")
    assert isinstance(hand.page, LobbyPage)
    assert hand.page.who.text() == "Ed"
    hand.alt("l")
    assert isinstance(hand.page, HistoryPage)
    (done,) = hand.page.done
    assert done.right_first
    assert done.cause
    assert done.way == "free"


def test_leads_are_laid_by_touch_on_the_drawing(free):
    page = free.page
    free.press("24 V")
    for point in ("r", "c"):
        spot = page.view.spot(point).toPoint() + QPoint(6, -5)  # a finger is not exact
        QTest.mouseClick(page.view, Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier, spot)
        free.rest()
    assert page.sitting.meter.points() == ("r", "c")
    assert "R terminal of the furnace board" in page.slots.button_of["red"].accessibleName()
    assert "red on R terminal" in page.view.accessibleName()
    page.expected.setText("0")
    free.press("Read")
    assert page.sitting.log.entries[-1].parted is False


def test_alt_n_is_the_big_button_and_begin_without_a_name_says_so(lobby):
    lobby.page.who.clear()
    lobby.page.list.setFocus()
    lobby.alt("n")
    assert "Say who works on it" in lobby.verdict
    lobby.page.who.setText("Ed")
    lobby.alt("n")
    assert lobby.window.room.busy
    lobby.window.room.finish()
    lobby.rest()
    lobby.page.findings.choose("switch_off")
    lobby.alt("n")
    assert isinstance(lobby.page, ToldPage)


def test_a_tap_beside_every_point_lays_nothing(free):
    page = free.page
    before = page.sitting.meter.points()
    QTest.mouseClick(
        page.view,
        Qt.MouseButton.LeftButton,
        Qt.KeyboardModifier.NoModifier,
        QPoint(2, page.view.height() - 2),
    )
    assert page.sitting.meter.points() == before


def test_each_point_of_each_drawing_is_the_nearest_to_itself(free):
    view = free.page.view
    for button in free.page.tabs.buttons():
        free.tap(button)
        assert view.known
        for point in view.known:
            assert view.nearest(view.spot(point)) == point


def test_switches_are_worked_and_only_what_can_be_done_is_listed(free):
    page = free.page
    free.press("Do")
    assert "release_door_switch" not in page.picker.items
    free.type("service switch on")
    page.picker.choose("switch_on")
    free.press("Do it")
    assert "Done" in free.verdict
    free.press("Wait")
    free.type("90 s")
    free.press("Wait so long")
    assert page.sitting.minutes > 0


def test_one_tap_selects_and_it_is_done_once(free):
    """A tap on a row does nothing yet; the button does it once, and what was heard stays to be read."""
    page = free.page
    free.press("Wait")
    row = page.picker.list.item(3)

    def tap():
        spot = page.picker.list.visualItemRect(row).center()
        QTest.mouseClick(page.picker.list.viewport(), Qt.MouseButton.LeftButton, pos=spot)
        free.rest()

    page.picker.list.scrollToItem(row)
    tap()
    assert page.sitting.minutes == 0
    free.press("Wait so long")
    assert page.sitting.minutes == pytest.approx(2)
    said = free.verdict
    page.next_button.click()
    free.enter()
    assert page.sitting.minutes == pytest.approx(2)
    assert free.verdict == said
    row = page.picker.list.item(0)
    page.picker.list.scrollToItem(row)
    tap()
    tap()
    assert page.sitting.minutes == pytest.approx(2 + 10 / 60)


def test_the_end_of_the_drill_keeps_its_place_and_the_expectation_is_wide(free):
    page = free.page
    places = set()
    for mode in ("meter", "look", "do", "wait", "log"):
        page.work(mode)
        free.rest()
        places.add(page.ends.mapTo(page, QPoint(0, 0)).x())
    assert len(places) == 1
    assert page.expected.width() > 300


def test_enter_does_nothing_while_several_acts_match(free):
    """A word that fits two acts must not do the first of them."""
    page = free.page
    free.press("Do")
    free.type("turn the").enter()
    assert page.picker.list.count() > 1
    assert page.picker.list.hasFocus()
    assert not page.sitting.log.entries
    page.picker.choose("stat_off")
    free.enter()
    assert page.sitting.log.entries[-1].words.startswith("Turn the thermostat to OFF")


def test_a_lead_or_the_function_is_searched_for_right_after_it_was_tapped(free):
    page = free.page
    for slot, words, wanted in (("function", "clamp", "clamp"), ("red", "inducer plug, hot", "inducer.line")):
        free.tap(page.slots.button_of[slot])
        free.type(words).enter()
        assert wanted in (page.sitting.meter.function, page.sitting.meter.red)


def test_a_time_is_waited_as_it_was_typed(free):
    """Three minutes are not the half hour whose "30 min" fits the words."""
    free.press("Wait")
    free.type("3 min").enter()
    assert free.page.sitting.minutes == pytest.approx(3)
    free.type("5 min")
    free.press("Wait so long")
    assert free.page.sitting.minutes == pytest.approx(8)


def test_a_time_that_is_none_is_a_sentence(free):
    free.press("Wait")
    free.type("soon")
    free.press("Wait so long")
    assert "no time" in free.verdict


def test_without_the_foremans_wish_nothing_is_foretold(lobby):
    record.set_predict(False)
    begun(lobby, "free")
    assert not lobby.page.expected.isVisible()
    lobby.page.work("look")
    lobby.page.picker.choose("service_switch")
    lobby.page.enter()
    assert "off" in lobby.verdict


def test_the_end_can_be_left_and_the_work_is_as_it_was(free):
    page = free.page
    page.lay("r")
    free.press("End the drill")
    assert isinstance(free.page, EndPage)
    free.press("Back to the house")
    assert free.page is page
    assert page.sitting.meter.red == "r"


def test_what_is_written_at_the_end_is_there_again_after_a_look_at_the_house(free):
    free.page.finish()
    free.rest()
    free.page.findings.choose("switch_off")
    free.page.causes.choose("switched_off")
    free.page.sentence.setText("It was off.")
    free.press("Back to the house")
    free.press("End the drill")
    page = free.page
    assert (page.findings.chosen, page.causes.chosen) == ("switch_off", "switched_off")
    assert page.sentence.text() == "It was off."


def test_a_drill_is_kept_before_its_debrief_and_completed_after_it_was_left(free):
    free.page.finish()
    free.rest()
    said = free.window.room
    said.tell("switch_off", "switched_off", "It was off.")
    (done,) = record.history("Ed")
    assert done.right
    assert done.told_nothing is None
    free.window.page.left.emit()
    assert isinstance(free.page, LobbyPage)
    assert "kept" in free.verdict
    free.bot.waitUntil(lambda: record.history("Ed")[0].told_nothing is not None, timeout=60_000)
    assert len(record.history("Ed")) == 1


def test_a_drill_under_way_is_not_lost_to_a_key_and_can_be_left_unfinished(free):
    free.key(Qt.Key.Key_D, Qt.KeyboardModifier.ControlModifier)
    assert isinstance(free.page, FreePage)
    assert "under way" in free.verdict
    free.page.finish()
    free.rest().press("Leave the drill unfinished")
    assert isinstance(free.page, LobbyPage)
    assert "counted nowhere" in free.verdict
    assert record.history("Ed") == []


def test_hazard_in_free_work_is_an_answer(free):
    free.window.open("hazard")
    free.rest()
    free.digit(1)
    free.window.back_to_it()
    free.rest()
    free.page.finish()
    free.rest()
    assert free.page.findings.chosen == "hazard.gas_smell"


def test_the_display_ranges_before_it_stands(qtbot, monkeypatch):
    monkeypatch.setattr(Display, "pace", 0.02)
    display = Display()
    qtbot.addWidget(display)
    seen = []
    display.stands.connect(seen.append)
    display.run([(0.0, "- - -"), (1.0, "97.1 V"), (2.0, "118.4 V")])
    assert display.text() == "- - -"
    qtbot.waitUntil(lambda: seen == ["118.4 V"], timeout=2000)
    assert display.accessibleName() == "The meter shows 118.4 V"


GROUND_OFF = b"""\
format: 1
faults:
  ground_off:
    title: The furnace's ground is not connected
    complaint: no_heat
    finding: ground_bad
    cause: ground_and_polarity
    change: [{part: ground_wire, change: open}]
"""


def reads(hand: Hand, function: str) -> float:
    """The metal of the cabinet against the known neutral, by a function of the meter, with keys."""
    hand.press("Meter").press("Function")
    hand.type(function).enter()
    for lead, point in (("Red", "bare metal"), ("Black", "neutral slot")):
        hand.press(lead)
        hand.type(point).enter()
    hand.page.expected.setText("0")
    hand.alt("r")
    assert hand.page.display.text().endswith(" V"), hand.page.display.text()
    return float(hand.page.display.text().split()[0])


def test_a_meter_shows_ghost_volts_on_floating_metal_and_a_low_impedance_one_does_not(lobby):
    """Metal without a ground floats at some share of the line through stray capacitance: a high-impedance
    meter reads tens of volts there, one of a few kilohms pulls it down to nothing (capacitive divider,
    reasoned; common practice of meters with a low-impedance function).
    """
    faults, _ = load_faults(GROUND_OFF, "g.yaml")
    drill = replace(matter()[1]["dark"], name="floats", fault=faults["ground_off"])
    lobby.page.begun.emit(drill, "Ed", "free")
    lobby.rest()
    high, low = reads(lobby, "AC volts"), reads(lobby, "low imp")
    assert 30 < high < 90
    assert low < 1
    assert [entry.words.partition(":")[0] for entry in lobby.page.sitting.log.entries] == [
        "AC volts",
        "AC volts, low impedance",
    ]


def test_a_long_name_goes_over_two_lines_of_a_lead(free):
    free.press("120 V")
    free.page.lay("switch.load")
    free.rest()
    button = free.page.slots.button_of["red"]
    first, _, second = button.text().partition("\n")
    assert first.startswith("Red (1): hot")
    assert second
    assert button.fontMetrics().horizontalAdvance(first) <= button.width() - 16
    assert "hot blade of the furnace's cord" in button.accessibleName()


def test_in_a_tiny_window_what_is_searched_is_in_sight(free):
    free.window.resize(512, 300)
    free.rest()
    for mode in ("Look", "Do", "Wait", "Meter"):
        free.press(mode)
        find = free.page.picker.find
        place = QRect(find.mapTo(free.page.scroll.viewport(), QPoint(0, 0)), find.size())
        assert free.page.scroll.viewport().rect().contains(place), mode
    free.page.finish()
    free.rest()
    free.page.sentence.setFocus()
    assert free.page.sentence.width() > 250
    check(free.window)


def test_while_other_houses_are_gone_through_a_bar_says_how_far(free):
    free.page.finish()
    free.rest()
    free.window.room.tell("switch_off", "switched_off", "It was off.")
    page = free.window.page
    assert page.progress.isVisible()
    assert "Doing the same in other houses" in page.verdict.text()
    told(free)
    assert not page.progress.isVisible()
    assert page.verdict.text() == ""


def test_a_debrief_that_the_program_was_closed_over_is_made_ready_the_next_time(qtbot, free, desk):
    free.page.finish()
    free.rest()
    free.window.room.tell("switch_off", "switched_off", "It was off.")
    free.window.close()
    assert record.history("Ed")[0].told_nothing is None
    again = Window(desk)
    qtbot.addWidget(again)
    again.show()
    again.begin()
    again.drills()
    qtbot.waitUntil(lambda: record.history("Ed")[0].told_nothing is not None, timeout=60_000)
    (done,) = record.history("Ed")
    assert done.right
    assert not list(record.practice_folder().glob("*/*/unfinished.json"))


# -- along the tree


def test_what_comes_and_goes_can_be_walked_again_from_the_end_page(tree):
    """After the page that says so: the end page knows what was found, and one button begins anew."""
    work = tree.window.room.work
    at = tree.driver.now()
    tree.driver.live.visit = stopped_at(tree.driver.visit, "comes_and_goes")
    tree.driver.send(GoOn(at, "no_heat.comes_and_goes"))
    tree.window.show_ask()
    tree.rest()
    assert isinstance(tree.page, EndPage)
    assert tree.page.findings.chosen == "comes_and_goes"
    check(tree.window)
    tree.press("Walk it again")
    assert tree.step == "no_heat.kind"
    assert tree.window.room.work is work
    assert bar(tree) is not None


def stopped_at(visit, name: str):
    """The visit on a stop page of its tree, as the walk would come to it."""
    there = go(visit, name)
    return stopped(there, "walk_again")


def test_two_causes_that_a_walk_found_are_both_shown_and_none_is_chosen(qtbot, window):
    page = EndPage(
        matter()[1]["dark"], trees(), "line_loss", "", walk=("supply_voltage", "rough_wiring")
    )
    window.show_page(page)
    Hand(qtbot, window).rest()
    assert page.causes.heading.text() == "Why it failed: the walk found 2"
    assert page.causes.chosen == ""
    listed = [page.causes.list.item(row).text() for row in (0, 1)]
    assert listed == [trees().trees[name].title for name in ("supply_voltage", "rough_wiring")]


def test_a_survey_in_a_drill_is_filled_in_by_the_house_and_saved(lobby):
    """Every register in each zone's call, from the rig's own air."""
    faults, _ = shipped()
    drill = from_fault(faults["blade_off_its_mark"], trees().vocabulary)
    lobby.page.begun.emit(drill, "Ed", "tree")
    lobby.rest()
    lobby.driver.live.visit = go(lobby.driver.visit, "matrix")
    lobby.window.show_ask()
    lobby.rest()
    page = lobby.page
    assert isinstance(page, SurveyPage)
    bar(lobby).line.setText("none")
    bar(lobby).take()
    lobby.rest()
    assert page.grid.isVisible()
    assert page.grid.rowCount() == len(page.sheet.registers) > 3
    assert float(page.grid.item(0, 1).text()) > 50
    check(lobby.window)
    lobby.alt("s")
    assert page.saved, lobby.verdict


def bar(hand: Hand) -> TakeBar:
    return hand.page.findChild(TakeBar)


def test_along_the_tree_each_reading_comes_from_the_house(tree):
    assert "PRACTICE" in tree.window.head.title.text()
    tree.page.choices.choose(1)
    tree.page.enter()
    assert "comes from the house" in tree.verdict
    assert tree.driver.visit.path == ()
    bar(tree).line.setFocus()
    tree.type("gas").enter()
    assert "gas with inducer" in tree.verdict
    tree.enter()
    assert len(tree.driver.visit.path) == 1


def test_enter_on_take_it_takes_it_and_say_first_goes(tree):
    first = bar(tree)
    first.takes.setFocus()
    tree.enter()
    assert tree.verdict == SAY_FIRST
    assert first.line.width() > 300
    first.line.setText("gas")
    first.takes.setFocus()
    tree.enter()
    assert first.along.taken is not None
    assert SAY_FIRST not in tree.verdict


def test_what_can_not_be_taken_is_a_plain_sentence(tree):
    fill(tree.page, Cannot("", "no_heat.x", "'blower.does'"))
    assert "blower.does" not in tree.verdict
    assert "can't be taken" in tree.verdict


def walk_on(hand: Hand) -> None:
    """One page: take it, save it, go on."""
    page, before = hand.page, len(hand.driver.visit.events)
    if bar(hand).along.can_take():
        bar(hand).line.setText("0")
        bar(hand).take()
    hand.rest()
    for _ in range(12):
        if hand.page is not page or len(hand.driver.visit.events) > before + 3:
            break
        hand.page.enter()
        hand.rest()


def test_after_take_it_the_cursor_and_what_is_asked_are_at_the_first_field(tree):
    walk_on(tree)
    page = tree.page
    assert len(page.rows) > 1
    bar(tree).line.setText("0")
    bar(tree).take()
    tree.rest()
    assert page.rows[0].entry.line.hasFocus()
    assert "1. " in page.essential.text()


def test_a_whole_drill_along_the_tree_to_its_debrief(tree):
    for _ in range(40):
        if tree.driver is None or tree.driver.ask().kind == "finding":
            break
        walk_on(tree)
    assert tree.step == "no_heat.switch_off"
    tree.press("End the drill")
    assert tree.page.findings.chosen == "switch_off"
    tree.page.causes.choose("switched_off")
    tree.page.sentence.setFocus()
    tree.type("Somebody had switched it off.").enter()
    told(tree)
    assert tree.page.told.figures.right
    assert tree.window.driver is None
    folders = list(record.folder_of("Ed").glob("*/trail-*.jsonl"))
    assert len(folders) == 1
    assert all('"practice":true' in line for line in folders[0].read_text("utf-8").splitlines())


def test_what_belongs_to_a_visit_is_shut_in_a_drill(tree):
    for name in ("sign", "person", "leave", "put_down", "pause", "notes", "as_found"):
        tree.window.open(name)
        tree.rest()
        assert "Not in a drill" in tree.verdict, name
    tree.window.open("unproved")
    tree.rest()
    assert "Not in a drill" not in tree.verdict


def test_a_drill_is_not_in_the_list_of_visits(tree):
    tree.window.open("shelf")
    tree.rest()
    assert tree.window.desk.visits() == []


def test_a_drills_folder_put_among_the_visits_opens_as_none(tree):
    """By mistake or on purpose: it is refused in a sentence."""
    import shutil

    source = tree.driver.folder
    tree.window.open("shelf")
    shelf = tree.window.desk.shelf
    shelf.mkdir(parents=True, exist_ok=True)
    shutil.copytree(source, shelf / "2026-11-25-0914-no-heat")
    tree.window.show_start()
    tree.window.take_up(shelf / "2026-11-25-0914-no-heat")
    tree.rest()
    assert "PRACTICE" in tree.verdict
    assert tree.window.driver is None


# -- foreman, looking back


def test_a_foreman_hides_a_fault_by_keyboard(lobby, monkeypatch):
    lobby.press("Foreman")
    assert isinstance(lobby.page, ForemanPage)
    for text in (
        "hide",
        "hot surface igniter",
        "broken",
        "nominal",
        "no heat",
        "igniter open",
        "no cause",
        "hard",
    ):
        lobby.type(text).enter()
    assert lobby.page.asked() == "words", lobby.page.chosen
    lobby.enter()
    assert "Kept" in lobby.verdict
    from assistant.drill.practice.drills import all_drills, all_faults

    faults, wrong = all_faults()
    drills, problems = all_drills(trees().vocabulary, faults)
    assert not wrong and not problems
    assert any(drill.origin == "made here" for drill in drills.values())


def test_one_question_back_asks_the_last_one_again(lobby):
    lobby.press("Foreman")
    page = lobby.page
    page.take("own")
    page.take("igniter")
    assert page.asked() == "change"
    lobby.key(Qt.Key.Key_Escape)
    assert page.asked() == "part"


def test_no_finished_visit_no_list_and_no_crash(lobby):
    lobby.press("Foreman")
    lobby.page.take("visit")
    assert lobby.page.picker.list.count() == 0
    lobby.page.enter()


@pytest.fixture
def looked_back(lobby):
    """Two drills of Ed's behind us."""
    from assistant.drill.practice.debrief import Debrief, debrief
    from assistant.drill.practice.sitting import Sitting

    sitting = Sitting(matter()[1]["dark"], trees(), clock=lambda: 0.0)
    sitting.look("service_switch")
    sitting.conclude("switch_off", "switched_off", "")
    made = next(one for one in debrief(sitting, trees(), matter()[0]) if isinstance(one, Debrief))
    for day in ("01", "02"):
        folder = record.folder_of("Ed") / f"2026-11-{day}"
        record.keep(folder, "Ed", f"2026-11-{day}T09:00:00-05:00", sitting, made)
    lobby.page.looks_back.emit("Ed")
    return lobby.rest()


def test_looking_back_plots_and_says_the_same_in_words(looked_back):
    page = looked_back.page
    assert page.plot.accessibleName().startswith("Plot. 2 drills.")
    assert page.list.count() == 2
    grey = page.plot.grab().toImage()
    ink = look.inks(page.palette()).accent.rgb()
    assert any(grey.pixel(x, y) == ink for x in range(0, grey.width(), 2) for y in range(0, grey.height(), 3))


def test_looking_back_fits_a_small_screen(looked_back):
    bar = looked_back.page.scroll.verticalScrollBar()
    assert bar.maximum() == 0
    assert looked_back.page.list.visibleRegion().boundingRect().height() >= 60


def test_a_debrief_is_read_again_from_looking_back(looked_back):
    looked_back.press("Read its debrief")
    page = looked_back.page
    assert isinstance(page, KeptPage)
    assert page.told[0][0] == "What was wrong"
    assert page.told[-1][0] in ("Your path", "The shortest good path")
    shown = [one.text() for one in page.findChildren(QLabel)]
    assert any(one.startswith("1. Looked at ") and one.endswith("then 1]") for one in shown)
    for size in SIZES.values():
        looked_back.window.resize(*size)
        looked_back.rest()
        check(looked_back.window)
    looked_back.key(Qt.Key.Key_Escape)
    assert isinstance(looked_back.page, HistoryPage)
    assert looked_back.page.who == "Ed"


def test_looking_back_is_saved_as_a_table_and_as_pages_marked_as_practice(looked_back, monkeypatch, tmp_path):
    for words, name in (("Save as table", "t.csv"), ("Save as PDF", "p.pdf")):
        monkeypatch.setattr(files, "pick_file", lambda *_, name=name: tmp_path / name)
        looked_back.press(words)
        assert name in looked_back.verdict
    table = (tmp_path / "t.csv").read_text("utf-8-sig").splitlines()
    assert len(table) == 3
    assert all(line.startswith("practice,") for line in table)
    read = pages((tmp_path / "p.pdf").read_bytes())
    assert read
    assert all("PRACTICE" in page.text for page in read)


def test_a_folder_that_can_not_be_written_to_is_a_sentence(looked_back, monkeypatch, tmp_path):
    monkeypatch.setattr(files, "pick_file", lambda *_: tmp_path / "none" / "x.csv")
    looked_back.press("Save as table")
    assert "can't be written" in looked_back.verdict


# -- for everybody: names, sizes, keys

PAGES = ("lobby", "free", "end", "tree", "foreman", "back")
SIZES = {"1024x600": (1024, 600), "512x300": (512, 300), "1360x820": (1360, 820)}


def come(hand: Hand, name: str) -> Hand:
    if name in ("free", "end"):
        begun(hand, "free")
    if name == "end":
        hand.page.finish()
    if name == "tree":
        begun(hand, "tree")
    if name == "foreman":
        hand.page.foreman.emit()
    if name == "back":
        record.folder_of("Ed")
        hand.page.looks_back.emit("Ed")
    return hand.rest()


@pytest.mark.parametrize("name", PAGES)
def test_every_page_has_names_targets_and_its_big_button_in_sight(lobby, name):
    """Names not empty, unique and with the visible words; 44 px; Next and verdict without scrolling."""
    hand = come(lobby, name)
    for size in SIZES.values():
        hand.window.resize(*size)
        hand.page.say("A verdict")
        hand.rest()
        assert (hand.window.width(), hand.window.height()) == size
        check(hand.window)
        for widget in (hand.page.next_button, hand.page.verdict, hand.window.head.hazard):
            place = QRect(widget.mapTo(hand.window, QPoint(0, 0)), widget.size())
            assert hand.window.rect().contains(place)
            assert widget.visibleRegion().boundingRect() == widget.rect()
        for button in hand.window.findChildren(QAbstractButton):
            if button.isVisible() and type(button).__name__ != "QCheckBox":
                assert min(button.width(), button.height()) >= look.TARGET, button.text()


@pytest.mark.parametrize("name", PAGES)
def test_no_mnemonic_is_given_twice_and_tab_is_never_caught(lobby, name):
    hand = come(lobby, name)
    letters = [b.shortcut().toString() for b in hand.buttons() if not b.shortcut().isEmpty()]
    assert len(letters) == len(set(letters)), letters
    first = QApplication.focusWidget()
    assert first is not None
    for _ in range(60):
        hand.key(Qt.Key.Key_Tab)
        if QApplication.focusWidget() is first:
            return
    raise AssertionError("Tab never comes back")


@pytest.mark.parametrize("name", ["free", "end", "lobby", "back"])
def test_every_page_of_a_drill_says_that_it_is_practice(lobby, name):
    hand = come(lobby, name)
    assert any("PRACTICE" in one.text() for one in hand.page.findChildren(QLabel) if one.isVisible())
