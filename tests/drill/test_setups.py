"""What lies on every way to a step, and which of it stays."""

from __future__ import annotations

from houses import library

from assistant.drill import setups
from assistant.drill.every_test import Said
from assistant.drill.problem import problem_of
from assistant.drill.sequence import Situation
from assistant.drill.setups import lasts, leads_to, on_every_way, same, start_of
from assistant.drill.trial import minutes_of_tree
from assistant.tree.model import Do, ways_of

TREE = library().trees["no_heat"]


def every_path(name: str, limit: int = 200) -> list[list[str]]:
    """Some of the paths to a step, found by walking back from it."""
    before: dict[str, list[str]] = {}
    for step in TREE.steps.values():
        for _, way in ways_of(step):
            before.setdefault(way.to, []).append(step.common.name)
    paths, stack = [], [[name]]
    while stack and len(paths) < limit:
        path = stack.pop()
        if path[-1] == TREE.start:
            paths.append(path)
        stack += [[*path, one] for one in before.get(path[-1], []) if one not in path]
    return paths


def test_what_is_called_on_every_way_is_on_every_path_there_is():
    found = on_every_way(TREE)
    for name in list(found)[::5]:
        for path in every_path(name):
            assert set(found[name]) <= set(path)


def test_the_start_ends_with_the_door_held_open():
    start = start_of(TREE, library())
    assert start[0] == TREE.start
    assert isinstance(TREE.steps[start[-1]], Do)
    assert TREE.steps[start[-1]].act == "hold_door_switch"
    assert not set(start) & set(setups.tests_of(TREE, library()))


def test_a_hose_teed_in_stays_and_a_thermostat_turned_does_not():
    steps = {
        step.act: step
        for tree in library().trees.values()
        for step in tree.steps.values()
        if isinstance(step, Do) and step.act
    }
    assert lasts(steps["tee_in"], library())
    assert lasts(steps["drain_to_bucket"], library())
    assert not lasts(steps["breaker_on"], library())
    assert not lasts(steps["tee_out"], library())


def test_two_steps_that_set_up_one_thing_have_one_name():
    tees = [step for step in TREE.steps.values() if isinstance(step, Do) and step.act == "tee_in"]
    assert len(tees) > 1
    assert {same(step) for step in tees} == {"tee_in"}


def test_minutes_of_a_procedure_walked_straight_through():
    tree = library().trees["make_dead"]
    assert minutes_of_tree(tree) == sum(
        step.common.minutes for step in tree.steps.values() if step.common.minutes
    )


def test_a_way_leads_through_what_is_only_done():
    """Behind the drain that is closed again lies the finding."""
    assert leads_to(TREE, "inducer_drain_closed") == {"inducer_drain_closed", "inducer_motor"}
    assert leads_to(TREE, "cycle") == {"cycle"}
    assert leads_to(TREE, None) == frozenset()


def test_what_asks_of_something_watched_comes_behind_the_watch_and_nothing_else_does():
    zones = library().trees["zone_spillover"]
    assert setups.seen_in(zones) == {"after_air": ("after_call",), "heat_air": ("heat_run",)}
    seen = setups.seen_in(TREE)
    assert set(seen.values()) == {("cycle",)}
    assert "run_flame" in seen  # how the flame burns: it was started for that
    assert "meter_there" not in seen  # whether there is a gas meter asks of no run
    assert "rest_vacuum" not in seen


def test_no_order_looks_at_the_end_of_a_call_that_was_not_watched():
    zones = library().trees["zone_spillover"]
    names = setups.tests_of(zones, library())
    said = {fault: {name: Said((fault, name), frozenset()) for name in names} for fault in ("one", "other")}
    problem = problem_of(library(), zones, said, {"one": "a", "other": "b"}, {"one": 1.0, "other": 1.0})
    by_name = {test.name: (number, test) for number, test in enumerate(problem.tests)}
    watch, look = by_name["after_call"], by_name["after_air"]
    assert watch[0] in look[1].behind
    bundle = problem.bundle(look[0], Situation())
    assert problem.bundle_price(bundle, Situation()) >= watch[1].minutes + look[1].minutes


def test_what_two_branches_each_set_up_is_owed_by_what_lies_behind_both():
    """A hose is teed in by a step of its own on either way to the look at the vent; no path goes without."""
    steps = TREE.steps
    alone = {name for name in setups.tests_of(TREE, library())
             if not any(same(steps[one]) == "tee_in" for one in on_every_way(TREE)[name])}
    behind_both = [name for name in alone
                   if any(same(steps[one]) == "tee_in" for one in setups.prepared(TREE, library())[name])]
    assert behind_both
    for name in behind_both:
        for path in every_path(name):
            assert any(same(steps[one]) == "tee_in" for one in path)


def test_of_two_steps_that_set_up_one_thing_the_cheapest_is_paid():
    tees = [setups.minutes_of(step, library()) for step in TREE.steps.values() if same(step) == "tee_in"]
    paid = {setups.minutes_of(TREE.steps[one], library())
            for ready in setups.prepared(TREE, library()).values() for one in ready
            if same(TREE.steps[one]) == "tee_in"}
    assert paid == {min(tees)}
