"""Figures of testability and the search for the best order, against published answers."""

from __future__ import annotations

from itertools import permutations
from pathlib import Path

import pytest
import yaml

from assistant.drill import sequence
from assistant.drill.best_order import greedy, mean_cost, rollout
from assistant.drill.huffman import entropy, mean_depth
from assistant.drill.sequence import Problem
from assistant.drill.testability import figures

PUBLISHED = yaml.safe_load(
    (Path(__file__).parents[1] / "outside" / "data" / "testability.yaml").read_text(encoding="utf-8")
)
SIX = PUBLISHED["sequencing"]


def six_states() -> Problem:
    """The published example as a problem: nothing to set up, nothing to switch."""
    states = SIX["matrix"]
    tests = tuple(
        sequence.Test(f"t{number + 1}", float(SIX["costs"][number]), tuple(row[number] for row in states))
        for number in range(len(SIX["costs"]))
    )
    return Problem(tuple(SIX["prior"]), tuple(range(len(states))), tests)


def exhaustive(problem: Problem, faults: tuple[int, ...]) -> float:
    """The cheapest cost over all orders, by trying all of them."""
    if len(faults) < 2:
        return 0.0
    return min(
        problem.tests[index].minutes * problem.weight(faults)
        + sum(exhaustive(problem, part) for part in parts.values())
        for index in range(len(problem.tests))
        if len(parts := problem.split(index, faults)) > 1
    )


def test_rollout_finds_the_published_optimum():
    problem = six_states()
    order = rollout(problem)
    assert mean_cost(problem, order) == pytest.approx(SIX["optimum"], abs=1e-9)
    assert problem.tests[order.test].name == SIX["first_test"]
    assert exhaustive(problem, tuple(range(6))) == pytest.approx(SIX["optimum"], abs=1e-9)


def test_an_order_lies_between_its_bounds():
    problem = six_states()
    found = {search.__name__: mean_cost(problem, search(problem)) for search in (greedy, rollout)}
    assert SIX["huffman_bound"] <= found["rollout"] <= found["greedy"]
    assert found["rollout"] == pytest.approx(rollout(problem).depth(problem), abs=1e-9)


def test_the_bounds_are_the_published_ones():
    assert mean_depth(SIX["prior"]) == pytest.approx(SIX["huffman_bound"], abs=1e-9)
    assert entropy(SIX["prior"]) == pytest.approx(SIX["entropy_bits"], abs=1e-6)
    assert entropy(SIX["prior"]) <= mean_depth(SIX["prior"]) < entropy(SIX["prior"]) + 1


@pytest.mark.parametrize(("name", "branches"), [("huffman", 2), ("huffman_three_ways", 3)])
def test_huffmans_mean_depth(name: str, branches: int):
    case = PUBLISHED[name]
    assert mean_depth(case["weights"], branches) == pytest.approx(case["mean_depth"], abs=1e-9)


def test_a_test_has_two_outcomes_or_more():
    with pytest.raises(ValueError, match="two outcomes"):
        mean_depth([0.5, 0.5], 1)


@pytest.mark.parametrize("row", PUBLISHED["figures"]["rows"], ids=lambda row: " ".join(row["kept"]))
def test_figures_of_the_standards(row: dict):
    rates = PUBLISHED["figures"]["rates"]
    kept = [int(name[1:]) - 1 for name in row["kept"]]
    signatures = {}
    for number, failing in enumerate(SIX["matrix"][1:]):
        shown = tuple(failing[index] for index in kept)
        signatures[f"f{number}"] = shown if any(shown) else None
    found = figures(signatures, {f"f{number}": rate for number, rate in enumerate(rates)})
    assert found.detected == pytest.approx(row["detected"], abs=1e-6)
    assert found.isolated(1) == pytest.approx(row["one"], abs=1e-6)
    assert found.isolated(2) == pytest.approx(row["two"], abs=1e-6)
    assert found.ambiguity == pytest.approx(row["ambiguity"], abs=1e-6)


def test_faults_mended_together_are_no_ambiguity():
    found = figures({"a": "x", "b": "x", "c": "y"}, one={"a": "plug", "b": "plug", "c": "board"})
    assert found.isolated(1) == 1.0
    assert found.ambiguity == 1.0


def test_nothing_detected_is_nothing_isolated():
    found = figures({"a": None, "b": None})
    assert (found.detected, found.isolated(9), found.ambiguity) == (0.0, 0.0, 0.0)


def test_one_at_a_time_goes_by_chance_over_cost():
    """Tests that each say one fault or not are taken in the order of the published rule."""
    case = PUBLISHED["ratio_rule"]
    names = list(case["chances"])

    def cost(order) -> float:
        passed, total = 0.0, 0.0
        for name in order:
            total += case["costs"][name] * (1 - passed)
            passed += case["chances"][name]
        return total

    orders = {order: cost(order) for order in permutations(names)}
    assert orders[tuple(case["order"])] == pytest.approx(case["cost"])
    assert min(orders.values()) == pytest.approx(case["cost"])
    assert max(orders.values()) == pytest.approx(case["worst"])
    tests = tuple(
        sequence.Test(name, float(case["costs"][name]), tuple(int(name == fault) for fault in names))
        for name in names
    )
    problem = Problem(tuple(case["chances"].values()), tuple(names), tests)
    found, order = [], rollout(problem)
    while order.test is not None:
        found.append(problem.tests[order.test].name)
        order = order.ways[0]
    rule = [name for name in case["order"] if name in found]
    assert found == rule  # the last one needs no test: it is what is left
