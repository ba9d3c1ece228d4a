"""Every step that asks has two kinds of words: a short why for the technician, and for the apprentice an
explanation of its own.
"""

from __future__ import annotations

import re

import pytest
from sound_furnace import shipped

from assistant.tree.model import Look, Measure, Watch

REPEATS = 0.8
"""The share of an explanation's longer words that may stand in the why already."""


def words(text: str) -> set[str]:
    return {word for word in re.findall(r"[a-z]+", text.lower()) if len(word) > 3}


def complaint(common) -> str | None:
    """What is missing or the same twice, or None."""
    if not common.why:
        return "no why"
    if not common.teach:
        return "no teach"
    teach = words(common.teach)
    said = teach & words(common.why)
    return "teach repeats the why" if len(said) > REPEATS * len(teach) else None


@pytest.mark.parametrize("name", sorted(shipped().trees))
def test_a_step_that_asks_says_why_to_both(name):
    steps = shipped().trees[name].steps
    wrong = {
        step: said
        for step, body in steps.items()
        if isinstance(body, Measure | Look | Watch) and (said := complaint(body.common))
    }
    assert not wrong


class _Words:
    def __init__(self, why, teach):
        self.why, self.teach = why, teach


def test_what_is_missing_or_said_twice_is_seen():
    assert complaint(_Words(None, "Steam lifts a cap.")) == "no why"
    assert complaint(_Words("A dead cap stops the blower.", None)) == "no teach"
    assert complaint(_Words("A dead capacitor stops the blower.", "The blower stops: a dead capacitor."))
    assert complaint(_Words("A dead capacitor stops the blower.", "It turns one current ahead.")) is None
