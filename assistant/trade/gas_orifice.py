"""Gas through a fixed orifice: its flow, and how manifold pressure moves the input."""

from __future__ import annotations

import math

from assistant.trade.constants import STANDARD_DENSITY
from assistant.trade.entry import Argument, Result, Source, argument, computation

ORIFICE = Source("orifice equation: flow = coefficient × area × sqrt(2 × pressure / density)", "from memory")
LAW = Source("fixed orifice, same gas: input follows the square root of manifold pressure", "from memory")


def _manifold(name: str, example: float, sense: int | None, words: str, low: float = 0) -> Argument:
    return argument(name, "pressure", "inwc", low, 20, example, sense, words)


@computation(
    "Gas flow through an orifice",
    takes=(
        argument("diameter", "length", "in", 0.005, 0.5, 0.0935, +1, "bore of the orifice"),
        _manifold("pressure", 3.5, +1, "manifold pressure"),
        argument(
            "gravity",
            "count",
            "",
            0.3,
            2.5,
            0.60,
            -1,
            "specific gravity: natural 0.60, propane 1.5",
            default=0.60,
        ),
        argument("coefficient", "count", "", 0.5, 1.0, 0.90, +1, "discharge coefficient", default=0.90),
    ),
    gives=Result("gas_flow", "cfh", "gas flow"),
    formula="1658.5 × {coefficient} × 0.7854 × {diameter}^2 × sqrt({pressure} / {gravity})",
    source=ORIFICE,
)
def orifice_flow(diameter: float, pressure: float, gravity: float, coefficient: float) -> float:
    """coefficient × area × sqrt(2 × pressure / (gravity × 1.2236 kg/m³)) in m³/s at 60 °F; m, Pa.

    Range: 0.005 to 0.5 in, 0 to 20 in. w.c. Raises ArgumentError outside. Source: orifice equation (from
    memory).
    """
    density = gravity * STANDARD_DENSITY * 529.67 / 519.67
    return coefficient * math.pi / 4 * diameter**2 * math.sqrt(2 * pressure / density)


@computation(
    "Input change from a change of manifold pressure",
    takes=(
        _manifold("manifold", 3.5, -1, "manifold pressure before", 0.01),
        _manifold("new_manifold", 3.2, +1, "manifold pressure after"),
    ),
    gives=Result("percent", "percent", "input changes by"),
    formula="100 × (sqrt({new_manifold} / {manifold}) - 1)",
    source=LAW,
)
def manifold_input_change(manifold: float, new_manifold: float) -> float:
    """sqrt(new / old) - 1 as a fraction. Stay within about 0.3 in. w.c.

    of the plate: past that the orifice is wrong.

    Range: 0.01 to 20 in. w.c. Raises ArgumentError outside. Source: orifice law (from memory).
    """
    return math.sqrt(new_manifold / manifold) - 1


@computation(
    "Manifold pressure for an input",
    takes=(
        _manifold("manifold", 3.5, +1, "manifold pressure now", 0.01),
        argument("input", "heat_rate", "Btuh", 1000, 1e6, 84_273, -1, "clocked input now"),
        argument("plate", "heat_rate", "Btuh", 1000, 1e6, 80_000, +1, "input wanted"),
    ),
    gives=Result("pressure", "inwc", "manifold"),
    formula="{manifold} × ({plate} / {input})^2",
    source=LAW,
)
def manifold_for_input(manifold: float, input: float, plate: float) -> float:  # noqa: A002  # the trade's word for it
    """manifold × (wanted / now)² in Pa: the inverse of the orifice law.

    Range: 0.01 to 20 in. w.c., 1,000 to 1,000,000 Btu/h. Raises ArgumentError outside. Source: orifice law
    (from memory).
    """
    return manifold * (plate / input) ** 2
