"""The furnace in time: electrics, board, gas, vent, fire, heat and air, one step after the other."""

from __future__ import annotations

import math
from collections.abc import Iterator
from contextlib import contextmanager

from assistant.rig import branch, drives, wiring
from assistant.rig.air.blower import Air
from assistant.rig.air.zoning import Zoning
from assistant.rig.burner import fire as burning
from assistant.rig.burner import igniter
from assistant.rig.burner.gas import Gas, gas
from assistant.rig.burner.heat import Heat
from assistant.rig.burner.sequence import Board, Inputs
from assistant.rig.burner.vent import INDUCER_TURNS, Draught, at_switch
from assistant.rig.circuit import protection
from assistant.rig.electrics import Electrics, Known
from assistant.rig.fan import drive, outputs, warmth
from assistant.rig.part import Settings
from assistant.rig.unit import Unit

STEP = 1.0
CROSSES_AFTER = 4.0
CLOSES, OPENS = 1.0, 0.87
"""A pressure switch closes at its stamp and opens a little below."""
CONDENSATE = 0.10 / 1200.0
"""Rise of water in a blocked trap while it fires, m/s (0.1 m in 20 min)."""
FOUND_COLD, SET_UP = 1.1, 2.8
"""How far a room is below its setting when somebody is called, and how far the setting is raised, K."""
FLOAT_AT = 0.03
"""Depth in m at which a float opens."""


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
            "r_off": False,
            "float_up": False,
            "hose_off": False,
            "tee": False,
            "drain_off": False,
            "intake_open": False,
            "vent_open": False,
            "ports": "shut",
            "stat": "customer",
            "rod_off": False,
            "leak_checked": True,
            "bubbles": False,
            "fan": "auto",
            "plugged": 3,
            "others": True,
            "moved": False,
            "board_off": False,
            "apart": False,
            "white_off": False,
            "warm_air": False,
            "water": "",
            "wheel_off": False,
            "mode": "",
            "fan_held": False,
            "w_off": False,
            "limit_off": False,
            "inhibit_off": False,
            "module_off": False,
        }
        self.igniter = 293.0
        self.inducer_slip = self.blower_slip = 1.0
        self.gas = Gas(0.0, 0.0, 0.0)
        self.draught = Draught(0.0, 0.0, 0.0, 0.0)
        self.air = drive.STILL
        self.fan = warmth.Fan()
        self.fire: burning.Fire | None = None
        self.blown = False
        self.lit_for = 0.0
        self.lighting = 0.0
        self.valve_for = 0.0
        self.zoning = Zoning(unit.features["zone_panel"] == "yes")
        self.breaker_heat = self.fuse_heat = self.plug_heat = self.panel_heat = 0.0
        self.flame_current = 0.0
        self.hottest = 293.0
        self.fuses = int(v["control_fuse.blown"])
        self.mishaps: list[str] = []
        self.deeds: set[str] = set()
        self.airs: dict[tuple, Air] = Known()
        self.drawn: tuple | None = None
        self._was: dict[str, bool] = {}
        self.branch = branch.Branch()

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
        up = v["drain.level"] > FLOAT_AT or self.hands["float_up"]
        s["float"] = float(not (v["float_switch.fitted"] and up))
        s["door"] = float((self.hands["door_on"] and v["door.seated"]) or self.hands["held"])
        s["breaker"] = float(not self.hands["locked"])
        s["switch"] = float(not self.hands["tagged"])
        s["loads_lifted"] = float(self.hands["lifted"])
        branch.contacts(self)
        s["r_lifted"] = float(self.hands["r_off"])
        outputs.contacts(self)
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
        below = FOUND_COLD + (SET_UP if self.hands["stat"] == "call" else 0.0)
        calling = calling and below >= v["thermostat.lag"]
        e.stat_wants["w"] = float(calling)
        cools = self.hands["stat"] == "cool"
        e.stat_wants["y"] = float(cools)
        e.stat_wants["g"] = float(
            (self.hands["fan"] == "on" and not self.hands["fan_held"])
            or cools
            or v["thermostat.fan"] == "on"
            or (v["thermostat.fan"] == "circulate" and self.time % 3600 < 1200)
            or bool(v["thermostat.humidity_fan"] and v["humidifier.demand"])
        )
        self.zoning.step(self, seconds)

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
        drives.inducer(self, seconds)
        drive.blower(self, seconds)
        self._burn(seconds)
        self._water(seconds)
        branch.step(self, seconds)
        protection.step(self, seconds)
        self._notice()

    def _board(self, seconds: float) -> None:
        v, e = self.v, self.e
        flame = (self.flame_current >= v["board.drop_out"] and not v["board.sense_dead"]) or v[
            "board.false_flame"
        ]
        seen = Inputs(
            power=e.awake,
            heat=e.board_sees("w") and not v["board.w_deaf"] and not self.hands["w_off"],
            fan=(e.board_sees("g") and not v["board.g_deaf"]) or bool(v["fan_switch.always"]),
            string=e.board_sees("aux.load"),
            pressure=e.board_sees("pressure.load"),
            flame=bool(flame),
            valve=e.board_sees("board.valve"),
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

    def _burn(self, seconds: float) -> None:
        unit, v, e = self.unit, self.v, self.e
        self.valve_for = self.valve_for + seconds if e.valve_open else 0.0
        self.gas = gas(unit, v, e.valve_open and self.valve_for <= v["gas_valve.holds"])
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
        rise = self.air.ducts.lift / (2 * unit.static_rated)
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
        self.heat.step(unit, seconds, share, self.air.flow, self.returns(), rolls)

    def returns(self) -> float:
        """Temperature of the air that enters the furnace, what a bypass brings back mixed in, K."""
        room, flow = self.v["room.temperature"], self.air.flow
        back = self.air.ducts.bypass
        return room if flow <= 0 or back <= 0 else room + (self.heat.supply - room) * min(back / flow, 0.9)

    def _water(self, seconds: float) -> None:
        v = self.v
        blocked = v["drain.blocked"] or v["drain.frozen"] or v["drain.pump_dead"]
        if self.hands["drain_off"] or not blocked:
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
        size = float(self.e.features["size"]) * v["blower_motor.size"]
        return wiring.BLOWER_FARAD * size * v["capacitor.share"]

    def charge(self) -> float:
        """Volts DC left on the run capacitor: none where the windings let it empty itself."""
        around = self.e.ohms("capacitor.a", "capacitor.b")
        if self.hands.get("discharged") or around < 1e6 or self.farads() == 0:
            return 0.0
        return 0.6 * math.sqrt(2) * self.unit.rated_volts

    def _notice(self) -> None:
        now = {
            "inducer.runs": (1 - self.inducer_slip) * drives.SYNCHRONOUS > 0.3 * INDUCER_TURNS,
            "pressure_switch.closes": bool(self.e.s["pressure"]),
            "ignitor.glows": self.igniter > burning.GLOWS_AT,
            "valve.opens": self.e.valve_open and not self.v["gas_valve.stuck_shut"],
            "burner.lights": self.lit_for > 0,
            "flame.holds": self.lit_for >= 10,
            "blower.runs": self.air.turns > 300,
            "blower.stops": self.air.turns < 30 and self.blown,
        }
        self.blown = self.blown or now["blower.runs"]
        self.events += [(name, self.time) for name, is_so in now.items() if is_so and not self._was.get(name)]
        if now["blower.stops"]:
            self.blown = False
        self._was = now
