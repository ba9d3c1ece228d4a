"""The wired house in its present state: what depends on volts settles together with them.

A thermostat without power opens its contact, a board without 24 V drops its relays, a panel without its own
24 V passes nothing; each change is solved again until nothing changes. Where that goes round in a circle (a
relay that pulls its own supply down) `settled` is False, which in a basement is a chatter.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from itertools import count

from assistant.rig import wiring
from assistant.rig.circuit import weak
from assistant.rig.circuit.flame import rectified
from assistant.rig.circuit.network import OPEN, Network, Solution
from assistant.rig.fan import outputs
from assistant.rig.part import Settings

BOARD_DROPS, BOARD_WAKES = 13.0, 17.0
STAT_NEEDS = 17.0
INPUT_SEEN = 11.0
"""Above this a board's input counts as present, V."""
VALVE_PULLS, VALVE_HOLDS = 18.0, 9.0
ROUNDS = 12
MOST_KNOWN = 4000
"""Solutions kept, of some 3 kB each."""
METER_LOW_OHM, METER_HIGH_OHM, METER_FARAD = 3000.0, 10e6, 100e-12


class Known(dict):
    """What was worked out before, by the state that it was worked out for. Copies of a house share it."""

    def __deepcopy__(self, _memo: dict) -> Known:
        return self


_VERSIONS = count(1)
"""Versions of settings: no two houses that differ ever have the same."""


class Contacts(dict):
    """State of contacts, motors and igniter; `changed` is set when one takes another value."""

    changed = True

    def __setitem__(self, name: str, value: float) -> None:
        if self.get(name) != value:
            super().__setitem__(name, value)
            self.changed = True

    def __deepcopy__(self, _memo: dict) -> Contacts:
        twin = Contacts(self)
        twin.changed = self.changed
        return twin


class Electrics:
    """Network, contacts and what the board and the thermostat want of them."""

    def __init__(self, features: Mapping[str, object], v: Settings, frequency: float = 60.0) -> None:
        self.features = features
        self.v = v
        self.frequency = frequency
        self.net = wiring.build(features, frequency)
        self.s = Contacts(wiring.DEFAULT_STATE)
        self.wants = {"inducer": 0.0, "igniter": 0.0, "valve": 0.0, "blower": 0.0, "fan": 0.0}
        self.stat_wants = {"w": 0.0, "g": 0.0, "y": 0.0}
        self.awake = False
        self.settled = True
        self.valve_open = False
        self.meter: tuple[tuple[str, str, complex], ...] = ()
        self.version = next(_VERSIONS)
        self._solved: tuple | None = None
        self._known: dict[tuple, Solution] = Known()
        self._state: tuple = ()
        self._wired: tuple | None = None
        self._calm: tuple | None = None
        self._flame_key: tuple | None = None
        self._flame_ohms = (0.0, 0.0)
        self.solution: Solution | None = None
        self.solve()

    def touched(self) -> None:
        """A component's settings have changed."""
        self.version = next(_VERSIONS)

    def solve(self) -> Solution:
        """Volts of the network as it stands; only worked out anew for a state that was not met before."""
        key = (self.version, self.meter)
        if self.s.changed or key != self._solved:
            self._state = (self.version, *self.s.values())
            known = self._known.get((self._state, self.meter))
            if known is None:
                known = self.network.solve(self.frequency, self.meter)
                if len(self._known) >= MOST_KNOWN:
                    self._known.clear()
                self._known[self._state, self.meter] = known
            self.solution = known
            self._solved = key
            self.s.changed = False
        return self.solution

    @property
    def network(self) -> Network:
        """The network with every branch brought to the state that was solved last."""
        if self._wired != self._state:
            wiring.update(self.net, self.v, self.s, self.features, self.frequency)
            self._wired = self._state
        return self.net

    def volts(self, a: str, b: str) -> float:
        return abs(self.solve().between(a, b))

    def settle(self) -> bool:
        """Let contacts that depend on volts find their place. Returns whether they did."""
        calm = (self.solve(), *self.wants.values(), *self.stat_wants.values())
        if calm == self._calm:
            return True
        self._calm = None
        seen = set()
        for _ in range(ROUNDS):
            before = tuple(self.s.values())
            self._follow()
            after = tuple(self.s.values())
            if after == before:
                self.settled = True
                self._valve()
                self._calm = (self.solve(), *self.wants.values(), *self.stat_wants.values())
                return True
            if after in seen:
                break
            seen.add(after)
        self.settled = False
        self._valve()
        return False

    def _follow(self) -> None:
        v, s = self.v, self.s
        board = self.volts("r", "c")
        self.awake = board > (BOARD_DROPS if self.awake else BOARD_WAKES) and not v["board.dead"]
        stat = v["thermostat.batteries"] and not v["thermostat.needs_c"]
        stat = stat or (v["thermostat.needs_c"] and self.volts("stat.r", "stat.c") > STAT_NEEDS)
        for letter in ("w", "g", "y"):
            s[f"stat_{letter}"] = float(bool(stat and self.stat_wants[letter]))
        for relay in ("inducer", "igniter", "valve"):
            s[relay] = float(self.awake and self.wants[relay] and not v[f"board.{relay}_dead"])
        if v["board_plugs.inducer_loose"]:
            s["inducer"] = 0.0
        if v["board.valve_stuck"]:
            s["valve"] = 1.0
        outputs.follow(self)
        weak.follow(self)
        s["coils"] = s["inducer"] + s["igniter"] + s["valve"] + s["blower"] + s["fan"] if self.awake else 0.0

    def _valve(self) -> None:
        volts = self.volts("valve.hot", "valve.common")
        coil = not self.v["gas_valve.coil_open"] and self.v["gas_valve.knob"] == "on"
        self.valve_open = coil and volts > (VALVE_HOLDS if self.valve_open else VALVE_PULLS)

    def board_sees(self, point: str) -> bool:
        """Whether a board's input counts as present."""
        return self.awake and self.volts(point, "c") > INPUT_SEEN

    def flame_source(self) -> tuple[float, float, float]:
        """Peak volts, AC ohm and DC ohm that the rod and the burner offer to a flame."""
        self.solve()
        s = self.s
        key = (self.version, s["breaker"], s["switch"], s["door"])  # what runs changes these ohms very little
        if self._flame_key != key:
            one = [("cabinet", "rod", 1.0)]
            ac = self.network.solve(self.frequency, push=one, alive=False).between("rod", "cabinet")
            dc = self.network.solve(0.0, push=one, alive=False).between("rod", "cabinet")
            self._flame_ohms = (abs(ac), dc.real)
            self._flame_key = key
        return (math.sqrt(2) * self.volts("rod", "cabinet"), *self._flame_ohms)

    def flame_current(self, flame_ohm: float) -> float:
        """Direct current from rod to burner through a flame of that resistance (inf: none), A."""
        film = self.v["flame_rod.film_ohm"]
        if film:
            flame_ohm = film if math.isinf(flame_ohm) else film * flame_ohm / (film + flame_ohm)
        if math.isinf(flame_ohm) or (not self.awake and self.volts("board.line", "board.neutral") < 1):
            return 0.0
        return rectified(*self.flame_source(), flame_ohm)

    def ohms(
        self,
        a: str,
        b: str,
        only: Sequence[str] | None = None,
        without: Sequence[str] = (),
        joined: tuple[str, str] | None = None,
    ) -> float:
        """Direct-current resistance between two points, sources silent.

        Of `only` those branches if given, or of all but those in `without`; `joined`: two points that are
        twisted together meanwhile.
        """
        self.solve()
        if only is None and without:
            only = [name for name in (*self.net.index, *self.net.pairs) if name not in without]
        here = [name for name in only or () if name in self.net.index or name in self.net.pairs]
        network = self.network if only is None else self.network.keep(here)
        extra = () if joined is None else ((*joined, 100.0),)
        found = network.solve(0.0, extra, push=[(b, a, 1.0)], alive=False)
        return min(found.between(a, b).real, OPEN)
