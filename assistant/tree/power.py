"""What a step needs of the circuits, and what acts and proofs do to them.

A circuit is `unknown` (nobody has looked), `live` (switched on), `off` (switched off here, not proved) or
`dead` (proved at its terminals). The checker and the walker both ask these functions and nothing else, so
that a tree that was proved safe on paper is walked by the same meaning. All functions are pure: they give new
dictionaries and leave their arguments alone.

An energized reading accepts `unknown`, because looking is how one learns that a circuit is live. Work that
only wants a switch thrown accepts `off`. Ohms, and hands, accept nothing but `dead`.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from assistant.house.model import Vocabulary
from assistant.tree.model import Measure, Step

STATES = ("unknown", "live", "off", "dead")

MEETS: dict[str, frozenset[str]] = {
    "live": frozenset({"live", "unknown"}),
    "off": frozenset({"off", "dead"}),
    "dead": frozenset({"dead"}),
}
"""The states that meet a need."""

BOUND = "$circuit"
"""Stands in a procedure's steps for the circuit that it was called with."""


def all_unknown(vocabulary: Vocabulary) -> dict[str, str]:
    """Every circuit as it is when a visit begins or is taken up again: nobody has looked."""
    return dict.fromkeys(vocabulary.circuits, "unknown")


def needs_of(step: Step, circuit_bound: str | None = None) -> dict[str, str]:
    """What `step` needs: circuit -> live, off or dead, with `$circuit` replaced by `circuit_bound`.

    A proof that a circuit is dead needs it switched off first, whether or not the step says so. `$circuit` is
    left out where nothing is bound: the checker has its own rule for that.
    """
    needs = dict(step.common.needs)
    if isinstance(step, Measure):
        for circuit in step.verifies:
            needs.setdefault(circuit, "off")
    return _bound(needs, circuit_bound)


def proves_dead(step: Step, circuit_bound: str | None = None) -> tuple[str, ...]:
    """The circuits that `step` proves dead when it is left by its `then`, with `$circuit` replaced."""
    if not isinstance(step, Measure):
        return ()
    return tuple(_bound(dict.fromkeys(step.verifies, "dead"), circuit_bound))


def lacking(needs: Mapping[str, str], states: Mapping[str, str]) -> list[tuple[str, str]]:
    """The needs that are not met, as (circuit, wanted state), in the order they were written."""
    return [(circuit, wanted) for circuit, wanted in needs.items()
            if states.get(circuit, "unknown") not in MEETS[wanted]]


def fed_from(vocabulary: Vocabulary, circuit: str) -> list[str]:
    """`circuit`, what feeds it, what feeds that, up to the service; each once, even in a ring."""
    chain: list[str] = []
    step: str | None = circuit
    while step is not None and step in vocabulary.circuits and step not in chain:
        chain.append(step)
        step = vocabulary.circuits[step].fed_by
    return chain


def act_on(vocabulary: Vocabulary, act_name: str, circuit: str) -> str | None:
    """The state that an act leaves `circuit` in, or None where it does not touch it.

    The nearest circuit up the feed that the act names decides: an act may switch a line on, a branch off.
    """
    act = vocabulary.acts.get(act_name)
    if act is None:
        return None
    return next((act.sets[up] for up in fed_from(vocabulary, circuit) if up in act.sets), None)


def after_act(vocabulary: Vocabulary, act_name: str, states: Mapping[str, str],
              epochs: Mapping[str, int]) -> tuple[dict[str, str], dict[str, int]]:
    """States and epochs after an act: what it sets and what that feeds; each circuit touched counts up.

    Nothing is live behind a feeder that is off. An act that fits a part touches every circuit: readings taken
    before it are of another machine, and a circuit that was proved dead is only `off` again.
    """
    states, epochs = dict(states), dict(epochs)
    act = vocabulary.acts.get(act_name)
    if act is None:
        return states, epochs
    for circuit in vocabulary.circuits:
        state = act_on(vocabulary, act_name, circuit)
        if state is not None:
            states[circuit] = state
        elif act.fits is None:
            continue
        elif states.get(circuit) == "dead":
            states[circuit] = "off"
        epochs[circuit] = epochs.get(circuit, 0) + 1
    return _nothing_behind_an_open_switch(vocabulary, states), epochs


def after_proof(states: Mapping[str, str], circuits: Iterable[str]) -> dict[str, str]:
    """States after `circuits` were proved dead at their terminals."""
    return {**states, **dict.fromkeys(circuits, "dead")}


def _nothing_behind_an_open_switch(vocabulary: Vocabulary, states: dict[str, str]) -> dict[str, str]:
    off = {circuit for circuit, state in states.items() if state in MEETS["off"]}
    return {circuit: "off" if state == "live" and not off.isdisjoint(fed_from(vocabulary, circuit)) else state
            for circuit, state in states.items()}


def _bound(needs: dict[str, str], circuit: str | None) -> dict[str, str]:
    named = {name: state for name, state in needs.items() if name != BOUND}
    return {circuit: needs[BOUND], **named} if BOUND in needs and circuit is not None else named
