"""Airflow through a furnace from its heat and temperature rise, and back."""

from __future__ import annotations

from assistant.trade.air_density import altitude, factor_at, temperature
from assistant.trade.entry import Argument, Result, Source, argument, computation
from assistant.trade.unit import to_si

BALANCE = Source("heat = airflow × density × heat capacity × rise; 1.08 at sea level and 70 °F", "read")
WHERE = {
    "factor": (lambda altitude, temperature, **_: factor_at(altitude, temperature), "btuhcfmF", "factor")
}


def heat(sense: int | None, example: float = 64_000) -> Argument:
    """The heat argument of the air balance."""
    return argument(
        "heat", "heat_rate", "Btuh", 0, 1e6, example, sense, "heat given to the air, losses taken off"
    )


def rise(sense: int | None, example: float = 60) -> Argument:
    """The rise argument of the air balance."""
    return argument(
        "rise", "temperature_difference", "Fdiff", 1, 250, example, sense, "supply less return air"
    )


def flow(sense: int | None, example: float = 1200) -> Argument:
    """The airflow argument that computations share."""
    return argument("airflow", "airflow", "cfm", 0, 20_000, example, sense, "air moved")


@computation(
    "Temperature rise through the furnace",
    takes=(
        argument(
            "supply", "temperature", "F", -40, 400, 120, +1, "supply air, out of sight of the heat exchanger"
        ),
        argument("return_air", "temperature", "F", -40, 400, 68, -1, "return air, before the blower"),
    ),
    gives=Result("temperature_difference", "Fdiff", "heat rise"),
    formula="{supply} - {return_air}",
    source=Source("definition of temperature rise on the rating plate", "read"),
)
def heat_rise(supply: float, return_air: float) -> float:
    """supply - return_air; kelvin in, kelvin difference out. Read after 15 to 20 minutes of steady fire.

    Range: -40 to 400 °F each. Negative in cooling. Raises ArgumentError outside. Source: definition (read).
    """
    return supply - return_air


@computation(
    "Airflow from heat and rise",
    takes=(heat(+1), rise(-1), altitude(+1), temperature(+1)),
    gives=Result("airflow", "cfm", "airflow"),
    formula="{heat} / ({factor} × {rise})",
    source=BALANCE,
    where=WHERE,
)
def airflow_from_rise(heat: float, rise: float, altitude: float, temperature: float) -> float:
    """heat / (sensible factor × rise) in m³/s; W, K, m, K. `heat` is the output.

    Range: 0 to 1,000,000 Btu/h, rise 1 to 250 °F. Raises ArgumentError outside. Source: heat balance of the
    air (read).
    """
    return heat / (factor_at(altitude, temperature) * rise)


@computation(
    "Rise from heat and airflow",
    takes=(
        heat(+1),
        argument("airflow", "airflow", "cfm", 1, 20_000, 988, -1, "air moved"),
        altitude(+1),
        temperature(+1),
    ),
    gives=Result("temperature_difference", "Fdiff", "rise"),
    formula="{heat} / ({factor} × {airflow})",
    source=BALANCE,
    where=WHERE,
)
def rise_from_airflow(heat: float, airflow: float, altitude: float, temperature: float) -> float:
    """heat / (sensible factor × airflow) in K; W, m³/s, m, K. The inverse of airflow_from_rise.

    Range: 1 to 20,000 cfm. Raises ArgumentError outside. Source: heat balance of the air (read).
    """
    return heat / (factor_at(altitude, temperature) * airflow)


@computation(
    "Heat carried by an airflow",
    takes=(
        flow(+1),
        argument("rise", "temperature_difference", "Fdiff", 0, 250, 60, +1, "supply less return air"),
        altitude(-1),
        temperature(-1),
    ),
    gives=Result("heat_rate", "Btuh", "heat"),
    formula="{factor} × {airflow} × {rise}",
    source=BALANCE,
    where=WHERE,
)
def heat_from_airflow(airflow: float, rise: float, altitude: float, temperature: float) -> float:
    """sensible factor × airflow × rise in W; m³/s, K, m, K. The inverse of airflow_from_rise.

    Range: 0 to 20,000 cfm, rise 0 to 250 °F. Raises ArgumentError outside. Source: heat balance of the air
    (read).
    """
    return factor_at(altitude, temperature) * airflow * rise


@computation(
    "Heat output of a furnace",
    takes=(
        argument("input", "heat_rate", "Btuh", 0, 1e6, 80_000, +1, "fired input, clocked or from the plate"),
        argument("efficiency", "percent", "percent", 0, 100, 80, +1, "steady-state efficiency"),
    ),
    gives=Result("heat_rate", "Btuh", "output"),
    formula="{input} × {efficiency} / 100",
    source=Source("output = input × steady-state efficiency", "read"),
)
def heat_output(input: float, efficiency: float) -> float:  # noqa: A002  # the trade's word for it
    """input × efficiency in W. Range: 0 to 1,000,000 Btu/h, 0 to 100 %. Raises ArgumentError outside. Source:

    read.
    """
    return input * efficiency


@computation(
    "Heat of an electric element",
    takes=(
        argument("volts", "ac_voltage", "V", 0, 700, 240, +1, "voltage at the element, drawing current"),
        argument("amps", "ac_current", "A", 0, 400, 20, +1, "current of the element"),
    ),
    gives=Result("heat_rate", "Btuh", "heat"),
    formula="{volts} × {amps} × 3.412",
    source=Source("heat = volts × amperes × 3.412 Btu/h per watt", "read"),
)
def electric_heat(volts: float, amps: float) -> float:
    """volts × amps in W (a resistance has power factor 1). Range: 0 to 700 V, 0 to 400 A. Source:

    Joule's law (read).
    """
    return volts * amps


@computation(
    "Airflow that a plate's rise range allows",
    takes=(
        heat(None, 76_000),
        argument("rise_min", "temperature_difference", "Fdiff", 5, 200, 40, None, "least rise"),
        argument("rise_max", "temperature_difference", "Fdiff", 5, 200, 70, None, "greatest rise"),
        altitude(None),
        temperature(None),
    ),
    gives={
        "least": Result("airflow", "cfm", "least airflow"),
        "most": Result("airflow", "cfm", "most airflow"),
    },
    formula="{heat} / ({factor} × {rise_max}) to {heat} / ({factor} × {rise_min})",
    source=BALANCE,
    where=WHERE,
)
def airflow_window(
    heat: float, rise_min: float, rise_max: float, altitude: float, temperature: float
) -> dict[str, float]:
    """airflow_from_rise at both ends of the plate's range; W, K, K, m, K.

    Range: 0 to 1,000,000 Btu/h, rises 5 to 200 °F. Raises ArgumentError outside. Source: heat balance (read).
    """
    factor = factor_at(altitude, temperature)
    return {
        "least": heat / (factor * max(rise_min, rise_max)),
        "most": heat / (factor * min(rise_min, rise_max)),
    }


@computation(
    "Where a rise stands in the plate's range",
    takes=(
        argument("rise", "temperature_difference", "Fdiff", -100, 300, 60, None, "measured rise"),
        argument("rise_min", "temperature_difference", "Fdiff", 5, 200, 45, None, "least rise on the plate"),
        argument(
            "rise_max", "temperature_difference", "Fdiff", 5, 200, 75, None, "greatest rise on the plate"
        ),
    ),
    gives={
        "word": Result("words", "", "judgement"),
        "share": Result("percent", "percent", "of the way from least to greatest"),
    },
    formula="100 × ({rise} - {rise_min}) / ({rise_max} - {rise_min})",
    source=Source("rise must lie inside the range on the rating plate, best near its middle", "read"),
)
def rise_against_plate(rise: float, rise_min: float, rise_max: float) -> dict[str, float | str]:
    """(rise - least) / (greatest - least): 0 to 100 % is inside. K.

    Read input and total static before judging.

    Range: -100 to 300 °F. Raises ArgumentError where greatest is not above least. Source: rating plate
    practice (read).
    """
    if rise_max <= rise_min:
        from assistant.trade.entry import ArgumentError

        raise ArgumentError(
            "rise_against_plate: 'rise_max' must be greater than 'rise_min', for example rise_min=45Fdiff "
            "rise_max=75Fdiff.",
            "rise_against_plate",
        )
    share = (rise - rise_min) / (rise_max - rise_min)
    word = (
        "below the plate's range: too much air or too little fire"
        if share < 0
        else "above the plate's range: too little air or too much fire"
        if share > 1
        else "inside the plate's range"
    )
    return {"word": word, "share": share}


@computation(
    "Airflow for each ton of cooling",
    takes=(
        flow(+1),
        argument("cooling", "heat_rate", "Btuh", 6000, 240_000, 36_000, -1, "capacity; a ton is 12,000"),
    ),
    gives=Result("airflow", "cfm", "airflow for each ton"),
    formula="{airflow} / ({cooling} / 12000)",
    source=Source("350 to 450 cfm for each ton is usual; FSEC-PF-321-97", "read"),
)
def airflow_per_ton(airflow: float, cooling: float) -> float:
    """airflow / (cooling / 12,000 Btu/h) in m³/s for each ton. Range: 0 to 20,000 cfm, half a ton to 20 tons.

    Raises ArgumentError outside. Source: FSEC-PF-321-97 (read) for what is usual.
    """
    return airflow * TON / cooling


TON = to_si(12_000, "Btuh")
"""One ton of cooling, W."""


@computation(
    "Temperature rise from the blower's own power",
    takes=(
        argument("watts", "power", "W", 0, 5000, 365, +1, "electric power of the blower"),
        argument("airflow", "airflow", "cfm", 50, 20_000, 1000, -1, "air moved"),
        altitude(+1),
        temperature(+1),
    ),
    gives=Result("temperature_difference", "Fdiff", "rise"),
    formula="{watts} × 3.412 / ({factor} × {airflow})",
    source=BALANCE,
    where=WHERE,
)
def fan_heat_rise(watts: float, airflow: float, altitude: float, temperature: float) -> float:
    """watts / (sensible factor × airflow) in K: the rise with no fire. Range: 0 to 5 kW, 50 to 20,000 cfm.

    Source: read.
    """
    return watts / (factor_at(altitude, temperature) * airflow)
