"""What is unsafe in free work, judged as it happens: by the power that was proved, not by the power that is.

Which look or part needs what power is read from the trees and from house.yaml; no step is named here. The
rules are those that the checker holds trees to (common practice).
"""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence

from assistant.drill.practice.calls import NotedRig, number
from assistant.drill.practice.entry import Log
from assistant.house.model import Vocabulary
from assistant.tree.library import Library
from assistant.tree.model import Look, Step, readings_of
from assistant.walk.house import House, acted, as_met, lacking, proved_dead

DEAD_UNDER = 1.0
FIRE_WITHOUT_AIR = 55.0
"""Seconds of fire in all with no blower seen: longer than the usual delays, 30 to 45 s (common practice)."""
THERMOSTAT = "stat_"
"""A thermostat left off while a repair is waited for endangers nobody."""
KNOWN = ("known.line", "known.neutral")
ROOM = "room.air"
GUARDING = ("flame.rest", "ports.closed", "breaker_panel")
"""Looked at for safety first: a flame that stays, joints that were opened, the panel before it is touched
(reasoned)."""
WHERE_DEAD = {"dead": "proved dead", "off": "switched off", "live": "live"}

OHMS = "A meter on ohms pushes its own current; on a live circuit it burns, or shows nonsense."
HANDS = "A blower, a relay or somebody at the switch does not know that a hand is in there."
NOT_PROVED = "A switch that is off proves nothing: the wrong one, or a second feed, keeps it live."
FIRED = "Fire without air cracks exchangers. See the blower run before it burns, or shut it down."
RESET = "It opened for a reason. Line to ground and line to neutral of every load come first, power off."
TWICE = "A breaker is no test instrument. A second trip stays off."
LEFT = "Whoever comes next trusts the house to be as built."
LEAK = "Every joint that was opened is bubbled before it is fired or signed."
METER = "A meter that shows nothing may be a dead meter: known live, then the circuit, then known live again."
STAY = "Nothing in that house is worth a minute more inside it."


def looks_need(library: Library) -> dict[str, dict[str, str]]:
    """For each thing that is looked at the power that every tree's look at it asks for."""
    needs: dict[str, list[Mapping[str, str]]] = {}
    for tree in library.trees.values():
        for step in tree.steps.values():
            if isinstance(step, Look):
                needs.setdefault(step.sees, []).append(step.common.needs)
    return {
        thing: {
            circuit: state
            for circuit, state in all_of[0].items()
            if state != "live" and all(one.get(circuit) == state for one in all_of)
        }
        for thing, all_of in needs.items()
    }


def guards(thing: str = "", points: Sequence[str] = ()) -> bool:
    """Whether a look or a reading guards people, whatever else it tells."""
    return thing in GUARDING or ROOM in points or bool(set(points) & set(KNOWN))


def step_guards(step: Step) -> bool:
    """Whether a step of a tree looks or reads to guard people."""
    if isinstance(step, Look):
        return guards(step.sees)
    return any(one.known_live or guards(points=one.at) for one in readings_of(step))


class Safety:
    """Follows one free sitting."""

    def __init__(self, library: Library, rig: NotedRig, log: Log) -> None:
        self.vocabulary: Vocabulary = library.vocabulary
        self.rig, self.log = rig, log
        self.house: House = as_met(self.vocabulary)
        self.needs = looks_need(library)
        self.low: set[frozenset[str]] = set()
        self.known_live = 0
        self.called = False
        self.fire_without_air = 0.0
        self.loads_read: set[str] = set()
        self.mishaps = len(rig.rig.mishaps)

    # -- before and after what is done

    def look(self, thing: str, title: str) -> None:
        """A look into something."""
        self._power(self.needs.get(thing, {}), f"Looked at {title}", HANDS, "hand in unlocked")

    def is_proof(self, points: Sequence[str]) -> bool:
        """Whether a voltage at these points shows that the meter works or that something switched off is
        dead.
        """
        wanted = frozenset(points)
        off = [
            circuit.pairs
            for name, circuit in self.vocabulary.circuits.items()
            if self.house.circuits[name] in ("off", "dead")
        ]
        return wanted == frozenset(KNOWN) or any(wanted == frozenset(pair) for pairs in off for pair in pairs)

    def read(self, kind: str, points: Sequence[str], low: bool, shown: str) -> None:
        """A reading that was taken."""
        label = self._labels(points)
        new = self.rig.rig.mishaps[self.mishaps :]
        self.mishaps = len(self.rig.rig.mishaps)
        if new:
            self.log.mark_unsafe("ohms on live", f"Ohms on a live circuit, at {label}", OHMS)
        elif kind in ("resistance", "insulation", "capacitance"):
            circuits = {
                circuit
                for point in points
                if point in self.vocabulary.points and (circuit := self.vocabulary.points[point].circuit)
            }
            self._power(dict.fromkeys(circuits, "dead"), f"Ohms at {label}", OHMS, "ohms not proved dead")
            self.loads_read |= {point for point in points if point.endswith((".line", "motor.shell"))}
        if kind == "ac_voltage" and low:
            volts = number(kind, shown)
            if volts is not None and frozenset(points) == frozenset(KNOWN) and volts > DEAD_UNDER:
                self.known_live += 1
            if volts is not None and volts < DEAD_UNDER:
                self.low.add(frozenset(points))
                self._proofs()

    def act(self, name: str) -> None:
        """Something about to be done."""
        act = self.vocabulary.acts[name]
        self._power(act.needs, act.say, HANDS, "work not dead")
        if act.counts == "reset":
            if self.house.tallies.get("reset"):
                self.log.mark_unsafe("second reset", "Closed the breaker a second time", TWICE)
            elif len(self.loads_read) < 2:
                self.log.mark_unsafe(
                    "reset before tests", "Closed the breaker before the loads were read", RESET
                )
        if name in ("stat_on", "stat_call"):
            self.called = True
        if act.sets:
            self.low.clear()
        self.house = acted(self.house, self.vocabulary, name, "", "")

    def waited(self, seconds: float) -> None:
        """Time that went by: fire without a blower that the apprentice called for."""
        if not self.called:
            return
        rig = self.rig.rig
        if rig.see("blower.forced") == "runs":
            self.fire_without_air = 0.0
        elif rig.see("flame.look") != "no flame":
            self.fire_without_air += seconds
        if self.fire_without_air >= FIRE_WITHOUT_AIR:
            self.log.mark_unsafe("fired without blower", "Let it burn with the blower standing still", FIRED)

    def at_end(self) -> None:
        """What is still open when the apprentice goes."""
        for entry in self.house.undone:
            if entry.act.startswith(THERMOSTAT):
                continue
            act, undo = self.vocabulary.acts[entry.act], self.vocabulary.acts[entry.undo]
            rule, why = ("leak check missing", LEAK) if entry.undo == "leak_check" else ("left so", LEFT)
            self.log.mark_unsafe(rule, f"Left so: {act.say}. Still to do: {undo.say}", why)

    # -- power

    def _power(self, needs: Mapping[str, str], what: str, why: str, rule: str) -> None:
        missing = [(c, state) for c, state in lacking(self.house, dict(needs)) if state != "live"]
        if not missing:
            return
        circuit, wanted = missing[0]
        title = self.vocabulary.circuits[circuit].title
        have = self.house.circuits[circuit]
        stands = "switched off but never proved dead" if have == "off" else "never switched off"
        why = NOT_PROVED if have == "off" else why
        self.log.mark_unsafe(rule, f"{what}: {title} was {stands} (it asks for {WHERE_DEAD[wanted]})", why)

    def _proofs(self) -> None:
        """Circuits whose pairs all read nothing on a low-impedance meter since they were switched off."""
        for name, circuit in self.vocabulary.circuits.items():
            off = self.house.circuits[name] == "off"
            if off and circuit.pairs and all(frozenset(pair) in self.low for pair in circuit.pairs):
                self.house = proved_dead(self.house, (name,))
                if not self.known_live:
                    what = f"Proved {circuit.title} dead with a meter that was not shown to work"
                    self.log.mark_unsafe("meter not proved", what, METER)

    def _labels(self, points: Sequence[str]) -> str:
        known = self.vocabulary.points
        return " and ".join(known[p].label if p in known else re.sub(r"[._]", " ", p) for p in points)
