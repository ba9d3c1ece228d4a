"""Uncertainty carried through computations, against the GUM's own examples."""

from __future__ import annotations

import math

import pytest
import yaml
from trade_cases import FOLDER

from assistant.trade.registry import call, on_intervals
from assistant.trade.trend import line
from assistant.trade.uncertain import (
    Uncertain,
    combine,
    correlated,
    correlation,
    measured,
    of_samples,
    through,
)

GUM = yaml.safe_load((FOLDER / "trade_measurement.yaml").read_text(encoding="utf-8"))["gum"]


def h1_inputs() -> dict[str, Uncertain]:
    """The nine inputs of GUM H.1: (value, u, dof), (value, uniform, half width, dof) or (value, arcsine, half
    width).
    """
    shape = {"uniform": math.sqrt(3), "arcsine": math.sqrt(2)}
    out = {}
    for name, (value, *rest) in GUM["H.1"]["inputs"].items():
        if rest[0] in shape:
            u, dof = rest[1] / shape[rest[0]], rest[2] if len(rest) > 2 else math.inf
        else:
            u, dof = rest[0], rest[1] if len(rest) > 1 else math.inf
        out[name] = measured(value, u, name, dof)
    return out


def length(ls, d0, d1, d2, alpha_s, dalpha, tbar, delta, dtheta):
    return ls + d0 + d1 + d2 - ls * (dalpha * (tbar + delta) + alpha_s * dtheta)


def test_gum_h1_end_gauge():
    """Value, combined uncertainty, effective degrees of freedom and each component of GUM H.1 (read as
    coded).
    """
    inputs, case = h1_inputs(), GUM["H.1"]

    got = combine(length, list(inputs.values()))

    assert got.value == pytest.approx(case["expect"]["value"], abs=case["tol"]["value"])
    assert got.u == pytest.approx(case["expect"]["u"], abs=case["tol"]["u"])
    assert got.dof == pytest.approx(case["expect"]["dof"], abs=case["tol"]["dof"])
    for name, component in case["components"].items():
        assert abs(got.parts[name]) == pytest.approx(component, abs=0.001)


def test_gum_h2_correlated_readings():
    """Resistance, reactance and impedance of GUM H.2; ignoring the correlations would give 0.204 for Z."""
    case = GUM["H.2"]
    v, i, phi = of_samples(case["V"], case["I"], case["phi"])
    means = {"V": v, "I": i, "phi": phi}
    results = {
        "R": combine(lambda v, i, phi: v / i * math.cos(phi), [v, i, phi]),
        "X": combine(lambda v, i, phi: v / i * math.sin(phi), [v, i, phi]),
        "Z": combine(lambda v, i: v / i, [v, i]),
    }

    for name, (value, u) in case["expect"].items():
        got = {**means, **results}[name]
        digit = 10.0 ** -len(str(value).partition(".")[2])
        assert got.value == pytest.approx(value, abs=0.51 * digit)
        assert got.u == pytest.approx(u, rel=0.03)  # two printed digits
    assert correlation(v, i) == pytest.approx(case["r"]["VI"], abs=0.005)
    assert correlation(i, phi) == pytest.approx(case["r"]["Iphi"], abs=0.005)
    assert correlation(v, phi) == pytest.approx(case["r"]["Vphi"], abs=0.005)
    blind = combine(lambda v, i: v / i, [measured(v.value, v.u), measured(i.value, i.u)])
    assert blind.u == pytest.approx(case["independent_Z"], abs=0.0005)
    assert abs(results["Z"].u - blind.u) > 0.03


def test_gum_h3_thermometer():
    """Straight line of GUM H.3 with its uncertainties and the correction at 30 °C (last printed digits)."""
    case = GUM["H.3"]
    got = line([t - case["t0"] for t in case["t"]], case["b"])

    expect = case["expect"]
    assert got.intercept == pytest.approx(expect["intercept"][0], abs=0.00005)
    assert got.u_intercept == pytest.approx(expect["intercept"][1], abs=0.00005)
    assert got.slope == pytest.approx(expect["slope"][0], abs=0.000005)
    assert got.u_slope == pytest.approx(expect["slope"][1], abs=0.000005)
    assert got.correlation == pytest.approx(expect["r"], abs=0.0005)
    assert got.dof == expect["dof"]
    value, u = got.at(10.0)
    assert value == pytest.approx(expect["b30"][0], abs=0.00005)
    assert u == pytest.approx(expect["b30"][1], abs=0.00005)


def test_a_reading_that_enters_twice_counts_once():
    """(a - b) with a and b the same reading has no uncertainty at all; as two readings it has sqrt(2) of it.
    """
    one, two = measured(120.0, 1.0), measured(120.0, 1.0)

    assert through("difference", {"first": one, "second": one}).u == pytest.approx(0.0, abs=1e-9)
    assert through("difference", {"first": one, "second": two}).u == pytest.approx(math.sqrt(2))
    mean = combine(lambda a, b: (a + b) / 2, [one, two])
    assert correlation(mean, one) == pytest.approx(1 / math.sqrt(2))


def test_a_clamp_alone_cannot_decide_a_capacitor():
    """1.40 A ± (2 % + 5 counts) at 370 V is 10.0 ± 0.6 µF (uncertainties 3.2.3, oracle): wider than ±6 %."""
    half = call("meter_allowance", {"reading": 1.40, "accuracy": 0.02, "counts": 5, "step": 0.01})
    got = through("capacitance", {"amps": measured(1.40, half), "volts": 370.0})

    assert got.value * 1e6 == pytest.approx(10.0, abs=0.05)
    assert got.u * 1e6 == pytest.approx(0.6, abs=0.05)


def test_two_standard_uncertainties_lie_inside_the_worst_case():
    """The interval of a computed value is never wider than the corners allow when the half-widths are worst
    cases.
    """
    amps, volts = measured(1.2, 0.03 / math.sqrt(3)), measured(25.0, 0.3 / math.sqrt(3))
    got = through("transformer_load_va", {"amps": amps, "volts": volts}).interval()
    worst = on_intervals(
        "transformer_load_va",
        {"amps": measured(1.2, 0.03).interval(1), "volts": measured(25.0, 0.3).interval(1)},
    )

    assert worst.lo < got.lo < got.hi < worst.hi


def test_the_slope_is_found_at_the_end_of_a_range():
    """Where one side of the value is out of range, the other side serves."""
    got = through("co_air_free", {"co": measured(0.0, 1e-6), "o2": 0.05})

    assert got.u == pytest.approx(1e-6 * 0.209 / 0.159, rel=1e-6)


def test_bad_correlations_and_series_are_refused():
    """No silent nonsense: impossible correlations, single readings and a trend of one time each raise."""
    with pytest.raises(ValueError, match="correlations"):
        correlated([1, 2, 3], [1, 1, 1], [[1, 0.9, -0.9], [0.9, 1, 0.9], [-0.9, 0.9, 1]])
    with pytest.raises(ValueError, match="two at least"):
        of_samples([1.0], [2.0])
    with pytest.raises(ValueError, match="three points"):
        line([1.0, 1.0, 1.0], [1.0, 2.0, 3.0])
