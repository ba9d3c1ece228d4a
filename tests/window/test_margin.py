"""The path so far: numbered notes in the margin, one line in a narrow window."""

from itertools import pairwise


def test_notes_are_numbered_and_say_question_and_answer(at):
    """As written down by the walk, names made plain."""
    hand = at("to_ohms")
    notes = hand.window.margin.notes
    said = [notes.item(row).text() for row in range(notes.count())]
    assert said[0] == "1. What does the blower do, with the call on for two minutes?\nstill"
    assert said[1].endswith("118.4 V: supplied")
    assert "(to make it safe)" in said[2]
    assert "the circuit" in said[4] and "$" not in "".join(said)


def test_a_note_says_no_more_than_it_must(at):
    """What a display's zero may be at most stands on the step, not in the margin."""
    hand = at("to_ohms")
    assert (
        hand.window.margin.notes.item(4)
        .text()
        .endswith("121.4 V: live; 0 V: dead; 0 V: dead; 0 V: dead; 121.2 V: live")
    )


def test_the_latest_note_is_in_sight(at):
    """Scrolled to the end, as in a notebook."""
    hand = at("to_proof")
    hand.window.resize(1360, 520)
    hand.rest()
    notes = hand.window.margin.notes
    last = notes.visualItemRect(notes.item(notes.count() - 1))
    assert notes.viewport().rect().contains(last)


def test_notes_do_not_lie_on_each_other(at):
    """Each as tall as its words need at this width."""
    hand = at("to_proof")
    hand.window.resize(1360, 820)
    hand.rest()
    notes = hand.window.margin.notes
    boxes = [notes.visualItemRect(notes.item(row)) for row in range(notes.count())]
    for above, below in pairwise(boxes):
        assert above.bottom() < below.top() + 1
    delegate = notes.itemDelegate()
    for row, box in enumerate(boxes):
        asked, answer = delegate._heights(notes.indexFromItem(notes.item(row)), box.width())
        assert box.height() >= asked + answer


def test_the_strip_begins_with_the_latest(at):
    """In a narrow window; cut at its end, never at its beginning."""
    hand = at("to_volts")
    assert hand.window.head.strip.text().startswith("1. What does the blower do")


def test_the_answer_just_given_is_there_while_its_verdict_stands(at):
    """Before Next is pressed."""
    hand = at("to_volts").type("118.4").enter()
    assert hand.window.margin.notes.count() == 2


def test_how_many_are_still_unproved_is_always_shown(at):
    """At the top of a narrow window, as a list beside a wide one."""
    hand = at()
    assert hand.window.head.unproved.text() == "Still unproved: 3 (F3)"
    hand.window.resize(1360, 820)
    hand.rest()
    from PySide6.QtWidgets import QLabel

    said = "\n".join(label.text() for label in hand.page.unproved.findChildren(QLabel))
    assert "– Blower motor winding open" in said


def test_repairs_are_sentences(at):
    """What was done in the act's own words, not by its name in the trees."""
    from assistant.walk.event import Concluded, Did

    hand = at("to_conclude")
    address = hand.driver.ask().step
    hand.driver.send(Concluded("2026-11-25T09:14:00-05:00", address, "worn"))
    act = hand.driver.ask()
    hand.driver.send(Did("2026-11-25T09:14:00-05:00", act.step, 60.0))
    notes = hand.window.margin.notes
    said = [notes.item(row).text() for row in range(notes.count())]
    act_words = hand.driver.vocabulary.acts[act.step.removeprefix("act.")].say
    assert said[-1].startswith(f"{len(said)}. {act_words}\n")
    assert not any(". act " in text or ". cause " in text for text in said)


def test_every_act_and_finding_has_words(at):
    """In the path as on its own page."""
    from assistant.window import words

    library = at().driver.library
    for name, act in library.vocabulary.acts.items():
        assert words.question_at(library, f"act.{name}") == act.say
    found = words.question_at(library, "cause.motor_open")
    assert found == "What you concluded about the cause of: Blower motor winding open"
    assert words.question_at(library, "cause.nowhere") == "What you concluded about the cause"
