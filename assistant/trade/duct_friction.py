"""Friction of round duct by Darcy-Weisbach, what it carries at a friction rate, and the size for a flow."""

from __future__ import annotations

import math
from collections.abc import Sequence

from assistant.trade.air_density import altitude, density_at, temperature
from assistant.trade.constants import FOOT
from assistant.trade.entry import Argument, Result, Source, argument, choice, computation
from assistant.trade.friction import crossing, darcy, drop_per_metre

DARCY = Source("Darcy-Weisbach with Colebrook's equation (ASHRAE Fundamentals, duct design)", "from memory")
ROUGHNESS = {
    "galvanized": 0.0003 * FOOT,
    "older-galvanized": 0.0005 * FOOT,
    "lined": 0.005 * FOOT,
    "flexible": 0.003 * FOOT,
}
"""Absolute roughness, m (ASHRAE Fundamentals, from memory). Flexible duct stretched."""
WIDEST = 3.0


def flow(sense: int | None, low: float = 0) -> Argument:
    """The flow in the duct."""
    return argument("airflow", "airflow", "cfm", low, 20_000, 400, sense, "flow in the duct")


def diameter(sense: int | None) -> Argument:
    """The inside diameter of the duct."""
    return argument("diameter", "length", "in", 2, 60, 10, sense, "inside diameter")


def rate(sense: int | None) -> Argument:
    """The friction rate."""
    return argument("rate", "friction_rate", "inwc100ft", 0.001, 5, 0.08, sense, "friction rate")


def material() -> Argument:
    """What the duct is made of."""
    return choice("material", tuple(ROUGHNESS), "what the duct is made of", default="galvanized")


def _factor(
    airflow: float, diameter: float, material: str, altitude: float, temperature: float, **_
) -> float:
    pressure = _velocity_pressure(airflow, diameter, altitude, temperature)
    rub = drop_per_metre(airflow, diameter, ROUGHNESS[material], altitude, temperature)
    return rub * diameter / pressure if pressure else math.inf


def _velocity_pressure(airflow: float, diameter: float, altitude: float, temperature: float, **_) -> float:
    return density_at(altitude, temperature) * (airflow / (math.pi / 4 * diameter**2)) ** 2 / 2


WHERE = {
    "f": (_factor, "", "friction factor"),
    "velocity_pressure": (_velocity_pressure, "inwc", "velocity pressure"),
}
"""What Darcy-Weisbach multiplies, shown with the numbers."""


@computation(
    "Darcy friction factor",
    takes=(
        argument("reynolds", "count", "", 1, 1e8, 1e5, None, "Reynolds number"),
        argument("relative", "count", "", 0, 0.05, 1e-4, +1, "roughness over diameter"),
    ),
    gives=Result("ratio", "", "friction factor"),
    formula="64 / {reynolds} when slow, Colebrook with {relative} when fast, joined after Churchill",
    source=DARCY,
)
def friction_factor(reynolds: float, relative: float) -> float:
    """Darcy friction factor, a plain number.

    Not monotone in the Reynolds number: it climbs between 2,200 and 3,200.

    Range: 1 to 1e8, roughness 0 to 0.05. Raises ArgumentError outside. Source: Colebrook's equation (from
    memory).
    """
    return darcy(reynolds, relative)


@computation(
    "Friction of round duct",
    takes=(
        flow(+1),
        diameter(-1),
        argument("length", "length", "ft", 0, 1000, 100, +1, "length of straight duct"),
        material(),
        altitude(None),
        temperature(None),
    ),
    gives=Result("pressure", "inwc", "friction"),
    formula="{f} × (12 × {length} / {diameter}) × {velocity_pressure}",
    where=WHERE,
    source=DARCY,
)
def duct_friction(
    airflow: float, diameter: float, length: float, material: str, altitude: float, temperature: float
) -> float:
    """f·L/D × density·V²/2 in Pa; m³/s, m, m. Range: 0 to 20,000 cfm, 2 to 60 in.

    Source: Darcy-Weisbach (memory).
    """
    return drop_per_metre(airflow, diameter, ROUGHNESS[material], altitude, temperature) * length


@computation(
    "Friction rate of round duct",
    takes=(flow(+1), diameter(-1), material(), altitude(None), temperature(None)),
    gives=Result("friction_rate", "inwc100ft", "friction rate"),
    formula="{f} × (12 × 100 / {diameter}) × {velocity_pressure}",
    where=WHERE,
    source=DARCY,
)
def friction_rate(
    airflow: float, diameter: float, material: str, altitude: float, temperature: float
) -> float:
    """f/D × density·V²/2 in Pa/m. Usable in a house: 0.06 to 0.18 in. w.c. for 100 ft.

    Range as duct_friction. Source: as duct_friction.
    """
    return drop_per_metre(airflow, diameter, ROUGHNESS[material], altitude, temperature)


@computation(
    "What a round duct carries",
    takes=(diameter(+1), rate(+1), material(), altitude(None), temperature(None)),
    gives=Result("airflow", "cfm", "carries"),
    formula="flow whose friction in {diameter} in is {rate} for 100 ft; {material}, {altitude} ft, "
    "{temperature} °F",
    source=DARCY,
)
def duct_flow(diameter: float, rate: float, material: str, altitude: float, temperature: float) -> float:
    """Flow at a friction rate in m³/s; m, Pa/m: the inverse of friction_rate. Range: 2 to 60 in.

    Source: as above.
    """
    return _carries(diameter, rate, material, altitude, temperature)


@computation(
    "What a row of ducts carries together",
    takes=(
        argument("diameters", "length", "in", 2, 60, (6, 6, 6, 7, 8), +1, "each duct of the row", many=True),
        rate(+1),
        material(),
        altitude(None),
        temperature(None),
    ),
    gives=Result("airflow", "cfm", "carry together"),
    formula="sum of what {diameters} in carry at {rate} for 100 ft; {material}, {altitude} ft, {temperature} "
    "°F",
    source=DARCY,
)
def ducts_carry(
    diameters: Sequence[float], rate: float, material: str, altitude: float, temperature: float
) -> float:
    """Sum of duct_flow in m³/s: whether this row of ducts can ever move the air the motor is told to deliver.

    Range: each 2 to 60 in. Raises ArgumentError outside. Source: as duct_flow.
    """
    return sum(_carries(d, rate, material, altitude, temperature) for d in diameters)


@computation(
    "Round size for a flow",
    takes=(flow(+1, 1), rate(-1), material(), altitude(None), temperature(None)),
    gives=Result("length", "in", "diameter"),
    formula="round duct in which {airflow} cfm lose {rate} for 100 ft; {material}, {altitude} ft, "
    "{temperature} °F",
    source=DARCY,
)
def duct_size(airflow: float, rate: float, material: str, altitude: float, temperature: float) -> float:
    """Diameter in m for a flow and a friction rate; m³/s, Pa/m.

    Then choose the next size up and look at the velocity.

    Range: 1 to 20,000 cfm; up to 3 m. Raises ArgumentError outside. Source: Darcy-Weisbach (from memory).
    """
    rough = ROUGHNESS[material]
    return crossing(lambda d: -drop_per_metre(airflow, d, rough, altitude, temperature), -rate, 0.02, WIDEST)


def _carries(diameter: float, rate: float, material: str, height: float, kelvin: float) -> float:
    most = 60 * math.pi / 4 * diameter**2  # 60 m/s: far past any duct that is not a siren
    rough = ROUGHNESS[material]
    return crossing(lambda q: drop_per_metre(q, diameter, rough, height, kelvin), rate, 0.0, most)


@computation(
    "Velocity in a round duct",
    takes=(flow(+1), diameter(-1)),
    gives=Result("velocity", "fpm", "velocity"),
    formula="{airflow} / (0.7854 × ({diameter} / 12)^2)",
    source=Source("flow over area; mains 700 to 900 fpm, branches 500 to 700 in a house", "read"),
)
def duct_velocity(airflow: float, diameter: float) -> float:
    """airflow / (pi/4 × diameter²) in m/s. Range: 0 to 20,000 cfm, 2 to 60 in.

    Source: definition; limits read.
    """
    return airflow / (math.pi / 4 * diameter**2)
