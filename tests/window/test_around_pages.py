"""Pages around the walk, on the shipped trees: by keys alone, by touch alone, with names, at three sizes."""

import pytest
from hand import ESCAPE, Hand
from PySide6.QtCore import Qt
from PySide6.QtGui import QImage
from PySide6.QtWidgets import QLabel
from test_names import check

from assistant.walk.event import Advised, AsLeft, Filled, Paused, PutDown, Recalled, Resumed, Signed
from assistant.window import files
from assistant.window.page.visit.pages import AROUND
from tests.played import DEMO, at, demo_until, shipped

OUT = "yes, or not sure"
PAST = (
    "- recalled: [{visit: b, began: 2026-02-03T09:00:00-05:00, complaints: [No heat],"
    " left: [the drain drips],"
    " fitted: {igniter: 2026-02-03T10:00:00-05:00}, readings: [{quantity: ac_voltage,"
    " at: [igniter.line, igniter.neutral], text: '121.0', when: 2026-02-03T09:40:00-05:00}]}]\n"
)


def words(hand):
    return "\n".join(label.text() for label in hand.page.findChildren(QLabel) if not label.isHidden())


@pytest.fixture
def waiting(go):
    """Waits for an igniter: it was found open, its causes answered, and one was fitted before."""
    return go(PAST + demo_until("- act.set_igniter"))


@pytest.mark.parametrize("size", [(1024, 600), (512, 300), (1360, 820)], ids=["small", "tiny", "wide"])
def test_every_page_has_names_and_fits(waiting, size):
    """Nothing without a name, nothing wider than the window; Esc leads back."""
    waiting.window.resize(*size)
    for name, _ in (*AROUND, ("around", ""), ("leave", ""), ("as_found", ""), ("pause", "")):
        waiting.window.open(name)
        waiting.rest()
        check(waiting.window)
        bar = waiting.page.scroll.horizontalScrollBar()
        assert bar.maximum() == 0, f"{name} is {bar.maximum()} too wide"
        waiting.key(ESCAPE)
        assert waiting.page.ask.step == "act.fit_igniter" or waiting.driver.ask().step


def test_a_digit_opens_a_page_around_the_walk(waiting):
    """Ctrl+R and 6: waiting for a part, with its match data and what comes first."""
    waiting.key(Qt.Key.Key_R, Qt.KeyboardModifier.ControlModifier).digit(6)
    said = words(waiting)
    for part in (
        "Igniter",
        "must not differ in (from memory): volts",
        "Igniter's voltage: 120 V",
        "We fitted one here before",
    ):
        assert part in said, part
    assert "1. Every circuit counts as not known" in said


def test_waiting_for_a_part_pauses_and_somebody_else_goes_on(waiting):
    """Pause, waiting for a part: the page; another day, another name, every circuit unknown."""
    waiting.key(Qt.Key.Key_F9).digit(1).enter()
    waiting.page.lines.fields["due"].setFocus()
    waiting.type("Friday").enter().type("bring the long screwdriver").enter()
    assert "still held or open" in waiting.verdict
    waiting.alt("b").alt("n")
    *_, filled, paused = waiting.driver.visit.events
    assert isinstance(filled, Filled) and filled.answers == {
        "due": "Friday",
        "first": "bring the long screwdriver",
    }
    assert isinstance(paused, Paused)
    assert paused.why.startswith("Waiting for a part, expected Friday; put back")
    said = words(waiting)
    assert said.index("Open now") < said.index("every circuit counts as not known")
    assert "First: bring the long screwdriver" in said
    waiting.page.by.setFocus()
    waiting.type("B. Second").enter()
    event = waiting.driver.visit.events[-1]
    assert isinstance(event, Resumed) and event.by == "B. Second"
    assert set(waiting.driver.visit.house.circuits.values()) == {"unknown"}


def test_the_telephone_by_keys_alone(qtbot, window, desk):
    """A digit answers, Enter goes on; address; the complaint; the visit begins with all of it."""
    desk.library = shipped()
    window.begin()
    hand = Hand(qtbot, window).rest().press("New visit").alt("t")
    hand.enter().enter()
    assert hand.page.answers() == {}, "Enter goes on and answers nothing"
    hand.page.parts[0].first().setFocus()
    hand.digit(1).digit(1)
    assert hand.page.answers() == {"smell": "no", "ill": "no"}
    hand.type("Mx Example").enter().type("12 Sample Street").enter().enter()
    hand.alt("g").digit(1).enter()
    visit = hand.driver.visit
    assert visit.sheets["triage"] == {"smell": "no", "ill": "no"}
    assert hand.driver.person() == {"name": "Mx Example", "address": "12 Sample Street"}
    assert [c.name for c in visit.complaints] == ["no_heat"]


def test_an_answer_sends_everybody_out_before_anyone_drives(qtbot, window, desk):
    """Three lines to say, at once; written down, the visit stands stopped for whoever takes it up."""
    desk.library = shipped()
    window.begin()
    hand = Hand(qtbot, window).rest().press("New visit").press("On the telephone")
    hand.tap(hand.page.parts[0].fields["ill"].buttons[OUT])
    said = words(hand)
    for line in shipped().vocabulary.stops["out_for_carbon_monoxide"].lines:
        assert line in said
    hand.press("Write it down")
    assert hand.driver.ask().kind == "stop" and hand.driver.visit.sheets["triage"] == {"ill": OUT}
    hand.alt("d")
    folder = hand.driver.folder
    hand.window.show_start()
    hand.window.take_up(folder)
    assert "On the telephone: " in words(hand.rest())
    assert "Ask before you go in." in words(hand)


def test_a_call_that_is_left_keeps_what_was_typed(qtbot, window, desk):
    """Esc by mistake, and back."""
    desk.library = shipped()
    window.begin()
    hand = Hand(qtbot, window).rest().press("New visit").press("On the telephone")
    hand.page.parts[1].fields["name"].setFocus()
    hand.type("Mx Example").key(ESCAPE).press("On the telephone")
    assert hand.page.person() == {"name": "Mx Example"}


def test_the_room_read_before_starting_stops_the_work_where_it_is_not_safe(go):
    """Typed on the sheet, not asked by a step."""
    hand = go()
    hand.window.open("before")
    hand.rest()
    hand.page.lines.fields["room_co"].setFocus()
    hand.type("120").alt("v")
    assert hand.driver.ask().kind == "stop"


def test_a_number_that_is_none_is_said_and_stays(go):
    """The text is kept."""
    hand = go()
    hand.window.open("before")
    hand.rest()
    hand.page.lines.fields["room_co"].setFocus()
    hand.type("lots").alt("v")
    assert hand.page.lines.fields["room_co"].text() == "lots" and hand.verdict
    assert not hand.driver.visit.sheets


def test_found_and_left_stand_side_by_side(go, tmp_path, monkeypatch):
    """What was found is shown; one key says the same; a photo goes with it."""
    image = QImage(30, 20, QImage.Format.Format_RGB32)
    image.fill(0x336699)
    image.save(str(tmp_path / "levers.png"))
    monkeypatch.setattr(files, "pick_pictures", lambda _: [tmp_path / "levers.png"])
    hand = go("- as_found: {thermostat: heat 68, levers: half open}\n")
    hand.window.open("as_left")
    hand.rest()
    assert "half open" in words(hand)
    hand.page.lines.fields["levers"].setFocus()
    hand.type("open").alt("e").alt("p").alt("v")
    event = hand.driver.visit.events[-1]
    assert isinstance(event, AsLeft) and event.seen == {"thermostat": "heat 68", "levers": "open"}
    assert len(event.photos) == 1 and (hand.driver.folder / "kept" / event.photos[0]).exists()


def test_leaving_asks_how_it_is_left_where_it_was_written_down_as_found(go):
    """Open points, as left, name and address."""
    hand = go("- as_found: {thermostat: heat 68}\n- before: {says_yes: the owner}\n")
    hand.key(Qt.Key.Key_F10)
    assert "Who may say yes to the work: the owner" in words(hand)
    hand.enter()
    assert hand.page.title == "As left"
    hand.alt("k")
    assert hand.page.title == "For whom"


def test_a_recommendation_needs_a_reason(go):
    """Said in a sentence; nothing typed is lost; then it is written down with the answer."""
    hand = go()
    hand.window.open("advise")
    hand.rest().type("Larger return duct").alt("v")
    assert "why" in hand.verdict and hand.page.lines.fields["what"].text() == "Larger return duct"
    hand.page.lines.fields["why"].setFocus()
    hand.type("too loud").enter().type("0.84").enter().digit(1).enter()
    event = hand.driver.visit.events[-1]
    assert event == Advised(at(500), "Larger return duct", "too loud", "0.84", "accepted")


def test_the_earlier_reading_stands_on_the_page_with_the_change(go):
    """121.0 V in February; 119.4 V today."""
    hand = go(PAST + demo_until("- plate.igniter_volts"))
    assert "Earlier here: 121.0 V, 3 Feb 2026" in words(hand)
    hand.type("119.4").enter()
    assert hand.verdict == "119.4 V – powered; \u22121.6 V (\u22121 %)"


def test_earlier_readings_stand_beside_a_group_and_a_watched_start_too(go):
    """24 V at the board in October; a start that is watched reads the same spot."""
    past = (
        "- recalled: [{visit: b, began: 2025-10-07T09:00:00-04:00, readings:"
        " [{quantity: ac_voltage, at: [r, c], text: '27.0', when: 2025-10-07T09:40:00-04:00}]}]\n"
    )
    hand = go(past + demo_until("- no_heat.hold_door"))
    assert hand.driver.ask().step == "no_heat.board_24v" and "Earlier here: 27.0 V, 7 Oct 2025" in words(hand)
    hand.type("26.1").enter()
    assert "\u22120.9 V (\u22123 %)" in words(hand)
    hand = go(past + DEMO.partition("- no_heat.cycle:")[0], name="second")
    assert hand.driver.ask().kind == "watch" and "Earlier here: 27.0 V, 7 Oct 2025" in words(hand)


def test_a_part_fitted_before_is_pointed_out_at_the_finding_and_at_the_repair(go):
    """Where it is condemned, and before it is fitted again."""
    hand = go(PAST + demo_until("- no_heat.igniter_ohms"))
    assert "We fitted this part here before: igniter" in words(hand)
    hand = go(PAST + demo_until("- pause").rsplit("- pause", 1)[0], name="second")
    assert "Look for what made that one fail" in words(hand)


def test_a_stop_page_carries_the_plan_for_the_night(go):
    """Below what to do now, where the heater stays off."""
    said = words(go("- hazard: fire_damage\n"))
    for part in ("No heat tonight", "one heater to a circuit", "running in a thin stream", "Never an oven"):
        assert part in said, part


def test_healthy_numbers_become_what_a_call_back_expects(go, qtbot, window, desk):
    """A tune-up, signed; then a call-back to it: recalled, and expected on the page of the step."""
    hand = go(complaints=())
    hand.window.open("baseline")
    hand.rest()
    hand.page.lines.fields["supply_volts"].setFocus()
    hand.type("120.0").enter()
    for name, text in (("static_supply", "0.50"),):
        hand.page.lines.fields[name].setText(text)
    hand.tap(hand.page.judged.fields["healthy"].buttons["yes"])
    hand.alt("v")
    kinds = [type(event) for event in hand.driver.visit.events]
    assert kinds.count(PutDown) == 2 and kinds[-1] is Filled
    hand.driver.send(Filled(at(501), "unit", {"serial": "NF 04411"}))
    hand.driver.send(Signed(at(502), "A. Technician"))
    window.show_ask()
    hand.rest().press("Come back here").digit(1).enter()
    visit = hand.driver.visit
    assert visit.sheets["unit"] == {"serial": "NF 04411"}
    assert isinstance(visit.events[-1], Recalled) and visit.past[0].healthy
    assert hand.page.title == "Our earlier visits here"


def test_a_serial_number_typed_later_finds_our_earlier_visit(go):
    """Without anybody asking for it."""
    first = go("- unit: {serial: NF 04411}\n", name="first")
    first.driver.close()
    hand = go(name="today")
    hand.window.open("unit")
    hand.rest()
    hand.page.lines.fields["serial"].setFocus()
    hand.type("nf04411").alt("v")
    assert [past.visit for past in hand.driver.visit.past] == ["first"]


def test_a_tune_up_begins_without_a_complaint(qtbot, window, desk):
    """Its page is open at once; Esc leads to the complaints, should one turn up."""
    desk.library = shipped()
    window.begin()
    hand = Hand(qtbot, window).rest().press("New visit").press("Tune-up")
    assert hand.page.title == "The healthy numbers of this unit"
    hand.key(ESCAPE)
    assert hand.driver.ask().kind == "choose" and next(iter(hand.page.choices.buttons)) == "healthy numbers"
    hand.digit(2).enter()
    assert hand.driver.ask().step == "no_heat.kind"


def test_the_next_caller_finds_an_empty_sheet_and_the_other_call_is_offered(qtbot, window, desk):
    """Answers about gas must never be those of somebody else."""
    desk.library = shipped()
    window.begin()
    hand = Hand(qtbot, window).rest().press("New visit").press("On the telephone")
    first = hand.page.parts[0]
    hand.digit(1).digit(1).type("Mx Example")
    assert len(first.texts()) == 2
    assert hand.page.person() == {"name": "Mx Example"}
    hand.key(ESCAPE).key(ESCAPE)
    hand.rest().press("New visit").press("On the telephone")
    assert hand.page.answers() == {}
    assert hand.page.person() == {}
    hand.press("Go on with the interrupted call: Mx Example")
    assert hand.page.person() == {"name": "Mx Example"}
    assert len(hand.page.parts[0].texts()) == 2


def test_a_caller_is_told_nothing_about_a_machine(qtbot, window, desk):
    desk.library = shipped()
    window.begin()
    hand = Hand(qtbot, window).rest().press("New visit").press("On the telephone")
    hand.digit(2)
    said = words(hand)
    assert "GAS. Everybody out." in said
    assert "Touch no switch, plug, phone or bell." in said
    assert "this machine" not in said
