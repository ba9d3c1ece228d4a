"""Where points of panel, dampers, registers and returns are in the machine, besides nodes of the wiring."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from assistant.rig.air.registers import REGISTERS, area
from assistant.rig.circuit.network import OPEN
from assistant.rig.parts.zone import ZONES
from assistant.rig.see_zone import QUIET, quiet_speed, return_speed
from assistant.rig.wiring.zones import LEGS, beside

if TYPE_CHECKING:
    from assistant.rig.machine import Machine

PATIENCE = 3600
"""How long a clock is watched at a register, s."""
BASEMENT = 5.0
"""What the air round a furnace is warmer than the rooms, K."""
DAMPER_POINTS = {
    "damper.open": "panel2.open",
    "damper.close": "panel2.close",
    "damper.common": "panel.c",
    "damper.open_wire": "damper2.open",
    "damper.close_wire": "damper2.close",
    "actuator.open": "actuator2.open",
    "actuator.close": "actuator2.close",
    "actuator.common": "panel.c",
    "zone.g_wire": "zone2.g_wire",
}
"""Point of house.yaml -> the node it is; the quiet zone's damper is zone 2's."""
CLAMPS_ZONE = {"panel.feed": "panel_source", "damper.common": "motor2_close"}
"""The commons of the other dampers are clamped as well: `highest_damper`."""


def lowest_damper(m: Machine) -> float:
    """Ohms of the damper that reads lowest, leg to common, every damper's wires off the panel and dead."""
    lowest = OPEN
    for zone in ZONES:
        v = {name: m.v[f"damper{zone}.{name}"] for name in ("dead", "motor_ohm", "cable_ohm", "wire_open")}
        motor = OPEN if v["dead"] or v["wire_open"] else v["motor_ohm"]
        lowest = min(lowest, beside(motor, v["cable_ohm"]))
    return lowest


def highest_damper(m: Machine) -> float:
    """Amperes in the common of the damper that draws most just now."""
    solution = m.e.solve()
    return max(
        abs(solution.current(f"motor{zone}_{leg}")) + abs(solution.current(f"cable_short{zone}_{leg}"))
        for zone in ZONES
        for leg in LEGS
    )


def _calling(m: Machine) -> float:
    """Least speed at a register of a zone that calls, m/s; the quiet zone's own call counts like any."""
    flows = m.zoning.registers(m)
    called = [zone for zone, call in m.zoning.calls.items() if call]
    speeds = [flow / area(m.unit) for name, flow in flows.items() if REGISTERS[name] in called]
    return min(speeds, default=0.0)


def _should_be_still(m: Machine) -> float:
    """Highest speed at a register of a zone that does not call, m/s."""
    flows = m.zoning.registers(m)
    called = {zone for zone, call in m.zoning.calls.items() if call}
    still = [flow for name, flow in flows.items() if REGISTERS[name] not in called]
    return max(still, default=0.0) / area(m.unit)


def _zone_air(m: Machine) -> float:
    """Air of all registers of the zones that call, m3/s."""
    called = {zone for zone, call in m.zoning.calls.items() if call}
    return sum(flow for name, flow in m.zoning.registers(m).items() if REGISTERS[name] in called)


def _drifting(m: Machine) -> float:
    """Air at the quiet register, K: warm air that rises by itself where its damper stands open."""
    room = m.v["room.temperature"]
    if quiet_speed(m) > 0.2:
        return m.heat.supply
    rises = m.v["damper2.rises"] * m.zoning.blade[QUIET]
    return room + rises * max(0.7 * (m.heat.supply - room), BASEMENT)


def _until_still(m: Machine) -> float:
    """Seconds from the end of the last call until the quiet register is still; the clock is waited for."""
    for _ in range(PATIENCE):
        ended, blew_at = m.zoning.ended_at, m.zoning.blew_at
        if ended is None or (m.time - max(blew_at, ended) > 60 and m.air.turns < 100):
            break
        m.tick()
    ended = m.zoning.ended_at
    return 0.0 if ended is None else max(m.zoning.blew_at - ended, 0.0)


def _until_stopped(m: Machine) -> float:
    """Seconds from the end of the last call until the blower stands still."""
    for _ in range(PATIENCE):
        if m.air.turns < 30:
            break
        m.tick()
    ended = m.zoning.ended_at
    return 0.0 if ended is None else max(m.zoning.ran_at - ended, 0.0)


AIR_ZONE: dict[tuple[str, str], Callable[[Machine], float]] = {
    ("velocity", "register.quiet"): quiet_speed,
    ("velocity", "registers.still"): _should_be_still,
    ("velocity", "register.calling"): _calling,
    ("velocity", "return.quiet"): return_speed,
    ("airflow", "register.calling"): _zone_air,
    ("temperature", "register.quiet"): _drifting,
    ("temperature", "room.quiet"): lambda m: m.v["room.temperature"],
    ("temperature", "return.after_bypass"): lambda m: m.returns(),
    ("percent", "actuator.shaft"): lambda m: m.zoning.stroke(QUIET),
    ("duration", "register.quiet"): _until_still,
    ("duration", "register.calling"): _until_stopped,
    **{
        ("airflow", f"register.{name}"): (lambda m, name=name: m.zoning.registers(m).get(name, 0.0))
        for name in REGISTERS
    },
}
