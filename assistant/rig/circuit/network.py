"""A linear network in the sinusoidal steady state, solved by nodal analysis with complex phasors.

Kirchhoff's current law at every node: the sum of admittance times voltage difference is what the sources push
in (nodal analysis; any textbook of circuit theory). Voltages and currents are rms phasors; 0 Hz is DC. Every
node leaks to the reference a little, as insulation does, so that no part of a network hangs in the air and no
matrix is singular.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from copy import copy

import numpy as np

OPEN = 1e11
"""An open contact, ohm."""
CLOSED = 0.01
"""A good contact, ohm."""
LEAST = 1e-4
"""No branch has less, ohm; a dead short is two clips and a bit of wire."""
LEAK = 1e-10
"""From every node to the reference, siemens: 10 Gohm of insulation."""

Impedances = Callable[[float], np.ndarray]
"""Angular frequency (rad/s) -> the two-by-two impedances of a two-port, ohm."""


class Network:
    """Branches between named nodes, and two-ports (transformers, motors) between pairs of them.

    `reference` is the node whose voltage is zero. Values of a branch may be changed at any time with `set`.
    """

    def __init__(self, reference: str = "earth") -> None:
        self.reference = reference
        self.nodes: dict[str, int] = {reference: 0}
        self.index: dict[str, int] = {}
        self.ends: list[tuple[int, int]] = []
        self.ohm: list[float] = []
        self.henry: list[float] = []
        self.elastance: list[float] = []
        self.volt: list[complex] = []
        self.pairs: dict[str, tuple[tuple[int, int, int, int], Impedances]] = {}
        self._cells: tuple[int, int, np.ndarray] | None = None

    def __deepcopy__(self, _memo: dict) -> Network:
        """Its own values; nodes and branches are only ever added while a house is built."""
        twin = copy(self)
        twin.ohm, twin.henry, twin.elastance = list(self.ohm), list(self.henry), list(self.elastance)
        twin.volt, twin.pairs = list(self.volt), dict(self.pairs)
        return twin

    def node(self, name: str) -> int:
        """The number of a node, which is made where there is none of that name."""
        return self.nodes.setdefault(name, len(self.nodes))

    def branch(
        self,
        name: str,
        a: str,
        b: str,
        ohm: float,
        henry: float = 0.0,
        farad: float = math.inf,
        volt: complex = 0j,
    ) -> None:
        """Resistance, inductance, capacitance (inf: none) and a source, all in series from `a` to `b`.

        `volt` in V rms drives current out at `b`. Raises ValueError for a name that is there already.
        """
        if name in self.index or name in self.pairs:
            raise ValueError(f"the network has a branch '{name}' already")
        self.index[name] = len(self.ends)
        self.ends.append((self.node(a), self.node(b)))
        self.ohm.append(max(ohm, LEAST))
        self.henry.append(henry)
        self.elastance.append(1 / farad)
        self.volt.append(volt)

    def two_port(self, name: str, first: tuple[str, str], second: tuple[str, str], z: Impedances) -> None:
        """Two coupled windings; `z` gives their impedances at an angular frequency."""
        if name in self.index or name in self.pairs:
            raise ValueError(f"the network has a branch '{name}' already")
        four = (self.node(first[0]), self.node(first[1]), self.node(second[0]), self.node(second[1]))
        self.pairs[name] = (four, z)

    def set(
        self,
        name: str,
        ohm: float | None = None,
        henry: float | None = None,
        farad: float | None = None,
        volt: complex | None = None,
    ) -> None:
        """Change a branch. Raises KeyError for one that is not there."""
        i = self.index[name]
        if ohm is not None:
            self.ohm[i] = max(ohm, LEAST)
        if henry is not None:
            self.henry[i] = henry
        if farad is not None:
            self.elastance[i] = 1 / farad
        if volt is not None:
            self.volt[i] = volt

    def set_pair(self, name: str, z: Impedances) -> None:
        """Change a two-port."""
        self.pairs[name] = (self.pairs[name][0], z)

    def keep(self, names: Sequence[str]) -> Network:
        """A network of those branches and two-ports alone: a part with its leads off."""
        alone = Network(self.reference)
        alone.nodes = dict(self.nodes)
        for name in names:
            if name in self.pairs:
                alone.pairs[name] = self.pairs[name]
                continue
            i = self.index[name]
            alone.index[name] = len(alone.ends)
            alone.ends.append(self.ends[i])
            for values, mine in (
                (alone.ohm, self.ohm),
                (alone.henry, self.henry),
                (alone.elastance, self.elastance),
                (alone.volt, self.volt),
            ):
                values.append(mine[i])
        return alone

    def admittances(self, omega: float) -> np.ndarray:
        """Of each branch in their order, siemens; at 0 Hz a capacitor passes nothing."""
        ohm = np.array(self.ohm, dtype=complex)
        elastance = np.array(self.elastance)
        if omega == 0:
            return np.where(elastance > 0, 0, 1 / ohm)
        return 1 / (ohm + 1j * (omega * np.array(self.henry) - elastance / omega))

    def matrix(
        self, omega: float, y: np.ndarray, extra: Sequence[tuple[str, str, complex]] = ()
    ) -> np.ndarray:
        """The nodal admittance matrix over all nodes, the reference included, with `extra` admittances."""
        size, count = len(self.nodes), len(self.ends)
        if self._cells is None or self._cells[:2] != (size, count):
            a, b = np.array(self.ends, dtype=np.intp).reshape(-1, 2).T
            cells = np.concatenate([a * size + a, b * size + b, a * size + b, b * size + a])
            self._cells = (size, count, cells)
        what = np.concatenate([y, y, -y, -y])
        g = np.empty(size * size, dtype=complex)
        g.real = np.bincount(self._cells[2], what.real, size * size)
        g.imag = np.bincount(self._cells[2], what.imag, size * size)
        g[:: size + 1] += LEAK
        g = g.reshape(size, size)
        for four, z in self.pairs.values():
            stamp_pair(g, four, inverse(z(omega)))
        for start, end, admittance in extra:
            i, j = self.nodes[start], self.nodes[end]
            g[i, i] += admittance
            g[j, j] += admittance
            g[i, j] -= admittance
            g[j, i] -= admittance
        return g

    def pushed(self, y: np.ndarray, alive: bool) -> np.ndarray:
        """What the sources push into each node, A."""
        right = np.zeros(len(self.nodes), dtype=complex)
        if alive and self.ends:
            flow = y * np.array(self.volt)
            a, b = np.array(self.ends, dtype=np.intp).T
            np.add.at(right, b, flow)
            np.add.at(right, a, -flow)
        return right

    def solve(
        self,
        frequency: float,
        extra: Sequence[tuple[str, str, complex]] = (),
        push: Sequence[tuple[str, str, complex]] = (),
        alive: bool = True,
    ) -> Solution:
        """Node voltages at `frequency` (Hz).

        `extra`: admittances (siemens) laid between two nodes, such as a meter. `push`: currents (A) driven
        from the first node through the outside into the second. `alive` False: sources silent.
        """
        omega = 2 * math.pi * frequency
        y = self.admittances(omega)
        right = self.pushed(y, alive)
        for start, end, current in push:
            right[self.nodes[end]] += current
            right[self.nodes[start]] -= current
        g = self.matrix(omega, y, extra)
        voltage = np.zeros(len(self.nodes), dtype=complex)
        voltage[1:] = np.linalg.solve(g[1:, 1:], right[1:])
        return Solution(self, omega, voltage, y, alive)


def inverse(z: np.ndarray) -> tuple[tuple[complex, complex], tuple[complex, complex]]:
    """Admittances of a two-port from its impedances."""
    (a, b), (c, d) = z.tolist()
    whole = a * d - b * c
    return ((d / whole, -b / whole), (-c / whole, a / whole))


def stamp_pair(
    g: np.ndarray, four: tuple[int, int, int, int], y: tuple[tuple[complex, complex], tuple[complex, complex]]
) -> None:
    """Add a two-port's admittances between its four nodes."""
    p, q, r, s = four
    for (a, b), row in (((p, q), y[0]), ((r, s), y[1])):
        for (c, d), value in (((p, q), row[0]), ((r, s), row[1])):
            g[a, c] += value
            g[a, d] -= value
            g[b, c] -= value
            g[b, d] += value


class Solution:
    """Voltages of all nodes against the reference, and what follows from them.

    It keeps what it was solved for, so that it stays true when the network is changed afterwards.
    """

    def __init__(
        self, network: Network, omega: float, voltage: np.ndarray, y: np.ndarray, alive: bool = True
    ) -> None:
        self.nodes, self.index, self.ends = network.nodes, network.index, network.ends
        self.volt = list(network.volt) if alive else None
        self.pairs = dict(network.pairs)
        self.omega = omega
        self.at = voltage
        self._volts = voltage.tolist()
        self.y = y

    def __deepcopy__(self, _memo: dict) -> Solution:
        return self

    def between(self, a: str, b: str) -> complex:
        """Voltage of `a` against `b`, V rms."""
        return self._volts[self.nodes[a]] - self._volts[self.nodes[b]]

    def current(self, name: str) -> complex:
        """Current through a branch from its first node to its second, A rms."""
        i = self.index[name]
        a, b = self.ends[i]
        volt = self.volt[i] if self.volt else 0
        return complex(self.y[i]) * (self._volts[a] - self._volts[b] + volt)

    def pair(self, name: str) -> tuple[complex, complex]:
        """Currents into the two windings of a two-port, A rms."""
        (p, q, r, s), z = self.pairs[name]
        across = np.array([self.at[p] - self.at[q], self.at[r] - self.at[s]])
        first, second = np.linalg.solve(z(self.omega), across)
        return complex(first), complex(second)

    def power(self, name: str) -> complex:
        """Power that a branch takes up (its own source counted as given), VA: real part W, imaginary var."""
        a, b = self.ends[self.index[name]]
        return (self._volts[a] - self._volts[b]) * self.current(name).conjugate()
