"""A transformer by its T circuit: winding resistances, leakage, magnetizing inductance, core loss."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np


@dataclass(frozen=True)
class Transformer:
    """`ratio`: secondary turns over primary turns. Ohm and henry, each on its own side; `core_ohm` and
    `magnetizing` lie on the primary.

    Source: the usual T circuit of textbooks of electric machines (common practice).
    """

    ratio: float
    primary_ohm: float
    secondary_ohm: float
    primary_leakage: float
    secondary_leakage: float
    magnetizing: float
    core_ohm: float

    def impedances(self, omega: float) -> np.ndarray:
        """Two-by-two impedances in ohm at an angular frequency; at 0 only the windings' resistances."""
        reactance = 1j * omega * self.magnetizing
        shunt = reactance * self.core_ohm / (reactance + self.core_ohm)
        mutual = self.ratio * shunt
        return np.array(
            [
                [self.primary_ohm + 1j * omega * self.primary_leakage + shunt, mutual],
                [mutual, self.secondary_ohm + 1j * omega * self.secondary_leakage + self.ratio**2 * shunt],
            ]
        )
