"""What a blower does when static rises: a split-capacitor motor gives up air, a constant-airflow motor takes
watts.
"""

from __future__ import annotations

import itertools
import math
from collections.abc import Sequence

from assistant.trade.entry import Argument, ArgumentError, Result, Source, argument, computation

TABLE = Source("linear between the points of the blower's own table", "reasoned")
HELD = Source(
    "constant airflow and efficiency: watts follow static (× 1.6 from 0.5 to 0.8 in. w.c.); in truth a "
    "little more",
    "reasoned",
)
EULER = Source(
    "a forward-curved wheel at nearly constant speed takes shaft power at least in proportion to flow "
    "(Euler's equation for turbomachines)",
    "reasoned",
)


def _table() -> tuple[Argument, Argument]:
    return (
        argument(
            "statics",
            "pressure",
            "inwc",
            0,
            6,
            (0.1, 0.3, 0.5, 0.7),
            None,
            "statics of the table, rising",
            many=True,
        ),
        argument(
            "airflows",
            "airflow",
            "cfm",
            0,
            20_000,
            (1150, 1045, 950, 775),
            None,
            "airflow at each static",
            many=True,
        ),
    )


def points(
    computation: str, statics: Sequence[float], airflows: Sequence[float]
) -> list[tuple[float, float]]:
    """(static, airflow) pairs: as many of each, two at least, statics rising. Raises ArgumentError."""
    if len(statics) != len(airflows) or len(statics) < 2:
        raise ArgumentError(
            f"{computation}: 'statics' and 'airflows' must have the same number of values, two at least; for "
            "example statics=0.1,0.3,0.5 airflows=1150,1045,950.",
            computation,
        )
    if any(b <= a for a, b in itertools.pairwise(statics)):
        raise ArgumentError(
            f"{computation}: 'statics' must rise from one to the next; for example statics=0.1,0.3,0.5.",
            computation,
        )
    return list(zip(statics, airflows, strict=True))


def at_static(table: Sequence[tuple[float, float]], static: float) -> float:
    """Airflow at a static, linear between points and beyond the ends, never below zero."""
    i = next((i for i, (s, _) in enumerate(table[1:-1], 1) if static < s), len(table) - 1)
    (s0, q0), (s1, q1) = table[i - 1], table[i]
    return max(0.0, q0 + (q1 - q0) * (static - s0) / (s1 - s0))


@computation(
    "Airflow of a blower at a static",
    takes=(argument("static", "pressure", "inwc", 0, 6, 0.6, None, "total external static"), *_table()),
    gives=Result("airflow", "cfm", "airflow"),
    formula="the table {statics} -> {airflows} at {static}",
    source=TABLE,
)
def blower_airflow(static: float, statics: Sequence[float], airflows: Sequence[float]) -> float:
    """Airflow in m³/s at a static in Pa from the blower's table for its tap.

    Range: the table; 0 to 6 in. w.c. Raises ArgumentError outside it.

    Source: linear interpolation (reasoned); the table is the unit's own.
    """
    table = points("blower_airflow", statics, airflows)
    slack = 1e-9 * table[-1][0]
    if not table[0][0] - slack <= static <= table[-1][0] + slack:
        raise ArgumentError(
            "blower_airflow: 'static' lies outside the table; give the table's next point. For example "
            "static=0.6inwc statics=0.1,0.3,0.5,0.7 airflows=1150,1045,950,775.",
            "blower_airflow",
        )
    return at_static(table, static)


@computation(
    "Where a blower and its ducts meet",
    takes=(
        argument("system_static", "pressure", "inwc", 0.001, 6, 0.5, None, "static that the ducts ask for"),
        argument(
            "system_airflow", "airflow", "cfm", 1, 20_000, 1000, None, "the flow at which they ask for it"
        ),
        *_table(),
    ),
    gives={
        "airflow": Result("airflow", "cfm", "airflow"),
        "static": Result("pressure", "inwc", "static"),
        "word": Result("words", "", "where"),
    },
    formula="the table {statics} -> {airflows} meets {system_static} × (flow / {system_airflow})^2",
    source=TABLE,
)
def operating_point(
    system_static: float, system_airflow: float, statics: Sequence[float], airflows: Sequence[float]
) -> dict[str, float | str]:
    """Airflow (m³/s) and static (Pa) where the blower's table crosses the duct's square curve.

    Beyond the table's ends the last line is carried on, and `word` says so. Range: 0.001 to 6 in. w.c. Raises
    ArgumentError for a bad table. Source: system curve (from memory), interpolation (reasoned).
    """
    table = points("operating_point", statics, airflows)
    k = system_static / system_airflow**2
    low, high = 0.0, max(table[-1][0], k * max(q for _, q in table) ** 2)
    for _ in range(200):
        middle = (low + high) / 2
        if k * at_static(table, middle) ** 2 > middle:
            low = middle
        else:
            high = middle
    static = (low + high) / 2
    inside = table[0][0] <= static <= table[-1][0]
    return {
        "airflow": at_static(table, static),
        "static": static,
        "word": "inside the table" if inside else "beyond the table: its last line carried on",
    }


@computation(
    "Shaft power of a split-capacitor blower at less air",
    takes=(
        argument("watts", "power", "W", 0, 5000, 500, +1, "watts at the first flow"),
        argument("airflow", "airflow", "cfm", 1, 20_000, 1150, -1, "first flow"),
        argument("new_airflow", "airflow", "cfm", 0, 20_000, 865, +1, "flow at the higher static"),
    ),
    gives=Result("power", "W", "about"),
    formula="{watts} × {new_airflow} / {airflow}",
    source=EULER,
)
def split_capacitor_watts(watts: float, airflow: float, new_airflow: float) -> float:
    """watts × new / old in W: choking a split-capacitor blower unloads it, so low amps are no proof of
    health.

    It dies from lost cooling air, not from load. Range: 0 to 5 kW. Source: Euler's equation (reasoned).
    """
    return watts * new_airflow / airflow


@computation(
    "Watts of a constant-airflow motor at another static",
    takes=(
        argument("watts", "power", "W", 0, 5000, 400, +1, "watts now"),
        argument("static", "pressure", "inwc", 0.01, 6, 0.5, -1, "total external static now"),
        argument("new_static", "pressure", "inwc", 0, 6, 0.8, +1, "static to find the watts for"),
    ),
    gives=Result("power", "W", "watts"),
    formula="{watts} × {new_static} / {static}",
    source=HELD,
)
def constant_airflow_watts(watts: float, static: float, new_static: float) -> float:
    """watts × new static / old in W, while the motor holds its air. Range: 0 to 5 kW. Source: reasoned."""
    return watts * new_static / static


@computation(
    "Amps of a motor from its watts",
    takes=(
        argument("watts", "power", "W", 0, 5000, 640, +1, "electric power"),
        argument("volts", "ac_voltage", "V", 50, 700, 120, -1, "voltage at the motor"),
        argument("power_factor", "percent", "percent", 10, 100, 60, -1, "0.5 to 0.7 uncorrected", default=60),
    ),
    gives=Result("ac_current", "A", "amps"),
    formula="{watts} / ({volts} × {power_factor} / 100)",
    source=Source(
        "watts over volts and power factor; 0.5 to 0.7 for an uncorrected electronic motor", "common practice"
    ),
)
def motor_amps(watts: float, volts: float, power_factor: float) -> float:
    """watts / (volts × power factor) in A. Range: 0 to 5 kW, 10 to 100 %.

    Source: common practice for the factor.
    """
    return watts / (volts * power_factor)


@computation(
    "Static left before a constant-airflow motor is at its limit",
    takes=(
        argument("watts", "power", "W", 1, 5000, 400, -1, "watts now"),
        argument("limit", "power", "W", 1, 5000, 640, +1, "watts on the motor's plate"),
        argument("static", "pressure", "inwc", 0, 6, 0.5, None, "total external static now"),
    ),
    gives=Result("pressure", "inwc", "static left"),
    formula="{static} × ({limit} / {watts} - 1)",
    source=HELD,
)
def static_left(watts: float, limit: float, static: float) -> float:
    """static × (limit / watts - 1) in Pa; negative when it is past its limit and gives up air already.

    Range: 1 W to 5 kW, 0 to 6 in. w.c. Raises ArgumentError outside. Source: constant airflow and efficiency
    (reasoned).
    """
    return static * (limit / watts - 1)


@computation(
    "Air that ducts can carry at a motor's rated static",
    takes=(
        argument("airflow", "airflow", "cfm", 1, 20_000, 1200, +1, "flow now"),
        argument("static", "pressure", "inwc", 0.01, 6, 0.9, -1, "total external static now"),
        argument(
            "rated", "pressure", "inwc", 0.01, 6, 0.5, +1, "static the blower is rated for", default=0.5
        ),
    ),
    gives=Result("airflow", "cfm", "ducts carry"),
    formula="{airflow} × sqrt({rated} / {static})",
    source=Source("system curve through one point, static with the flow's square", "from memory"),
)
def duct_capacity(airflow: float, static: float, rated: float) -> float:
    """airflow × sqrt(rated / static) in m³/s: what these ducts carry at the rated static.

    Range: 1 to 20,000 cfm, 0.01 to 6 in. w.c. Raises ArgumentError outside. Source: system curve (memory).
    """
    return airflow * math.sqrt(rated / static)
