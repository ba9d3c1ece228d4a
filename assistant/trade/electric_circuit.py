"""Sizes of wire and breaker for a motor or heater, laid against the breaker that is found."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.trade.entry import Argument, Result, Source, argument, computation

STANDARD = (15, 20, 25, 30, 35, 40, 45, 50, 60, 70, 80, 90, 100, 110, 125, 150, 175, 200)
"""Standard overcurrent devices, A (NEC 240.6(A), read to 100 A; above from memory)."""
AMPACITY = Source(
    "NEC 440.33: all loads plus 25 % of the largest motor, as explained in a published article", "read"
)
DEVICE = Source(
    "NEC 440.22(A): at most 175 %, up to 225 % if it won't start (read); 15 A floor and rounding down",
    "from memory",
)
CONTINUOUS = Source("NEC 210.19(A) and 210.20(A): 125 % of the continuous load plus the rest", "read")
HEAT = Source("NEC 424.3(B): electric heat counts as continuous, 125 % of heater and motor", "from memory")


def _largest(sense: int | None = +1) -> Argument:
    return argument("largest", "ac_current", "A", 0, 400, 19.2, sense, "rated-load amps of the largest motor")


def _others() -> Argument:
    return argument("others", "ac_current", "A", 0, 400, 1.2, +1, "all other loads on it together", default=0)


def size_down(amps: float) -> float:
    """The largest standard device that is not above `amps`; 15 A at least."""
    return float(max([s for s in STANDARD if s <= amps + 1e-9], default=STANDARD[0]))


def size_up(amps: float) -> float:
    """The smallest standard device that is not below `amps`; 200 A at most."""
    return float(min([s for s in STANDARD if s >= amps - 1e-9], default=STANDARD[-1]))


@computation(
    "Minimum circuit ampacity",
    takes=(_largest(), _others()),
    gives=Result("ac_current", "A", "minimum ampacity"),
    formula="1.25 × {largest} + {others}",
    source=AMPACITY,
)
def minimum_circuit_ampacity(largest: float, others: float) -> float:
    """1.25 × largest + others in A. The unit's own marking comes first. Range: 0 to 400 A.

    Source: NEC 440.33 (read).
    """
    return 1.25 * largest + others


@computation(
    "Largest overcurrent device for a motor-compressor circuit",
    takes=(
        _largest(),
        _others(),
        argument(
            "multiple",
            "percent",
            "percent",
            100,
            225,
            175,
            +1,
            "175 %, or 225 % if it won't start",
            default=175,
        ),
    ),
    gives=Result("ac_current", "A", "largest device"),
    formula="{multiple} / 100 × {largest} + {others}, the standard size at or below it, 15 at least",
    source=DEVICE,
)
def largest_overcurrent_device(largest: float, others: float, multiple: float) -> float:
    """multiple × largest + others, rounded down to a standard size, 15 A at least; A.

    The clause says "not exceeding", so the size goes down; one secondary page rounds up, which belongs to
    430.52 for ordinary motors. The unit's own marking comes first. Range: 0 to 400 A, 100 to 225 %. Source:
    NEC 440.22(A) as quoted (read), rounding and the 15 A floor from memory.
    """
    return size_down(multiple * largest + others)


@computation(
    "Smallest device for a continuous load",
    takes=(
        argument("continuous", "ac_current", "A", 0, 160, 12, +1, "load on for three hours or more"),
        argument("rest", "ac_current", "A", 0, 160, 0, +1, "load that comes and goes", default=0),
    ),
    gives=Result("ac_current", "A", "smallest device"),
    formula="1.25 × {continuous} + {rest}, the standard size at or above it",
    source=CONTINUOUS,
)
def device_for_load(continuous: float, rest: float) -> float:
    """1.25 × continuous + rest, rounded up to a standard size. Range: 0 to 160 A each. Source: NEC (read)."""
    return size_up(1.25 * continuous + rest)


@computation(
    "Continuous load that a breaker may carry",
    takes=(argument("breaker", "ac_current", "A", 1, 400, 15, +1, "rating on the handle"),),
    gives=Result("ac_current", "A", "continuous load"),
    formula="0.8 × {breaker}",
    source=CONTINUOUS,
)
def continuous_limit(breaker: float) -> float:
    """0.8 × rating in A, for loads of three hours and more. Range: 1 to 400 A. Source: NEC 210.20 (read)."""
    return 0.8 * breaker


@computation(
    "Circuit for electric heat",
    takes=(
        argument("power", "power", "kW", 0, 60, 10, None, "heater on the plate"),
        argument("volts", "ac_voltage", "V", 100, 700, 240, None, "rated voltage"),
        argument("blower", "ac_current", "A", 0, 60, 3, None, "blower amps on the same circuit", default=0),
    ),
    gives={
        "amps": Result("ac_current", "A", "heater"),
        "ampacity": Result("ac_current", "A", "at least"),
        "device": Result("ac_current", "A", "device"),
    },
    formula="1.25 × (1000 × {power} / {volts} + {blower})",
    source=HEAT,
)
def heater_circuit(power: float, volts: float, blower: float) -> dict[str, float]:
    """power / volts, 1.25 × (that + blower), and the standard size at or above; A.

    Range: 0 to 60 kW, 100 to 700 V. Raises ArgumentError outside. Source: NEC 424.3(B) (from memory), sizes
    read.
    """
    amps = power / volts
    ampacity = 1.25 * (amps + blower)
    return {"amps": amps, "ampacity": ampacity, "device": size_up(ampacity)}


@computation(
    "The breaker found against plate and load",
    takes=(
        argument("breaker", "ac_current", "A", 1, 400, 30, None, "rating on the handle"),
        argument("ampacity", "ac_current", "A", 0, 400, 25.2, None, "minimum circuit ampacity of the unit"),
        argument("largest", "ac_current", "A", 0, 400, 40, None, "maximum overcurrent device of the unit"),
        argument("load", "ac_current", "A", 0, 400, 16, None, "amps measured, everything running", default=0),
    ),
    gives={
        "word": Result("words", "", "judgement"),
        "loading": Result("percent", "percent", "load on the breaker"),
    },
    formula="{ampacity} to {largest} is what {breaker} must lie in; {load} at most 80 % of it",
    source=DEVICE,
)
def breaker_against_plate(
    breaker: float, ampacity: float, largest: float, load: float
) -> dict[str, float | str]:
    """Whether the breaker lies between the unit's two markings, and the measured load over its rating; A.

    Range: 1 to 400 A. Raises ArgumentError outside. Source: NEC 440.4(B) and 440.22 as quoted (read); 80 % is
    the continuous-load rule (read).
    """
    if breaker > largest:
        word = "larger than the unit allows: wire and motor are not protected"
    elif breaker < ampacity and size_up(ampacity) > breaker:
        word = "smaller than the unit needs: it can trip with nothing wrong"
    elif load > 0.8 * breaker:
        word = "the right size, loaded above 80 %: look for what else is on it"
    else:
        word = "the right size"
    return {"word": word, "loading": load / breaker}


@computation(
    "Sum of loads on one branch",
    takes=(
        argument(
            "loads",
            "ac_current",
            "A",
            0,
            400,
            (6.5, 1.2, 0.8),
            +1,
            "amps of each load that can run at once",
            many=True,
        ),
    ),
    gives=Result("ac_current", "A", "together"),
    formula="the sum of {loads}",
    source=Source("currents of loads on one branch add, at worst", "reasoned"),
)
def branch_load(loads: Sequence[float]) -> float:
    """Sum in A, the worst case of equal phase. Range: each 0 to 400 A.

    Source: Kirchhoff's current law (reasoned).
    """
    return sum(loads)
