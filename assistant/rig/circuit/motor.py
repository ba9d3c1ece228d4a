"""Single-phase induction motors by the double revolving field: two windings at right angles.

Each winding sees a field that runs with the rotor and one that runs against it. With Zf and Zb the rotor's
halves for the two (slip s and 2 - s) and a the turns of the auxiliary over those of the main:

    Vm = (R1 + jX1 + Zf + Zb) Im          - j a (Zf - Zb) Ia
    Va =  j a (Zf - Zb) Im + (Ra + jXa + a^2 (Zf + Zb)) Ia
    torque x synchronous speed = (|Im|^2 + |a Ia|^2)(Rf - Rb)
                                 + 2 a |Im||Ia| (Rf + Rb) sin(angle Ia - angle Im)

Source: W. J. Morrill, The Revolving Field Theory of the Capacitor Motor, Trans. AIEE 48, 1929; and textbooks
of electric machines (from memory; checked in tests/rig against a printed example).
"""

from __future__ import annotations

import cmath
import math
from dataclasses import dataclass, replace

import numpy as np


@dataclass(frozen=True)
class Induction:
    """A split-phase or split-capacitor motor. Ohm at `frequency` (Hz); `turns` is a of the formulas above.

    The capacitor is a branch of the network, outside. `poles`: number of poles. The rotor's values are those
    of textbooks: the whole rotor as seen from the main winding, halved for each field.
    """

    main_ohm: float
    main_reactance: float
    rotor_ohm: float
    rotor_reactance: float
    magnetizing: float
    aux_ohm: float
    aux_reactance: float
    turns: float
    poles: int
    frequency: float = 60.0

    @property
    def synchronous(self) -> float:
        """Synchronous speed, rad/s."""
        return 4 * math.pi * self.frequency / self.poles

    def at(self, frequency: float) -> Induction:
        """The same iron and copper on another line frequency."""
        share = frequency / self.frequency
        return replace(
            self,
            frequency=frequency,
            main_reactance=self.main_reactance * share,
            rotor_reactance=self.rotor_reactance * share,
            magnetizing=self.magnetizing * share,
            aux_reactance=self.aux_reactance * share,
        )

    def sized(self, share: float) -> Induction:
        """The same motor wound for `share` times its power."""
        return replace(
            self,
            main_ohm=self.main_ohm / share,
            main_reactance=self.main_reactance / share,
            rotor_ohm=self.rotor_ohm / share,
            rotor_reactance=self.rotor_reactance / share,
            magnetizing=self.magnetizing / share,
            aux_ohm=self.aux_ohm / share,
            aux_reactance=self.aux_reactance / share,
        )

    def fields(self, slip: float) -> tuple[complex, complex]:
        """Zf and Zb in ohm at a slip between 0 (synchronous) and 1 (still)."""
        magnetizing = 1j * self.magnetizing / 2
        halves = []
        for s in (max(slip, 1e-6), 2 - max(slip, 1e-6)):
            rotor = self.rotor_ohm / (2 * s) + 1j * self.rotor_reactance / 2
            halves.append(magnetizing * rotor / (magnetizing + rotor))
        return halves[0], halves[1]

    def impedances(self, slip: float) -> np.ndarray:
        """Of main and auxiliary winding, ohm, for the motor's own frequency."""
        forward, backward = self.fields(slip)
        cross = 1j * self.turns * (forward - backward)
        return np.array(
            [
                [self.main_ohm + 1j * self.main_reactance + forward + backward, -cross],
                [cross, self.aux_ohm + 1j * self.aux_reactance + self.turns**2 * (forward + backward)],
            ]
        )

    def winding_ohms(self) -> np.ndarray:
        """What an ohmmeter sees."""
        return np.diag([self.main_ohm, self.aux_ohm]).astype(complex)

    def torque(self, slip: float, main: complex, aux: complex) -> float:
        """Air-gap torque, N m, for the two winding currents (A rms)."""
        forward, backward = self.fields(slip)
        angle = cmath.phase(aux) - cmath.phase(main) if main and aux else 0.0
        power = (abs(main) ** 2 + abs(self.turns * aux) ** 2) * (forward.real - backward.real)
        power += 2 * self.turns * abs(main) * abs(aux) * (forward.real + backward.real) * math.sin(angle)
        return power / self.synchronous
