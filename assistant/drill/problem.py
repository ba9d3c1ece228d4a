"""The sequencing problem of a tree: its own tests at its own prices, what each says of each fault, and what
an end owes before it may be told.
"""

from __future__ import annotations

from collections.abc import Mapping

from assistant.drill.every_test import NORMAL, Said
from assistant.drill.sequence import DEAD, LIVE, Owed, Problem, Test
from assistant.drill.setups import (
    just_before,
    leads_to,
    minutes_of,
    on_every_way,
    prepared,
    same,
    seen_in,
    start_of,
    stops,
    tests_of,
)
from assistant.drill.trial import minutes_of_tree
from assistant.tree.library import Library
from assistant.tree.model import Finding, Step, Tree

FACTS_OF_A_PART = 2
"""Facts that condemn a part which costs money."""


def problem_of(
    library: Library,
    tree: Tree,
    said: Mapping[str, Mapping[str, Said]],
    ends: Mapping[str, str],
    weights: Mapping[str, float],
) -> Problem:
    """`said` has every test's word on each fault, `ends` the step that each has to be told as."""
    names = sorted(said)
    before, common, ready = on_every_way(tree), start_of(tree, library), prepared(tree, library)
    tests = []
    order = [name for name in before if name in set(tests_of(tree, library)) and name in said[names[0]]]
    place = {name: number for number, name in enumerate(order)}
    watched = seen_in(tree)
    for name in order:
        step = tree.steps[name]
        needed = [tree.steps[one] for one in ready[name]]
        tests.append(
            Test(
                name,
                minutes_of(step, library)
                + sum(minutes_of(tree.steps[one], library) for one in just_before(tree, name, library)),
                tuple(said[fault][name].outcome for fault in names),
                _power(step),
                tuple((same(one), minutes_of(one, library)) for one in needed),
                tuple(said[fault][name].facts for fault in names),
                tuple(
                    place[one]
                    for one in before[name]
                    if one in place and (stops(tree, one) or one in watched.get(name, ()))
                ),
                frozenset(
                    number
                    for number, fault in enumerate(names)
                    if ends[fault] in leads_to(tree, said[fault][name].way)
                ),
            )
        )
    return Problem(
        tuple(weights[fault] for fault in names),
        tuple(ends[fault] for fault in names),
        tuple(tests),
        {end: owed for end in set(ends.values()) if (owed := _owed(library, tree, end))},
        _switching(library),
        sum(tree.steps[name].common.minutes or 0.0 for name in common),
    )


def widest(problem: Problem) -> int:
    """The most outcomes that any test has over these faults, two at least."""
    return max([2, *(len(set(test.outcomes)) for test in problem.tests)])


def cheapest(problem: Problem) -> float:
    """Minutes of the cheapest test by itself."""
    return min((test.minutes for test in problem.tests), default=0.0)


def _power(step: Step) -> str:
    wanted = set(step.common.needs.values())
    return DEAD if wanted & {"dead", "off"} else LIVE if "live" in wanted else ""


def _switching(library: Library) -> dict[str, float]:
    """Minutes of making the house dead and live again: the dearest of its circuits' procedures that stand for
    all.
    """
    found = {DEAD: 0.0, LIVE: 0.0}
    for circuit in library.vocabulary.circuits.values():
        if circuit.fed_by:
            continue
        for state, procedure in ((DEAD, circuit.make_dead), (LIVE, circuit.restore)):
            if procedure in library.trees:
                found[state] = max(found[state], minutes_of_tree(library.trees[procedure]))
    return found


def _owed(library: Library, tree: Tree, end: str) -> Owed | None:
    """Two facts for a part that costs money, and the guarded condition of a safety shown normal."""
    step = tree.steps.get(end)
    if not isinstance(step, Finding) or not step.condemns:
        return None
    part = library.vocabulary.parts[step.condemns]
    if not part.costs:
        return None
    guards = library.vocabulary.conditions.get(part.guards or "", ())
    return Owed(frozenset(step.shows), FACTS_OF_A_PART, frozenset(NORMAL + name for name in guards))
