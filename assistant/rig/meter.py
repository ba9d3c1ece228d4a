"""Taking a reading: the instrument is laid into the circuit, the hose or the air, and its display is read.

Conventions of the points: a pressure at a vacuum hose is read with the low side on it, so that vacuum is a
plain number; every other pressure is the first point against the second, or against the room. Ohms are
taken as a technician takes them: what lies between the two points has its leads off (LEADS_OFF), everything
else is read as it stands.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from random import Random

from assistant.quantity.instrument import Instrument
from assistant.quantity.kind import KINDS
from assistant.rig import display_ranges as shown
from assistant.rig.circuit import weak
from assistant.rig.circuit.network import OPEN
from assistant.rig.electrics import METER_FARAD, METER_HIGH_OHM, METER_LOW_OHM
from assistant.rig.fan.outputs import direct
from assistant.rig.machine import Machine
from assistant.rig.points import (
    AIR,
    BEHIND_PLUG,
    CABLE_WHITE,
    CLAMPS,
    PRESSURES,
    TWISTED,
    UNPLUGGED,
    VACUUMS,
    ohm_branches,
)
from assistant.rig.points_zone import DAMPER_POINTS, highest_damper, lowest_damper

TESTER_VOLTS = 500.0
BOTH_WIRES = {
    ("box.line", "box.neutral"): ("line_wire", "branch_neutral"),
    ("accessory.line", "accessory.neutral"): ("accessory_plug", "accessory_return"),
}
"""Both wires of a cord or a box in one jaw: what does not come back shows."""
LEAKAGE_STEP = 1e-5
"""A of a leakage clamp's last digit."""
LIVE = 0.8
"""More than this across the leads upsets ohms, V."""
KIT: dict[str, Instrument] = {
    "low": Instrument("multimeter, low impedance", ("ac_voltage", "dc_voltage"), impedance="low"),
    "high": Instrument(
        "multimeter",
        ("ac_voltage", "dc_voltage", "resistance", "ac_current", "dc_current", "capacitance", "frequency"),
        impedance="high",
        lead_resistance=0.2,
        range_top={"resistance": 40e6},
    ),
    "other": Instrument(
        "manometer, probes, analyser",
        (
            "pressure",
            "temperature",
            "speed",
            "concentration",
            "percent",
            "duration",
            "length",
            "insulation",
            "power",
            "temperature_difference",
            "airflow",
            "velocity",
        ),
    ),
}


class CannotMeasure(ValueError):
    """A sentence that says what can't be measured, and why."""


class Taking:
    """Readings on one machine with instruments whose errors are drawn once each from `random`."""

    def __init__(self, machine: Machine, random: Random, exact: bool) -> None:
        self.m = machine
        self.random = random
        self.exact = exact
        self._errors: dict[tuple[str, str], tuple[float, float]] = {}

    def take(self, kind: str, points: Sequence[str], instrument: Instrument | None) -> str:
        """The display's text. Raises CannotMeasure."""
        kit = instrument or KIT["high" if kind in KIT["high"].covers else "other"]
        if kind not in TAKES:
            raise CannotMeasure(f"{kind} is not measured on this house")
        nodes = tuple(DAMPER_POINTS.get(point, point) for point in points)
        clamped = kind == "ac_current" and set(points) & set(CLAMPS)  # a wire, and not the node it ends in
        value = TAKES[kind](self, tuple(points) if clamped else nodes, kit)
        if isinstance(value, str):
            return value
        top = kit.range_top.get(kind)
        return shown.text(kind, self._with_error(kind, value, kit), top)

    def _with_error(self, kind: str, value: float, kit: Instrument, step: float | None = None) -> float:
        if self.exact or not (kit.percent.get(kind) or kit.counts.get(kind)):
            return value
        key = (kit.name, kind)
        if key not in self._errors:
            self._errors[key] = (self.random.uniform(-1, 1), self.random.uniform(-1, 1))
        of_reading, of_count = self._errors[key]
        reading = value - 255.372 if kind == "temperature" else value  # percent of the number shown in F
        step = shown.step(kind, value, kit.range_top.get(kind)) if step is None else step
        off = abs(reading) * of_reading * kit.percent.get(kind, 0.0) / 100
        off += of_count * kit.counts.get(kind, 0.0) * step
        if kind == "percent":
            return min(max(value + off, 0.0), 1.0)  # no display of a share goes past the whole
        return value + off if KINDS[kind].can_be_negative else max(value + off, 0.0)

    # -- electricity

    def _two(self, points: tuple[str, ...]) -> tuple[str, str]:
        nodes = self.m.e.net.nodes
        unknown = [p for p in points if p not in nodes]
        if len(points) != 2 or unknown:
            raise CannotMeasure(
                f"volts and ohms need two points of the wiring, not {', '.join(points) or 'none'}"
            )
        return points[0], points[1]

    def _volts(self, points: tuple[str, ...], kit: Instrument) -> float:
        a, b = self._two(points)
        low = kit.impedance == "low"
        omega = 2 * 3.141592653589793 * self.m.unit.frequency
        load = 1 / METER_LOW_OHM if low else 1 / METER_HIGH_OHM + 1j * omega * METER_FARAD
        with self.m.watched((a, b, load)):
            return self.m.e.volts(a, b)

    def _direct(self, points: tuple[str, ...], _kit: Instrument) -> float:
        if set(points) == {"capacitor.a", "capacitor.b"}:
            return self.m.charge()
        a, b = self._two(points)
        with self.m.watched(None):
            return direct(self.m.e, a, b, 1 / METER_HIGH_OHM)

    def _ohms(self, points: tuple[str, ...], kit: Instrument) -> float | str:
        if points == ("c",):
            return self._added_coil(kit)
        if points == ("y",):
            return self._outdoor_coil() + kit.lead_resistance
        if points == (DAMPER_POINTS["damper.common"],):
            live = self._live("panel.r", "panel.c")
            return "Err" if live else lowest_damper(self.m) + kit.lead_resistance
        a, b = self._two(points)
        if self._live(a, b):
            self.m.mishaps.append(f"ohms on a live circuit at {a} and {b}")
            return "Err"
        pair = frozenset((a, b))
        only, without = ohm_branches(self.m, a, b), UNPLUGGED.get(pair, ())
        if only is not None:
            white = CABLE_WHITE.get(pair, {})
            a, b = (white.get(p, BEHIND_PLUG.get(p, p)) for p in (a, b))
        return self.m.e.ohms(a, b, only, without, TWISTED.get(pair)) + kit.lead_resistance

    def _added_coil(self, kit: Instrument) -> float:
        """The lowest of the 24 V coils that were added to the furnace."""
        ohm = float(self.m.v["accessories.ohm"])
        if ohm > 1e9:
            raise CannotMeasure("no 24 V part was added to this furnace")
        return ohm * self.m.v["accessories.coils"] + kit.lead_resistance

    def _outdoor_coil(self) -> float:
        """The outdoor unit's contactor coil by itself, both control wires off it."""
        v = self.m.v
        return OPEN if v["outdoor_unit.open"] else float(v["outdoor_unit.ohm"])

    def _live(self, a: str, b: str) -> bool:
        """Whether more than stray voltage stands there: 100 kohm would not pull it down."""
        e = self.m.e
        e.solve()
        pairs = [(a, b), (a, "ground"), (b, "ground")]
        loaded = e.network.solve(e.frequency, [(x, y, 1e-5) for x, y in pairs if x != y])
        return max(abs(loaded.between(x, y)) for x, y in pairs) > LIVE

    def _insulation(self, points: tuple[str, ...], kit: Instrument) -> float | str:
        """At 500 V: what an ohmmeter's few volts do not reach lets go."""
        found = self._ohms(points, Instrument(kit.name, kit.covers))
        if isinstance(found, str):
            return found
        broken = weak.ohms_at(self.m.e, ohm_branches(self.m, *self._two(points)), TESTER_VOLTS)
        return found if broken is None else min(found, broken)

    def _clamp(self, points: tuple[str, ...], _kit: Instrument) -> float | str:
        if points in BOTH_WIRES:
            with self.m.watched(None):
                solution = self.m.e.solve()
                out, back = (solution.current(name) for name in BOTH_WIRES[points])
            return shown.LEAKAGE.show(self._with_error("ac_current", abs(out - back), _kit, LEAKAGE_STEP))
        if points == ("damper.common",) and self.m.zoning.fitted:
            with self.m.watched(None):
                return highest_damper(self.m)
        name = CLAMPS.get(points[0]) if points else None
        if name not in self.m.e.net.index:
            raise CannotMeasure(f"no wire to clamp at {', '.join(points) or 'no point'}")
        with self.m.watched(None):
            return abs(self.m.e.solve().current(name))

    def _flame(self, points: tuple[str, ...], _kit: Instrument) -> float:
        if set(points) != {"board.rod", "rod"}:
            raise CannotMeasure(
                "direct current is read in series between the board's rod terminal and the rod"
            )
        with self.m.watched(None):
            broken = self.m.v["flame_rod.wire_open"]
            return 0.0 if broken else self.m.flame_current

    def _farads(self, points: tuple[str, ...], _kit: Instrument) -> float:
        if set(points) != {"capacitor.a", "capacitor.b"}:
            raise CannotMeasure("capacitance is read on the run capacitor's two terminals")
        return self.m.farads()

    def _frequency(self, points: tuple[str, ...], _kit: Instrument) -> float:
        a, b = self._two(points)
        return self.m.unit.frequency if self.m.e.volts(a, b) > 0.5 else 0.0

    def volts_now(self, points: Sequence[str], kit: Instrument) -> float:
        """Volts at this very moment, whether or not contacts that depend on them have found their place."""
        a, b = self._two(tuple(DAMPER_POINTS.get(point, point) for point in points))
        e = self.m.e
        e.solve()
        load = 1 / (METER_LOW_OHM if kit.impedance == "low" else METER_HIGH_OHM)
        return abs(e.network.solve(e.frequency, [(a, b, load)]).between(a, b))

    def volts_shown(self, volts: float, kit: Instrument) -> str:
        """The display's text for volts that were kept."""
        return shown.text("ac_voltage", self._with_error("ac_voltage", volts, kit))

    def held(self, points: Sequence[str], kit: Instrument, last: bool = False) -> str:
        """The highest value of a clamp that was left on a wire since the branch was last closed; with `last`
        what it showed last before that opened.
        """
        branch = self.m.branch
        peak = (branch.ran if last else branch.peak).get(CLAMPS.get(points[0], ""), 0.0)
        return shown.text("ac_current", self._with_error("ac_current", peak, kit))

    # -- gas, vent, air, room

    def _pressure(self, points: tuple[str, ...], _kit: Instrument) -> float:
        with self.m.watched(None):
            first = self._pascals(points[0])
            other = self._pascals(points[1]) if len(points) > 1 else 0.0
        return other - first if points[0] in VACUUMS else first - other

    def _pascals(self, point: str) -> float:
        if point not in PRESSURES:
            raise CannotMeasure(f"no pressure is taken at {point}")
        return PRESSURES[point](self.m)

    def _one(self, kind: str, points: tuple[str, ...]) -> float:
        found = AIR.get((kind, points[0])) if points else None
        if found is None:
            raise CannotMeasure(f"no {kind} is read at {', '.join(points) or 'no point'}")
        with self.m.watched(None):
            return found(self.m)


def _of(kind: str) -> Callable:
    return lambda taking, points, _kit: taking._one(kind, points)


TAKES: dict[str, Callable[[Taking, tuple[str, ...], Instrument], float | str]] = {
    "ac_voltage": Taking._volts,
    "dc_voltage": Taking._direct,
    "resistance": Taking._ohms,
    "insulation": Taking._insulation,
    "ac_current": Taking._clamp,
    "dc_current": Taking._flame,
    "capacitance": Taking._farads,
    "frequency": Taking._frequency,
    "pressure": Taking._pressure,
    **{
        kind: _of(kind)
        for kind in (
            "temperature",
            "speed",
            "concentration",
            "percent",
            "duration",
            "length",
            "power",
            "temperature_difference",
            "airflow",
            "velocity",
        )
    },
}
