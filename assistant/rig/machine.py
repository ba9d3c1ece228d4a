"""The furnace in time: electrics, board, gas, vent, fire, heat and air, one step after the other."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from contextlib import contextmanager

from assistant.rig import wiring
from assistant.rig.air.blower import Air, at_turns
from assistant.rig.burner import fire as burning
from assistant.rig.burner import igniter
from assistant.rig.burner.gas import Gas, gas
from assistant.rig.burner.heat import Heat
from assistant.rig.burner.sequence import Board, Inputs
from assistant.rig.burner.vent import INDUCER_TURNS, Draught, at_switch, draught
from assistant.rig.circuit import protection
from assistant.rig.circuit.torque import table, turned
from assistant.rig.electrics import Electrics
from assistant.rig.part import Settings
from assistant.rig.unit import Unit

STEP = 1.0
CROSSES_AFTER = 4.0
CLOSES, OPENS = 1.0, 0.87
"""A pressure switch closes at its stamp and opens a little below."""
CONDENSATE = 0.10 / 1200.0
"""Rise of water in a blocked trap while it fires, m/s (0.1 m in 20 min)."""
FLOAT_AT, COLLECTOR = 0.03, 0.12
"""Depths in m at which a float opens and at which the collector is full."""
SYNCHRONOUS = 3600.0
BLOWER_SYNCHRONOUS = 1200.0
SLIPS = 200
"""Currents are worked out anew for each 1/200 of slip."""
STILL = Air(0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0)
INDUCER_LOAD = 0.2
"""N m of the inducer's wheel at design."""


class Machine:
    """One house. `v`: settings of its components; `hands`: what people hold, open or take off."""

    def __init__(self, unit: Unit, v: Settings) -> None:
        self.unit = unit
        self.v = v
        features = {**unit.features, "size": unit.design_flow / 0.559}
        self.e = Electrics(features, v, unit.frequency)
        self.board = Board()
        self.heat = Heat()
        self.time = 0.0
        self.events: list[tuple[str, float]] = []
        self.hands = {
            "door_on": True,
            "held": False,
            "tagged": False,
            "locked": False,
            "lifted": False,
            "hose_off": False,
            "tee": False,
            "drain_open": False,
            "intake_open": False,
            "vent_open": False,
            "ports": "shut",
            "stat": "customer",
            "rod_off": False,
            "leak_checked": True,
            "bubbles": False,
        }
        self.igniter = 293.0
        self.inducer_slip = self.blower_slip = 1.0
        self.gas = Gas(0.0, 0.0, 0.0)
        self.draught = Draught(0.0, 0.0, 0.0, 0.0)
        self.air = STILL
        self.fire: burning.Fire | None = None
        self.lit_for = 0.0
        self.lighting = 0.0
        self.panel_for = 0.0
        self.breaker_heat = self.fuse_heat = self.plug_heat = 0.0
        self.flame_current = 0.0
        self.hottest = 293.0
        self.fuses = int(v["control_fuse.blown"])
        self.mishaps: list[str] = []
        self._airs: dict[tuple[int, int], Air] = {}
        self._inducer_key: tuple | None = None
        self._was: dict[str, bool] = {}

    # -- what contacts are told by heat, air, water and hands

    def _contacts(self) -> None:
        v, s, h = self.v, self.e.s, self.heat
        opens = v["limit.opens"]
        if v["limit.welded"]:
            s["limit"] = 1.0
        elif v["limit.open"] or h.limit > opens:
            s["limit"] = 0.0
        elif h.limit < opens - v["limit.differential"]:
            s["limit"] = 1.0
        if h.rollout > v["rollout.opens"]:
            v["rollout.tripped"] = 1
        s["rollout"] = float(not (v["rollout.tripped"] or v["rollout.open"]))
        s["aux"] = float(not v["aux_limit.tripped"])
        s["float"] = float(not (v["float_switch.fitted"] and v["drain.level"] > FLOAT_AT))
        s["door"] = float((self.hands["door_on"] and v["door.seated"]) or self.hands["held"])
        s["breaker"] = float(not self.hands["locked"])
        s["switch"] = float(not self.hands["tagged"])
        s["loads_lifted"] = float(self.hands["lifted"])
        stamp = self.unit.stamp * v["pressure_switch.shift"]
        hose, box = self.hoses()
        pull = box - hose
        if v["pressure_switch.welded"]:
            s["pressure"] = 1.0
        elif v["pressure_switch.stuck_open"]:
            s["pressure"] = 0.0
        else:
            s["pressure"] = float(pull > stamp * (OPENS if s["pressure"] else CLOSES))

    def hoses(self) -> tuple[float, float]:
        """Pressures in the inducer's and the burner box's hose at the switch, Pa."""
        return at_switch(self.unit, self.v, self.draught, self.hands["hose_off"])

    def _calls(self, seconds: float) -> None:
        v, e = self.v, self.e
        calling = self.hands["stat"] == "call" or (
            self.hands["stat"] == "customer"
            and v["thermostat.mode"] == "heat"
            and v["thermostat.set"] == "calling"
        )
        if self.hands["stat"] == "call" and (v["thermostat.locked"] or v["thermostat.mode"] == "off"):
            # A person who sets it sees mode and lock and puts them right for the test.
            calling = not v["thermostat.locked"]
        e.stat_wants["w"] = float(calling)
        e.stat_wants["g"] = float(
            v["thermostat.fan"] == "on" or (v["thermostat.fan"] == "circulate" and self.time % 3600 < 1200)
        )
        if self.unit.features["zone_panel"] == "yes":
            heard = e.volts("zone.w", "panel.c") > 14 and e.volts("panel.r", "panel.c") > 18
            self.panel_for = self.panel_for + seconds if heard else 0.0
            passes = self.panel_for >= v["zone_panel.delay"] and not v["zone_panel.heat_locked"]
            e.s["panel"] = float(passes and not v["zone_panel.relay_dead"])

    # -- one step

    def tick(self, seconds: float = STEP) -> None:
        """Let `seconds` pass, one or two at a time."""
        self.time += seconds
        e = self.e
        self._contacts()
        self._calls(seconds)
        e.settle()
        self._board(seconds)
        self._igniter(seconds)
        self._inducer(seconds)
        self._blower(seconds)
        self._burn(seconds)
        self._water(seconds)
        protection.step(self, seconds)
        self._notice()

    def _board(self, seconds: float) -> None:
        v, e = self.v, self.e
        flame = (self.flame_current >= v["board.drop_out"] and not v["board.sense_dead"]) or v[
            "board.false_flame"
        ]
        seen = Inputs(
            power=e.awake,
            heat=e.board_sees("w") and not v["board.w_deaf"],
            fan=e.board_sees("g") and not v["board.g_deaf"],
            string=e.board_sees("aux.load"),
            pressure=e.board_sees("pressure.load"),
            flame=bool(flame),
        )
        self.board.step(seconds, seen)
        if e.wants != self.board.wants:
            e.wants.update(self.board.wants)
            e.settle()

    def _igniter(self, seconds: float) -> None:
        e, v = self.e, self.v
        cold = v["igniter.cold_ohm"]
        if e.s["igniter"] or self.igniter > 300:
            current = abs(e.solve().current("igniter"))
            self.igniter = igniter.heated(self.igniter, current**2 * e.s["igniter_ohm"], seconds)
            self.hottest = self.igniter if e.s["igniter"] else self.hottest
            ohm = igniter.ohm(cold, self.igniter)
            e.s["igniter_ohm"] = round(ohm, 1) if e.s["igniter"] else round(ohm / 4) * 4.0
        else:
            e.s["igniter_ohm"] = cold

    def _inducer(self, seconds: float) -> None:
        e, v = self.e, self.v
        volts = e.volts("inducer.inner", "inducer.neutral")
        if volts > 1 or self.inducer_slip < 1:
            motor = wiring.INDUCER.at(self.unit.frequency)
            whole = v["inducer.main_open"] == 0
            torques = table(
                motor, wiring.INDUCER_FARAD * v["inducer.capacitor"], whole, not v["inducer.aux_open"], 0.5
            )
            wet = 0.25 if v["drain.level"] > 0.9 * COLLECTOR else 0.0
            density = 466.0 / max(self.heat.stack, 293.0) * (0.55 + 0.45 * min(self.draught.flow, 1.5))
            stuck = v["inducer.seized"]
            slip = (
                1.0
                if stuck
                else turned(
                    self.inducer_slip,
                    torques,
                    volts,
                    motor.synchronous,
                    0.0006,
                    INDUCER_LOAD * 1.33 * density,
                    v["inducer.drag"] + wet,
                    seconds,
                )
            )
            self.inducer_slip = slip
        e.s["inducer_slip"] = round(self.inducer_slip * SLIPS) / SLIPS
        turns = (1 - self.inducer_slip) * SYNCHRONOUS
        flooded = min(v["drain.level"] / COLLECTOR, 1.0) if self.unit.condensing else 0.0
        key = (
            round(turns, -1),
            round(self.heat.stack),
            round(flooded, 2),
            e.version,
            self.hands["intake_open"],
            self.hands["vent_open"],
        )
        if key != self._inducer_key:
            self._inducer_key = key
            settings: Mapping = v
            if self.hands["intake_open"] or self.hands["vent_open"]:
                settings = {**v, "intake.blocked": 0.0 if self.hands["intake_open"] else v["intake.blocked"]}
                if self.hands["vent_open"]:
                    settings["vent.blocked"] = 0.0
            self.draught = draught(self.unit, settings, turns, self.heat.stack, flooded)

    def _blower(self, seconds: float) -> None:
        volts = self.e.volts("blower.inner", "blower.neutral")
        if self.unit.features["blower"] == "psc":
            self._split_capacitor(volts, seconds)
        else:
            self._electronic(volts, seconds)

    def _split_capacitor(self, volts: float, seconds: float) -> None:
        e, v = self.e, self.v
        if volts > 1 or self.blower_slip < 1:
            size = float(e.features["size"])
            motor = wiring.BLOWER.at(self.unit.frequency).sized(size)
            farad = 0.0 if v["capacitor.open"] else wiring.BLOWER_FARAD * size * v["capacitor.share"]
            farad = math.inf if v["capacitor.short"] else farad
            torques = table(
                motor, farad, not v["blower_motor.main_open"], not v["blower_motor.aux_open"], 0.2
            )
            turns = max((1 - self.blower_slip) * BLOWER_SYNCHRONOUS, 1.0)
            air = self._air(turns)
            load = air.shaft / (turns * math.pi / 30) * (BLOWER_SYNCHRONOUS / turns) ** 2
            stuck = v["blower_motor.seized"] or v["wheel.jammed"]
            self.blower_slip = (
                1.0
                if stuck
                else turned(
                    self.blower_slip,
                    torques,
                    volts,
                    motor.synchronous,
                    0.05 * size,
                    load,
                    v["blower_motor.drag"] * size + 0.02,
                    seconds,
                )
            )
        e.s["blower_slip"] = round(self.blower_slip * SLIPS) / SLIPS
        self.air = self._air((1 - self.blower_slip) * BLOWER_SYNCHRONOUS)

    def _electronic(self, volts: float, seconds: float) -> None:
        e, v = self.e, self.v
        turns = self.air.turns
        fed = volts > 85 and e.s["blower"] and not v["blower_harness.command_open"]
        stuck = v["blower_motor.seized"] or v["wheel.jammed"] or v["blower_motor.module_dead"]
        most = self._air(1500.0).flow if fed else 0.0
        if not fed or stuck:
            wanted = 0.0
        elif most < self.unit.design_flow:
            wanted = 1500.0
        else:
            low, high = 0.0, 1500.0
            for _ in range(25):
                middle = (low + high) / 2
                low, high = (
                    (middle, high) if self._air(middle).flow < self.unit.design_flow else (low, middle)
                )
            wanted = high
        turns += (wanted - turns) * (1 - math.exp(-seconds / 6))
        self.air = self._air(turns if turns > 5 else 0.0)
        watts = max(self.air.shaft / 0.75 + 8.0, 8.0)
        e.s["ecm_ohm"] = round(120.0 * 120.0 * 0.62 / watts, 1)

    def _air(self, turns: float) -> Air:
        if turns < 5:
            return STILL
        key = (round(turns), self.e.version)
        if key not in self._airs:
            if len(self._airs) > 4000:
                self._airs.clear()
            self._airs[key] = at_turns(self.unit, self.v, key[0])
        return self._airs[key]

    def _burn(self, seconds: float) -> None:
        unit, v, e = self.unit, self.v, self.e
        self.gas = gas(unit, v, e.valve_open)
        flow = self.gas.flow
        air = burning.air_ratio(self.draught.flow, flow)
        fits = burning.holds(flow, self.draught.flow)
        if self.lit_for > 0:
            self.lit_for = self.lit_for + seconds if fits else 0.0
        elif fits and self.igniter >= burning.LIGHTS_AT and v["igniter.place"] == 0 and 0.4 < air < 4.5:
            self.lighting += seconds
            self.lit_for = seconds if self.lighting >= 2 else 0.0
        else:
            self.lighting = 0.0
        rise = (self.air.after_furnace - self.air.before_blower) / (2 * unit.static_rated)
        blown = 1.2 * v["exchanger.breach"] * rise
        share = 0.0
        if self.lit_for > 0:
            self.fire = burning.fire(v, flow, self.draught.flow, blown)
            crossed = v["burners.gap"] == 0 or (v["burners.gap"] < 1 and self.lit_for >= CROSSES_AFTER)
            ohm = self.fire.flame_ohm if crossed else math.inf
            share = min(flow, self.fire.air * flow) * (1.0 if crossed else 0.25)
            rolls = self.fire.rolls_out
        else:
            self.fire, ohm, rolls = None, math.inf, 0.0
        self.flame_current = 0.0 if self.hands["rod_off"] else e.flame_current(ohm)
        self.heat.step(unit, seconds, share, self.air.flow, v["room.temperature"], rolls)

    def _water(self, seconds: float) -> None:
        v = self.v
        blocked = v["drain.blocked"] or v["drain.frozen"] or v["drain.pump_dead"]
        if self.hands["drain_open"] or not blocked:
            v["drain.level"] = max(0.0, v["drain.level"] - 0.002 * seconds)
        elif self.unit.condensing and self.lit_for > 0:
            v["drain.level"] = min(0.15, v["drain.level"] + CONDENSATE * seconds)

    @contextmanager
    def watched(self, meter: tuple[str, str, complex] | None) -> Iterator[None]:
        """A second with a meter between two points (or none), for the reading that is taken meanwhile."""
        self.e.meter = (meter,) if meter else ()
        self.tick()
        try:
            self.e.settle()
            yield
        finally:
            self.e.meter = ()
            self.e.settle()

    def farads(self) -> float:
        """The run capacitor by itself; one with a short reads over every range."""
        v = self.v
        if v["capacitor.open"] or self.unit.features["blower"] != "psc":
            return 0.0
        if v["capacitor.short"]:
            return math.inf
        return wiring.BLOWER_FARAD * float(self.e.features["size"]) * v["capacitor.share"]

    def charge(self) -> float:
        """Volts DC left on the run capacitor: none where the windings let it empty itself."""
        around = self.e.ohms("capacitor.a", "capacitor.b")
        if self.hands.get("discharged") or around < 1e6 or self.farads() == 0:
            return 0.0
        return 0.6 * math.sqrt(2) * self.unit.rated_volts

    def _notice(self) -> None:
        now = {
            "inducer.runs": (1 - self.inducer_slip) * SYNCHRONOUS > 0.3 * INDUCER_TURNS,
            "pressure_switch.closes": bool(self.e.s["pressure"]),
            "ignitor.glows": self.igniter > burning.GLOWS_AT,
            "valve.opens": self.e.valve_open and not self.v["gas_valve.stuck_shut"],
            "burner.lights": self.lit_for > 0,
            "flame.holds": self.lit_for >= 10,
            "blower.runs": self.air.turns > 300,
        }
        self.events += [(name, self.time) for name, is_so in now.items() if is_so and not self._was.get(name)]
        self._was = now
