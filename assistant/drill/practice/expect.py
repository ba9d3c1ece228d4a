"""What was expected before the reading, and whether the reading parted from it."""

from __future__ import annotations

import re

from assistant.drill.practice.calls import number
from assistant.quantity.entry import Understood, understand
from assistant.quantity.kind import KINDS

SHARE = 0.10
"""A single expected number holds within this share: nobody foretells the last digit (reasoned)."""
OPEN = ("ol", "open", "nothing", "infinite")
ZERO = ("0", "zero", "dead", "none", "nothing", "shorted", "short", "closed")
FLOOR = {"ac_voltage": 2.0, "dc_voltage": 0.5, "resistance": 2.0, "ac_current": 0.1, "temperature": 4.0,
         "dc_current": 5e-7, "pressure": 10.0, "percent": 0.005, "concentration": 2e-6}  # fmt: skip


def parted(expected: str, shown: str, kind: str = "", unit: str = "") -> bool | None:
    """True where the reading was another than was said before. None where a person has to judge: nothing was
    expected, or it was said in free words.
    """
    said = " ".join(expected.lower().split())
    if not said:
        return None
    if not kind:
        return not set(said.split()) <= set(re.findall(r"\w+", shown.lower()))
    value = number(kind, shown)
    if kind in ("resistance", "insulation") and said in OPEN:
        return value is not None
    if said in ZERO:
        return value is None or abs(value) > FLOOR.get(kind, 0.0)
    got = understand(expected, kind, unit or KINDS[kind].units[0])
    if not isinstance(got, Understood):
        return None
    if got.over_range:
        return value is not None
    if value is None:
        return True
    lo, hi = got.interval.lo, got.interval.hi
    floor = FLOOR.get(kind, 0.0)
    slack = max(SHARE * max(abs(lo), abs(hi)), floor) if hi - lo <= abs(SHARE * hi) else floor / 2
    return not lo - slack <= value <= hi + slack
