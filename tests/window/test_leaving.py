"""Handing over: open points, name and address, the signature, the report."""

import json

import pytest
from hand import ESCAPE
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLabel

from assistant.trail.keep import person
from assistant.walk.event import Exported, LeftOpen, Signed
from assistant.window import files


def words(hand):
    return "\n".join(label.text() for label in hand.page.findChildren(QLabel) if label.isVisible())


def test_an_open_point_stays_open_with_its_reason(at):
    """Chosen by its digit, the reason typed; the page shows it from then on."""
    hand = at("to_dead_proof").key(Qt.Key.Key_F10)
    heads = [button.text() for button in hand.page.choices.buttons.values()]
    assert "power: furnace branch circuit: switched off, not proved dead" in heads
    hand.digit(1 + heads.index("power: furnace branch circuit: switched off, not proved dead"))
    hand.type("the customer wants it off").enter()
    event = hand.driver.visit.events[-1]
    assert isinstance(event, LeftOpen) and event.point == "power.line"
    assert any(b.small == "stays open: the customer wants it off" for b in hand.page.choices.buttons.values())


def test_a_reason_without_a_point_is_not_lost(at):
    """The page asks which one, the text stays."""
    hand = at("to_dead_proof").key(Qt.Key.Key_F10)
    hand.tap(hand.page.reason).type("later").enter()
    assert hand.verdict == "Choose first what stays open."
    assert hand.page.reason.text() == "later"


def test_name_and_address_lie_beside_the_trail(at):
    """In kept/, under their hash; no word of them in the trail."""
    hand = at("to_proved").enter().enter()
    hand.type("A. Example").enter().type("12 Mill Lane").enter().enter().enter()
    visit = hand.driver.visit
    assert person(hand.driver.folder, visit.person) == {"name": "A. Example", "address": "12 Mill Lane"}
    trail = next(hand.driver.folder.glob("*.jsonl")).read_text(encoding="utf-8")
    assert "Mill Lane" not in trail
    assert type(hand.page).__name__ == "SignPage"


def test_signing_closes_the_visit(at):
    """The fingerprint stands on the page, and nothing else can be opened over it."""
    hand = at("to_proved").enter().enter().enter().enter().enter().enter().type("R. Ortiz").enter()
    hand.enter()  # the first press says what the second does
    assert isinstance(hand.driver.visit.events[-1], Signed)
    assert hand.driver.ask().kind == "signed"
    assert hand.driver.recorder.tip[:4] in words(hand)
    page = hand.page
    hand.key(Qt.Key.Key_F2)
    assert hand.page is page
    hand.enter()
    assert type(hand.page).__name__ == "StartPage"


def test_what_must_be_put_back_blocks_the_signature(at, scene, window, qtbot):
    """A held door switch: the sentence says what, the name stays."""
    from dataclasses import replace

    from hand import Hand
    from scenes import AT

    from assistant.walk.house import Undone

    visit = scene().to_proved()
    held = Undone("hold_door", "free_door", "no_heat.fan", AT)
    live = visit.driver.live
    live.visit = replace(live.visit, house=replace(live.visit.house, undone=(held,)))
    window.show_visit(visit.driver)
    hand = Hand(qtbot, window).rest()
    assert "Take the holder out" in words(hand)
    window.open("sign")
    hand.rest().type("R. Ortiz").enter().enter()
    assert "still to be put back" in hand.verdict
    assert hand.page.name.text() == "R. Ortiz"


def test_nothing_is_signed_without_a_name(at):
    """An empty line leads back."""
    hand = at("to_proved")
    hand.window.open("sign")
    hand.rest().enter()
    assert hand.driver.visit.signed is None


@pytest.mark.parametrize("paper", ["Letter", "A4"])
def test_the_report_is_saved_and_recorded(at, tmp_path, monkeypatch, paper):
    """PDF, HTML, text and CSV in the chosen folder; the trail has the export with the fingerprint before
    it.
    """
    folder = tmp_path / "out"
    folder.mkdir()
    monkeypatch.setattr(files, "pick_folder", lambda *_: folder)
    hand = at("to_proved")
    tip = hand.driver.recorder.tip
    hand.window.open("sign")
    hand.rest().press(f"Save the report, {paper}")
    assert hand.verdict == f"The report is in {folder}."
    assert {path.suffix for path in folder.iterdir()} == {".pdf", ".html", ".txt", ".csv", ".json"}
    event = hand.driver.visit.events[-1]
    assert isinstance(event, Exported) and event.fingerprint == tip


def test_a_report_that_can_not_be_written_says_so(at, tmp_path, monkeypatch):
    """A sentence in the foot; the visit is as it was."""
    blocked = tmp_path / "file"
    blocked.write_text("in the way", encoding="utf-8")
    monkeypatch.setattr(files, "pick_folder", lambda *_: blocked / "below")
    hand = at("to_proved")
    hand.window.open("sign")
    before = len(hand.driver.visit.events)
    hand.rest().press("Save the report, A4")
    assert hand.verdict and len(hand.driver.visit.events) == before


def test_half_typed_names_survive_escape(at):
    """Esc and back again: the address is still there."""
    hand = at("to_proved").enter().enter().type("A. Example").key(ESCAPE)
    hand.window.open("person")
    hand.rest()
    assert hand.page.lines["name"].text() == "A. Example"


def test_the_trail_holds_what_was_done_in_order(at):
    """One line an event, read back from the disk."""
    hand = at("to_proved")
    lines = next(hand.driver.folder.glob("*.jsonl")).read_text(encoding="utf-8").splitlines()
    kinds = [json.loads(line).get("kind") for line in lines]
    assert kinds.count("read") >= 3
