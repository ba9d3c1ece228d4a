"""Rectangular, flexible and leaking duct, referred to a round, stretched and tight one."""

from __future__ import annotations

import math

from assistant.trade.constants import CUBIC_FOOT, FOOT, INCH, INCH_WATER
from assistant.trade.entry import Argument, ArgumentError, Result, Source, argument, computation
from assistant.trade.friction import crossing

HUEBSCHER = Source(
    "equivalent diameter 1.30·(ab)^0.625/(a+b)^0.25, 1948; ASHAE Guide 1956 chapter 32 Table 1", "read"
)
FLEX = Source(
    "pressure drop correction 1 + 58·exp(-0.126·D)·c, ASHRAE Fundamentals, later editions; published tests "
    "(LBNL; Texas A&M) found 4 to 10 times",
    "from memory",
)
METHOD = Source("friction rate = available static × 100 / total effective length (Manual D)", "from memory")
LEAK = Source("SMACNA leakage class: cfm for 100 ft² = class × static^0.65", "from memory")


def _side(name: str, example: float, sense: int | None = +1) -> Argument:
    return argument(name, "length", "in", 1, 100, example, sense, name + " inside")


def round_of(width: float, height: float) -> float:
    """Diameter of the round duct with equal friction at equal flow, in the unit of the sides."""
    return 1.30 * (width * height) ** 0.625 / (width + height) ** 0.25


@computation(
    "Round duct equal to a rectangular one",
    takes=(_side("width", 12), _side("height", 6)),
    gives=Result("length", "in", "equivalent diameter"),
    formula="1.30 × ({width} × {height})^0.625 / ({width} + {height})^0.25",
    source=HUEBSCHER,
)
def equivalent_diameter(width: float, height: float) -> float:
    """1.30·(ab)^0.625/(a+b)^0.25 in m: equal friction at equal flow, not equal area.

    Range: 1 to 100 in a side. Raises ArgumentError outside. Source: ASHAE Guide 1956 Table 1 (read).
    """
    return round_of(width, height)


@computation(
    "Width of a rectangular duct equal to a round one",
    takes=(argument("diameter", "length", "in", 2, 60, 13.1, +1, "round duct"), _side("height", 12, -1)),
    gives=Result("length", "in", "width"),
    formula="width whose equivalent diameter with {height} is {diameter}",
    source=HUEBSCHER,
)
def rectangular_width(diameter: float, height: float) -> float:
    """The inverse of equivalent_diameter for a given height, in m.

    Raises ArgumentError above 20 times the height.

    Range: 2 to 60 in, 1 to 100 in. Source: as equivalent_diameter (read).
    """
    widest = 20 * height
    if round_of(widest, height) < diameter:
        raise ArgumentError(
            "rectangular_width: a duct of that height would have to be more than 20 times as wide; take a "
            "greater height, for example diameter=13.1in height=12in.",
            "rectangular_width",
        )
    return crossing(lambda w: round_of(w, height), diameter, diameter / 1000, widest)


@computation(
    "Friction of compressed flexible duct",
    takes=(
        argument("diameter", "length", "in", 4, 20, 6, -1, "inside diameter"),
        argument("compression", "percent", "percent", 0, 45, 15, +1, "how much shorter than stretched"),
    ),
    gives=Result("ratio", "", "times the friction of stretched duct"),
    formula="1 + 58 × exp(-0.126 × {diameter}) × {compression} / 100",
    source=FLEX,
)
def flex_factor(diameter: float, compression: float) -> float:
    """1 + 58·exp(-0.126·inches)·c, a plain number. Range: 4 to 20 in, 0 to 45 %.

    Source: ASHRAE (from memory).
    """
    return 1 + 58 * math.exp(-0.126 * diameter / INCH) * compression


@computation(
    "Friction rate that the available static allows",
    takes=(
        argument(
            "available", "pressure", "inwc", 0, 2, 0.15, +1, "blower's static less filter, coil, registers"
        ),
        argument(
            "length", "length", "ft", 10, 2000, 250, -1, "longest run, fittings as their equivalent length"
        ),
    ),
    gives=Result("friction_rate", "inwc100ft", "friction rate"),
    formula="{available} × 100 / {length}",
    source=METHOD,
)
def design_rate(available: float, length: float) -> float:
    """available / length in Pa/m. Under 0.06 in. w.c.

    for 100 ft the ducts come out too big to build, above 0.18 loud.

    Range: 0 to 2 in. w.c., 10 to 2,000 ft. Raises ArgumentError outside. Source: Manual D method (from
    memory).
    """
    return available / length


@computation(
    "Static that is left for the ducts",
    takes=(
        argument("external", "pressure", "inwc", 0, 3, 0.5, +1, "static that the blower is rated for"),
        argument(
            "losses",
            "pressure",
            "inwc",
            0,
            3,
            (0.10, 0.20, 0.03, 0.03),
            -1,
            "filter, coil, registers, dampers",
            many=True,
        ),
    ),
    gives=Result("pressure", "inwc", "available"),
    formula="{external} - the sum of {losses}",
    source=METHOD,
)
def available_static(external: float, losses) -> float:
    """external - sum(losses) in Pa; below zero nothing is left and no duct can carry the flow.

    Range: 0 to 3 in. w.c. each. Raises ArgumentError outside. Source: Manual D method (from memory).
    """
    return external - sum(losses)


@computation(
    "Air that duct seams leak",
    takes=(
        argument(
            "leakage_class", "count", "", 1, 100, 24, +1, "unsealed 48, sealed 24 rectangular, 12 round"
        ),
        argument("static", "pressure", "inwc", 0, 4, 0.5, +1, "static in the duct"),
        argument("surface", "area", "ft2", 0, 5000, 100, +1, "surface of the duct"),
    ),
    gives=Result("airflow", "cfm", "leak"),
    formula="{leakage_class} × {static}^0.65 × {surface} / 100",
    source=LEAK,
)
def seam_leakage(leakage_class: float, static: float, surface: float) -> float:
    """class × (in. w.c.)^0.65 cfm for 100 ft², in m³/s. Range: 1 to 100. Source: SMACNA (from memory)."""
    flow = leakage_class * (static / INCH_WATER) ** 0.65 * surface / (100 * FOOT**2)
    return flow * CUBIC_FOOT / 60
