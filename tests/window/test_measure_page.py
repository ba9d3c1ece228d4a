"""One reading: Enter judges and saves, Enter again goes on; nothing typed is ever lost."""

from assistant.walk.event import Back, Cannot, Read, StillTrue


def test_enter_saves_and_enter_again_goes_on(at):
    """After the first Enter the answer is on disk and its verdict stands; the second shows the next page."""
    hand = at("to_volts").type("118.4")
    assert hand.verdict == "understood: 118.4 V"
    hand.enter()
    assert hand.verdict == "118.4 V – supplied"
    assert hand.page.saved and hand.page.entry.line.isReadOnly()
    assert isinstance(hand.driver.visit.events[-1], Read)
    assert "118.4" in (hand.driver.folder / trail(hand)).read_text(encoding="utf-8").splitlines()[-1]
    hand.enter()
    assert hand.page.question.text() == "Turn the thermostat to OFF"


def trail(hand):
    return next(path.name for path in hand.driver.folder.iterdir() if path.suffix == ".jsonl")


def test_what_is_typed_is_echoed_while_typing(at):
    """Live, and never changed: a comma, a unit, a spread."""
    hand = at("to_volts")
    for text, said in (("118,4", "118.4 V"), ("0.1184 kV", "118.4 V"), ("117-119", "117 to 119 V")):
        hand.page.entry.line.clear()
        hand.type(text)
        assert said in hand.verdict
        assert hand.page.entry.text == text


def test_nothing_typed_is_no_reading(at):
    """Blank is not zero: the page says so and stays."""
    hand = at("to_volts").enter()
    assert hand.verdict.startswith("Nothing typed yet")
    assert not hand.page.saved
    assert not any(isinstance(event, Read) for event in hand.driver.visit.events)


def test_text_that_is_no_reading_is_kept(at):
    """What to write instead is said; the text stays as typed."""
    hand = at("to_volts").type("about right").enter()
    assert hand.page.entry.text == "about right"
    assert hand.verdict and not hand.page.saved


def test_an_implausible_value_asks_did_you_mean(at):
    """1184 where 118.4 was meant: three big buttons for near values, one for 'it really shows it'."""
    hand = at("to_volts").type("1184").enter()
    words = [button.text() for button in hand.page.offers.buttons]
    assert words[0] == "I meant 118.4 V" and words[-1] == "It really shows 1184 V"
    assert hand.page.entry.text == "1184"
    hand.digit(1)
    assert hand.page.saved and hand.verdict.startswith("118.4 V")


def test_an_implausible_value_can_be_insisted_on(at):
    """What the meter shows is what counts, and 1184 V is a stop."""
    hand = at("to_volts").type("1184").enter().press("It really shows")
    assert hand.driver.visit.events[-1].readings["volts"].sure
    assert hand.verdict == "STOP: Leave it off"
    assert hand.enter().driver.ask().kind == "stop"


def test_escape_puts_the_question_away_and_keeps_the_text(at):
    """Esc never loses anything."""
    hand = at("to_volts").type("1184").enter().key(hand_escape())
    assert hand.page.offers.isHidden() and hand.page.entry.text == "1184"
    assert hand.page.entry.line.hasFocus()
    assert hand.key(hand_escape()).page.entry.text == "1184"


def hand_escape():
    from hand import ESCAPE

    return ESCAPE


def test_a_doubtful_text_is_chosen_by_a_person(at):
    """1,200 may be either; the trail keeps the text and the choice."""
    hand = at("to_volts").type("1,200").enter()
    assert [button.text() for button in hand.page.offers.buttons] == ["1200", "1.200"]
    hand.digit(2)
    typed = hand.driver.visit.events[-1].readings["volts"]
    assert (typed.text, typed.chosen) == ("1,200", "1.200")


def test_too_close_to_call_is_taken_once_more(at):
    """A spread over a limit: said at once, asked once more with a banner, then the tree's own way."""
    hand = at("to_volts").type("107-109").enter()
    assert "too close to call" in hand.verdict
    hand.enter()
    assert hand.driver.ask().retake
    assert "once more" in texts(hand)
    assert "Let it settle" in texts(hand)
    kept = (hand.driver.folder / trail(hand)).read_text(encoding="utf-8").splitlines()[-1]
    assert "take the middle" in kept
    hand.type("107-109").enter().enter()
    assert hand.driver.ask().kind == "stop"


def texts(hand) -> str:
    from PySide6.QtWidgets import QLabel

    return "\n".join(label.text() for label in hand.page.findChildren(QLabel) if label.isVisible())


def test_cannot_take_it_asks_why_and_goes_on(at):
    """A reason is one digit; the tree's way on is taken."""
    hand = at("to_volts").alt("c").digit(2)
    event = hand.driver.visit.events[-1]
    assert isinstance(event, Cannot) and event.why == "No meter for it"
    assert hand.driver.ask().kind == "stop"


def test_wont_hold_steady_tells_how_to_write_it(at):
    """The lowest and the highest, as a spread."""
    hand = at("to_volts").alt("w")
    assert "4.5-6" in hand.verdict
    assert hand.page.entry.line.hasFocus()


def test_a_slip_is_mended_with_the_text_at_hand(at):
    """Back to the same question with what was typed; the trail says slip."""
    hand = at("to_volts").type("118.4").enter().alt("m")
    assert isinstance(hand.driver.visit.events[-1], Back)
    assert hand.driver.visit.events[-1].why == "slip"
    assert hand.page.entry.text == "118.4" and not hand.page.saved


def test_an_earlier_reading_is_still_true_with_one_key(at):
    """Back to look again, the reading of the same spot is offered, with its time; a slip is not."""
    from PySide6.QtCore import Qt

    hand = at("to_volts").type("118.4").enter().key(Qt.Key.Key_F4).enter()
    assert hand.button("Still true").text() == "&Still true: 118.4 V at 9:14"
    hand.alt("s")
    assert isinstance(hand.driver.visit.events[-1], StillTrue)
    assert hand.page.saved


def test_a_page_beside_the_walk_keeps_what_was_typed(at):
    """F2 and back: the field still holds it, and the focus is in it."""
    from PySide6.QtCore import Qt

    hand = at("to_volts").type("11").key(Qt.Key.Key_F2).key(hand_escape())
    assert hand.page.entry.text == "11"
    assert hand.type("8").page.entry.text == "118"


def test_a_disk_that_takes_nothing_keeps_the_text(at, monkeypatch):
    """The sentence is shown, nothing has moved, and the same Enter works once the disk does again."""
    from assistant.trail.error import TrailError

    hand = at("to_volts").type("118.4")
    recorder = hand.driver.recorder
    append = recorder.append

    def full(*_):
        raise TrailError("The disk is full. This answer is not saved yet.")

    monkeypatch.setattr(recorder, "append", full)
    hand.enter()
    assert hand.verdict.startswith("The disk is full")
    assert hand.page.entry.text == "118.4" and not hand.page.saved
    monkeypatch.setattr(recorder, "append", append)
    assert hand.enter().page.saved


def test_where_the_limits_come_from_is_said(at):
    """Next to the scale: read with its number, or from memory where nobody looked it up."""
    hand = at("to_volts")
    said = hand.page.limits.text()
    assert "12 V, 108 V: read, example 12 2011" in said
    assert "150 V: from memory" in said


def test_the_pad_types_into_the_field(at):
    """Digits, point, rub out and Enter by touch alone."""
    hand = at("to_volts").press("Pad")
    for key in ("1", "1", "8", ".", "5", "⌫", "4", "Enter"):
        hand.tap(hand.page.pad.keys[key])
    assert hand.verdict == "118.4 V – supplied"


def test_the_caution_is_full_once_and_short_after(at):
    """Full while power has not changed since it was first shown, then one line, then full again after
    switching.
    """
    hand = at("to_volts")
    hand.window.resize(1360, 820)
    hand.rest()
    assert [sign.full for sign in hand.page.cautions] == [True, True]
    hand.type("118.4").enter().alt("m")
    assert [sign.full for sign in hand.page.cautions] == [False, False]


def test_in_a_narrow_window_the_gravest_caution_is_whole_and_the_rest_comes_with_the_next_page(at):
    """None of them is cut off by the foot at 1024 by 600, and none counts as read that stood in one line."""
    hand = at("to_volts")
    page = hand.page
    ((short, full),) = page._spare
    assert short.isVisible() and not full.isVisible()
    whole = next(sign for sign in page.cautions if sign is not full)
    assert whole.full and whole.isVisible()
    for sign in (whole, short):
        bottom = sign.mapTo(page.scroll.viewport(), sign.rect().bottomLeft()).y()
        assert bottom <= page.scroll.viewport().height(), sign.accessibleName()
    hand.type("118.4").enter().alt("m")
    assert [sign.full for sign in hand.page.cautions] == [sign is full for sign in page.cautions]
