"""Air velocity: from its pressure, across a filter, over a register by traverse."""

from __future__ import annotations

import math
from collections.abc import Sequence

from assistant.trade.air_density import altitude, density_at, temperature
from assistant.trade.entry import Argument, Result, Source, argument, computation

PITOT = Source("velocity pressure = density × velocity² / 2; 4005·sqrt(VP) in fpm for standard air", "read")
FACE = Source("flow = velocity × area", "reasoned")
WHERE = {
    "density": (lambda altitude, temperature, **_: density_at(altitude, temperature), "lbft3", "density")
}
GRID = Source("grid method: gross grille in equal squares, mean of the readings × free area", "read")


def velocity(sense: int | None, example: float = 700) -> Argument:
    """The velocity argument that computations share."""
    return argument("velocity", "velocity", "fpm", 0, 6000, example, sense, "air velocity")


def area(sense: int | None, low: float = 0, example: float = 2.78) -> Argument:
    """The area argument that computations share."""
    return argument("area", "area", "ft2", low, 500, example, sense, "area that the air passes")


@computation(
    "Velocity pressure",
    takes=(velocity(+1, 900), altitude(-1), temperature(-1)),
    gives=Result("pressure", "inwc", "velocity pressure"),
    formula="{density} × ({velocity} / 1096.7)^2",
    where=WHERE,
    source=PITOT,
)
def velocity_pressure(velocity: float, altitude: float, temperature: float) -> float:
    """density × velocity² / 2 in Pa; m/s, m, K. A pitot tube is poor below about 600 fpm.

    Range: 0 to 6,000 fpm. Raises ArgumentError outside. Source: published pitot texts (read).
    """
    return density_at(altitude, temperature) * velocity**2 / 2


@computation(
    "Velocity from velocity pressure",
    takes=(
        argument("pressure", "pressure", "inwc", 0, 3, 0.10, +1, "velocity pressure, mean of the traverse"),
        altitude(+1),
        temperature(+1),
    ),
    gives=Result("velocity", "fpm", "velocity"),
    formula="1096.7 × sqrt({pressure} / {density})",
    where=WHERE,
    source=PITOT,
)
def velocity_from_pressure(pressure: float, altitude: float, temperature: float) -> float:
    """sqrt(2 × pressure / density) in m/s: the inverse of velocity_pressure. Range: 0 to 3 in. w.c.

    Source: read.
    """
    return math.sqrt(2 * pressure / density_at(altitude, temperature))


@computation(
    "Velocity from flow and area",
    takes=(argument("airflow", "airflow", "cfm", 0, 20_000, 1000, +1, "air moved"), area(-1, 0.01)),
    gives=Result("velocity", "fpm", "velocity"),
    formula="{airflow} / {area}",
    source=FACE,
)
def face_velocity(airflow: float, area: float) -> float:
    """airflow / area in m/s, across a filter, coil or duct. Filters: 300 fpm is a good ceiling (read).

    Range: 0 to 20,000 cfm, 0.01 to 500 ft². Raises ArgumentError outside. Source: definition (reasoned).
    """
    return airflow / area


@computation(
    "Filter face velocity",
    takes=(
        argument("airflow", "airflow", "cfm", 0, 20_000, 1000, +1, "air moved"),
        argument("width", "length", "in", 1, 200, 20, -1, "width of the filter"),
        argument("height", "length", "in", 1, 200, 20, -1, "height of the filter"),
    ),
    gives=Result("velocity", "fpm", "face velocity"),
    formula="{airflow} / ({width} × {height} / 144)",
    source=Source(
        "flow over gross filter area; 300 fpm as ceiling from a California utilities' study", "read"
    ),
)
def filter_velocity(airflow: float, width: float, height: float) -> float:
    """airflow / (width × height) in m/s. Range: 0 to 20,000 cfm, 1 to 200 in.

    Source: definition, ceiling read.
    """
    return airflow / (width * height)


@computation(
    "Filter pressure drop at another flow",
    takes=(
        argument("drop", "pressure", "inwc", 0, 3, 0.10, +1, "drop at the first flow"),
        argument("airflow", "airflow", "cfm", 1, 20_000, 1000, -1, "flow at that drop"),
        argument("new_airflow", "airflow", "cfm", 0, 20_000, 1400, +1, "flow to find the drop for"),
        argument(
            "exponent",
            "count",
            "",
            1,
            2,
            1.5,
            None,
            "1 clean media, 2 pleat losses, 1.5 unknown",
            default=1.5,
        ),
    ),
    gives=Result("pressure", "inwc", "drop"),
    formula="{drop} × ({new_airflow} / {airflow})^{exponent}",
    source=Source(
        "power law between 1 (media) and 2 (pleats), 1.36 from a doubling between 300 and 500 fpm",
        "common practice",
    ),
)
def filter_drop(drop: float, airflow: float, new_airflow: float, exponent: float) -> float:
    """drop × (new / old)^exponent in Pa. Fit the exponent from two readings where you can.

    Range: 0 to 3 in. w.c., exponent 1 to 2. Raises ArgumentError outside. Source: common practice.
    """
    return drop * (new_airflow / airflow) ** exponent


@computation(
    "When a filter is due",
    takes=(argument("clean", "pressure", "inwc", 0, 3, 0.10, +1, "drop across it when new"),),
    gives=Result("pressure", "inwc", "replace at"),
    formula="3 × {clean}",
    source=Source("Navy Engineman training text: replace at three times the clean drop", "read"),
)
def filter_due(clean: float) -> float:
    """Three times the clean drop, in Pa. Range: 0 to 3 in. w.c. Raises ArgumentError outside.

    Source: Navy text (read).
    """
    return 3 * clean


@computation(
    "Flow from an anemometer traverse",
    takes=(
        argument(
            "velocities",
            "velocity",
            "fpm",
            0,
            6000,
            (400, 420, 380, 400),
            +1,
            "reading of each square",
            many=True,
        ),
        argument("width", "length", "in", 1, 200, 12, +1, "gross width of the grille"),
        argument("height", "length", "in", 1, 200, 6, +1, "gross height of the grille"),
        argument(
            "free_area", "percent", "percent", 10, 100, 75, +1, "open share of the gross area", default=100
        ),
    ),
    gives=Result("airflow", "cfm", "flow"),
    formula="mean of {velocities} × {width} × {height} / 144 × {free_area} / 100",
    source=GRID,
)
def traverse_flow(velocities: Sequence[float], width: float, height: float, free_area: float) -> float:
    """mean velocity × width × height × free share in m³/s.

    Without the maker's free area: for comparison only.

    Range: 0 to 6,000 fpm, 1 to 200 in, 10 to 100 %. Raises ArgumentError outside. Source: grid method (read).
    """
    return sum(velocities) / len(velocities) * width * height * free_area


@computation(
    "Register flow from velocity and effective area",
    takes=(velocity(+1, 450), area(+1, 0, 0.32)),
    gives=Result("airflow", "cfm", "flow"),
    formula="{velocity} × {area}",
    source=Source("register flow = mean velocity × free area (or the maker's factor)", "common practice"),
)
def register_flow(velocity: float, area: float) -> float:
    """velocity × area in m³/s. Range: 0 to 6,000 fpm, 0 to 500 ft². Source: common practice."""
    return velocity * area
