"""Density of air from altitude and temperature, and the sensible factor that follows from it.

Two conventions exist: the standard atmosphere with its temperature falling with height (0.836 of sea level at
6,000 ft), and the standard pressure with the temperature measured indoors (0.801 at 70 °F). Air in a duct is
indoor air, so the second one is used throughout.
"""

from __future__ import annotations

from assistant.trade.constants import AIR_HEAT, ATMOSPHERE, FOOT, KELVIN_AT_70F, STANDARD_DENSITY
from assistant.trade.entry import Argument, Result, Source, argument, computation

PRESSURE = Source("ASHRAE Fundamentals 2017 chapter 1 equation 3, as coded in PsychroLib 2.5.0", "read")
GAS = Source(
    "ideal gas law at standard pressure for the altitude and the measured temperature; agrees with US Bureau "
    "of Reclamation, Design Guide for HVAC Systems, September 2006, Table 6a",
    "reasoned",
)


def altitude(sense: int | None) -> Argument:
    """The altitude argument that every computation with air shares; sea level when left out."""
    return argument(
        "altitude", "length", "ft", -1000, 15000, 5000, sense, "height above sea level", default=0
    )


def temperature(sense: int | None, words: str = "temperature of the air where its flow counts") -> Argument:
    """The air temperature argument that the computations share; 70 °F when left out."""
    return argument("temperature", "temperature", "F", -40, 400, 70, sense, words, default=70)


def pressure_at(height: float) -> float:
    """Standard atmospheric pressure in Pa at a height in metres."""
    return ATMOSPHERE * (1 - 6.8754e-6 * height / FOOT) ** 5.2559


def density_at(height: float, kelvin: float) -> float:
    """Density in kg/m³ at a height in metres and a temperature in kelvin."""
    return STANDARD_DENSITY * pressure_at(height) / ATMOSPHERE * KELVIN_AT_70F / kelvin


@computation(
    "Atmospheric pressure at an altitude",
    takes=(altitude(-1),),
    gives=Result("pressure", "psi", "pressure"),
    formula="14.696 × (1 - 6.8754e-6 × {altitude})^5.2559",
    source=PRESSURE,
)
def standard_pressure(altitude: float) -> float:
    """101325·(1 - 6.8754e-6·ft)^5.2559 in Pa (absolute); altitude in metres.

    Range: -1,000 to 15,000 ft. Raises ArgumentError outside. Source: ASHRAE Fundamentals 2017 as coded
    (read).
    """
    return pressure_at(altitude)


@computation(
    "Density of air",
    takes=(altitude(-1), temperature(-1)),
    gives=Result("density", "lbft3", "density"),
    formula="0.075 × (1 - 6.8754e-6 × {altitude})^5.2559 × 529.67 / ({temperature} + 459.67)",
    source=GAS,
)
def air_density(altitude: float, temperature: float) -> float:
    """0.075 lb/ft³ × p/p0 × 529.67/(°F + 459.67), in kg/m³; altitude in m, temperature in K.

    Dry air, indoor convention.

    Range: -1,000 to 15,000 ft, -40 to 400 °F. Moist indoor air is up to 1 % lighter. Raises ArgumentError
    outside. Source: ideal gas law (reasoned); checked against the Bureau of Reclamation's Table 6a (read).
    """
    return density_at(altitude, temperature)


@computation(
    "Sensible factor of air",
    takes=(altitude(-1), temperature(-1)),
    gives=Result("sensible_factor", "btuhcfmF", "factor"),
    formula="1.08 × (1 - 6.8754e-6 × {altitude})^5.2559 × 529.67 / ({temperature} + 459.67)",
    source=Source("density × heat capacity of air; 1.08 = 60 × 0.075 × 0.24 at sea level and 70 °F", "read"),
)
def sensible_factor(altitude: float, temperature: float) -> float:
    """density × 0.24 Btu/(lb·°F), in W per (m³/s) per K:

    what turns airflow and rise into heat, never a fixed 1.08.

    Altitude in m, temperature in K where the flow is measured. Range: -1,000 to 15,000 ft, -40 to 400 °F.
    Raises ArgumentError outside. Source: the product behind 1.08 (read), density as above.
    """
    return density_at(altitude, temperature) * AIR_HEAT


def factor_at(height: float, kelvin: float) -> float:
    """The sensible factor without the range check, for the other air modules."""
    return density_at(height, kelvin) * AIR_HEAT
