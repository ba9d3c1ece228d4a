"""The zone panel in time: what it hears, what it drives, and how blades follow their motors.

Heat calls open their zones and shut the others; a fan call without heat opens the zones that made it; after a
call the dampers stay for the purge and then go to rest. A blade takes a minute from end to end, a spring a
quarter of that (common practice).
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from assistant.rig.air.ducts import Bypass, Run
from assistant.rig.parts.zone import ZONES

if TYPE_CHECKING:
    from assistant.rig.machine import Machine

HEARS = 11.0
DRIVES = 19.0
COOLS = 11.0
"""After its hot-air cut-out a panel waits until the air has cooled by that much, K."""
STROKE, SPRING = 60.0, 15.0
SHARES = {1: 0.45, 2: 0.33, 3: 0.22}
"""Of the design flow."""
DIAMETERS = {1: 0.356, 2: 0.305, 3: 0.254}
"""14, 12 and 10 in. for the reference unit."""
BYPASS_SHARE = 0.6
"""Of the design flow, wide open at the rated supply static."""


class Zoning:
    """Panel and dampers of one house; without a panel every zone is open."""

    def __init__(self, fitted: bool) -> None:
        self.fitted = fitted
        self.blade = dict.fromkeys(ZONES, 1.0)
        self.motor = dict.fromkeys(ZONES, 1.0)
        self.heat_for = 0.0
        self.purging = 0.0
        self.too_hot = False
        self.wanted = dict.fromkeys(ZONES, True)
        self.calls: dict[int, str] = dict.fromkeys(ZONES, "")

    def step(self, m: Machine, seconds: float) -> None:
        """Hear, drive, move."""
        if not self.fitted:
            return
        self._people(m)
        if m.e.volts("panel.r", "panel.c") > HEARS:
            self._hear(m, seconds)
        else:
            m.e.s["panel"] = m.e.s["panel_g"] = 0.0
            self.heat_for = 0.0
        self._move(m, seconds)

    def _people(self, m: Machine) -> None:
        """What the thermostats of zones 2 and 3 call for."""
        v, s = m.v, m.e.s
        off = m.hands["stat"] == "off"
        for zone in ZONES[1:]:
            s[f"zone{zone}_heat"] = float(bool(v[f"zone{zone}.heat"]) and not off)
            fan = v[f"zone{zone}.fan"]
            s[f"zone{zone}_g"] = float(
                fan == "on"
                or (fan == "circulate" and m.time % 3600 < 1200)
                or bool(v[f"zone{zone}.humidity_fan"] and v["humidifier.demand"])
            )

    def _hear(self, m: Machine, seconds: float) -> None:
        v, s = m.v, m.e.s
        for zone in ZONES:
            name = "zone" if zone == 1 else f"zone{zone}"
            heat = m.e.volts(f"{name}.w", "panel.c") > HEARS
            fan = m.e.volts(f"{name}.g", "panel.c") > HEARS
            self.calls[zone] = "heat" if heat else "fan" if fan else ""
        heats = [zone for zone in ZONES if self.calls[zone] == "heat"]
        fans = [zone for zone in ZONES if self.calls[zone] == "fan"]
        self.heat_for = self.heat_for + seconds if heats else 0.0
        cut = v["zone_panel.hot_limit"]
        self.too_hot = too_hot = m.heat.discharge > (cut - COOLS if self.too_hot else cut)
        passes = self.heat_for >= v["zone_panel.delay"] and not v["zone_panel.heat_locked"] and not too_hot
        s["panel"] = float(passes and not v["zone_panel.relay_dead"])
        s["panel_g"] = float(
            bool((fans and not heats) or too_hot or v["zone_panel.output_on"]) and not v["zone_panel.g_dead"]
        )
        if heats or fans:
            self.purging = v["zone_panel.purge"]
            opened = set(heats or fans)
            if fans and not heats and v["zone_panel.fan_all"]:
                opened = set(ZONES)
            self.wanted = {zone: zone in opened or too_hot for zone in ZONES}
        elif self.purging > 0:
            self.purging -= seconds
        else:
            self.wanted = dict.fromkeys(ZONES, v["zone_panel.rest"] == "open")
        self._drive(m)

    def _drive(self, m: Machine) -> None:
        v, s = m.v, m.e.s
        for zone in ZONES:
            at = {2: 3, 3: 2}.get(zone, zone) if v["zone_panel.crossed"] else zone
            kind = v[f"damper{zone}.kind"]
            opened = self.wanted[at]
            close, open_ = not opened, opened
            if v["zone_panel.type_wrong"]:
                close, open_ = open_, close
            if v["zone_panel.output_dead"] == zone:
                close = False
            s[f"output{zone}_close"] = float(close and kind != "spring close")
            s[f"output{zone}_open"] = float(open_ and kind != "spring open")

    def _move(self, m: Machine, seconds: float) -> None:
        v = m.v
        for zone in ZONES:
            name = f"damper{zone}"
            close = m.e.volts(f"{name}.close", "panel.c") > DRIVES and not v[f"{name}.dead"]
            open_ = m.e.volts(f"{name}.open", "panel.c") > DRIVES and not v[f"{name}.dead"]
            if v[f"{name}.swapped"]:
                close, open_ = open_, close
            kind = v[f"{name}.kind"]
            rate = 0.0
            if kind == "spring open":
                rate = -1 / STROKE if close else 1 / SPRING
            elif kind == "spring close":
                rate = 1 / STROKE if open_ else -1 / SPRING
            elif close != open_:
                rate = (1 if open_ else -1) / STROKE
            self.motor[zone] = min(max(self.motor[zone] + rate * seconds, 0.0), 1.0)
            if v[f"{name}.lever"]:
                self.blade[zone] = 1.0
            elif not v[f"{name}.slips"]:
                least = max(v[f"{name}.stop"], v[f"{name}.jam"])
                self.blade[zone] = max(self.motor[zone], least)

    def runs(self, m: Machine, supply_drop: float) -> tuple[Run, ...]:
        """The ducts behind the plenum as they stand. `supply_drop`: their drop at design flow, Pa."""
        flow = m.unit.design_flow
        if not self.fitted:
            return (Run("all", supply_drop, flow),)
        size = (flow / 0.559) ** 0.5
        return tuple(
            Run(
                str(zone),
                supply_drop,
                SHARES[zone] * flow,
                DIAMETERS[zone] * size,
                round(self.blade[zone], 2),
                float(m.v[f"damper{zone}.closed"]),
                float(m.v[f"damper{zone}.before"]),
            )
            for zone in ZONES
        )

    def bypass(self, m: Machine, supply_drop: float) -> Bypass | None:
        """The bypass damper: its weight lets it open at two and a half times the plenum's design pressure."""
        if not self.fitted or not m.v["bypass.fitted"]:
            return None
        stuck = float(m.v["bypass.stuck"])
        most = BYPASS_SHARE * m.unit.design_flow / supply_drop**0.5
        return Bypass(most, 2.5 * supply_drop, None if stuck < 0 else stuck)
