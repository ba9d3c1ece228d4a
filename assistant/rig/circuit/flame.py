"""The direct current of a flame: ionized gas between rod and burner passes current one way.

The flame is an ideal diode with a resistance in series, behind the alternating voltage that the rod would
have without it. Seen from rod and burner the rest is a source of `peak` volts with `ac_ohm` for the
alternating part and `dc_ohm` for the direct part of the current (a capacitor blocks one way round). While
it conducts

    i = (peak sin(t) - E) / (flame + ac_ohm),   E = (dc_ohm - ac_ohm) x mean(i)

and the mean over a period is peak / (pi (flame + ac_ohm)) x (sqrt(1 - k^2) - k arccos k) with k = E / peak.
Source: half-wave rectifier with a back voltage, textbooks of electronics (reasoned); checked against ngspice.
"""

from __future__ import annotations

import math
from functools import lru_cache


@lru_cache(maxsize=4096)
def rectified(peak: float, ac_ohm: float, dc_ohm: float, flame_ohm: float) -> float:
    """Mean current through the flame, A; 0 without a flame (`flame_ohm` infinite) or without a voltage."""
    if not math.isfinite(flame_ohm) or peak <= 0:
        return 0.0
    whole = flame_ohm + ac_ohm
    back = max(dc_ohm - ac_ohm, 0.0)
    low, high = 0.0, peak / (math.pi * whole)
    for _ in range(60):
        middle = (low + high) / 2
        k = min(back * middle / peak, 1.0)
        given = peak / (math.pi * whole) * (math.sqrt(1 - k * k) - k * math.acos(k))
        low, high = (middle, high) if given > middle else (low, middle)
    return (low + high) / 2
