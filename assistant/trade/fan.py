"""Fan laws, the system curve through one point, and the power that air takes."""

from __future__ import annotations

from assistant.trade.entry import Argument, Result, Source, argument, computation

LAWS = Source(
    "fan laws: flow with speed, static with its square, power with its cube (AMCA 201)", "from memory"
)
CURVE = Source(
    "system curve: static with the flow's square; 1.9 for duct friction, 1 to 1.5 for filters", "from memory"
)
POWER = Source("air horsepower = cfm × in. w.c. / 6356 (published fan page)", "read")


def _speed(name: str, example: float, sense: int | None) -> Argument:
    return argument(name, "speed", "rpm", 1, 10_000, example, sense, "wheel speed " + name.replace("_", " "))


def _flow(name: str = "airflow", sense: int | None = +1, low: float = 0, example: float = 1200) -> Argument:
    return argument(name, "airflow", "cfm", low, 20_000, example, sense, "air moved")


def _static(name: str = "static", sense: int | None = +1, example: float = 0.5, low: float = 0) -> Argument:
    return argument(name, "pressure", "inwc", low, 6, example, sense, "static pressure")


@computation(
    "Flow at another wheel speed",
    takes=(_flow(), _speed("speed", 1000, -1), _speed("new_speed", 1250, +1)),
    gives=Result("airflow", "cfm", "flow"),
    formula="{airflow} × {new_speed} / {speed}",
    source=LAWS,
)
def fan_law_flow(airflow: float, speed: float, new_speed: float) -> float:
    """airflow × new / old in m³/s, on the same system. Range: 1 to 10,000 rpm.

    Source: AMCA 201 (from memory).
    """
    return airflow * new_speed / speed


@computation(
    "Static at another wheel speed",
    takes=(_static(), _speed("speed", 1000, -1), _speed("new_speed", 1250, +1)),
    gives=Result("pressure", "inwc", "static"),
    formula="{static} × ({new_speed} / {speed})^2",
    source=LAWS,
)
def fan_law_static(static: float, speed: float, new_speed: float) -> float:
    """static × (new / old)² in Pa, on the same system. Range: 1 to 10,000 rpm.

    Source: AMCA 201 (from memory).
    """
    return static * (new_speed / speed) ** 2


@computation(
    "Power at another wheel speed",
    takes=(
        argument("power", "power", "W", 0, 1e5, 500, +1, "shaft power"),
        _speed("speed", 1000, -1),
        _speed("new_speed", 1250, +1),
    ),
    gives=Result("power", "W", "power"),
    formula="{power} × ({new_speed} / {speed})^3",
    source=LAWS,
)
def fan_law_power(power: float, speed: float, new_speed: float) -> float:
    """power × (new / old)³ in W, same system. Range: 1 to 10,000 rpm. Source: AMCA 201 (from memory)."""
    return power * (new_speed / speed) ** 3


@computation(
    "Static of the system at another flow",
    takes=(
        _static(),
        _flow("airflow", -1, 1),
        _flow("new_airflow", +1, 0, 900),
        argument("exponent", "count", "", 1, 2, 2, None, "2 fittings and coils, 1.9 duct", default=2),
    ),
    gives=Result("pressure", "inwc", "static"),
    formula="{static} × ({new_airflow} / {airflow})^{exponent}",
    source=CURVE,
)
def system_static(static: float, airflow: float, new_airflow: float, exponent: float) -> float:
    """static × (new / old)^exponent in Pa: what the same ducts ask at another flow.

    Range: 0 to 6 in. w.c., 1 to 20,000 cfm. Raises ArgumentError outside. Source: system curve (from memory).
    """
    return static * (new_airflow / airflow) ** exponent


@computation(
    "Flow of the system at another static",
    takes=(
        _flow("airflow", +1, 0),
        _static("static", -1, 0.8, 0.001),
        _static("new_static", +1, 0.5),
        argument("exponent", "count", "", 1, 2, 2, None, "2 fittings and coils, 1.9 duct", default=2),
    ),
    gives=Result("airflow", "cfm", "flow"),
    formula="{airflow} × ({new_static} / {static})^(1 / {exponent})",
    source=CURVE,
)
def system_flow(airflow: float, static: float, new_static: float, exponent: float) -> float:
    """airflow × (new / old)^(1/exponent) in m³/s: what the same ducts carry at another static; inverse of
    system_static.

    Range: 0 to 20,000 cfm, 0.001 to 6 in. w.c. Raises ArgumentError outside. Source: system curve (from
    memory).
    """
    return airflow * (new_static / static) ** (1 / exponent)


@computation(
    "Power in the air",
    takes=(_flow(), _static()),
    gives=Result("power", "W", "air power"),
    formula="{airflow} × {static} / 6356 × 745.7",
    source=POWER,
)
def air_power(airflow: float, static: float) -> float:
    """airflow × static in W. Range: 0 to 20,000 cfm, 0 to 6 in. w.c. Raises ArgumentError outside.

    Source: read.
    """
    return airflow * static


@computation(
    "Efficiency of blower and motor together",
    takes=(_flow(), _static(), argument("watts", "power", "W", 1, 20_000, 500, -1, "electric power")),
    gives=Result("percent", "percent", "efficiency"),
    formula="100 × {airflow} × {static} / 6356 × 745.7 / {watts}",
    source=Source("air power over electric power; 10 to 15 % found in the field, LBNL, 2006", "read"),
)
def fan_efficiency(airflow: float, static: float, watts: float) -> float:
    """airflow × static / watts as a fraction. Range: 1 W to 20 kW. Raises ArgumentError outside.

    Source: LBNL (read).
    """
    return airflow * static / watts


@computation(
    "Watts for each cfm",
    takes=(
        argument("watts", "power", "W", 0, 20_000, 500, +1, "electric power"),
        _flow("airflow", -1, 1, 1000),
    ),
    gives=Result("fan_power", "wattcfm", "watts for each cfm"),
    formula="{watts} / {airflow}",
    source=Source(
        "about 2 cfm for each watt in the field (LBNL, 2006); 0.58 W/cfm is California's limit", "read"
    ),
)
def watts_per_cfm(watts: float, airflow: float) -> float:
    """watts / airflow in W/(m³/s). Range: 0 to 20 kW, 1 to 20,000 cfm. Raises ArgumentError outside.

    Source: read.
    """
    return watts / airflow
