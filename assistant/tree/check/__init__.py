"""Proves of a library of trees what can be proved without a furnace: one module a rule.

A rule's module says in its docstring why it is there; `RULES` lists them in the order in which they are worth
reading. Every rule has a tree in tests/tree/examples/bad that it alone refuses.
"""

from __future__ import annotations

from collections.abc import Iterator

from assistant.house.place import Problem
from assistant.tree.check import (
    across_feed,
    act_needs,
    act_words,
    answers,
    band_order,
    band_words,
    blower_watched,
    bridges,
    call_circle,
    called,
    causes,
    cautions,
    circle,
    comes_back,
    customer_words,
    dead_proof,
    endings,
    energized,
    guarded,
    hands,
    leads,
    leak_check,
    lockout,
    may_open,
    meter,
    needs_met,
    no_air,
    normal_words,
    ohms_dead,
    plausible,
    power_words,
    procedure_state,
    proof,
    reachable,
    read_first,
    repair,
    reset,
    returns,
    second_trip,
    seen_ends,
    seen_so,
    separate,
    shown,
    sources,
    spot_reads,
    spot_words,
    switched_off,
    thermostat_off,
    told_alike,
    told_apart,
    two_facts,
    undecided,
    waits,
    ways_on,
)
from assistant.tree.check.rule import Rule
from assistant.tree.check.study import Study
from assistant.tree.library import Library

_MODULES = (
    # the shape of the trees
    called, returns, call_circle, reachable, circle, endings, ways_on, answers,
    read_first,
    # limits
    sources, band_order, band_words, normal_words, told_apart, plausible, meter, spot_reads, spot_words,
    leads,
    # power
    comes_back, needs_met, power_words, act_needs, ohms_dead, energized, across_feed,
    switched_off, dead_proof, procedure_state,
    # work that can hurt
    cautions, hands, seen_so, bridges, thermostat_off, reset, second_trip, leak_check, lockout,
    blower_watched, no_air, may_open, act_words, waits,
    # findings
    two_facts, shown, guarded, undecided, separate, causes, told_alike, seen_ends, repair, proof,
    customer_words,
)

RULES: dict[str, Rule] = {rule.name: rule for rule in map(Rule.of, _MODULES)}


def check(library: Library) -> list[Problem]:
    """Everything that is wrong in a library, sorted: what its loader found, and what breaks a rule."""
    return sorted({*library.problems, *rule_problems(library)})


def rule_problems(library: Library) -> Iterator[Problem]:
    """What breaks a rule in the trees that loaded. Trees that did not load still count as being there."""
    study = Study(library.vocabulary, library.trees, frozenset(map(stem, library.texts)))
    for rule in RULES.values():
        yield from rule.problems(study)


def stem(path: str) -> str:
    """A tree's name from its path in the library."""
    return path.rpartition("/")[2].removesuffix(".yaml")
