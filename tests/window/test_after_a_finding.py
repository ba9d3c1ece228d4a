"""The finding's page, the conclusion, the repair and the proof: what a walk ends with."""

from PySide6.QtWidgets import QLabel

from assistant.walk.event import Concluded, GoOn


def words(hand):
    return "\n".join(label.text() for label in hand.page.findChildren(QLabel) if not label.isHidden())


def test_a_finding_shows_facts_causes_repair_and_proof(at):
    """Everything a technician needs before a part is bought, in this order."""
    hand = at("to_finding")
    said = words(hand)
    for part in (
        "What failed",
        "Blower motor winding open",
        "118.4 V – supplied",
        "Too little air over the motor",
        "Fit a blower motor",
        "The blower runs on its volts",
        "The motor of the fan had burnt through.",
    ):
        assert part in said, part
    order = [
        said.index(part) for part in ("The facts that show it", "Rule out", "Then do", "Proved repaired by")
    ]
    assert order == sorted(order)
    assert hand.verdict == "Next: why did it fail?"


def test_enter_goes_on_to_the_first_cause(at):
    """The cause's own tree is walked like any other."""
    hand = at("to_finding").enter()
    assert isinstance(hand.driver.visit.events[-1], GoOn)
    assert hand.page.question.text() == "What is the filter like?"


def test_nothing_failed_is_said_as_such(at):
    """A finding without a fault has its reason, and condemns nothing."""
    hand = at("to_ohms").type("12").enter().enter()
    said = words(hand)
    assert "Nothing failed" in said and "its winding reads as it should" in said
    assert hand.verdict == "Nothing to mend here"


def test_worn_is_a_full_answer_with_what_was_ruled_out(at):
    """One of two answers, never a blocked page."""
    hand = at("to_conclude")
    assert "✓ Too little air over the motor" in words(hand)
    hand.digit(1).enter()
    assert isinstance(hand.driver.visit.events[-1], Concluded)
    assert hand.driver.visit.found[-1].concluded == "worn"


def test_the_repair_is_asked_and_the_proof_walked(at):
    """Fit it, switch on, read it running: proved."""
    hand = at("to_repair")
    assert hand.page.question.text().startswith("Fit a blower motor")
    hand.enter()
    assert "switch the furnace on" in hand.page.question.text()
    hand.enter().type("119.6").enter()
    assert hand.verdict == "119.6 V – supplied"
    hand.enter()
    assert hand.driver.visit.found[-1].proof == "proved"
    assert hand.driver.ask().kind == "leave"
