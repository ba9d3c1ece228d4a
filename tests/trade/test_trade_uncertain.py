"""What instruments make of the bench's answers: the room's propagation on the registry's functions."""

from __future__ import annotations

import math

import pytest

from assistant.quantity.interval import Interval
from assistant.quantity.propagate import propagated, standard
from assistant.trade.registry import call, on_intervals


def spread(name: str, middle: dict[str, float], own: dict[str, dict[str, float]]) -> float:
    """Standard uncertainty of a computation whose arguments have these contributions."""
    return standard(propagated(lambda values: call(name, values), middle, own))


def test_a_clamp_alone_cannot_decide_a_capacitor():
    """1.40 A plus or minus (2 % + 5 counts) at 370 V is 10.0 plus or minus 0.6 µF (uncertainties 3.2.3,
    oracle, printed to 0.1): as wide as the ±6 % that it should decide.
    """
    half = call("meter_allowance", {"reading": 1.40, "accuracy": 0.02, "counts": 5, "step": 0.01})
    u = spread("capacitance", {"amps": 1.40, "volts": 370.0}, {"amps": {"clamp": half}})

    assert call("capacitance", {"amps": 1.40, "volts": 370.0}) * 1e6 == pytest.approx(10.0, abs=0.05)
    assert u * 1e6 == pytest.approx(0.6, abs=0.05)


def test_a_reading_that_enters_twice_counts_once():
    """The difference of a reading from itself is certain; of two equal readings it is not (identity)."""
    middle = {"first": 120.0, "second": 120.0}

    assert spread("difference", middle, {"first": {"a": 1.0}, "second": {"a": 1.0}}) == pytest.approx(
        0.0, abs=1e-9
    )
    assert spread("difference", middle, {"first": {"a": 1.0}, "second": {"b": 1.0}}) == pytest.approx(
        math.sqrt(2)
    )


def test_two_standard_uncertainties_lie_inside_the_worst_case():
    """Where the half-widths are worst cases, 2u of the result stays inside what the corners allow (GUM
    4.3.7).
    """
    middle, half = {"amps": 1.2, "volts": 25.0}, {"amps": 0.03, "volts": 0.3}
    u = spread("transformer_load_va", middle, {k: {k: h / math.sqrt(3)} for k, h in half.items()})
    worst = on_intervals(
        "transformer_load_va", {k: Interval(v - half[k], v + half[k]) for k, v in middle.items()}
    )

    assert worst.lo < 30.0 - 2 * u < 30.0 + 2 * u < worst.hi
