"""A run capacitor: its value from amps and volts, its tolerance, what it stores and how long it takes to let
go.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

from assistant.trade.entry import Argument, ArgumentError, Result, Source, argument, computation

REACTANCE = Source("Xc = 1 / (2·pi·f·C)", "from memory")
PHYSICS = Source(
    "energy of a charged capacitor C·V²/2 at the peak of the wave, sqrt(2) × volts rms", "from memory"
)
DECAY = Source("exponential discharge through a resistor", "reasoned")
CLASS = Source("±6 % is typical in this trade; the marking on the can governs", "common practice")
TAU = 2 * math.pi


def _volts(sense: int | None) -> Argument:
    return argument("volts", "ac_voltage", "V", 1, 1000, 370, sense, "volts across the capacitor, running")


def _frequency(sense: int | None) -> Argument:
    return argument("frequency", "frequency", "Hz", 40, 70, 60, sense, "line frequency", default=60)


def _capacitance(sense: int | None, example: float = 10) -> Argument:
    return argument("capacitance", "capacitance", "uF", 0.01, 2000, example, sense, "capacitance")


@computation(
    "Capacitance from amps and volts",
    takes=(
        argument(
            "amps", "ac_current", "A", 0, 200, 1.40, +1, "amps in the lead between capacitor and winding"
        ),
        _volts(-1),
        _frequency(-1),
    ),
    gives=Result("capacitance", "uF", "capacitance"),
    formula="1000000 × {amps} / (6.28319 × {frequency} × {volts})",
    source=REACTANCE,
)
def capacitance(amps: float, volts: float, frequency: float) -> float:
    """amps / (2·pi·f·volts) in farad. A clamp alone can't decide a ±6 % band: see the reading's own width.

    Range: 0 to 200 A, 1 to 1,000 V, 40 to 70 Hz. Raises ArgumentError outside. Source: reactance (from
    memory).
    """
    return amps / (TAU * frequency * volts)


@computation(
    "Amps that a good capacitor draws",
    takes=(_capacitance(+1), _volts(+1), _frequency(+1)),
    gives=Result("ac_current", "A", "amps"),
    formula="6.28319 × {frequency} × {capacitance} × {volts} / 1000000",
    source=REACTANCE,
)
def capacitor_amps(capacitance: float, volts: float, frequency: float) -> float:
    """2·pi·f·C·V in A: the inverse of capacitance. Range: 0.01 to 2,000 µF, 1 to 1,000 V.

    Source: from memory.
    """
    return TAU * frequency * capacitance * volts


@computation(
    "Window of a capacitor's marking",
    takes=(
        _capacitance(None, 45),
        argument("below", "percent", "percent", 0, 50, 6, None, "allowed under", default=6),
        argument("above", "percent", "percent", 0, 50, 6, None, "allowed over", default=6),
    ),
    gives={"low": Result("capacitance", "uF", "from"), "high": Result("capacitance", "uF", "to")},
    formula="{capacitance} - {below} % to {capacitance} + {above} %",
    source=CLASS,
)
def capacitor_window(capacitance: float, below: float, above: float) -> dict[str, float]:
    """capacitance × (1 - below) and × (1 + above) in farad. Start capacitors: 0 and 20 % (from memory).

    Range: 0.01 to 2,000 µF, 0 to 50 %. Raises ArgumentError outside. Source: common practice.
    """
    return {"low": capacitance * (1 - below), "high": capacitance * (1 + above)}


def _several(sense: int | None) -> Argument:
    return argument(
        "capacitors", "capacitance", "uF", 0.01, 2000, (5, 85), sense, "each capacitor", many=True
    )


@computation(
    "Capacitors in parallel",
    takes=(_several(+1),),
    gives=Result("capacitance", "uF", "together"),
    formula="the sum of {capacitors}",
    source=Source("parallel capacitances add", "from memory"),
)
def capacitors_parallel(capacitors: Sequence[float]) -> float:
    """Sum in farad. Range: each 0.01 to 2,000 µF. Raises ArgumentError outside.

    Source: physics (from memory).
    """
    return sum(capacitors)


@computation(
    "Capacitors in series",
    takes=(_several(+1),),
    gives=Result("capacitance", "uF", "together"),
    formula="1 / the sum of 1 / each of {capacitors}",
    source=Source("reciprocals of series capacitances add", "from memory"),
)
def capacitors_series(capacitors: Sequence[float]) -> float:
    """1 / sum(1/C) in farad. Range: each 0.01 to 2,000 µF. Raises ArgumentError outside.

    Source: physics (memory).
    """
    return 1 / sum(1 / c for c in capacitors)


@computation(
    "Energy in a capacitor",
    takes=(
        _capacitance(+1, 45),
        argument("volts", "ac_voltage", "V", 0, 1000, 440, +1, "volts rms across it"),
    ),
    gives=Result("energy", "J", "energy"),
    formula="{capacitance} / 1000000 × {volts}^2",
    source=PHYSICS,
)
def stored_energy(capacitance: float, volts: float) -> float:
    """C·(sqrt(2)·V)²/2 = C·V² in J, at the peak of the wave.

    Above 1 J between 100 and 400 V is a hazard (memory).

    Range: 0.01 to 2,000 µF, 0 to 1,000 V rms. Raises ArgumentError outside. Source: physics (from memory).
    """
    return capacitance * volts**2


@computation(
    "Time to discharge a capacitor",
    takes=(
        _capacitance(+1),
        argument("resistance", "resistance", "kohm", 0.001, 1e5, 15, +1, "discharge resistor"),
        argument(
            "volts", "ac_voltage", "V", 1, 1000, 370, +1, "volts rms before, its peak is what is stored"
        ),
        argument("to", "dc_voltage", "V", 0.1, 500, 50, -1, "volts to come down to", default=50),
    ),
    gives=Result("duration", "s", "time"),
    formula="{capacitance} / 1000 × {resistance} × ln(1.41421 × {volts} / {to})",
    source=DECAY,
)
def discharge_time(capacitance: float, resistance: float, volts: float, to: float) -> float:
    """R·C·ln(sqrt(2)·volts / to) in s; zero when it is there already.

    Then prove it with a meter: bleeders fail open.

    Range: 0.01 to 2,000 µF, 1 ohm to 100 Mohm. Raises ArgumentError outside. Source: decay law (reasoned).
    """
    return max(0.0, resistance * capacitance * math.log(math.sqrt(2) * volts / to))


@computation(
    "Resistor that discharges a capacitor in a given time",
    takes=(
        _capacitance(None),
        argument("seconds", "duration", "s", 0.01, 3600, 60, None, "time allowed"),
        argument("volts", "ac_voltage", "V", 1, 1000, 370, None, "volts rms before"),
        argument("to", "dc_voltage", "V", 0.1, 500, 50, None, "volts to come down to", default=50),
    ),
    gives=Result("resistance", "kohm", "largest resistor"),
    formula="1000 × {seconds} / ({capacitance} × ln(1.41421 × {volts} / {to}))",
    source=Source(
        "NEC 460.6: capacitor banks to 50 V within one minute; a motor's run capacitor need not", "read"
    ),
)
def discharge_resistor(capacitance: float, seconds: float, volts: float, to: float) -> float:
    """seconds / (C·ln(sqrt(2)·volts / to)) in ohm: the inverse of discharge_time.

    Range: 0.01 to 2,000 µF, 0.01 s to 1 h. Raises ArgumentError where the peak is not above `to`. Source: NEC
    460.6 (read) with the decay law (reasoned).
    """
    peak = math.sqrt(2) * volts
    if peak <= to:
        raise ArgumentError(
            "discharge_resistor: the capacitor's peak is not above 'to'; nothing needs discharging. For "
            "example volts=370V to=50V.",
            "discharge_resistor",
        )
    return seconds / (capacitance * math.log(peak / to))
