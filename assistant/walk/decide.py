"""Which way a page of readings leads.

The first reading, in the order of the page, whose band names a way decides; if none does, the step's own
`then`. A reading too close to call decides nothing unless every band it may lie in leads the same way.
"""

from __future__ import annotations

from dataclasses import dataclass

from assistant.tree.model import Way
from assistant.walk.ask import Record, Verdict


@dataclass(frozen=True)
class Decision:
    """`way` None and `close` True: too close to call. `unsafe` names the stop page (may be empty)."""

    way: Way | None
    close: bool = False
    unsafe: str | None = None
    sure: bool = True
    """False where a reading was too close to call but made no difference."""


def decide(records: tuple[Record, ...], stops: tuple[str | None, ...], then: Way | None) -> Decision:
    """The way on after these readings; `stops` gives each reading's own stop page."""
    for record, stop in zip(records, stops, strict=True):
        if record.verdict is not None and record.verdict.unsafe:
            return Decision(None, unsafe=stop or "")
    sure = True
    for record in records:
        verdict = record.verdict
        if verdict is None or not verdict.bands:
            continue
        ways = possible(verdict)
        if len({way.to if way else None for way in ways}) > 1:
            return Decision(None, close=True)
        sure = sure and verdict.decided
        if ways[0] is not None:
            return Decision(ways[0], sure=sure)
    return Decision(then, sure=sure)


def possible(verdict: Verdict) -> list[Way | None]:
    """The ways of every band the value may lie in."""
    return [band.then for band in verdict.bands[verdict.first : verdict.last + 1]]
