"""The rig's door: look, measure, act, wait. Behind it a house that was built from a unit and a fault.

    rig = Rig(REFERENCE, fault=faults["..."], seed=1)
    rig.see("code_light")                                   -> "flashing a code"
    rig.measure("ac_voltage", ("r", "c"), meter)            -> "25.06 V"
    rig.act("hold_door_switch")
    rig.wait(60)                                            -> [("inducer.runs", 1.0), ...]

Nothing in it is random but what `seed` draws. Time passes only in `wait`, in a reading (a second) and in acts
that say so.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Sequence
from random import Random

from assistant.quantity.instrument import Instrument
from assistant.quantity.units import from_si
from assistant.rig import acts
from assistant.rig.ailment import Ailment
from assistant.rig.air.people import People
from assistant.rig.air.registers import REGISTERS
from assistant.rig.fan.trials import TRIALS
from assistant.rig.fault import NOMINAL, Fault
from assistant.rig.machine import Machine
from assistant.rig.meter import CannotMeasure, Taking
from assistant.rig.part import Plain, Settings, Value, settings_of
from assistant.rig.parts import COMPONENTS
from assistant.rig.see import LOOKS
from assistant.rig.stride import Stride
from assistant.rig.unit import REFERENCE, Unit, with_features

__all__ = ["CannotMeasure", "NotDone", "Rig"]

IDLE = 10.0
JUST_HEARD = 5.0
BEFORE_ARRIVAL = 900.0
"""Seconds that the house has been asked for heat before the visit begins."""


class NotDone(ValueError):
    """A sentence that says why an act could not be done."""


class Rig:
    """A house with its furnace.

    `fault` and its `degree`: what is wrong with it; `changes`: settings beside that. `seed` draws the errors
    of instruments and the times of an intermittent fault; `exact`: instruments without error.
    `arrives_after`: seconds of calling for heat before anybody looks.
    """

    def __init__(
        self,
        unit: Unit = REFERENCE,
        fault: Fault | None = None,
        degree: str = NOMINAL,
        seed: int = 0,
        exact: bool = True,
        changes: Settings | None = None,
        arrives_after: float = BEFORE_ARRIVAL,
    ) -> None:
        self.unit = unit = with_features(unit, fault.house) if fault else unit
        self.built = Plain(built(unit))
        self.random = Random(seed)
        self.ailment = Ailment(fault, degree, self.built, self.random) if fault else None
        changes = dict(changes or {})
        unknown = [name for name in changes if name not in self.built]
        if unknown:
            raise KeyError(unknown[0])
        self.machine = Machine(unit, Plain({**self.built, **changes}))
        if self.ailment:
            self.ailment.begin(self.machine)
        self.taking = Taking(self.machine, self.random, exact)
        self.machine.hands["stat"] = "off"
        self._pass(IDLE)
        self.machine.hands["stat"] = "customer"
        self._pass(arrives_after)
        if self.ailment:
            self.ailment.leave(self.machine)
        v = self.machine.v
        self.machine.branch.found = {"handle": v["breaker.handle"], "device": v["ground_fault.in"]}
        self._told, self._begun = len(self.machine.events), self.machine.time

    @property
    def time(self) -> float:
        """Seconds since the house began to call for heat."""
        return self.machine.time

    @property
    def mishaps(self) -> list[str]:
        """What a careful person would not have done, such as ohms on a live circuit."""
        return self.machine.mishaps

    @property
    def settled(self) -> bool:
        """False while some relay chatters."""
        return self.machine.e.settled

    @property
    def present(self) -> bool:
        """Whether a fault that comes and goes is there now; True for any other, False for none."""
        return self.ailment is not None and self.ailment.present

    @property
    def cured(self) -> bool:
        """Whether nothing of the fault is left: neither cause nor consequence."""
        return self.ailment is None or self.ailment.cured(self.machine)

    @property
    def left(self) -> tuple[str, ...]:
        """What of the fault is still wrong, in words."""
        return self.ailment.left(self.machine) if self.ailment else ()

    def plate(self) -> dict[str, float]:
        """The rating plate in SI, by the names of house.yaml."""
        v, printed = self.machine.v, self.unit.plate()
        return {
            **printed,
            "blower_amps": round(printed["blower_amps"] * v["blower_motor.size"], 1),
            "capacitor_plate": printed["capacitor_plate"] * v["blower_motor.size"],
            "breaker_rating": float(v["breaker.rating"]),
            "wire_carries": float(v["branch_hot.carries"]),
        }

    def see(self, thing: str) -> str:
        """What `thing` of house.yaml looks like now. Raises KeyError for one that is not in this house."""
        if thing == "five_starts":
            return "all lit" if self._starts(5) == 5 else "one failed"
        if thing == "starts.twenty":
            return "all held" if self._fan_starts(20) else "one opened it"
        if thing == "cycles":
            return "both ran" if self._starts(2) == 2 else "one failed"
        return TRIALS[thing](self) if thing in TRIALS else LOOKS[thing](self.machine)

    def held(self, points: Sequence[str], instrument: Instrument, last: bool = False) -> str:
        """The highest value that a clamp shows which was left on a wire, or what it showed last."""
        return self._while(lambda: self.taking.held(points, instrument, last))

    def kept(self, points: Sequence[str], instrument: Instrument, seconds: int, lowest: bool) -> str:
        """What a voltmeter shows that has kept its lowest or highest value for so long. It keeps what a relay
        that chatters lets through for a blink, which a display that is looked at never shows.
        """
        seen = []
        for _ in range(seconds):
            self._pass(1.0)
            seen.append(self.taking.volts_now(points, instrument))
        return self.taking.volts_shown(min(seen) if lowest else max(seen), instrument)

    def measure(self, kind: str, points: Sequence[str], instrument: Instrument | None = None) -> str:
        """The text that the instrument shows. Raises CannotMeasure where there is nothing to measure."""
        return self._while(lambda: self.taking.take(kind, points, instrument))

    def _while(self, reading: Callable[[], str]) -> str:
        """A reading takes time, in which a fault may come or go."""
        begun = self.machine.time
        try:
            return reading()
        finally:
            if self.ailment and self.machine.time > begun:
                self.ailment.step(self.machine, self.machine.time - begun)

    def act(self, name: str) -> None:
        """Do what house.yaml calls `name`. Raises NotDone for what is unknown here."""
        self._forget()
        put_right = acts.do(self.machine, self.built, name)
        if put_right is None:
            raise NotDone(f"nobody knows here how to do '{name}'")
        if self.ailment:
            self.ailment.worked_on(put_right)
        self._pass(1.0)

    def people(self) -> People:
        """What hands have set, lifted or pushed in the zones of this house."""
        return self.machine.zoning.people

    def registers(self) -> dict[str, int]:
        """Every register with the zone that it is drawn under; none in a house without zones."""
        return dict(REGISTERS) if self.machine.zoning.fitted else {}

    def wait(self, seconds: float) -> list[tuple[str, float]]:
        """Let time pass; the events of house.yaml since the last act or wait, each with its seconds since
        then.
        """
        self._pass(seconds)
        new = self.machine.events[self._told :]
        begun, self._begun = self._begun, self.machine.time
        self._told = len(self.machine.events)
        return [(name, max(at - begun, 0.0)) for name, at in new]

    def _forget(self) -> None:
        """An act begins: what was heard longer ago belongs to what was done before."""
        events, now = self.machine.events, self.machine.time
        while self._told < len(events) and events[self._told][1] < now - JUST_HEARD:
            self._told += 1
        self._begun = now

    def set(self, changes: Iterable[tuple[str, Value]]) -> None:
        """Change settings as a fault does, while the house stands. Raises KeyError for an unknown one."""
        for name, value in changes:
            if name not in self.built:
                raise KeyError(name)
            self.machine.v[name] = value
        self.machine.e.touched()

    def pass_time(self, seconds: float) -> None:
        """Let time pass without asking what was heard."""
        self._pass(seconds)

    def _pass(self, seconds: float) -> None:
        left, stride = float(math.ceil(seconds)), Stride(self.machine)
        while left > 0:
            step = stride.next(left)
            self.machine.tick(step)
            if self.ailment:
                self.ailment.step(self.machine, step)
            stride.took(step)
            left -= step

    def _starts(self, count: int) -> int:
        """How many of `count` calls for heat, each after a rest, end with the blower on a held flame."""
        hands, held = self.machine.hands, dict(self.machine.hands)
        good = 0
        for _ in range(count):
            hands["stat"] = "off"
            self._pass(180)
            hands["stat"] = "call"
            begun = len(self.machine.events)
            self._pass(240)
            seen = [name for name, _ in self.machine.events[begun:]]
            blows = "blower.runs" in seen or self.machine.air.turns > 300  # a fan set to ON never starts
            good += "flame.holds" in seen and blows and self.machine.lit_for > 0
        hands["stat"] = held["stat"]
        return good

    def _fan_starts(self, count: int) -> bool:
        """Whether the breaker holds so many starts of the blower by its fan switch."""
        hands = self.machine.hands
        fan, held = hands["fan"], hands["fan_held"]
        hands["fan_held"] = False
        for _ in range(count):
            for position in ("on", "auto"):
                hands["fan"] = position
                self._pass(30)
            if self.see("breaker.closed") != "holds":
                break
        hands["fan"], hands["fan_held"] = fan, held
        return self.see("breaker.closed") == "holds"


def built(unit: Unit) -> Settings:
    """All settings of a house as it was built for that unit."""
    given = settings_of(COMPONENTS)
    given.update(
        {
            "limit.opens": unit.limit_opens,
            "float_switch.fitted": int(unit.features["float"] == "yes"),
            "plug_fuse.fitted": int(unit.features["plug_fuse"] == "yes"),
            "zone_panel.fitted": int(unit.features["zone_panel"] == "yes"),
            "transformer.va": unit.transformer_va,
            "branch_load.fitted": int(unit.features["others"] == "pump"),
            "service.volts": 120.0,
        }
    )
    return given


def plate_text(rig: Rig, name: str, plate_unit: str) -> str:
    """A plate value as a person types it."""
    return f"{from_si(rig.plate()[name], plate_unit):.6g}"
