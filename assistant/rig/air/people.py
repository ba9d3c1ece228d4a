"""What a person does in the zones: thermostats set, wires lifted, an actuator off its shaft, an arm pushed.

Everything stands as found until a hand changes it, and goes back to that when it is put back.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

FOUND = "found"
CALLS = (FOUND, "off", "heat", "cool")
FANS = (FOUND, "auto", "on")
MOISTURE = (FOUND, "asked", "not asked")
WIRES = frozenset(
    {"zone g", "all zones", "furnace", "panel out", "damper open", "damper close", "actuator"}
)
"""Wires that a hand can lift: zone 2's G at the panel, every zone's, the panel's at the furnace or at the
panel itself, zone 2's damper's at the panel, both of its legs at the actuator.
"""


@dataclass
class Stat:
    """One zone's thermostat as a hand has set it."""

    call: str = FOUND
    fan: str = FOUND
    moisture: str = FOUND
    on_base: bool = True


@dataclass
class People:
    """What hands have changed. `zone`: the zone that a hand is at; `lifted`: wires off their terminals."""

    stats: dict[int, Stat] = field(default_factory=lambda: {zone: Stat() for zone in (1, 2, 3)})
    lifted: set[str] = field(default_factory=set)
    actuator_off: bool = False
    arm_pushed: bool = False
    panel_off: bool = False
    at: int = 2
    """The zone whose terminals a hand is at."""
    brought: str | None = None
    """What a hand has set the thermostats to, in its own words."""

    def set(self, zone: int, changes: Mapping[str, object]) -> None:
        """Set a thermostat. Raises ValueError for what a thermostat has not got."""
        known = {"call": CALLS, "fan": FANS, "moisture": MOISTURE, "on_base": (True, False)}
        for name, value in changes.items():
            if value not in known.get(name, ()):
                raise ValueError(f"a thermostat has no {name} '{value}'")
            setattr(self.stats[zone], name, value)

    def lift(self, wire: str) -> None:
        """Lift a wire off. Raises ValueError for one that is not here."""
        if wire not in WIRES:
            raise ValueError(f"there is no wire '{wire}' to lift")
        self.lifted.add(wire)

    def lays_back(self) -> None:
        """Every wire back on its terminal, the thermostats on their bases."""
        self.lifted.clear()
        for stat in self.stats.values():
            stat.on_base = True

    def rest(self) -> None:
        """Every thermostat as it was found."""
        self.stats = {zone: Stat() for zone in self.stats}
