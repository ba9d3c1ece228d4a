"""How much time one step of the machine may take: a second where anything is going on, more where nothing is.

A house that waits for somebody to come changes nothing from one second to the next. Heat, water, breakers and
sensors follow their exponentials exactly however long a step is; what needs short steps are contacts, motors
that run up, a board in the middle of a start, and temperatures that move fast.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from assistant.rig.machine import Machine

SHORTEST, LONGEST = 1.0, 8.0
"""Seconds of one step."""
PATIENT = frozenset({"standby", "run", "open", "lockout"})
"""What a board does without counting seconds towards its next step."""
KELVIN, BULK, TURNS, SHARE = 0.5, 3.0, 4.0, 0.01
"""How far a temperature that opens or closes something may go within one step, that of air and stack, a speed
(rpm), and a trip element's heat.
"""
WARM = 500.0
"""An igniter above this is still cooling fast, K."""


class Stride:
    """Seconds of the next step: doubled after a step that changed nothing, one again after any other."""

    def __init__(self, machine: Machine) -> None:
        self.machine = machine
        self.seconds = SHORTEST
        self._state, self._moving = _state(machine), _moving(machine)

    def next(self, left: float) -> float:
        """Of the next step, `left` seconds at most but never less than the shortest."""
        return max(min(self.seconds, left), SHORTEST)

    def took(self, seconds: float) -> None:
        """A step of so many seconds was taken."""
        state, moving = _state(self.machine), _moving(self.machine)
        longer = min(self.seconds * 2, LONGEST)
        if state == self._state and self._slow(moving, longer / seconds) and _patient(self.machine):
            self.seconds = longer
        else:
            self.seconds = SHORTEST
        self._state, self._moving = state, moving

    def _slow(self, moving: tuple[tuple[float, float], ...], times: float) -> bool:
        """Whether nothing would go further than it may in a step `times` as long as the last one."""
        return all(
            abs(now - before) * times <= most
            for (now, most), (before, _) in zip(moving, self._moving, strict=True)
        )


def _patient(m: Machine) -> bool:
    return (
        m.e.settled
        and m.board.phase in PATIENT
        and m.igniter <= WARM
        and (m.board.phase != "run" or m.board.heat_run_on > 0)
    )


def _state(m: Machine) -> tuple:
    """Whatever takes one value or another."""
    return (
        m.board.phase,
        m.board.heat_run_on > 0,
        m.e.version,
        tuple(m.e.s.values()),
        tuple(m.zoning.blade.values()),
        tuple(m.zoning.motor.values()),
        m.lit_for > 0,
        m.fan.pushes,
    )


def _moving(m: Machine) -> tuple[tuple[float, float], ...]:
    """Whatever moves little by little, each with how far it may go within a step."""
    heat = m.heat
    felt = (heat.limit, heat.rollout, heat.discharge, m.fan.winding, m.branch.body, m.branch.lug)
    return (
        *((kelvin, KELVIN) for kelvin in felt),
        *((kelvin, BULK) for kelvin in (heat.supply, heat.stack)),
        (m.air.turns, TURNS),
        (m.inducer_slip * 3600.0, TURNS),
        *((share, SHARE) for share in (m.breaker_heat, m.fuse_heat, m.plug_heat, m.panel_heat)),
    )
