"""What stood on the screen at an address of the walk, in words, and where that is.

Addresses such as act.fit_element and cause.cold_house are the program's own; paper never shows them as a
question.
"""

from __future__ import annotations

from assistant.report.measured import computed_words, plain_name
from assistant.tree.model import Compute, Step
from assistant.walk.state import Visit

WHY = "Why did it fail?"
REPAIR = "repair"


def step_of(visit: Visit, address: str) -> tuple[Step | None, str]:
    """The step at an address and where it stands: "The house is cold (cold_house.volts)"."""
    if address.startswith("act."):
        return None, REPAIR
    if address.startswith("cause."):
        return None, "the reason for a failure"
    try:
        tree, step = visit.step(address)
    except KeyError:
        return None, address
    return step, f"{tree.title} ({address})"


def asked_words(visit: Visit, address: str) -> str:
    """What was asked at an address, as it stood on the screen; the name in plain words where nothing was."""
    kind, _, name = address.partition(".")
    if kind == "act":
        act = visit.vocabulary.acts.get(name)
        return act.say if act else plain_name(name)
    if kind == "cause":
        return WHY
    step, _ = step_of(visit, address)
    if isinstance(step, Compute):
        words = computed_words(step)
        return f"Worked out: {words[:1].lower()}{words[1:]}"
    page = visit.vocabulary.stops.get(getattr(step, "page", None) or "")
    said = getattr(step, "ask", None) or getattr(step, "title", None) or (page.title if page else None)
    return said or plain_name(name or address)
