"""The zone panel in time: what it hears, what it drives, and how blades follow their motors.

Heat and cooling calls open their zones and shut the others; a fan call without them opens the zones that made
it; after a call the dampers stay for the purge and then go to rest. A blade takes a minute from end to end, a
spring a quarter of that (common practice). The bypass is set as the trade sets it: its weight keeps it shut
with all zones open and lets it open with the smallest alone (common practice).
"""

from __future__ import annotations

from math import inf
from typing import TYPE_CHECKING

from assistant.rig.air import registers
from assistant.rig.air.ducts import Bypass, Run, shut
from assistant.rig.air.people import FOUND, People
from assistant.rig.parts.zone import ZONES
from assistant.rig.wiring.zones import CALLS, terminal

if TYPE_CHECKING:
    from assistant.rig.machine import Machine

HEARS = 11.0
DRIVES = 19.0
COOLS = 11.0
"""After its hot-air cut-out a panel waits until the air has cooled by that much, K."""
SHORTED = 20.0
"""A damper motor with less than that between its leads turns nothing, ohm."""
STROKE, SPRING = 60.0, 15.0
SHARES = {1: 0.70, 2: 0.60, 3: 0.55}
"""Of the design flow at the design pressure: each zone's ducts are oversized, so that one alone carries more
than half of the unit's air (common practice); with small zones and a bypass a furnace trips its limit.
"""
NARROW = 0.43
"""Of a zone that somebody added with smaller ducts: about two fifths of the unit's air (common practice: the
smallest zone takes a quarter to a third). With half of the air sent round a bypass the limit would trip, as
supply stands over the room by the rise over the share that is not sent round.
"""
DIAMETERS = {1: 0.356, 2: 0.356, 3: 0.305}
"""14, 14 and 12 in. for the reference unit."""
BYPASS_SHARE = 0.6
"""Of the design flow, wide open at the rated supply static."""
OPENS_AT = 2.4
"""The plenum's design pressure times this lets the bypass open: the smallest zone alone opens it a little, a
small one nearly wide, and all together not.
"""
UNSEALED = 700.0
"""Drop over a shut blade without a seal at its duct's design flow, in velocity pressures."""
BLOWS = 0.20
"""Air that blows a tissue aside at a register, m/s."""
COMPLAINED_ZONE = registers.REGISTERS[registers.COMPLAINED]
SETTLED, BRIEFLY = 100.0, 30.0
"""A damper's stroke after a call begins; a moment after it ends, s."""
LATELY = 240.0
"""How long back a stroke is remembered, s."""


class Zoning:
    """Panel and dampers of one house; without a panel every zone is open."""

    def __init__(self, fitted: bool) -> None:
        self.fitted = fitted
        self.people = People()
        self.blade = dict.fromkeys(ZONES, 1.0)
        self.motor = dict.fromkeys(ZONES, 1.0)
        self.went: dict[int, list[tuple[float, float]]] = {zone: [] for zone in ZONES}
        self.heat_for = 0.0
        self.purging = 0.0
        self.too_hot = False
        self.wanted = dict.fromkeys(ZONES, True)
        self.calls: dict[int, str] = dict.fromkeys(ZONES, "")
        self.called_at: float | None = None
        self.ended_at: float | None = None
        self.blew_at = self.ran_at = 0.0
        self.blew = (False, False)
        """Whether zone 2's register blew during the last call of another, and for long after it."""
        self.cut_seen = False

    def step(self, m: Machine, seconds: float) -> None:
        """Hear, drive, move."""
        if not self.fitted:
            return
        self._people(m)
        m.e.s["panel_power"] = float(m.e.volts("panel.line", "panel.neutral") > 60)
        if m.e.volts("panel.r", "panel.c") > HEARS:
            self._hear(m, seconds)
        else:
            m.e.s["panel"] = m.e.s["panel_g"] = 0.0
            self.heat_for = 0.0
        self._move(m, seconds)
        self._watch(m)

    def _watch(self, m: Machine) -> None:
        """What somebody at the quiet register would tell of a call, and of the minutes after it."""
        calling = any(call in ("heat", "cool") for call in self.calls.values())
        if calling and self.called_at is None:
            self.called_at, self.ended_at, self.blew, self.cut_seen = m.time, None, (False, False), False
        if not calling and self.called_at is not None:
            self.called_at, self.ended_at = None, m.time
        quiet = self.registers(m).get(registers.COMPLAINED, 0.0) / registers.area(m.unit) > BLOWS
        self.cut_seen = self.cut_seen or self.too_hot
        if m.air.turns > 100:
            self.ran_at = m.time
        if quiet:
            self.blew_at = m.time
        during, after = self.blew
        if self.called_at is not None and m.time - self.called_at > SETTLED:
            during = during or (quiet and not self.calls[2])
        if self.ended_at is not None and m.time - self.ended_at > BRIEFLY:
            after = after or quiet
        self.blew = during, after

    def _people(self, m: Machine) -> None:
        """What the thermostats call for, and which wires are off."""
        s, people = m.e.s, self.people
        for zone in ZONES:
            s[f"zone{zone}_on_base"] = float(people.stats[zone].on_base)
            heat, fan, cool = self._asks(m, zone)
            if zone == 1:
                here = people.stats[1].on_base and "all zones" not in people.lifted
                m.e.stat_wants["w"], m.e.stat_wants["g"] = float(heat and here), float(fan and here)
            s[f"zone{zone}_heat"], s[f"zone{zone}_g"] = float(heat), float(fan)
            s[f"zone{zone}_cool"] = float(cool)
        for name, wire in (
            ("zones_lifted", "all zones"),
            ("g_lifted", "zone g"),
            ("furnace_lifted", "furnace"),
            ("panel_out_lifted", "panel out"),
            ("open_lifted", "damper open"),
            ("close_lifted", "damper close"),
            ("legs_off", "actuator"),
        ):
            s[name] = float(wire in people.lifted)
        s["panel_off"] = float(people.panel_off)

    def _asks(self, m: Machine, zone: int) -> tuple[bool, bool, bool]:
        """Heat, fan and cooling that a zone's thermostat asks for."""
        v, stat = m.v, self.people.stats[zone]
        off = m.hands["stat"] == "off"
        if zone == 1:
            found = bool(m.e.stat_wants["w"])
            fan = "on" if m.hands["fan"] == "on" else v["thermostat.fan"]
            moist = v["thermostat.humidity_fan"]
        else:
            found = bool(v[f"zone{zone}.heat"]) and not off
            fan, moist = v[f"zone{zone}.fan"], v[f"zone{zone}.humidity_fan"]
        heat = found if stat.call == FOUND else stat.call == "heat"
        damp = v["humidifier.demand"] if stat.moisture == FOUND else stat.moisture == "asked"
        runs = fan == "on" or (fan == "circulate" and m.time % 3600 < 1200)
        if zone == 1:
            runs = bool(m.e.stat_wants["g"])
        if stat.fan != FOUND:
            runs = stat.fan == "on"
        cool = stat.call == "cool"
        return heat, bool(runs or (moist and damp)) or cool, cool

    def circulates(self, m: Machine, zone: int) -> bool:
        """Whether that zone's fan is set to run, now or by turns."""
        fan = m.v["thermostat.fan" if zone == 1 else f"zone{zone}.fan"]
        return fan in ("on", "circulate") and self.people.stats[zone].fan == FOUND

    def _hear(self, m: Machine, seconds: float) -> None:
        v, s = m.v, m.e.s
        for zone in ZONES:
            heat, fan, cool = (m.e.volts(terminal(zone, letter), "panel.c") > HEARS for letter in CALLS)
            self.calls[zone] = "heat" if heat else "cool" if cool else "fan" if fan else ""
        heats = [zone for zone in ZONES if self.calls[zone] in ("heat", "cool")]
        fans = [zone for zone in ZONES if self.calls[zone] == "fan"]
        warm = any(self.calls[zone] == "heat" for zone in ZONES)
        self.heat_for = self.heat_for + seconds if warm else 0.0
        cut = v["zone_panel.hot_limit"]
        self.too_hot = too_hot = m.heat.discharge > (cut - COOLS if self.too_hot else cut)
        passes = self.heat_for >= v["zone_panel.delay"] and not v["zone_panel.heat_locked"] and not too_hot
        s["panel"] = float(passes and not v["zone_panel.relay_dead"])
        cooling = any(self.calls[zone] == "cool" for zone in ZONES)
        s["panel_g"] = float(
            bool((fans and not heats) or cooling or too_hot or v["zone_panel.output_on"])
            and not v["zone_panel.g_dead"]
            and not v["zone_panel.fan_locked"]
        )
        if heats or fans:
            self.purging = v["zone_panel.purge"]
            opened = set(heats or fans)
            if fans and not heats and v["zone_panel.fan_all"]:
                opened = set(ZONES)
            if v["zone_panel.relief"] and len(opened) == 1:
                opened.add(int(v["zone_panel.relief"]))
            self.wanted = {zone: zone in opened or too_hot for zone in ZONES}
        elif self.purging > 0:
            self.purging -= seconds
            s["panel_g"] = float(v["zone_panel.purge_to"] == "all" and self.purging > 0)
            if v["zone_panel.purge_to"] == "all":
                self.wanted = dict.fromkeys(ZONES, True)
        else:
            self.wanted = dict.fromkeys(ZONES, v["zone_panel.rest"] == "open")
        self._drive(m)

    def _drive(self, m: Machine) -> None:
        v, s = m.v, m.e.s
        for zone in ZONES:
            opened = self.wanted[zone]
            close, open_ = not opened, opened
            if v["zone_panel.type_wrong"]:
                close, open_ = open_, close
            if v["zone_panel.output_dead"] == zone:
                close = False
            if v["zone_panel.output_held"] == zone:
                open_ = True
            s[f"output{zone}_close"], s[f"output{zone}_open"] = float(close), float(open_)

    def _move(self, m: Machine, seconds: float) -> None:
        v = m.v
        for zone in ZONES:
            name = f"damper{zone}"
            sound = not (v[f"{name}.dead"] or v[f"{name}.stripped"]) and v[f"{name}.motor_ohm"] > SHORTED
            alive = sound and not (zone == 2 and "actuator" in self.people.lifted)
            close = m.e.volts(f"actuator{zone}.close", "panel.c") > DRIVES and alive
            open_ = m.e.volts(f"actuator{zone}.open", "panel.c") > DRIVES and alive
            kind = v[f"{name}.kind"]
            rate = 0.0
            if kind == "spring open":
                rate = -1 / STROKE if close else 1 / SPRING
            elif kind == "spring close":
                rate = 1 / STROKE if open_ else -1 / SPRING
            elif close != open_:
                rate = (1 if open_ else -1) / STROKE
            free = zone == 2 and self.people.actuator_off
            least = 0.0 if free else max(v[f"{name}.stop"], v[f"{name}.jam"], 0.0)
            if v[f"{name}.slips"]:
                least = 0.0
            self.motor[zone] = min(max(self.motor[zone] + rate * seconds, least), 1.0)
            self._remember(zone, m.time)
            if v[f"{name}.lever"]:
                self.blade[zone] = 1.0
            elif not v[f"{name}.slips"] and not free:
                short = max(v[f"{name}.offset"], v[f"{name}.mounted"])
                self.blade[zone] = max(self.motor[zone], v[f"{name}.stop"], v[f"{name}.jam"], short)

    def _remember(self, zone: int, now: float) -> None:
        went = self.went[zone]
        if not went or went[-1][1] != self.motor[zone]:
            went.append((now, self.motor[zone]))
        while len(went) > 1 and went[1][0] < now - LATELY:
            went.pop(0)

    def stroke(self, zone: int) -> float:
        """How far the actuator has gone within the last minutes, share of its way."""
        places = [place for _, place in self.went[zone]]
        return max(places) - min(places) if places else 0.0

    def runs(self, m: Machine, supply_drop: float) -> tuple[Run, ...]:
        """The ducts behind the plenum as they stand. `supply_drop`: their drop at design flow, Pa."""
        flow = m.unit.design_flow
        if not self.fitted:
            return (Run("all", supply_drop, flow),)
        size = (flow / 0.559) ** 0.5
        shares = registers.shares(registers.branches(m.v))
        carried = {**SHARES, 3: NARROW} if m.v["story.narrow"] else SHARES
        ducts = tuple(
            Run(
                str(zone),
                supply_drop * (shut(m.v["registers.others"]) if zone != COMPLAINED_ZONE else 1.0),
                carried[zone] * flow * max(shares.get(str(zone), 0.0), 0.01),
                DIAMETERS[zone] * size,
                round(self.blade[zone], 2),
                min(float(m.v[f"damper{zone}.closed"]), UNSEALED if m.v[f"damper{zone}.unsealed"] else inf),
            )
            for zone in ZONES
        )
        free = shares.get(registers.TRUNK, 0.0)
        return (*ducts, Run(registers.TRUNK, supply_drop, SHARES[2] * flow * free)) if free else ducts

    def registers(self, m: Machine) -> dict[str, float]:
        """The air of every register, m3/s; empty in a house without zones."""
        if not self.fitted:
            return {}
        return registers.flows(registers.branches(m.v), m.air.ducts.runs)

    def bypass(self, m: Machine, supply_drop: float) -> Bypass | None:
        """The bypass damper: its weight lets it open a little above the plenum's design pressure."""
        if not self.fitted or not m.v["bypass.fitted"] or m.v["story.no_bypass"]:
            return None
        stuck = 1.0 if self.people.arm_pushed else float(m.v["bypass.stuck"])
        most = BYPASS_SHARE * m.unit.design_flow / supply_drop**0.5 * m.v["bypass.size"] * m.v["bypass.hand"]
        return Bypass(max(most, 1e-6), OPENS_AT * supply_drop, None if stuck < 0 else stuck)
