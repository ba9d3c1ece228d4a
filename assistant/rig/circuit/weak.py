"""Insulation that lets go: damp, cracked or tracked, it is clean to an ohmmeter and breaks down at volts.

It lets go where the peak voltage across it is above what it holds, and goes out where no current flows any
more (reasoned; the order of arcs in low-voltage wiring). A wet film that is wet enough does so at once.
"""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from assistant.rig.wiring.branch import WEAK

if TYPE_CHECKING:
    from assistant.rig.electrics import Electrics

HOLDS = 1e8
"""V above which insulation is sound."""
FILM_FLASHES, FILM_WET = 60.0, 0.3
"""Peak volts at which a film flashes over, and how wet it must be for that."""
BRIDGE_OPENS = 3.0
"""Peak volts at which a rectifier passes on what is behind it."""
GOES_OUT = 0.5
"""A below which an arc goes out."""


def lets_go_at(e: Electrics, name: str) -> float:
    """Peak volts that a weak place holds now; more than HOLDS for a sound one."""
    setting = WEAK[name][2]
    if setting:
        return float(e.v[setting])
    if name == "bridge":
        grounded = e.features["blower"] != "psc" and e.v["blower_motor.half_leak_ohm"] < 1e6
        return BRIDGE_OPENS if grounded else math.inf
    wet = e.s["wet_board"] if name == "film_board" else e.s["wet_run"]
    return FILM_FLASHES if wet > FILM_WET else math.inf


def follow(e: Electrics) -> None:
    """Let each weak place let go or go out."""
    for name, (a, b, _) in WEAK.items():
        holds = lets_go_at(e, name)
        if holds > HOLDS:
            e.s[name] = 0.0
        elif e.s[name]:
            e.s[name] = float(abs(e.solve().current(name)) > GOES_OUT)
        else:
            e.s[name] = float(math.sqrt(2) * e.volts(a, b) > holds)


def ohms_at(e: Electrics, names: tuple[str, ...] | None, volts: float) -> float | None:
    """Ohm of what lets go under a tester of `volts` among those places; None where all of them hold."""
    from assistant.rig.wiring.branch import ARC_OHM

    broken = [n for n in WEAK if (names is None or n in names) and lets_go_at(e, n) < volts]
    return ARC_OHM if broken else None
