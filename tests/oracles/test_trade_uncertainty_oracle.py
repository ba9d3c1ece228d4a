"""Propagation through the bench's computations against a well-kept uncertainty library."""

from __future__ import annotations

import math

import pytest

from assistant.quantity.propagate import propagated, standard
from assistant.trade.registry import call

uncertainties = pytest.importorskip("uncertainties")
umath = pytest.importorskip("uncertainties.umath")

CASES = [
    ("capacitance", {"amps": (1.40, 0.033), "volts": (370.0, 3.0)}, lambda a, v: a / (2 * math.pi * 60 * v)),
    (
        "supply_impedance",
        {"no_load": (121.5, 0.3), "loaded": (117.0, 0.3), "amps": (9.0, 0.15)},
        lambda a, b, i: (a - b) / i,
    ),
    (
        "clocked_input",
        {"dial": (0.0566, 0.0001), "seconds": (92.7, 0.3), "heating_value": (3.84e7, 6e5)},
        lambda d, s, h: d * h / s,
    ),
    ("co_air_free", {"co": (60e-6, 3e-6), "o2": (0.07, 0.002)}, lambda c, o: c * 0.209 / (0.209 - o)),
    (
        "discharge_time",
        {"capacitance": (10e-6, 3e-7), "resistance": (15e3, 200.0), "volts": (370.0, 3.0)},
        lambda c, r, v: r * c * umath.log(math.sqrt(2) * v / 50),
    ),
    (
        "system_flow",
        {"airflow": (0.5, 0.02), "static": (200.0, 5.0), "new_static": (125.0, 3.0)},
        lambda q, a, b: q * umath.sqrt(b / a),
    ),
]


@pytest.mark.parametrize(("name", "inputs", "formula"), CASES, ids=[c[0] for c in CASES])
def test_independent_readings(name, inputs, formula):
    """Same value and standard uncertainty.

    Theirs differentiates exactly, ours takes one standard uncertainty to each side: the difference is of
    second order, 0.5 % of the uncertainty here.
    """
    expected = formula(*(uncertainties.ufloat(*pair) for pair in inputs.values()))
    middle = {k: v for k, (v, _) in inputs.items()}
    parts = propagated(lambda x: call(name, x), middle, {k: {k: u} for k, (_, u) in inputs.items()})

    assert call(name, middle) == pytest.approx(expected.nominal_value, rel=1e-9)
    assert standard(parts) == pytest.approx(expected.std_dev, rel=5e-3)


def test_one_reading_that_enters_twice():
    """Unbalance of windings read with one lead resistance in common: the correlation counts, and the library
    agrees.
    """
    lead = uncertainties.ufloat(0.3, 0.1)
    ohms = [x + lead for x in (2.7, 2.8, 3.1)]
    mean = sum(ohms) / 3
    expected = (ohms[2] - mean) / mean
    parts = {"lead": 0.1}
    got = propagated(
        lambda x: call("winding_unbalance", x),
        {"first": 3.0, "second": 3.1, "third": 3.4},
        dict.fromkeys(("first", "second", "third"), parts),
    )

    assert standard(got) == pytest.approx(expected.std_dev, rel=0.01)


def test_the_normal_distribution():
    """Probabilities of the bench against scipy's: 1e-12."""
    stats = pytest.importorskip("scipy.stats")
    for z in (-3.0, -1.645, 0.0, 0.7, 2.0):
        assert call("probability_under", {"value": 0.0, "uncertainty": 1.0, "limit": z}) == pytest.approx(
            stats.norm.cdf(z), rel=1e-12
        )
        if z >= 0:
            assert call("false_accept", {"guard": z}) == pytest.approx(stats.norm.sf(z), rel=1e-12)
