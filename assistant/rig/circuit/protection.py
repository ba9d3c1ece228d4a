"""Breaker and fuses: they follow the heat that a current makes, and a breaker's magnet trips at once.

Heat goes towards the square of current over rating with one time constant. Held at 100 %, the element never
gets to its trip heat; at 135 % and 200 % it does well inside the hour and the two minutes that UL 489 allows.
"""

from __future__ import annotations

import math

BREAKER_TRIPS, BREAKER_SECONDS, MAGNET = 1.3, 100.0, 8.0
LUG_KELVIN = 40.0
"""K that a bad terminal warms the breaker's body by where it heats it as much as its rated current does
(reasoned: a breaker is rated in 40 C).
"""
FUSE_BLOWS, FUSE_SECONDS = 1.8, 2.0
PANEL_FUSE = 3.0
"""Of a zone panel that feeds a handful of dampers from a 40 VA transformer, A (common practice)."""
PLUG_BLOWS, PLUG_SECONDS = 1.6, 12.0


def heated(heat: float, share: float, time_constant: float, seconds: float, beside: float = 0.0) -> float:
    """Heat after `seconds` at current `share` (of rating); 1 is what the rating itself comes to.

    `beside`: heat that comes in from a bad terminal, in the same measure.
    """
    target = share * share + beside
    return target + (heat - target) * math.exp(-seconds / time_constant)


def step(machine, seconds: float) -> None:
    """Let breaker, plug fuse and 24 V fuse feel the current of the machine's circuit."""
    v, e = machine.v, machine.e
    solution = e.solve()
    line = abs(solution.current("breaker"))
    share = line / (v["breaker.rating"] * v["breaker.trips_at"])
    lug = machine.branch.lug / LUG_KELVIN
    machine.breaker_heat = heated(machine.breaker_heat, share, BREAKER_SECONDS, seconds, lug)
    if v["breaker.handle"] == "on" and (machine.breaker_heat > BREAKER_TRIPS or share > MAGNET):
        v["breaker.handle"] = "tripped"
        machine.breaker_heat = 1.0
        e.touched()
    machine.fuse_heat = heated(
        machine.fuse_heat,
        abs(solution.current("control_fuse")) / v["control_fuse.rating"],
        FUSE_SECONDS,
        seconds,
    )
    if machine.fuse_heat > FUSE_BLOWS and not v["control_fuse.blown"]:
        v["control_fuse.blown"] = 1
        machine.fuses += 1
        e.touched()
    panel = abs(solution.current("panel_fuse")) / PANEL_FUSE
    machine.panel_heat = heated(machine.panel_heat, panel, FUSE_SECONDS, seconds)
    if machine.panel_heat > FUSE_BLOWS and not v["zone_panel.fuse"]:
        v["zone_panel.fuse"] = 1
        e.touched()
    if v["plug_fuse.fitted"]:  # one that has blown cools: the next is not fitted hot
        current = abs(solution.current("plug_fuse"))
        machine.plug_heat = heated(machine.plug_heat, current / v["plug_fuse.rating"], PLUG_SECONDS, seconds)
        if machine.plug_heat > PLUG_BLOWS and not v["plug_fuse.blown"]:
            v["plug_fuse.blown"] = 1
            e.touched()
