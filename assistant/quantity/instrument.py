"""What a reading was taken with, and how far it can be from the truth.

A maker states accuracy as plus or minus (percent of reading + counts); a count is one step of the display's
last digit. Those are limits with nothing known between them, a rectangular distribution of that half-width
(JCGM 100:2008, 4.3.7); widen() gives the limits themselves, not a standard uncertainty.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from types import MappingProxyType

from assistant.quantity.interval import Interval
from assistant.quantity.kind import KINDS
from assistant.quantity.meaning import Understood
from assistant.quantity.units import from_si, to_si


@dataclass(frozen=True)
class Instrument:
    """One instrument of the shop.

    `covers` are the kinds it reads; `percent` of reading, `counts`, `resolution` (SI, one step of the
    display's last digit) and `range_top` (SI, top of the highest range) are per kind, missing where not
    known. `impedance` is "low" or "high" for volts, "" for what has none. `lead_resistance` in ohm is what
    its two leads add to a reading of ohms; it is kept, not subtracted.
    """

    name: str
    covers: tuple[str, ...]
    percent: Mapping[str, float] = field(default_factory=dict, hash=False)
    counts: Mapping[str, float] = field(default_factory=dict, hash=False)
    range_top: Mapping[str, float] = field(default_factory=dict, hash=False)
    resolution: Mapping[str, float] = field(default_factory=dict, hash=False)
    impedance: str = ""
    lead_resistance: float = 0.0

    def __post_init__(self) -> None:
        for name in ("percent", "counts", "range_top", "resolution"):
            object.__setattr__(self, name, MappingProxyType(dict(getattr(self, name))))

    def widen(self, reading: Understood) -> Interval:
        """All values in SI that the reading allows with this instrument's accuracy.

        Percent is taken of the number shown in the unit it was read in, so 1 % of 70 F is 0.7 F. A count is
        the stated resolution, else one step of the last digit typed: people type 0 for 0.0. A reading without
        either (3/8 in) gets no counts; an OL stays as it is; where nothing is below zero, neither is the
        result. Raises ValueError for a kind that the instrument doesn't cover.
        """
        if reading.kind not in self.covers:
            raise ValueError(f"{self.name} does not read {reading.kind or 'an unknown quantity'}")
        if reading.over_range:
            return reading.interval
        share = self.percent.get(reading.kind, 0.0) / 100
        step = self.resolution.get(reading.kind)
        counts_si = self.counts.get(reading.kind, 0.0) * (step or reading.resolution_si or 0.0)
        span = reading.interval
        if step is not None and KINDS[reading.kind].low_is_zero and span.lo == 0 and span.width:
            span = Interval(0.0, min(span.hi, step / 2))
        low, high = (from_si(end, reading.unit) for end in (span.lo, span.hi))
        low = to_si(low - share * abs(low), reading.unit) - counts_si
        high = to_si(high + share * abs(high), reading.unit) + counts_si
        return Interval(low if KINDS[reading.kind].can_be_negative else max(low, 0.0), high)
