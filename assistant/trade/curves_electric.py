"""A breaker's time against current: what it must hold, and by when it must have tripped."""

from __future__ import annotations

from collections.abc import Mapping

from assistant.trade.breaker import at_200_percent
from assistant.trade.plotted import Axis, Curve, Mark, Plot, plotted

FLOOR = 0.1
"""Seconds at the foot of the sheet."""


@plotted("breaker_trip_window")
def breaker(values: Mapping, outcome: Mapping) -> Plot:
    """The longest times that calibration allows; to their left the breaker must hold, above them it must be
    open.
    """
    rating, amps = values["rating"], values["amps"]
    hour = 3600.0 if rating <= 50 else 7200.0
    twice = at_200_percent(rating)
    high = max(6.0, 1.5 * amps / rating) * rating
    top = 2 * hour
    longest = Curve(
        ((1.35 * rating, top), (1.35 * rating, hour), (2 * rating, hour), (2 * rating, twice), (high, twice)),
        "must have tripped",
    )
    holds = Curve(((rating, FLOOR), (rating, top)), "must hold", dashed=True)
    limit = outcome["longest"]
    marks = ()
    if 0.5 * rating <= amps:
        marks = (Mark(amps, min(limit, top), f"{amps:.3g} A"),)
    return Plot(
        f"Breaker of {rating:.3g} A",
        Axis("current", "A", 0.5 * rating, high, log=True),
        Axis("time", "s", FLOOR, top, log=True),
        (holds, longest),
        marks,
        (),
        f"Breaker of {rating:.3g} A at {amps:.3g} A: it {outcome['word']}.",
    )
