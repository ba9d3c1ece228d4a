"""Propagation and chance against the worked examples of the GUM and JCGM 106."""

from __future__ import annotations

import math
from itertools import pairwise
from pathlib import Path

import pytest
import yaml
from hypothesis import given
from hypothesis import strategies as st

from assistant.quantity.chance import chance_between, standard_uncertainty
from assistant.quantity.interval import Interval
from assistant.quantity.propagate import propagated, standard

DATA = yaml.safe_load((Path(__file__).parents[1] / "outside/data/uncertainty.yaml").read_text())


def mean_parts(values: list[float]) -> dict[int, float]:
    """Each observation's contribution to the mean: equal indices make simultaneous readings correlated."""
    count, mean = len(values), sum(values) / len(values)
    return {i: (v - mean) / math.sqrt(count * (count - 1)) for i, v in enumerate(values)}


def test_gum_h1_end_gauge() -> None:
    """GUM H.1 (read): u = 31.664 nm before rounding. Terms of second order are below 0.001 nm here."""
    case = DATA["gum_h1"]["inputs"]
    middle = {"ls": case["ls"], "d": case["d"], "dalpha": 0.0, "tbar": case["tbar"], "dtheta": 0.0}

    def length(x: dict[str, float]) -> float:
        return x["ls"] + x["d"] - x["ls"] * (x["dalpha"] * x["tbar"] + case["alpha_s"] * x["dtheta"])

    parts = {
        "ls": {"ls": case["u_ls"]},
        "d": {"d0": case["u_d0"], "d1": case["u_d1"], "d2": case["u_d2"]},
        "dalpha": {"dalpha": case["half_dalpha"] / math.sqrt(3)},
        "dtheta": {"dtheta": case["half_dtheta"] / math.sqrt(3)},
    }

    assert round(length(middle)) == DATA["gum_h1"]["value"]
    u = standard(propagated(length, middle, parts))
    assert u == pytest.approx(DATA["gum_h1"]["u_unrounded"], abs=1e-3)


@pytest.mark.parametrize("name", ["R", "X", "Z"])
def test_gum_h2_correlated_inputs(name: str) -> None:
    """GUM H.2 (read), to the digits printed. Taken as independent, Z would come out at 0.204."""
    case = DATA["gum_h2"]
    functions = {
        "R": lambda x: x["V"] / x["I"] * math.cos(x["phi"]),
        "X": lambda x: x["V"] / x["I"] * math.sin(x["phi"]),
        "Z": lambda x: x["V"] / x["I"],
    }
    names = ("V", "I") if name == "Z" else ("V", "I", "phi")
    middle = {key: sum(case[key]) / 5 for key in names}
    parts = {key: mean_parts(case[key]) for key in names}
    u = standard(propagated(functions[name], middle, parts))

    assert functions[name](middle) == pytest.approx(case["expect"][name], abs=5e-4)
    assert u == pytest.approx(case["expect"][f"{name}_u"], abs=1e-3)  # printed 0.295 where 0.2956 comes out

    apart = {key: {(key, i): part for i, part in parts[key].items()} for key in names}
    if name == "Z":
        assert standard(propagated(functions["Z"], middle, apart)) == pytest.approx(
            case["independent_Z_u"], abs=5e-4)


def test_gum_h3_a_line_through_eleven_points() -> None:
    """GUM H.3 (read): intercept, slope and the correction at 30 degrees, whose errors are correlated."""
    case = DATA["gum_h3"]
    x = [t - case["t0"] for t in case["t"]]
    mean = sum(x) / len(x)
    square = sum((v - mean) ** 2 for v in x)

    def line(b: dict[str, float]) -> tuple[float, float]:
        values = [b[str(i)] for i in range(len(x))]
        slope = sum((v - mean) * w for v, w in zip(x, values, strict=True)) / square
        return sum(values) / len(values) - slope * mean, slope

    middle = {str(i): b for i, b in enumerate(case["b"])}
    intercept, slope = line(middle)
    residuals = [b - intercept - slope * v for v, b in zip(x, case["b"], strict=True)]
    s = math.sqrt(sum(r * r for r in residuals) / (len(x) - 2))
    parts = {name: {name: s} for name in middle}

    def expect(function, value: str) -> None:
        assert function(middle) == pytest.approx(case["expect"][value], abs=5e-5)
        assert standard(propagated(function, middle, parts)) == pytest.approx(
            case["expect"][f"{value}_u"], abs=5e-5)

    expect(lambda b: line(b)[0], "intercept")
    expect(lambda b: line(b)[1], "slope")
    expect(lambda b: line(b)[0] + 10 * line(b)[1], "b30")


@pytest.mark.parametrize("case", DATA["jcgm_106"]["cases"])
def test_jcgm_106_chance_of_conforming(case: dict) -> None:
    """JCGM 106 (from memory): three worked probabilities, printed to two digits."""
    got = chance_between(case["value"], case["u"], case.get("low", -math.inf), case.get("high", math.inf))

    assert round(got, 2) == case["chance"]


@pytest.mark.parametrize(("width", "chance"), DATA["guard_band"]["rows"])
def test_guard_band_false_accept(width: float, chance: float) -> None:
    """A reading a guard band inside the limit is wrongly accepted with this chance at worst (from memory)."""
    assert 1 - chance_between(-width, 1.0, high=0.0) == pytest.approx(chance, abs=5e-5)


def test_limits_become_a_standard_uncertainty() -> None:
    """Half-width over root three (NIST TN 1297, from memory)."""
    assert standard_uncertainty(Interval(-1, 1)) == pytest.approx(1 / DATA["type_b"]["divisor"], rel=1e-7)


def test_a_reading_that_enters_twice_is_one_reading() -> None:
    """x - x has no uncertainty; x + x has twice it."""
    parts = {"a": {0: 0.3}, "b": {0: 0.3}}
    middle = {"a": 5.0, "b": 5.0}

    assert standard(propagated(lambda x: x["a"] - x["b"], middle, parts)) == pytest.approx(0, abs=1e-12)
    assert standard(propagated(lambda x: x["a"] + x["b"], middle, parts)) == pytest.approx(0.6)


def test_the_slope_at_the_end_of_a_range_is_one_sided() -> None:
    """A function that refuses one side is still propagated."""
    def root(x: dict[str, float]) -> float:
        if x["a"] < 0:
            raise ValueError("below zero")
        return 3 * x["a"]

    assert standard(propagated(root, {"a": 0.0}, {"a": {0: 0.1}})) == pytest.approx(0.3)


@given(st.floats(-5, 5), st.floats(0.01, 5), st.floats(-5, 5), st.floats(0, 5))
def test_chances_of_all_bands_are_one(value: float, u: float, low: float, width: float) -> None:
    """Below, between and above are everything."""
    edges = [-math.inf, low, low + width, math.inf]
    total = sum(chance_between(value, u, a, b) for a, b in pairwise(edges))

    assert total == pytest.approx(1.0)


def test_limits_the_wrong_way_round_are_refused() -> None:
    """A mistake of the caller's."""
    with pytest.raises(ValueError, match="low limit"):
        chance_between(0, 1, 2, 1)
