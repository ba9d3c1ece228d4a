"""Two readings of one kind laid side by side: their difference, ratio and deviation."""

from __future__ import annotations

from assistant.trade.entry import ANY, Result, Source, argument, computation

ARITHMETIC = Source("arithmetic on two readings of one kind", "reasoned")
WIDE = 1e12


@computation(
    "Difference of two readings of one kind",
    takes=(
        argument(
            "first", ANY, "", -WIDE, WIDE, 7.2, +1, "the reading that stands first, such as static pressure"
        ),
        argument("second", ANY, "", -WIDE, WIDE, 6.8, -1, "the reading taken away from it, such as firing"),
    ),
    gives=Result(ANY, "", "difference"),
    formula="{first} - {second}",
    source=ARITHMETIC,
)
def difference(first: float, second: float) -> float:
    """first - second, both SI and of one kind; two temperatures give a temperature difference in K.

    Range: any finite reading. Raises ArgumentError for what is no number.
    Source: arithmetic (reasoned). Example: inlet static less firing, vacuum cold less hot.
    """
    return first - second


@computation(
    "One reading as a percentage of another",
    takes=(
        argument("part", ANY, "", 0, WIDE, 32, +1, "the reading"),
        argument("whole", ANY, "", 1e-12, WIDE, 40, -1, "what counts as 100 %"),
    ),
    gives=Result("percent", "percent", "share"),
    formula="100 × {part} / {whole}",
    source=ARITHMETIC,
)
def ratio_percent(part: float, whole: float) -> float:
    """part / whole as a fraction (shown in percent), both SI and of one kind.

    Range: part not negative, whole above zero. Raises ArgumentError otherwise. Source: arithmetic (reasoned).
    """
    return part / whole


@computation(
    "How far a reading is from what is marked",
    takes=(
        argument("found", ANY, "", 0, WIDE, 9.3, +1, "the reading"),
        argument("marked", ANY, "", 1e-12, WIDE, 10, -1, "the value on the plate, can or drawing"),
    ),
    gives=Result("percent", "percent", "deviation"),
    formula="100 × ({found} - {marked}) / {marked}",
    source=ARITHMETIC,
)
def deviation_percent(found: float, marked: float) -> float:
    """(found - marked) / marked as a fraction (shown in percent);

    negative when the reading is below the mark.

    Range: found not negative, marked above zero. Raises ArgumentError otherwise. Source: arithmetic
    (reasoned).
    """
    return (found - marked) / marked
