"""The branch in time: what opens it, how warm its breaker gets, water that runs and dries, clamps left on.

A device with a test button compares what goes out with what comes back, and feels a neutral that touches
ground behind it (UL 943 class A: 4 to 6 mA, from memory). A breaker that watches for arcs opens at a joint
that arcs under load (UL 1699, from memory). Temperatures and water are reasoned.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from assistant.rig.burner import fire as burning

if TYPE_CHECKING:
    from assistant.rig.machine import Machine

BODY_PER_WATT, BODY_SECONDS, FACE_SHARE = 5.0, 300.0, 0.8
"""K that a breaker's body warms for a watt in it, how fast, and how much of that its face shows."""
NEIGHBOUR = 2.0
"""K of a loaded neighbour's face over the room."""
GROUNDED_NEUTRAL = 4.0
"""Ohm under which a device feels a neutral on ground."""
SHORT = 60.0
"""A that nobody reads off a display: it has opened before."""
ARC_LOAD = 3.0
"""A through a joint that arcs before anything watches it."""
START_STEP = 6.0
"""A of a motor's start that a nervous arc-fault breaker takes for an arc."""
WETS, DRIES, DRIES_WARM = 150.0, 5400.0, 130.0
"""Seconds in which a drip wets, still air dries, and warm air dries."""
CASING_SECONDS = 1500.0
OTHERS_SECONDS = 1500.0
LEFT_ON = ("branch_hot", "accessory_plug")
"""Wires on which a clamp is left that keeps its highest value."""
OUTDOOR_TRIPS = 30.0
DRIPS_FROM = {
    "from cooling coil or pan": "cooling",
    "from humidifier": "humidifier",
    "from vent or condensate": "inducer",
    "from roof or outside": "rain",
}


@dataclass
class Branch:
    """`found`: how handle and device stood when somebody came. `peak`: highest amps of each wire since the
    branch was last closed. `ran`: what they last carried while it was closed. `body`: K of the breaker's
    body over the room, `lug` of its terminal's share.
    """

    body: float = 0.0
    lug: float = 0.0
    wet_board: float = 0.0
    wet_run: float = 0.0
    casing: float = 293.0
    others_heat: float = 0.0
    line_before: float = 0.0
    peak: dict[str, float] = field(default_factory=dict)
    ran: dict[str, float] = field(default_factory=dict)
    found: dict[str, object] = field(default_factory=dict)


def closed(m: Machine) -> bool:
    """Whether breaker and device bring power to the tap of the branch."""
    v = m.v
    on = v["breaker.handle"] == "on" and not v["breaker.open"] and m.e.s["breaker"]
    return bool(on and m.e.s["device"])


def contacts(m: Machine) -> None:
    """Bring the state that hands, water and heat decide to the wiring."""
    s, hands, b = m.e.s, m.hands, m.branch
    s["device"] = float(m.v["ground_fault.kind"] == "none" or bool(m.v["ground_fault.in"]))
    s["board_plugged"] = float(hands["plugged"] >= 1 and not hands["board_off"])
    s["others_plugged"] = float(hands["plugged"] >= 2)
    s["motors_plugged"] = float(hands["plugged"] >= 3)
    s["white"], s["spliced"] = float(not hands["white_off"]), float(not hands["apart"])
    s["others_on"] = float(hands["others"])
    s["others_heat"] = round(b.others_heat, 2) if m.v["branch_load.grows"] else 0.0
    s["igniter_glows"] = float(m.igniter > burning.GLOWS_AT)
    s["casing"] = float(round(b.casing))
    s["moved"] = float(hands["moved"])
    s["wet_board"], s["wet_run"] = round(b.wet_board, 2), round(b.wet_run, 2)


def step(m: Machine, seconds: float) -> None:
    """Let time pass: warmth, water, and what the devices feel."""
    v, b = m.v, m.branch
    _water(m, seconds)
    follow = 1 - math.exp(-seconds / CASING_SECONDS)
    b.casing += (min(m.heat.supply, 340.0) - b.casing) * follow
    running = closed(m) and m.hands["others"] and m.hands["plugged"] >= 2
    b.others_heat += ((1.0 if running else 0.0) - b.others_heat) * (1 - math.exp(-seconds / OTHERS_SECONDS))
    solution = m.e.solve()
    line = abs(solution.current("breaker"))
    follow = 1 - math.exp(-seconds / BODY_SECONDS)
    b.lug += (BODY_PER_WATT * line**2 * v["breaker.lug_ohm"] - b.lug) * follow
    watts = line**2 * (v["breaker.lug_ohm"] + v["breaker.ohm"])
    b.body += (BODY_PER_WATT * watts - b.body) * follow
    for name in LEFT_ON:
        amps = abs(solution.current(name))
        b.peak[name] = max(b.peak.get(name, 0.0), amps)
        if closed(m) and amps < SHORT:
            b.ran[name] = amps
    if v["outdoor_branch.handle"] == "on" and 240.0 / v["outdoor_branch.to_ground_ohm"] > OUTDOOR_TRIPS:
        v["outdoor_branch.handle"] = "tripped"
    _device(m, solution)
    _arcs(m, line)
    b.line_before = line


def residual(m: Machine) -> float:
    """A that go out through the device and do not come back through it."""
    solution = m.e.solve()
    return abs(solution.current("device") - solution.current("device_neutral"))


def _device(m: Machine, solution) -> None:
    v = m.v
    if v["ground_fault.kind"] == "none" or not closed(m):
        return
    live = abs(solution.between("branch.tap", "branch.return")) > 60
    grounded = v["branch_neutral.to_ground_ohm"] < GROUNDED_NEUTRAL
    if live and (residual(m) > v["ground_fault.trips_at"] or grounded or v["ground_fault.dead"]):
        if v["ground_fault.kind"] == "breaker":
            v["breaker.handle"] = "tripped"
        v["ground_fault.in"] = 0
        m.e.touched()


def _arcs(m: Machine, line: float) -> None:
    v = m.v
    if not v["arc_fault.fitted"] or v["breaker.handle"] != "on":
        return
    arcs = v["branch_hot.arcs"] and line > ARC_LOAD
    if arcs or (v["arc_fault.nervous"] and line - m.branch.line_before > START_STEP):
        v["breaker.handle"] = "tripped"
        m.e.touched()


def _water(m: Machine, seconds: float) -> None:
    v, b, hands = m.v, m.branch, m.hands
    runs = v["water.always"] or runs_now(m) == DRIPS_FROM.get(str(v["water.from"]))
    dry = DRIES_WARM if hands["warm_air"] else DRIES
    for name, fitted in (("wet_board", v["water.on_board"]), ("wet_run", v["water.on_run"])):
        wet = getattr(b, name)
        if fitted and runs and not hands["warm_air"]:
            wet += (1 - wet) * (1 - math.exp(-seconds / WETS))
        elif wet:
            wet *= math.exp(-seconds / dry)
        setattr(b, name, wet if wet > 1e-4 else 0.0)


def runs_now(m: Machine) -> str:
    """Which water runs: cooling, humidifier, rain, inducer, or none."""
    if m.hands["water"]:
        return str(m.hands["water"])
    if m.hands["stat"] == "cool" and m.air.turns > 300:
        return "cooling"
    if m.v["humidifier.demand"] and m.air.turns > 300 and m.lit_for > 0:
        return "humidifier"
    return "inducer" if m.inducer_slip < 0.5 and m.unit.condensing else "none"


def shut(m: Machine) -> None:
    """Somebody closes it: a clamp left on begins anew."""
    m.branch.peak.clear()
