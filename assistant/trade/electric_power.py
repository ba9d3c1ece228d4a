"""Power of an alternating-current load: watts, volt-amperes, power factor, what a heater gives at another
voltage.
"""

from __future__ import annotations

import math

from assistant.trade.entry import Argument, ArgumentError, Result, Source, argument, computation

TRIANGLE = Source("power triangle of a sine wave: P = V·I·pf, S = V·I, Q² = S² - P²", "from memory")


def _volts(sense: int | None = +1) -> Argument:
    return argument("volts", "ac_voltage", "V", 0, 700, 120, sense, "voltage at the load")


def _amps(sense: int | None = +1) -> Argument:
    return argument("amps", "ac_current", "A", 0, 400, 6.5, sense, "current of the load")


def _factor(sense: int | None = +1) -> Argument:
    return argument("power_factor", "percent", "percent", 0, 100, 70, sense, "power factor")


@computation(
    "Watts from volts, amps and power factor",
    takes=(_volts(), _amps(), _factor()),
    gives=Result("power", "W", "power"),
    formula="{volts} × {amps} × {power_factor} / 100",
    source=TRIANGLE,
)
def real_power(volts: float, amps: float, power_factor: float) -> float:
    """volts × amps × power factor in W. An electronically commutated motor without correction has 0.5 to 0.7.

    Range: 0 to 700 V, 0 to 400 A, 0 to 100 %. Raises ArgumentError outside. Source: power triangle (from
    memory).
    """
    return volts * amps * power_factor


@computation(
    "Power factor from watts, volts and amps",
    takes=(
        argument("watts", "power", "W", 0, 1e5, 546, None, "power on a wattmeter"),
        argument("volts", "ac_voltage", "V", 1, 700, 120, None, "voltage at the load"),
        argument("amps", "ac_current", "A", 0.01, 400, 6.5, None, "current of the load"),
    ),
    gives=Result("percent", "percent", "power factor"),
    formula="100 × {watts} / ({volts} × {amps})",
    source=TRIANGLE,
)
def power_factor(watts: float, volts: float, amps: float) -> float:
    """watts / (volts × amps) as a fraction.

    Raises ArgumentError above 1.02: then one of the readings is a slip.

    Range: 0 to 100 kW, 1 to 700 V, 0.01 to 400 A. Source: power triangle (from memory).
    """
    factor = watts / (volts * amps)
    if factor > 1.02:
        raise ArgumentError(
            "power_factor: more watts than volts × amps allow; read the three again, with a true RMS clamp. "
            "For example watts=546W volts=120V amps=6.5A.",
            "power_factor",
        )
    return factor


@computation(
    "Power triangle of a load",
    takes=(_volts(None), _amps(None), _factor(None)),
    gives={
        "apparent": Result("apparent_power", "VA", "apparent power"),
        "real": Result("power", "W", "power"),
        "reactive": Result("apparent_power", "VA", "reactive power"),
    },
    formula="{volts} × {amps}, of which {power_factor} % is power",
    source=TRIANGLE,
)
def power_triangle(volts: float, amps: float, power_factor: float) -> dict[str, float]:
    """S = volts × amps, P = S·pf, Q = sqrt(S² - P²) in VA, W and reactive VA. Range as real_power.

    Source: memory.
    """
    apparent = volts * amps
    return {
        "apparent": apparent,
        "real": apparent * power_factor,
        "reactive": apparent * math.sqrt(max(0.0, 1 - power_factor**2)),
    }


@computation(
    "What a resistance heater gives at another voltage",
    takes=(
        argument("rated_power", "power", "kW", 0.01, 100, 10, +1, "power on the plate"),
        argument("rated_volts", "ac_voltage", "V", 10, 700, 240, -1, "voltage on the plate"),
        argument("volts", "ac_voltage", "V", 0, 700, 208, +1, "voltage at the element"),
    ),
    gives=Result("power", "kW", "power"),
    formula="{rated_power} × ({volts} / {rated_volts})^2",
    source=Source("a resistance takes power with the square of its voltage", "from memory"),
)
def heater_power(rated_power: float, rated_volts: float, volts: float) -> float:
    """rated_power × (volts / rated_volts)² in W. Range: 10 W to 100 kW, 10 to 700 V.

    Source: Joule's law (memory).
    """
    return rated_power * (volts / rated_volts) ** 2


@computation(
    "Inrush current through a series resistor",
    takes=(
        argument("supply", "ac_voltage", "V", 0, 700, 120, None, "voltage before the resistor"),
        argument("after", "ac_voltage", "V", 0, 700, 88, None, "voltage after it, at the start"),
        argument("resistance", "resistance", "ohm", 0.01, 1000, 1.0, None, "resistance of the resistor"),
    ),
    gives=Result("ac_current", "A", "current"),
    formula="({supply} - {after}) / {resistance}",
    source=Source("TM 5-4520-256-14 malfunction 12: 120 V, 88 V after 1.0 ohm", "read"),
)
def resistor_current(supply: float, after: float, resistance: float) -> float:
    """(supply - after) / resistance in A. Range: 0 to 700 V, 0.01 to 1,000 ohm.

    Source: Ohm's law, manual's case (read).
    """
    return (supply - after) / resistance
