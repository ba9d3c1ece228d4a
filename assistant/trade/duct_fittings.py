"""Fittings and dampers as loss coefficients, and what a closed damper lets through."""

from __future__ import annotations

import math
from bisect import bisect_right

from assistant.trade.air_density import altitude, density_at, temperature
from assistant.trade.constants import CUBIC_FOOT, FOOT, INCH_WATER, KELVIN_AT_70F, STANDARD_DENSITY
from assistant.trade.entry import Argument, Result, Source, argument, choice, computation
from assistant.trade.friction import darcy, viscosity

LOSS = Source("loss = coefficient × velocity pressure", "from memory")
MITRE = Source(
    "mitred rectangular elbow without vanes, ASHRAE 1989 fitting tables as printed in a textbook companion",
    "read",
)
ROUND = Source("smooth round 90° elbow, 0.22 at r/D 1.0 and 0.15 at 1.5 (ASHRAE)", "from memory")
BLADE = Source("ASHRAE 825-RP exponential damper law as coded in an open building-physics library", "read")
LEAKS = Source(
    "UL 555S leakage table at 4 in. w.c., AMCA classes agree; EN 1751 at 100 Pa; square-root scaling", "read"
)
MITRED = ((0.25, 1.3), (0.5, 1.3), (1.0, 1.2), (2.0, 1.1), (4.0, 0.92), (8.0, 0.83))
"""Coefficient of the 90° elbow by height over width."""
SLOW = ((1e4, 1.40), (4e4, 1.14), (1.4e5, 1.0))
"""Correction by Reynolds number."""
CFM_FT2 = CUBIC_FOOT / 60 / FOOT**2
CLASSES = {
    "UL-I": (8 * CFM_FT2, 4 * INCH_WATER),
    "UL-II": (20 * CFM_FT2, 4 * INCH_WATER),
    "UL-III": (80 * CFM_FT2, 4 * INCH_WATER),
    "EN-1": (0.2, 100.0),
    "EN-2": (0.04, 100.0),
    "EN-3": (0.008, 100.0),
    "EN-4": (0.0015, 100.0),
}
"""Leakage class -> flow for each area (m/s) at a pressure (Pa). Household zone dampers carry none."""
BLADES = {"opposed": (-1.51, 0.105 * 90, 15 / 90, 55 / 90), "single": (-1.51, 0.0842 * 90, 15 / 90, 65 / 90)}
"""a, b and the ends of the exponential part of ln K = a + b(1 - opening)."""
OPEN, CLOSED = 0.45, 1e6
"""Coefficient of a damper fully open (0.2 to 0.5 read) and shut (1e6 read: 4.0 cfm/ft² at 1 in. w.c.)."""


def between(table, x: float) -> float:
    """Linear between the points of a table, its end values beyond them."""
    xs = [p[0] for p in table]
    if x <= xs[0]:
        return table[0][1]
    if x >= xs[-1]:
        return table[-1][1]
    i = bisect_right(xs, x)
    (x0, y0), (x1, y1) = table[i - 1], table[i]
    return y0 + (y1 - y0) * (x - x0) / (x1 - x0)


def blade_loss(opening: float, blade: str) -> float:
    """ln K is linear in the middle, and a quadratic that meets it smoothly towards fully open and shut."""
    a, b, low, high = BLADES[blade]
    y = min(max(opening, 0.0), 1.0)
    if low <= y <= high:
        return math.exp(a + b * (1 - y))
    edge, end, log_end = (low, 0.0, math.log(CLOSED)) if y < low else (high, 1.0, math.log(OPEN))
    at_edge, span = a + b * (1 - edge), end - edge
    bend = (log_end - at_edge + b * span) / span**2  # value and slope at the edge, value at the end
    return math.exp(at_edge - b * (y - edge) + bend * (y - edge) ** 2)


def _factor(diameter: float, airflow: float) -> float:
    velocity = airflow / (math.pi / 4 * diameter**2)
    reynolds = STANDARD_DENSITY * velocity * diameter / viscosity(KELVIN_AT_70F)
    return darcy(reynolds, 0.0003 * FOOT / diameter)


@computation(
    "Loss of a fitting",
    takes=(
        argument("coefficient", "count", "", 0, 1e7, 1.2, +1, "loss coefficient"),
        argument("velocity", "velocity", "fpm", 0, 6000, 700, +1, "velocity that the coefficient refers to"),
        altitude(-1),
        temperature(-1),
    ),
    gives=Result("pressure", "inwc", "loss"),
    formula="{coefficient} × {density} × ({velocity} / 1096.7)^2",
    where={
        "density": (lambda altitude, temperature, **_: density_at(altitude, temperature), "lbft3", "density")
    },
    source=LOSS,
)
def fitting_loss(coefficient: float, velocity: float, altitude: float, temperature: float) -> float:
    """coefficient × density × velocity² / 2 in Pa. Range: 0 to 6,000 fpm.

    Source: ASHRAE Fundamentals (from memory).
    """
    return coefficient * density_at(altitude, temperature) * velocity**2 / 2


@computation(
    "Coefficient of a mitred rectangular elbow",
    takes=(
        argument("ratio", "count", "", 0.25, 8, 1, -1, "height over width of the duct"),
        argument("reynolds", "count", "", 1e4, 1e7, 1.4e5, -1, "Reynolds number", default=1.4e5),
    ),
    gives=Result("ratio", "", "coefficient"),
    formula="the table's 90° elbow at {ratio}, corrected for {reynolds}",
    source=MITRE,
)
def mitred_elbow(ratio: float, reynolds: float) -> float:
    """Table at height/width (linear between points) × correction for slow flow, a plain number.

    Range: 0.25 to 8; Reynolds 10,000 and up. Raises ArgumentError outside. Source: ASHRAE 1989 as printed
    (read).
    """
    return between(MITRED, ratio) * between(SLOW, reynolds)


@computation(
    "Coefficient of a smooth round elbow",
    takes=(argument("ratio", "count", "", 1.0, 1.5, 1.0, -1, "radius of the bend over diameter"),),
    gives=Result("ratio", "", "coefficient"),
    formula="0.22 at 1.0, 0.15 at 1.5, linear at {ratio}",
    source=ROUND,
)
def round_elbow(ratio: float) -> float:
    """0.22 at r/D 1.0 to 0.15 at 1.5, a plain number. Range: 1.0 to 1.5. Source: ASHRAE (from memory)."""
    return between(((1.0, 0.22), (1.5, 0.15)), ratio)


@computation(
    "Straight duct that loses as much as a fitting",
    takes=(
        argument("coefficient", "count", "", 0, 100, 1.2, +1, "loss coefficient"),
        argument("diameter", "length", "in", 2, 60, 10, None, "inside diameter"),
        argument("airflow", "airflow", "cfm", 1, 20_000, 400, None, "flow in the duct"),
    ),
    gives=Result("length", "ft", "equivalent length"),
    formula="{coefficient} × {diameter} / 12 / {f}",
    where={"f": (lambda diameter, airflow, **_: _factor(diameter, airflow), "", "friction factor")},
    source=LOSS,
)
def equivalent_length(coefficient: float, diameter: float, airflow: float) -> float:
    """coefficient × diameter / f in m, galvanized duct, standard air.

    Range: coefficient 0 to 100, 2 to 60 in. Raises ArgumentError outside. Source: Darcy-Weisbach (from
    memory).
    """
    return coefficient * diameter / _factor(diameter, airflow)


@computation(
    "Coefficient of a damper at an opening",
    takes=(
        argument("opening", "percent", "percent", 0, 100, 50, -1, "0 shut, 100 fully open"),
        choice("blade", tuple(BLADES), "how the blade is made", default="opposed"),
    ),
    gives=Result("ratio", "", "coefficient"),
    formula="exp(a + b × (1 - {opening} / 100)) for {blade} blades, in the middle range",
    source=BLADE,
)
def damper_loss(opening: float, blade: str) -> float:
    """exp(a + b(1 - y)) in the middle, quadratics in the exponent towards 1e6 shut and 0.45 open; a plain
    number.

    Half open already passes most of the flow. Range: 0 to 100 %. Source: ASHRAE 825-RP as coded (read).
    """
    return blade_loss(opening, blade)


def _leak_class() -> Argument:
    return choice("leakage_class", tuple(CLASSES), "leakage class of the damper")


@computation(
    "Air past a closed damper",
    takes=(
        argument("diameter", "length", "in", 2, 60, 8, +1, "diameter of the damper"),
        argument("static", "pressure", "inwc", 0, 15, 0.5, +1, "static ahead of the damper"),
        _leak_class(),
    ),
    gives=Result("airflow", "cfm", "leak"),
    formula="{class_flow} × 0.7854 × ({diameter} / 12)^2 × sqrt({static} / {class_static})",
    where={
        "class_flow": (lambda leakage_class, **_: CLASSES[leakage_class][0], "cfmft2", "class flow"),
        "class_static": (lambda leakage_class, **_: CLASSES[leakage_class][1], "inwc", "class static"),
    },
    source=LEAKS,
)
def damper_leakage(diameter: float, static: float, leakage_class: str) -> float:
    """Class flow × area × sqrt(static / class static) in m³/s. A household damper without a class leaks more.

    Range: 2 to 60 in, 0 to 15 in. w.c. Raises ArgumentError outside. Source: UL 555S and EN 1751 as printed
    (read).
    """
    flow, at = CLASSES[leakage_class]
    return flow * math.pi / 4 * diameter**2 * math.sqrt(static / at)


@computation(
    "Coefficient of a closed damper of a leakage class",
    takes=(_leak_class(),),
    gives=Result("ratio", "", "coefficient"),
    formula="class static / velocity pressure of the class flow of {leakage_class}",
    source=LEAKS,
)
def closed_damper_loss(leakage_class: str) -> float:
    """static / (density × (flow/area)² / 2), a plain number: UL-I is 1e6.

    Range: the listed classes. Raises ArgumentError outside. Source: UL 555S and EN 1751 (read).
    """
    flow, at = CLASSES[leakage_class]
    return at / (STANDARD_DENSITY * flow**2 / 2)
