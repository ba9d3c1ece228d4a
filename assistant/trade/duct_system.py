"""A whole duct system as one computation: what its blower moves with every zone open and with one open alone.

The runs are listed side by side: the third diameter, length and zone belong to the third run.
"""

from __future__ import annotations

import itertools
import math
from collections.abc import Sequence

from assistant.trade.blower import points
from assistant.trade.constants import CUBIC_FOOT
from assistant.trade.duct_fittings import CLOSED
from assistant.trade.duct_house import Branch, House, alone, run, zones_of
from assistant.trade.duct_link import Constant, Duct, Power, Table
from assistant.trade.duct_network import NotSolved
from assistant.trade.duct_words import capacity_words, zone_words
from assistant.trade.entry import Argument, ArgumentError, Result, Source, argument, computation

NAME = "duct_system"
NETWORK = Source(
    "flow balance at every node, Darcy-Weisbach in every duct; gradient method of network analysis",
    "from memory",
)
GRILLE_FLOW = 100 * CUBIC_FOOT / 60
"""Flow at which a grille's drop is stated."""


def _each(name: str, kind: str, unit: str, low: float, high: float, example, words: str, **more) -> Argument:
    return argument(name, kind, unit, low, high, example, None, words, many=True, **more)


def _drop(name: str, example: float, words: str) -> Argument:
    return argument(name, "pressure", "inwc", 0, 3, example, None, words, default=example)


def _exponent(name: str, example: float, words: str) -> Argument:
    return argument(name, "count", "", 1, 2, example, None, words, default=example)


def _flow(name: str, low: float, example: float, words: str, **more) -> Argument:
    return argument(name, "airflow", "cfm", low, 20_000, example, None, words, **more)


RUNS = (
    _each("diameters", "length", "in", 2, 60, (7, 7, 6, 8, 7, 6), "inside diameter of each run"),
    _each("lengths", "length", "ft", 0.1, 1000, (12, 18, 10, 9, 14, 20), "length of each run"),
    _each("zones", "count", "", 0, 99, (1, 1, 1, 2, 2, 3), "zone of each run; 0 for one without a damper"),
    _each(
        "coefficients", "count", "", 0, 100, (2, 2, 2, 2, 2, 2), "fittings of each run, summed", default=()
    ),
    _each(
        "leaves", "count", "", 0, 99, (1, 1, 1, 2, 2, 2), "trunk it leaves; 0 is the plenum", default=()
    ),
    _each("trunk_diameters", "length", "in", 2, 60, (12, 12), "inside diameter of each trunk", default=()),
    _each("trunk_lengths", "length", "ft", 0.1, 1000, (15, 22), "length of each trunk", default=()),
    _each(
        "trunk_coefficients", "count", "", 0, 100, (0.5, 0.8), "fittings of each trunk, summed", default=()
    ),
)
FAN = (
    _each(
        "statics",
        "pressure",
        "inwc",
        0,
        6,
        (0.1, 0.3, 0.5, 0.7, 0.9),
        "statics of the blower's table, rising; none for a constant-airflow motor",
        default=(),
    ),
    _each(
        "airflows", "airflow", "cfm", 0, 20_000, (1350, 1265, 1150, 990, 770), "airflow at each", default=()
    ),
    _flow("held", 50, 1200, "airflow that a constant-airflow motor is set to hold", default=1200),
    argument(
        "held_up_to", "pressure", "inwc", 0.05, 6, 0.8, None, "static to which it can hold it", default=0.8
    ),
)
LOSSES = (
    _drop("return_drop", 0.1, "drop of the return duct at drops_at"),
    _drop("filter_drop", 0.12, "drop of the filter at drops_at"),
    _drop("coil_drop", 0.16, "drop of the coil at drops_at"),
    _flow("drops_at", 50, 1000, "airflow at which these drops were read", default=1000),
    _exponent("filter_exponent", 1.5, "1 clean media, 2 pleat losses, 1.5 unknown"),
    _exponent("coil_exponent", 1.9, "2 dry and fast, 1.9 usual"),
    _drop("grille_drop", 0.02, "drop of each register with 100 cfm"),
    _flow("bypass", 0, 0, "what the bypass carries at bypass_drop; 0 for none", default=0),
    argument("bypass_drop", "pressure", "inwc", 0.001, 3, 0.3, None, "drop of the bypass", default=0.3),
    argument("shut", "count", "", 10, 1e8, CLOSED, None, "coefficient of a shut damper", default=CLOSED),
)
ASKED = (
    argument("open_zone", "count", "", 0, 99, 1, None, "the zone open alone; 0 for all open", default=0),
    _flow("wanted", 1, 1400, "airflow that the equipment is meant to move", default=1200),
    argument("rated", "pressure", "inwc", 0.05, 3, 0.5, None, "rated total external static", default=0.5),
)


@computation(
    "A whole duct system, all zones open or one alone",
    takes=(*RUNS, *FAN, *LOSSES, *ASKED),
    gives={
        "airflow": Result("airflow", "cfm", "airflow"),
        "static": Result("pressure", "inwc", "total external static"),
        "plenum": Result("pressure", "inwc", "plenum"),
        "flows": Result("airflow", "cfm", "each run"),
        "velocities": Result("velocity", "fpm", "velocity in each run"),
        "past": Result("airflow", "cfm", "past shut dampers"),
        "bypassed": Result("airflow", "cfm", "bypass"),
        "carries": Result("airflow", "cfm", "what the ducts carry at the rated static"),
        "words": Result("words", "", "so"),
    },
    formula="runs of {diameters} in, {lengths} ft, zones {zones}: flow in = flow out at each node, and on "
    "each way the drops add up to what the blower lifts",
    source=NETWORK,
)
def duct_system(**given) -> dict[str, object]:
    """Flows (m³/s), statics (Pa) and velocities (m/s) of the system, and what they mean in words.

    Range: 2 to 60 in, 0.1 to 1,000 ft. Raises ArgumentError where lists are of unequal length, a zone or
    trunk is not there, or nothing settles.

    Source: gradient method (from memory), solved outside with scipy and fluids.
    """
    house = house_of(given)
    zone = int(given["open_zone"])
    if zone and f"zone {zone}" not in zones_of(house):
        raise ArgumentError(
            f"{NAME}: 'open_zone' is {zone}, and no run has that zone (zones={_listed(given['zones'])}).",
            NAME,
        )
    try:
        solved = alone(house, f"zone {zone}") if zone else run(house)
        said = [zone_words(house, f"zone {zone}")] if zone else []
        every = run(house)
        said.append(capacity_words(house, given["wanted"], given["rated"]))
    except NotSolved as problem:
        raise ArgumentError(f"{NAME}: {problem}.", NAME) from None
    names = [b.name for b in house.branches]
    flows = tuple(solved.flow[name] for name in names)
    closed = [b.name for b in house.branches if zone and b.zone not in (f"zone {zone}", None)]
    return {
        "airflow": solved.flow["blower"],
        "static": solved.fan_rise,
        "plenum": solved.pressure["plenum"],
        "flows": flows,
        "velocities": tuple(
            flow / (math.pi / 4 * d**2) for flow, d in zip(flows, given["diameters"], strict=True)
        ),
        "past": sum(solved.flow[name] for name in closed),
        "bypassed": solved.flow.get("bypass", 0.0),
        "carries": every.flow["blower"] * math.sqrt(given["rated"] / every.fan_rise),
        "words": " ".join(said),
    }


def house_of(given: dict) -> House:
    """The system that the arguments list. Raises ArgumentError."""
    runs = len(given["diameters"])
    lengths, zones = (_beside(given, name, "diameters", runs) for name in ("lengths", "zones"))
    coefficients = _beside(given, "coefficients", "diameters", runs, 0.0)
    leaves = _beside(given, "leaves", "diameters", runs, 0.0)
    trunks = _trunks(given)
    for number in leaves:
        if number and f"trunk {int(number)}" not in trunks:
            raise ArgumentError(
                f"{NAME}: 'leaves' names trunk {int(number)}, and trunk_diameters lists {len(trunks)}; use 0 "
                "for a run from the plenum itself.",
                NAME,
            )
    grille = _lost(given["grille_drop"], GRILLE_FLOW)
    at = given["drops_at"]
    branches = tuple(
        Branch(
            f"run {i + 1}",
            (Duct(d, lengths[i], coefficients[i]), *grille),
            f"zone {int(zones[i])}" if zones[i] else None,
            d if zones[i] else None,
            1.0,
            f"trunk {int(leaves[i])}" if leaves[i] else None,
            given["shut"],
        )
        for i, d in enumerate(given["diameters"])
    )
    bypass = (Power(given["bypass_drop"], given["bypass"]),) if given["bypass"] else None
    return House(
        _fan(given),
        _lost(given["return_drop"], at) or _lost(1e-6, at),
        _lost(given["filter_drop"], at, given["filter_exponent"]),
        _lost(given["coil_drop"], at, given["coil_exponent"]),
        branches,
        trunks,
        bypass,
    )


def _lost(drop: float, flow: float, exponent: float = 2.0) -> tuple[Power, ...]:
    return (Power(drop, flow, exponent),) if drop > 0 else ()


def _fan(given: dict) -> Table | Constant:
    """The blower's own table; without one, a motor that holds its air up to a static, and then its power."""
    if not given["statics"] and not given["airflows"]:
        return Constant(given["held"], given["held"] * given["held_up_to"])
    table = points(NAME, given["statics"], given["airflows"])
    if any(after >= before for (_, before), (_, after) in itertools.pairwise(table)):
        raise ArgumentError(
            f"{NAME}: 'airflows' must fall from one static to the next; for example airflows=1350,1265.",
            NAME,
        )
    return Table(tuple(table))


def _trunks(given: dict) -> dict[str, tuple]:
    count = len(given["trunk_diameters"])
    lengths = _beside(given, "trunk_lengths", "trunk_diameters", count)
    coefficients = _beside(given, "trunk_coefficients", "trunk_diameters", count, 0.0)
    return {
        f"trunk {i + 1}": (Duct(d, lengths[i], coefficients[i]),)
        for i, d in enumerate(given["trunk_diameters"])
    }


def _beside(given: dict, name: str, other: str, count: int, fill: float | None = None) -> Sequence[float]:
    """The list, as long as the other one; left out it is `fill` for each. Raises ArgumentError."""
    values = given[name]
    if not values and fill is not None:
        return (fill,) * count
    if len(values) != count:
        raise ArgumentError(
            f"{NAME}: '{name}' has {len(values)} values and '{other}' has {count}; the third of one belongs "
            "to the third of the other.",
            NAME,
        )
    return values


def _listed(values: Sequence[float]) -> str:
    return ",".join(f"{v:g}" for v in values)
