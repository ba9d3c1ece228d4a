"""Faults of a tripped breaker walked on the simulated house: the ones that once went wrong.

The whole proof is `python -m assistant prove tripped_breaker`.
"""

from __future__ import annotations

import pytest
from houses import worker_on

from assistant.drill.case import Case

TREE = "tripped_breaker"


@pytest.fixture(scope="module")
def worker():
    return worker_on(TREE)


@pytest.mark.parametrize("degree", ["nominal", "severe"])
def test_a_burnt_terminal_condemns_no_breaker(worker, degree):
    """It opened while the fan ran, nobody asked, and its face was cold again when the heat had been tried."""
    found = worker.do(Case(TREE, "burnt_lug", degree))
    assert (found.end, found.condemns) == ("lug_hot", None)


def test_a_load_that_fills_the_branch_is_told_from_one_that_breaks_down(worker):
    """Both open the breaker as they are plugged in and both measure clean; a clamp tells them apart."""
    assert worker.do(Case(TREE, "heater_fills_branch", "severe")).end == "branch_filled"
    assert worker.do(Case(TREE, "pump_lets_go")).end == "opens_other"
