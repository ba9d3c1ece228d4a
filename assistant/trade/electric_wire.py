"""Copper between two points: its resistance at its temperature, the drop on it, the longest run for a given
drop.
"""

from __future__ import annotations

import math

from assistant.trade.constants import FOOT
from assistant.trade.entry import Argument, Result, Source, argument, choice, computation

TABLE = Source(
    "National Electrical Code chapter 9 Table 8, uncoated copper at 75 °C (18 to 12 AWG read in a "
    "transcription); 10 AWG and the change with temperature",
    "from memory",
)
UFC = Source(
    "UFC 3-520-01 (10 June 2002) appendix B-2.1: drop = I(R cos + X sin), power factor 0.8 where unknown",
    "read",
)
OHM_PER_KFT = {
    "solid": {18: 7.77, 16: 4.89, 14: 3.07, 12: 1.93, 10: 1.21},
    "stranded": {18: 7.95, 16: 4.99, 14: 3.14, 12: 1.98, 10: 1.24},
}
"""Ohm per 1,000 ft at 75 °C by make and gauge; the row of 10 AWG is from memory."""
COPPER = 0.00323
"""Change of copper's resistance for each kelvin, counted from 75 °C (Table 8 note, from memory)."""
AT_75C = 348.15
GAUGES = tuple(str(g) for g in OHM_PER_KFT["solid"])


def _gauge() -> Argument:
    return choice("gauge", ("14", "18", "16", "12", "10"), "AWG of the copper")


def _make() -> Argument:
    return choice("make", ("solid", "stranded"), "how the wire is made", default="solid")


def _amps(example: float, sense: int | None = +1, low: float = 0) -> Argument:
    return argument("amps", "ac_current", "A", low, 100, example, sense, "current in the wire")


def _length(example: float = 60) -> Argument:
    return argument("length", "length", "ft", 0, 2000, example, +1, "one way from source to load")


def _temperature(sense: int | None = +1) -> Argument:
    return argument(
        "temperature", "temperature", "F", -40, 194, 167, sense, "temperature of the copper", default=167
    )


def _volts(example: float, sense: int | None) -> Argument:
    return argument("volts", "ac_voltage", "V", 1, 700, example, sense, "voltage at the source")


def ohms_per_metre(gauge: str, make: str, kelvin: float) -> float:
    """Resistance of one metre of one conductor at a temperature in kelvin, ohm."""
    return OHM_PER_KFT[make][int(gauge)] / (1000 * FOOT) * (1 + COPPER * (kelvin - AT_75C))


WHERE = {
    "ohms": (
        lambda gauge, make, temperature, **_: ohms_per_metre(gauge, make, temperature) * 1000 * FOOT,
        "",
        "ohm for 1000 ft",
    ),
}
"""The wire's own resistance, shown with the numbers."""


@computation(
    "Resistance of a wire",
    takes=(_gauge(), _length(1000), _temperature(), _make()),
    gives=Result("resistance", "ohm", "resistance"),
    formula="{ohms} × {length} / 1000",
    where=WHERE,
    source=TABLE,
)
def wire_resistance(gauge: str, length: float, temperature: float, make: str) -> float:
    """R75 × (1 + 0.00323·(T - 75 °C)) × length in ohm, one way; m, K. Gauges 18 to 10 AWG copper.

    Range: 0 to 2,000 ft, -40 to 90 °C. Raises ArgumentError outside. Source: NEC Table 8 as transcribed
    (read), 10 AWG and the temperature coefficient from memory.
    """
    return ohms_per_metre(gauge, make, temperature) * length


@computation(
    "Voltage drop on a two-wire run",
    takes=(_amps(12), _length(), _gauge(), _temperature(), _make()),
    gives=Result("ac_voltage", "V", "drop"),
    formula="2 × {amps} × {ohms} × {length} / 1000",
    where=WHERE,
    source=TABLE,
)
def voltage_drop(amps: float, length: float, gauge: str, temperature: float, make: str) -> float:
    """2 × amps × resistance of one way, in volts; A, m, K.

    Direct-current resistance: reactance is nothing here.

    Range: 0 to 100 A, 0 to 2,000 ft. Raises ArgumentError outside. Source: NEC Table 8 as transcribed (read).
    """
    return 2 * amps * ohms_per_metre(gauge, make, temperature) * length


@computation(
    "Voltage drop on a two-wire run, in percent",
    takes=(_amps(12), _length(), _gauge(), _volts(120, -1), _temperature(), _make()),
    gives=Result("percent", "percent", "drop"),
    formula="100 × 2 × {amps} × {ohms} × {length} / 1000 / {volts}",
    where=WHERE,
    source=Source(
        "NEC 210.19(A) informational note: 3 % on a branch, 5 % to the farthest outlet, not enforceable",
        "read",
    ),
)
def voltage_drop_percent(
    amps: float, length: float, gauge: str, volts: float, temperature: float, make: str
) -> float:
    """voltage_drop / volts as a fraction. Range: 1 to 700 V. Raises ArgumentError outside.

    Source: as voltage_drop.
    """
    return 2 * amps * ohms_per_metre(gauge, make, temperature) * length / volts


@computation(
    "Longest run for a given drop",
    takes=(
        _amps(12, -1, 0.01),
        _gauge(),
        _volts(120, +1),
        argument("drop", "percent", "percent", 0, 50, 3, +1, "drop that may be spent"),
        _temperature(-1),
        _make(),
    ),
    gives=Result("length", "ft", "longest run"),
    formula="1000 × {volts} × {drop} / 100 / (2 × {amps} × {ohms})",
    where=WHERE,
    source=TABLE,
)
def longest_run(amps: float, gauge: str, volts: float, drop: float, temperature: float, make: str) -> float:
    """volts × drop / (2 × amps × ohms per metre) in m, one way: the inverse of voltage_drop_percent.

    Range: 0.01 to 100 A, 1 to 700 V, 0 to 50 %. Raises ArgumentError outside. Source: NEC Table 8 as
    transcribed (read).
    """
    return volts * drop / (2 * amps * ohms_per_metre(gauge, make, temperature))


@computation(
    "Voltage drop with reactance",
    takes=(
        _amps(10),
        argument("resistance", "resistance", "ohm", 0, 100, 0.5, +1, "resistance of the whole path"),
        argument("reactance", "resistance", "ohm", 0, 100, 0.1, +1, "reactance of the whole path"),
        argument(
            "power_factor", "percent", "percent", 0, 100, 80, None, "power factor of the load", default=80
        ),
    ),
    gives=Result("ac_voltage", "V", "drop"),
    formula="{amps} × ({resistance} × {power_factor} / 100 + {reactance} × sqrt(1 - ({power_factor} / "
    "100)^2))",
    source=UFC,
)
def voltage_drop_reactive(amps: float, resistance: float, reactance: float, power_factor: float) -> float:
    """amps × (R·pf + X·sqrt(1 - pf²)) in volts; ohm of the whole path.

    Power factor 0.8 where nobody knows it.

    Range: 0 to 100 A, 0 to 100 ohm. Raises ArgumentError outside. Source: UFC 3-520-01 B-2.1 (read).
    """
    return amps * (resistance * power_factor + reactance * math.sqrt(max(0.0, 1 - power_factor**2)))
