"""What a meter's own accuracy makes of a reading, and how likely it then is inside a limit."""

from __future__ import annotations

import math

from assistant.quantity.chance import chance_between
from assistant.trade.entry import ANY, Argument, Result, Source, argument, choice, computation

METER = Source(
    "accuracy as ±(percent of reading + counts of the last digit), as printed in instrument data", "read"
)
TYPE_B = Source("NIST Technical Note 1297 (1994) 4.6; GUM (JCGM 100:2008) 4.3", "from memory")
CONFORMITY = Source("JCGM 106:2012 clause 7, normal distribution", "from memory")
GUARD = Source("ILAC-G8:09/2019 guard bands, normal distribution", "from memory")
SHAPES = {"rectangular": math.sqrt(3), "triangular": math.sqrt(6), "u-shaped": math.sqrt(2), "two-sigma": 2.0}
"""Half-width over standard uncertainty."""
WIDE = 1e12


def _reading(name: str, example: float, sense: int | None, words: str, low: float = -WIDE) -> Argument:
    return argument(name, ANY, "", low, WIDE, example, sense, words)


@computation(
    "What a meter's accuracy allows around a reading",
    takes=(
        _reading("reading", 120.0, None, "what the display shows"),
        argument("accuracy", "percent", "percent", 0, 50, 0.7, +1, "percent of reading"),
        argument("counts", "count", "", 0, 1000, 2, +1, "counts of the last digit"),
        _reading("step", 0.1, +1, "one count on this range", 0),
    ),
    gives=Result(ANY, "", "plus or minus"),
    formula="{accuracy} / 100 × abs({reading}) + {counts} × {step}",
    source=METER,
)
def meter_allowance(reading: float, accuracy: float, counts: float, step: float) -> float:
    """accuracy × |reading| + counts × step, in the reading's SI unit. Range: 0 to 50 %, 0 to 1,000 counts.

    Raises ArgumentError outside. Source: form and worked examples read in several places.
    """
    return accuracy * abs(reading) + counts * step


@computation(
    "Standard uncertainty of a half-width",
    takes=(
        _reading("half_width", 1.0, +1, "plus or minus", 0),
        choice("shape", tuple(SHAPES), "how the values lie in it", default="rectangular"),
    ),
    gives=Result(ANY, "", "standard uncertainty"),
    formula="{half_width} / {divisor}",
    where={"divisor": (lambda shape, **_: SHAPES[shape], "", "divisor")},
    source=TYPE_B,
)
def standard_uncertainty(half_width: float, shape: str) -> float:
    """half_width / sqrt(3), sqrt(6), sqrt(2) or 2 (two-sigma). Range: not negative.

    Raises ArgumentError outside.

    Source: NIST TN 1297, GUM 4.3 (from memory).
    """
    return half_width / SHAPES[shape]


@computation(
    "Probability that the true value is under a limit",
    takes=(
        _reading("value", -5.47, -1, "best estimate"),
        _reading("uncertainty", 0.05, None, "standard uncertainty", 1e-12),
        _reading("limit", -5.40, +1, "upper limit"),
    ),
    gives=Result("percent", "percent", "probability"),
    formula="normal distribution of ({limit} - {value}) / {uncertainty}",
    source=CONFORMITY,
)
def probability_under(value: float, uncertainty: float, limit: float) -> float:
    """Phi((limit - value) / uncertainty) as a fraction; one minus it for a lower limit.

    It decides nothing: the interval does.

    Range: uncertainty above zero. Raises ArgumentError outside. Source: JCGM 106:2012 clause 7 (from memory).
    """
    return chance_between(value, uncertainty, high=limit)


@computation(
    "Probability that the true value lies between two limits",
    takes=(
        _reading("value", 13.6, None, "best estimate"),
        _reading("uncertainty", 1.8, None, "standard uncertainty", 1e-12),
        _reading("low", 12.5, None, "lower limit"),
        _reading("high", 16.3, None, "upper limit"),
    ),
    gives=Result("percent", "percent", "probability"),
    formula="normal distribution between ({low} - {value}) / {uncertainty} and ({high} - {value}) / "
    "{uncertainty}",
    source=CONFORMITY,
)
def probability_between(value: float, uncertainty: float, low: float, high: float) -> float:
    """Phi((high - value)/u) - Phi((low - value)/u) as a fraction, zero where high lies under low.

    Range: uncertainty above zero. Raises ArgumentError outside. Source: JCGM 106:2012 clause 7 (from memory).
    """
    return chance_between(value, uncertainty, low, high) if low <= high else 0.0


@computation(
    "Worst chance of accepting what is past the limit",
    takes=(argument("guard", "count", "", 0, 10, 1.645, -1, "guard band in standard uncertainties"),),
    gives=Result("percent", "percent", "chance"),
    formula="normal distribution beyond {guard} standard uncertainties",
    source=GUARD,
)
def false_accept(guard: float) -> float:
    """1 - Phi(guard) as a fraction, one-sided, at the acceptance limit: 50 % with none, 2.3 % with two.

    Range: 0 to 10. Raises ArgumentError outside. Source: ILAC-G8 (from memory), recomputed.
    """
    return chance_between(-guard, 1.0, low=0.0)


VERDICTS = ("above the limit", "below the limit", "too close to call")


@computation(
    "A reading with its allowance against a limit",
    takes=(
        _reading("reading", 114.5, None, "what the display shows"),
        _reading("allowance", 1.445, None, "plus or minus", 0),
        _reading("limit", 114.0, None, "the limit"),
    ),
    gives={"word": Result("words", "", "verdict"), "margin": Result(ANY, "", "reading less limit")},
    formula="{reading} - {limit} against {allowance}",
    source=Source("decision by guard band equal to the allowance", "computed"),
)
def against_limit(reading: float, allowance: float, limit: float) -> dict[str, float | str]:
    """Above or below only where the whole allowance is on one side; SI, one kind.

    Range: allowance not negative.

    Raises ArgumentError outside. Source: guard band, computed.
    """
    margin = reading - limit
    word = (
        VERDICTS[2] if abs(margin) <= allowance and allowance else VERDICTS[0] if margin >= 0 else VERDICTS[1]
    )
    return {"word": word, "margin": margin}
