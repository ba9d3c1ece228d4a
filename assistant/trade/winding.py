"""Windings of a motor by ohmmeter: unbalance of three that should be equal, and which terminal is which."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.quantity.interval import Interval
from assistant.trade.bounds import size
from assistant.trade.entry import ANY, Result, Source, argument, computation

UNBALANCE = Source(
    "NEMA MG 1 definition of unbalance (greatest deviation from the mean over the mean), as quoted in a "
    "published discussion of MG 1-2011 Figure 20-2; used here for resistances",
    "read",
)
SINGLE_PHASE = Source(
    "three-terminal rule: start and run in series, R(start-run) = R(common-run) + R(common-start); Heating "
    "and Cooling Essentials, 2022, p. 531",
    "read",
)


def unbalance_of(values: Sequence[float]) -> float:
    """max|x - mean| / mean of any positive values, as a fraction."""
    mean = sum(values) / len(values)
    return max(abs(x - mean) for x in values) / mean


def unbalance_within(windings: Sequence[Interval]) -> Interval:
    """Encloses the unbalance:

    n·x/sum - 1 rises with x and falls with every other value, so its ends stand at corners.
    """
    count, low, high = len(windings), 0.0, 0.0
    for i, x in enumerate(windings):
        rest_lo = sum(v.lo for j, v in enumerate(windings) if j != i)
        rest_hi = sum(v.hi for j, v in enumerate(windings) if j != i)
        least, most = count * x.lo / (x.lo + rest_hi) - 1, count * x.hi / (x.hi + rest_lo) - 1
        off = size(Interval(min(least, most), max(least, most)))
        low, high = max(low, off.lo), max(high, off.hi)
    return Interval(low, high)


def _winding(name: str, example: float, words: str):
    return argument(name, "resistance", "ohm", 0.01, 1e5, example, None, words)


THREE = (
    _winding("first", 10.0, "terminals 1-2"),
    _winding("second", 10.4, "terminals 2-3"),
    _winding("third", 9.9, "terminals 1-3"),
)


@computation(
    "Unbalance of three windings that should be equal",
    takes=THREE,
    gives=Result("percent", "percent", "unbalance"),
    formula="100 × greatest deviation from the mean of {first}, {second}, {third} / their mean",
    source=UNBALANCE,
    enclose=lambda first, second, third: unbalance_within((first, second, third)),
)
def winding_unbalance(first: float, second: float, third: float) -> float:
    """Greatest deviation from the mean over the mean, as a fraction; ohm. Not the range over the mean.

    For three-winding (electronically commutated, three-phase) motors only: a split-capacitor motor's windings
    are unequal by design. Range: 0.01 ohm to 100 kohm. Raises ArgumentError outside. Source: NEMA MG 1 as
    quoted (read).
    """
    return unbalance_of((first, second, third))


@computation(
    "Unbalance of any number of values that should be equal",
    takes=(
        argument(
            "windings",
            ANY,
            "",
            1e-6,
            1e9,
            (10.0, 10.4, 9.9),
            None,
            "values of one kind that should be equal, two or more",
            many=True,
        ),
    ),
    gives=Result("percent", "percent", "unbalance"),
    formula="100 × greatest deviation of {windings} from their mean / their mean",
    source=UNBALANCE,
    enclose=unbalance_within,
)
def unbalance(windings: Sequence[float]) -> float:
    """Greatest deviation from the mean over the mean, as a fraction.

    The same formula serves three line voltages.

    Range: values above zero. Raises ArgumentError outside. Source: NEMA MG 1 as quoted (read).
    """
    return unbalance_of(windings)


@computation(
    "Which terminal of a split-phase motor is common, start and run",
    takes=(
        _winding("first", 4.0, "terminals 1-2"),
        _winding("second", 15.0, "terminals 2-3"),
        _winding("third", 11.0, "terminals 1-3"),
    ),
    gives={
        "common": Result("words", "", "common terminal"),
        "start": Result("words", "", "start terminal"),
        "run": Result("words", "", "run terminal"),
        "gap": Result("percent", "percent", "sum is off by"),
        "word": Result("words", "", "judgement"),
    },
    formula="the highest of {first}, {second}, {third} spans start and run; the other two must add up to it",
    source=SINGLE_PHASE,
)
def winding_terminals(first: float, second: float, third: float) -> dict[str, float | str]:
    """Terminals from ohm readings 1-2, 2-3, 1-3.

    The highest pair is start-run, the higher of the rest common-start.

    `gap` = |highest - (sum of the others)| / highest; above 5 % the three readings contradict each other
    (lead resistance not nulled, a slip, a shorted winding) and the names must not be relied on. Range: 0.01
    ohm to 100 kohm. Raises ArgumentError outside. Source: textbook as named (read); 5 % common practice.
    """
    opposite = {"3": first, "1": second, "2": third}  # each pair by the terminal that it leaves out
    common, run, start = sorted(opposite, key=lambda terminal: opposite[terminal], reverse=True)
    gap = abs(opposite[common] - opposite[run] - opposite[start]) / opposite[common]
    word = (
        "the three readings agree" if gap <= 0.05 else "the readings contradict each other; take them again"
    )
    return {"common": common, "start": start, "run": run, "gap": gap, "word": word}
