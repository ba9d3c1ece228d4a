"""A fault at work over time: it comes and goes, and harms what is fitted anew while its cause stands."""

from __future__ import annotations

from collections.abc import Collection
from random import Random

from assistant.rig.fault import Fault
from assistant.rig.machine import Machine
from assistant.rig.part import Settings
from assistant.rig.parts import COMPONENTS


class Ailment:
    """One fault in one house."""

    def __init__(self, fault: Fault, degree: str, built: Settings, random: Random) -> None:
        self.fault, self.degree = fault, degree
        self.wrong = fault.settings(degree)
        self.harm = fault.harm(degree)
        # what people know of a fault is no part of it, and no repair takes it back
        given = {**self.wrong, **self.harm}
        spoiled = [n for n, value in given.items() if not n.startswith("story.") and (n, value) != WARM]
        self.right = {name: built[name] for name in spoiled}
        self.looks = {name: value for name, value in self.wrong.items() if name.endswith(".look")}
        """A loose pin is seen also while it makes contact."""
        self.away = {n: value for n, value in self.right.items() if n in self.wrong and n not in self.looks}
        self.turn = fault.comes_and_goes
        self.phase = self.turn.times(random) if self.turn else 0.0
        self.present = False
        self.harming = 0.0
        self.mended = False

    def begin(self, machine: Machine) -> None:
        """Put it into the house, its harm included: that is why somebody was called."""
        self.present = self._due(machine.time)
        if self.present:
            machine.v.update(self.wrong)
        machine.v.update(self.looks)
        machine.v.update(self.harm)
        machine.e.touched()

    def leave(self, machine: Machine) -> None:
        """How it has left the house when somebody comes. Of what can open ahead of the furnace only that has
        which the file names; a breaker with a test button has then tripped, and a blown fuse has blown today.
        """
        v, left = machine.v, self.fault.left()
        if left.keys() & {"plug_fuse.blown", "ground_fault.in"} and v["breaker.handle"] == "tripped":
            v["breaker.handle"] = "on"
        v.update(left)
        if left.get("ground_fault.in") == 0 and v["ground_fault.kind"] == "breaker":
            v["breaker.handle"] = "tripped"
        if left.get("control_fuse.blown"):
            machine.fuses = max(machine.fuses, 1)
        machine.e.touched()

    def _due(self, time: float) -> bool:
        if self.turn is None:
            return True
        return (time + self.phase) % (self.turn.there + self.turn.away) < self.turn.there

    def step(self, machine: Machine, seconds: float) -> None:
        """Let it come or go, and do its harm again where the cause is still there."""
        v = machine.v
        if self.turn and not self.mended:
            due = self._due(machine.time)
            if self.present and any(v[name] != value for name, value in self.wrong.items()):
                self.mended = True
            elif due != self.present:
                self.present = due
                v.update(self.wrong if due else self.away)
                machine.e.touched()
        if self.harm and self.stands(machine) and any(v[name] != value for name, value in self.harm.items()):
            self.harming += seconds
            if self.harming >= self.fault.consequence.after:
                v.update(self.harm)
                machine.e.touched()
                self.harming = 0.0

    def worked_on(self, names: Collection[str]) -> None:
        """Those settings were put right by somebody, whether the fault was there at the time or not."""
        if self.turn and any(name in names for name in self.wrong):
            self.mended, self.present = True, False

    def stands(self, machine: Machine) -> bool:
        """Whether the cause is in the house."""
        return all(machine.v[name] == value for name, value in self.wrong.items())

    def cured(self, machine: Machine) -> bool:
        """Whether every setting that it spoiled is as built."""
        if self.turn and not self.mended:
            return False
        return all(machine.v[name] == value for name, value in self.right.items() if not told(name))

    def left(self, machine: Machine) -> tuple[str, ...]:
        """What of it is still wrong, in the words of its components."""
        if self.cured(machine):
            return ()
        there = self.turn is not None and not self.mended
        deeds = (*self.fault.deeds, *(self.fault.consequence.deeds if self.fault.consequence else ()))
        return tuple(
            deed.words
            for deed in deeds
            if any(
                not told(name) and name in self.right and (there or machine.v[name] != self.right[name])
                for name in deed.settings(self.degree)
            )
        )


WARM = ("thermostat.set", "below the room")
"""A room that is warm enough: nothing to put right."""

AS_BUILT = (
    "last_visit.by",
    "ground_fault.kind",
    "ground_fault.trips_at",
    "arc_fault.fitted",
    "humidifier.demand",
)
"""How the house is, and who worked on it: no repair takes these back."""


def told(name: str) -> bool:
    """Whether a setting is what people tell, how the house is, or a mark that stays: nobody mends it."""
    part, _, setting = name.partition(".")
    built = name in AS_BUILT or setting in COMPONENTS[part].sort
    return built or name.startswith("history.") or name.endswith((".look", ".hidden"))
