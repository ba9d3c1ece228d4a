"""Prices of tests: what is set up once, what is switched, and what an end still owes."""

from __future__ import annotations

import pytest

from assistant.drill import sequence
from assistant.drill.best_order import greedy, mean_cost, rollout
from assistant.drill.every_test import Said
from assistant.drill.sequence import DEAD, LIVE, Owed, Problem, Situation

BOTH = (frozenset({"a"}), frozenset({"a"}))


def two_faults(**more) -> Problem:
    """Two faults that one test on a dead house, behind a hose, tells apart."""
    ohms = sequence.Test("ohms", 3.0, (0, 1), DEAD, (("hose", 4.0),), BOTH)
    return Problem((1.0, 1.0), ("x", "y"), (ohms, *more.pop("tests", ())), **more)


def test_a_set_up_is_paid_once_and_switching_each_time():
    problem = two_faults(switching={DEAD: 5.0, LIVE: 2.0}, tests=(sequence.Test("volts", 1.0, (0, 1), LIVE),))
    assert problem.price(0, Situation()) == 3.0 + 4.0 + 5.0
    after = problem.after(0, Situation())
    assert problem.price(0, after) == 3.0
    assert problem.price(1, after) == 1.0 + 2.0
    assert problem.price(1, Situation()) == 1.0


def test_the_common_start_is_paid_by_every_order():
    problem = two_faults(start=6.0)
    assert mean_cost(problem, greedy(problem)) == 6.0 + 3.0 + 4.0


@pytest.mark.parametrize(("least", "minutes"), [(0, 7.0), (1, 7.0), (2, 9.0), (3, 9.0)])
def test_an_end_owes_its_facts_before_it_counts(least: int, minutes: float):
    """Only one more fact can be had, for two minutes; a third one nobody can read."""
    more = sequence.Test("more", 2.0, (0, 0), "", (), (frozenset({"b"}), frozenset({"b"})))
    owed = Owed(frozenset({"a", "b", "c"}), least)
    problem = two_faults(tests=(more,), owed={"x": owed, "y": owed})
    assert mean_cost(problem, greedy(problem)) == minutes


def test_a_guarded_condition_is_owed_too():
    guard = sequence.Test("static", 5.0, (0, 0), "", (), (frozenset({"!rise"}), frozenset()))
    problem = two_faults(tests=(guard,), owed={"x": Owed(guards=frozenset({"!rise"}))})
    assert mean_cost(problem, greedy(problem)) == 7.0 + 5.0 / 2


def test_faults_with_one_end_need_no_test():
    problem = Problem((1.0, 1.0), ("x", "x"), (sequence.Test("t", 1.0, (0, 1)),))
    assert greedy(problem).test is None
    assert mean_cost(problem, rollout(problem)) == 0.0


def test_what_no_test_tells_apart_stays_a_group():
    problem = Problem((1.0, 1.0), ("x", "y"), (sequence.Test("t", 1.0, (0, 0)),))
    assert greedy(problem).test is None


def test_nothing_is_told_because_nothing_else_is_left():
    """The end of the second fault takes the reading that shows it, though the first test leaves only that."""
    shows = sequence.Test("shows", 4.0, (0, 1), shows=frozenset({1}))
    problem = Problem((1.0, 1.0), ("x", "y"), (sequence.Test("splits", 1.0, (0, 1)), shows))
    order = greedy(problem)
    assert problem.tests[order.test].name == "splits"
    assert mean_cost(problem, order) == 1.0 + 4.0 / 2
    assert mean_cost(problem, rollout(problem)) == 3.0


def test_what_a_sound_house_of_its_kind_says_too_tells_nothing():
    fitted, none = Said("fitted", frozenset(), "a"), Said("none", frozenset(), "b")
    assert fitted.against(fitted).outcome == none.against(none).outcome
    assert fitted.against(none).outcome == "fitted"
    assert fitted.against(fitted).way == "a"
