"""The same house with each other fault in it, as it stands on arrival: made while the apprentice works.

Making one takes most of what a debrief takes: each has stood for an hour before anybody comes. A drill lasts
minutes, so that they are there when it is told. What is not there yet is made when it is asked for.
"""

from __future__ import annotations

import time
from collections.abc import Mapping
from threading import Event, Thread

from assistant.drill.case import nominal
from assistant.drill.practice.drill import Drill
from assistant.rig.fault import Fault
from assistant.rig.house import Rig

SOUND = "nothing wrong"
REST = 0.05
"""Seconds between two houses, so that whoever works meanwhile does not notice."""


def candidates(drill: Drill, faults: Mapping[str, Fault]) -> dict[str, Fault | None]:
    """Every other fault of this complaint that this house can have, and a house with nothing wrong."""
    features = drill.unit().features
    own = drill.fault
    found: dict[str, Fault | None] = {
        name: fault
        for name, fault in faults.items()
        if fault.complaint == drill.complaint
        and (own is None or name != own.name)
        and all(features[key] == value for key, value in fault.house.items())
    }
    return {**found, SOUND: None} if own is not None else found


def on_arrival(drill: Drill, fault: Fault | None) -> Rig:
    """The drill's house with that fault in it."""
    unit = drill.unit()
    return Rig(unit, fault, nominal(fault), drill.seed) if fault else Rig(unit, seed=drill.seed)


class Houses:
    """Each house is made once and given away once: whoever takes it works on it."""

    def __init__(self, drill: Drill, faults: Mapping[str, Fault]) -> None:
        self.drill = drill
        self.others = candidates(drill, faults)
        self.made: dict[str, Rig] = {}
        self._enough = Event()
        self._thread: Thread | None = None

    def begin(self) -> None:
        """Make them, beside whatever else goes on."""
        self._thread = Thread(target=self._make, name="houses of a drill", daemon=True)
        self._thread.start()

    def end(self) -> None:
        """Make no more, and wait for the one under way."""
        self._enough.set()
        if self._thread is not None:
            self._thread.join()

    def take(self, name: str) -> Rig:
        """The house with that fault."""
        return self.made.pop(name, None) or on_arrival(self.drill, self.others[name])

    def _make(self) -> None:
        for name, fault in self.others.items():
            if self._enough.is_set():
                return
            self.made[name] = on_arrival(self.drill, fault)
            time.sleep(REST)
