"""What came of one walk, and whether that is right for the fault that was in the house."""

from __future__ import annotations

from dataclasses import dataclass

from assistant.drill.case import Case
from assistant.rig.fault import Fault

RIGHT, WRONG, UNDECIDED = "right", "wrong", "undecided"


@dataclass(frozen=True)
class Outcome:
    """`kind` is how the walk ended: finding, nothing (a finding without a fault), handed_over or open (no
    finding). `end` is the step's bare name. `steps` are the readings of the walked tree up to there, each
    with whether it was too close to call. `cured`: nothing of the fault was left after the repair that
    followed; `left` says what was. `proof` is proved, not_proved, none, or "" where it was not walked.
    `present`: the fault was there when the walk last looked or measured; what comes back while the house is
    closed up, nobody sees.
    """

    case: Case
    kind: str
    end: str
    page: str = ""
    condemns: str | None = None
    minutes: float = 0.0
    readings: int = 0
    steps: tuple[tuple[str, bool], ...] = ()
    causes: tuple[str, ...] = ()
    asked_causes: bool = False
    cured: bool | None = None
    left: tuple[str, ...] = ()
    proof: str = ""
    present: bool = True
    undone: tuple[str, ...] = ()
    mishaps: tuple[str, ...] = ()

    @property
    def proved_too_soon(self) -> bool:
        """Whether the proof of repair passed with something of the fault still in the house."""
        return self.proof == "proved" and self.cured is False


def judged(outcome: Outcome, fault: Fault | None, complaint: str) -> str:
    """Right, wrong or undecided.

    A healthy house is right where nothing is found. A fault of another complaint is right where the walk
    hands over, finds nothing, finds what cures it, or finds what the fault itself says is right there. A
    fault that comes and goes is right by its own finding, or by the one for its absence where it was away at
    the last look.
    """
    if outcome.kind == "open":
        return UNDECIDED
    if fault is None:
        return RIGHT if outcome.kind == "nothing" else WRONG
    if outcome.end in fault.right(complaint):
        return RIGHT
    if fault.complaint != complaint:
        good = outcome.kind in ("handed_over", "nothing") or bool(outcome.cured)
        return RIGHT if good else WRONG
    if fault.absent is not None and outcome.end == fault.absent and not outcome.present:
        return RIGHT
    return WRONG


def cause_named(outcome: Outcome, fault: Fault | None) -> bool | None:
    """Whether the root cause was found; None where the walk never came to ask for it."""
    if fault is None or not outcome.asked_causes:
        return None
    return fault.cause in outcome.causes if fault.cause else not outcome.causes
