"""A motor's torque over its speed, and how its speed follows in time."""

from __future__ import annotations

import math
from functools import lru_cache

import numpy as np

from assistant.rig.circuit.motor import Induction

POINTS = 121
STEP = 0.05


@lru_cache(maxsize=256)
def table(motor: Induction, farad: float, main: bool, aux: bool, series_ohm: float) -> tuple[float, ...]:
    """Torque in N m at 1 V on both windings for slips from 1 down to 0, evenly; the square law does the rest.

    `main` and `aux`: whether the winding is whole. `series_ohm`: resistance of the capacitor branch.
    """
    omega = 2 * math.pi * motor.frequency
    found = []
    for slip in np.linspace(1.0, 0.0, POINTS):
        z = motor.impedances(float(slip)).copy()
        z[0, 0] += 0 if main else 1e9
        z[1, 1] += series_ohm + (1 / (1j * omega * farad) if farad and math.isfinite(farad) else 0)
        z[1, 1] += 0 if aux and farad else 1e9
        first, second = np.linalg.solve(z, np.array([1.0, 1.0], dtype=complex))
        found.append(motor.torque(float(slip), complex(first), complex(second)))
    return tuple(found)


def torque_at(torques: tuple[float, ...], slip: float) -> float:
    """Torque at 1 V for a slip, between the points of the table."""
    x = (1.0 - min(max(slip, 0.0), 1.0)) * (POINTS - 1)
    i = min(int(x), POINTS - 2)
    return torques[i] + (torques[i + 1] - torques[i]) * (x - i)


def turned(
    slip: float,
    torques: tuple[float, ...],
    volts: float,
    synchronous: float,
    inertia: float,
    load: float,
    rubbing: float,
    seconds: float,
) -> float:
    """Slip after `seconds`. `load`: N m at synchronous speed, going with its square; `rubbing`: N m at any
    speed.
    """
    speed = (1 - slip) * synchronous
    squared = volts * volts
    steps = max(1, round(seconds / STEP))
    for _ in range(steps):
        share = speed / synchronous
        pull = torque_at(torques, 1 - share) * squared
        hold = load * share * share + rubbing
        if speed <= 0 and pull <= rubbing:
            return 1.0
        change = (pull - hold) / inertia * STEP
        speed = min(max(speed + change, 0.0), synchronous * 0.9999)
        if abs(change) < 1e-4 * synchronous * STEP:
            break
    return 1 - speed / synchronous
