"""Pausing with something held, signing on purpose, times that make no sense, the part that goes in, visits
that may have been here too, a night without heat: by keys alone."""

import pytest
from hand import ESCAPE
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QAbstractButton, QLabel
from test_geometry import inside
from test_names import check

from assistant.past.erase import erase_customer
from assistant.trail.calls import Call
from assistant.walk.event import Did, Filled, Paused, Person, Recalled, Signed, Watched
from assistant.window import look
from assistant.window.page import base
from tests.played import DEMO, at, demo_until, shipped

PHONE = "518 555 0100"


def words(hand):
    return "\n".join(label.text() for label in hand.page.findChildren(QLabel) if not label.isHidden())


@pytest.fixture
def held(go):
    """The door switch is held in."""
    hand = go(demo_until("- no_heat.hold_door"))
    assert any(entry.act == "hold_door_switch" for entry in hand.driver.visit.house.undone)
    return hand


def test_a_pause_with_something_held_lists_what_to_do_and_asks_why_it_stays(held):
    """It can still be paused: with the reason, which is no leave to sign."""
    held.key(Qt.Key.Key_F9)
    said = words(held)
    assert said.index("Before you go, do these now") < said.index("Take the holder out and put the door on")
    held.digit(2).enter()
    assert "still held or open" in held.verdict and held.driver.visit.paused is None
    held.type("the owner locks the room").enter()
    event = held.driver.visit.events[-1]
    assert isinstance(event, Paused) and event.why == "Another day; left so: the owner locks the room"
    assert not held.driver.visit.left


def test_the_first_thing_on_the_waiting_page_is_the_part_number(go):
    """Enter by Enter down the sheet, and the last one pauses."""
    hand = go(demo_until("- act.set_igniter"))
    hand.window.open("waiting")
    hand.rest()
    assert hand.page.lines.fields["number"].hasFocus()
    hand.type("IG-2207").enter().enter().type("Friday").enter().enter()
    assert "still held or open" in hand.verdict, "the door switch"
    hand.alt("b").alt("n")
    event = hand.driver.visit.events[-1]
    assert isinstance(event, Paused)
    assert event.why.endswith("expected Friday; put back for now: take the holder out and put the door on")
    assert hand.page.by.hasFocus(), "whoever goes on writes a name, or presses Enter"


def test_the_page_that_fits_a_part_shows_what_was_ordered_and_takes_its_number(go):
    """What it must match, the plate, the order; one press takes the ordered number."""
    hand = go(demo_until("- act.set_igniter") + "- order: {number: IG-2207, supplier: the counter}\n")
    assert hand.step == "act.fit_igniter" and hand.page.fitting.line.hasFocus()
    said = words(hand)
    for part in ("Ordered: IG-2207, from the counter", "must not differ in", "Igniter's voltage: 120 V"):
        assert part in said, part
    assert "Power: furnace branch circuit, 120 V off and proved dead" in said
    hand.alt("a").enter()
    assert hand.driver.visit.events[-1] == Did(at(500), "act.fit_igniter", number="IG-2207")
    assert hand.driver.visit.numbers == {"igniter": "IG-2207"}


def test_a_part_without_a_number_is_fitted_all_the_same(go):
    """Enter on the empty line."""
    hand = go(demo_until("- act.set_igniter")).enter()
    assert hand.driver.visit.events[-1] == Did(at(500), "act.fit_igniter")


def test_signing_takes_a_deliberate_second_press(go, monkeypatch):
    """The name of whoever went on stands there; Enter in it only says what comes."""
    hand = go("- pause: another day\n- resume: B. Second\n- hazard: water_in_controls\n")
    hand.window.open("sign")
    hand.rest()
    assert hand.page.name.text() == "B. Second"
    monkeypatch.setattr(base, "SETTLE", 5.0)
    hand.enter()
    assert hand.driver.visit.signed is None and "closes this visit for good" in hand.verdict
    hand.enter()
    assert hand.driver.visit.signed is None, "the same press twice is no second thought"
    monkeypatch.setattr(base, "SETTLE", 0.0)
    hand.enter()
    assert hand.driver.visit.signed == "B. Second"
    hand = go("- hazard: water_in_controls\n", name="next")
    hand.window.open("sign")
    hand.rest()
    assert hand.page.name.text() == "B. Second", "who signed last on this computer"


def test_a_slip_in_a_watched_start_is_offered_to_be_taken_out(go):
    """The second thing before the first: put right by one key, or kept and said in the trail."""
    hand = go(DEMO.partition("- no_heat.cycle:")[0])
    page = hand.page
    first, second = list(page.events)[:2]
    page.clock = lambda: 100.0
    page.start()
    page.clock = lambda: 103.0
    page.happened(second)
    page.clock = lambda: 109.0
    page.happened(first)
    hand.enter()
    assert "is before" in page.offers.findChildren(QLabel)[0].text()
    hand.digit(2)
    assert list(page.times) == [first]
    page.again()
    page.clock = lambda: 200.0
    page.start()
    page.clock = lambda: 203.0
    page.happened(second)
    page.clock = lambda: 209.0
    page.happened(first)
    hand.enter().digit(1)
    page._save()
    event = next(e for e in reversed(hand.driver.visit.events) if isinstance(e, Watched))
    assert event.events[second] < event.events[first]
    assert any("doubtful" in taken.answer for taken in hand.driver.visit.history[-3:])


def test_alt_n_is_the_big_button_and_writes_nothing(go):
    """On pages whose button says Save, Skip or Back to it."""
    hand = go()
    for page in ("before", "as_found", "advise"):
        hand.window.open(page)
        page_before = hand.rest().page
        hand.alt("n")
        assert hand.page is not page_before, page
    hand.window.open("tonight")
    hand.rest().type("left off").alt("n")
    assert hand.driver.visit.sheets["tonight"] == {"done": "left off"}


def test_the_night_without_heat_shows_the_call_and_goes_into_the_trail(go):
    """Who needs heat most was asked on the telephone."""
    hand = go("- triage: {most: a baby, cold: '58', water: 'yes'}\n")
    hand.window.open("tonight")
    said = words(hand.rest())
    assert "Who needs heat most? a baby" in said and "Is there water" in said
    assert "Never an oven" in said
    hand.type("off, gas cock closed, tag on").enter().enter().enter().type("the owner").enter()
    hand.digit(1)
    hand.page.lines.fields["back"].setFocus()
    hand.type("Friday, 8").alt("v")
    assert hand.driver.visit.events[-1] == Filled(
        at(500),
        "tonight",
        {
            "done": "off, gas cock closed, tag on",
            "told": "the owner",
            "freeze": "shown and understood",
            "back": "Friday, 8",
        },
    )


def test_the_telephone_sheet_stands_around_the_walk(go):
    """Read again, and added to."""
    hand = go("- triage: {most: a baby}\n")
    hand.key(Qt.Key.Key_R, Qt.KeyboardModifier.ControlModifier).digit(1)
    assert hand.page.title == "On the telephone" and hand.page.lines.fields["most"].text() == "a baby"


@pytest.mark.parametrize(
    ("first", "today", "why"),
    [
        ({"address": "12 Sample Lane, Apt. 3"}, {"address": "12 SAMPLE LN #3"}, "written differently"),
        ({"address": "12 Sample St."}, {"address": "12 Sample Street Apt 2"}, "in one of the two only"),
        ({"address": "9 Other Rd", "phone": PHONE}, {"phone": "(518) 555-0100"}, "telephone number"),
    ],
)
def test_a_visit_that_may_have_been_here_is_offered_and_not_taken_for_granted(go, first, today, why):
    """Looked at, chosen by a person; then its readings stand beside today's."""
    hand = go("- as_found: {filter: new}\n", name="first")
    hand.driver.send(Person(at(1), hand.driver.keep_person(first)))
    hand.driver.close()
    hand = go(name="today")
    hand.driver.send(Person(at(1), hand.driver.keep_person(today)))
    assert hand.driver.visit.past == () and len(hand.driver.perhaps) == 1
    hand.window.open("earlier")
    hand.rest()
    assert why in next(iter(hand.page.offered.buttons.values())).small
    hand.enter()
    assert hand.driver.visit.past == ()
    hand.window.open("earlier")
    hand.rest().digit(1).enter()
    assert [past.visit for past in hand.driver.visit.past] == ["first"]
    assert isinstance(hand.driver.visit.events[-1], Recalled) and not hand.driver.perhaps
    hand.driver.send(Filled(at(2), "unit", {"serial": "Q 5"}))
    assert [past.visit for past in hand.driver.visit.past] == ["first"], "what a person said stays"


def test_other_units_of_the_house_are_not_offered(go):
    """Two homes under one roof."""
    hand = go("- as_found: {filter: new}\n", name="first")
    hand.driver.send(Person(at(1), hand.driver.keep_person({"address": "12 Sample Ln Apt 2"})))
    hand.driver.close()
    hand = go(name="today")
    hand.driver.send(Person(at(1), hand.driver.keep_person({"address": "12 Sample Lane, Unit 3"})))
    assert hand.driver.perhaps == [] and hand.driver.visit.past == ()


def test_what_was_seen_before_stands_beside_the_look(go):
    """Looks as well as readings."""
    past = (
        "- recalled: [{visit: b, began: 2026-02-03T09:00:00-05:00, looks: [{step: no_heat.kind,"
        " thing: heater.kind, value: gas with spark pilot or direct spark,"
        " when: 2026-02-03T09:10:00-05:00}]}]\n"
    )
    hand = go(past)
    assert hand.step == "no_heat.kind"
    assert "Earlier here: gas with spark pilot or direct spark, 3 Feb 2026" in words(hand)


def test_a_visit_that_was_erased_elsewhere_loses_its_name_when_one_comes_back(go, qtbot, desk):
    """The list was left open; somebody erased the customer in another program meanwhile."""
    hand = go()
    hand.driver.send(Person(at(1), hand.driver.keep_person({"name": "Mx Example"})))
    folder = hand.driver.folder
    hand.key(Qt.Key.Key_W, Qt.KeyboardModifier.ControlModifier)
    assert "Mx Example" in hand.page.visits.item(0).text()
    erase_customer(folder, at(2), "A. Foreman")
    from PySide6.QtCore import QEvent
    from PySide6.QtWidgets import QApplication

    QApplication.sendEvent(hand.page, QEvent(QEvent.Type.ActivationChange))
    qtbot.waitUntil(lambda: "Mx Example" not in hand.page.visits.item(0).text())


def test_tab_comes_to_the_big_button_last(go):
    """Paused: the name, then Go on; nothing of the page after it."""
    from PySide6.QtWidgets import QApplication

    hand = go("- pause: another day\n")
    assert hand.page.by.hasFocus()
    hand.key(Qt.Key.Key_Tab)
    assert QApplication.focusWidget() is hand.page.next_button


def test_esc_on_these_pages_leads_back(go):
    hand = go("- triage: {most: a baby}\n")
    for name in ("tonight", "triage", "earlier", "pause", "waiting"):
        hand.window.open(name)
        hand.rest().key(ESCAPE)
        assert hand.step == "no_heat.kind" and hand.page.ask.step == hand.step
    assert not any(isinstance(event, Signed) for event in hand.driver.visit.events)


def test_a_call_from_a_house_we_know_opens_with_what_may_have_been_there(qtbot, window, go, desk):
    """By keys from the telephone on: the address as the caller says it, the visit of last winter offered."""
    hand = go("- as_found: {filter: new}\n", name="first")
    hand.driver.send(Person(at(1), hand.driver.keep_person({"address": "12 Sample Lane"})))
    hand.key(Qt.Key.Key_W, Qt.KeyboardModifier.ControlModifier)
    hand.press("New visit").press("On the telephone").digit(1).digit(1)
    hand.type("Mx Example").enter().type("12 sample ln.").alt("g").digit(1).enter()
    assert hand.page.title == "Our earlier visits here" and hand.driver.visit.past == ()
    hand.digit(1).enter()
    assert [past.visit for past in hand.driver.visit.past] == ["first"]
    assert hand.driver.ask().step == "no_heat.kind"


def test_why_a_point_stays_open_is_not_lost_with_the_window(go):
    """Typed, and the visit closed before it was chosen."""
    hand = go()
    folder = hand.driver.folder
    hand.key(Qt.Key.Key_F10)
    hand.page.reason.setFocus()
    hand.type("the owner decides").key(Qt.Key.Key_W, Qt.KeyboardModifier.ControlModifier)
    hand.window.take_up(folder)
    hand.rest().key(Qt.Key.Key_F10)
    assert hand.page.reason.text() == "the owner decides"


def test_volts_of_a_dead_circuit_are_no_healthy_numbers(go):
    """The dead-proof read the same places as the healthy numbers ask for."""
    hand = go(demo_until("- act.set_igniter"))
    hand.window.open("baseline")
    lines = hand.rest().page.lines.fields
    assert lines["supply_volts"].text() == "121.6" and not lines["control_volts"].text().startswith("0")


@pytest.mark.parametrize("size", [(1024, 600), (512, 300), (1360, 820)], ids=["small", "tiny", "wide"])
def test_these_pages_have_names_large_targets_and_their_button_in_sight(go, desk, size):
    """Stop and who cleared it, held, the part that goes in, an interrupted call, an earlier visit."""

    def right(hand):
        hand.window.resize(*size)
        hand.rest()
        check(hand.window)
        assert inside(hand.window, hand.page.next_button)
        small = [
            button.text()
            for button in hand.window.findChildren(QAbstractButton)
            if button.isVisible() and min(button.width(), button.height()) < look.TARGET
        ]
        assert not small
        assert hand.page.scroll.horizontalScrollBar().maximum() == 0

    hand = go("- hazard: gas_smell\n", name="a")
    right(hand)
    hand.window.open("cleared")
    right(hand)
    hand = go(demo_until("- no_heat.hold_door"), name="b")
    hand.window.open("pause")
    right(hand)
    hand = go(demo_until("- act.set_igniter") + "- order: {number: IG-2207}\n", name="c")
    right(hand)
    hand.window.open("waiting")
    right(hand)
    hand.driver.perhaps = [(desk.shelf / "a", "Mx Example\n2026-02-03: the same telephone number")]
    hand.window.open("earlier")
    right(hand)
    call = Call(desk.calls, at(0))
    call.texts["name"] = "Mx Example & Co., " * 8
    call.keep()
    call.let_go()
    hand.window.show_start()
    right(hand)


def test_the_three_lines_of_every_shipped_stop_page_are_in_sight_at_1024_by_600(go):
    """Without scrolling, and no smaller than what is read from two metres."""
    from PySide6.QtGui import QFontMetricsF

    from assistant.walk.ask import Ask
    from assistant.window.page.stop import StopPage

    hand = go()
    for name in shipped().vocabulary.stops:
        page = StopPage(hand.driver, Ask("stop", page=name), shipped().vocabulary)
        hand.window._put(page)
        hand.rest()
        last = page.lines[-1]
        bottom = last.mapTo(page.scroll.viewport(), last.rect().bottomLeft()).y()
        assert bottom <= page.scroll.viewport().height(), name
        assert QFontMetricsF(last.font()).capHeight() >= 2000 / 300 / 25.4 * 96
