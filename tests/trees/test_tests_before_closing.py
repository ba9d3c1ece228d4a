"""A tripped breaker is closed once, and only onto what was measured.

On every path of the tree, through calls, causes, repairs and proofs, each load was read clear of ground and
clear across before anything brings power.

Sources: 29 CFR 1910.334(b)(2), no manual re-energizing before it is determined to be safe, repeated reclosing
prohibited (read in an interpretation letter of 2001-11-19); each load by itself, to ground and from wire to
wire (common practice). Followed by the walker of tests/outside, which shares nothing with the program's own
checker but the loaded trees.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from assistant.tree.library import from_texts
from assistant.tree.model import Finding, Look, Return, ways_of
from tests.outside.whole_paths import Paths, Property

TREES = Path(__file__).parents[2] / "trees"
SHIPPED = {path.relative_to(TREES).as_posix(): path.read_bytes() for path in sorted(TREES.rglob("*.yaml"))}
TREE = "tripped_breaker"
BREAKER = f"complaint/{TREE}.yaml"
LOADS = {
    "accessory.line": "accessory.neutral", "blower.line": "blower.neutral", "inducer.line": "inducer.neutral",
    "igniter.line": "igniter.neutral", "primary.line": "primary.neutral", "board.line": "board.neutral",
    "box.line": "box.neutral", "switch.load": "box.neutral", "switch.feed": "box.neutral",
}
"""Every load of the branch and every piece of its wire, with where it is read across."""


def both_readings(load):
    """The two readings that clear a load."""
    return frozenset({frozenset((load, "ground")), frozenset((load, LOADS[load]))})


WANTED = frozenset().union(*map(both_readings, LOADS))
OPENED = ("opens", "the breaker opens", "one opened it")
LIVE = ("feed", "line")


class ClosedOnlyOntoWhatWasMeasured(Property):
    """The state: None before the handle is known to have tripped; then the tests since it tripped or since
    the last repair; "closed" once it was closed as it should be; "again" when it opened a second time; or
    what went wrong."""

    start = None

    def __init__(self, vocabulary, library):
        super().__init__(vocabulary)
        self.repairs = {act for tree in library.trees.values() for step in tree.steps.values()
                        if isinstance(step, (Finding, Return)) for act in step.repair}

    def act(self, state, act):
        if act.fits == "breaker" and state == "again":
            return "closed"
        if any(act.sets.get(circuit) == "live" for circuit in LIVE):
            if state == "again":
                return f"{act.name} after a second trip"
            if isinstance(state, frozenset):
                missing = sorted(" to ".join(sorted(pair)) for pair in WANTED - state)
                words = f"{act.name} with {len(missing)} tests missing: {', '.join(missing[:3])}"
                return words if missing else "closed"
        if isinstance(state, frozenset) and act.name in self.repairs:
            return frozenset()
        return state

    def leave(self, state, tree, step, way):
        if tree.name == TREE and state is None:
            found_open = step.common.name == "handle" and way.answer in ("tripped", "off")
            return frozenset() if found_open or way.to == "size_low" else None
        if isinstance(step, Look) and step.sees in ("breaker.closed", "blower.start", "starts.twenty") \
                and way.answer in OPENED:
            return "again" if state == "closed" else state
        if not isinstance(state, frozenset):
            return state
        if isinstance(step, Look) and step.sees == "branch.others" and way.answer == "nothing else":
            return state | both_readings("accessory.line")
        return state | {frozenset(reading.at) for reading, bands in way.decided.values()
                        if getattr(reading, "kind", "") in ("resistance", "insulation")
                        and reading.bands[0] not in bands}

    def fails(self, state, house, tree, step):
        return state if isinstance(state, str) and state not in ("closed", "again") else None


def failures(texts):
    library = from_texts(texts)
    assert not library.problems, "\n".join(map(str, library.problems[:5]))
    paths = Paths(library, ClosedOnlyOntoWhatWasMeasured(library.vocabulary, library))
    house = tuple((name, "unknown") for name in library.vocabulary.circuits)
    paths.run(TREE, None, (house, None), frozenset())
    return paths


def test_nothing_is_closed_before_every_load_was_measured():
    paths = failures(SHIPPED)
    found = [f"{one.where}: {one.what}" for one in paths.failures]
    assert not found, "\n".join(sorted(found))
    reached = {step for tree, step in paths.asked if tree == TREE}
    assert {"close_once", "close_gf", "close_arc", "weak_breaker", "intermittent"} <= reached


EDITS = {
    "a tripped handle closed to see what happens": (
        BREAKER,
        'choices: {"on": live, tripped: size_low, "off": size_low}',
        'choices: {"on": live, tripped: size_low, "off": close_once}'),
    "an igniter that nobody could read passed over": (
        BREAKER,
        "    then: transformer\n    close: no_reading\n", "    then: transformer\n    close: transformer\n"),
    "a blower at the limit passed over": (
        BREAKER, "    then: inducer\n    close: blower_tester\n", "    then: inducer\n    close: inducer\n"),
    "ohms to ground alone": (
        BREAKER, "      - {is: it holds, then: blower_wires, normal: yes}",
        "      - {is: it holds, then: inducer, normal: yes}"),
    "the branch in the wall left out": (
        BREAKER, "    then: branch\n    close: no_reading\n", "    then: opener\n    close: no_reading\n"),
    "a cause that wants power, with the short still there": (
        BREAKER,
        "[primary_to_ground, primary_other_lead]\n    causes: [water_track, shorted_control_wire]\n",
        "[primary_to_ground, primary_other_lead]\n    causes: [water_track, overload_24v]\n"),
    "a repair closed without the loads": (
        "proof/first_closing.yaml", "start: loads\n", "start: close_once\n"),
    "one load of the proof left out": (
        "procedure/loads_clean.yaml", "    then: wiring\n    close: not_clean\n    cannot: not_clean\n",
        "    then: wiring\n    close: not_clean\n    cannot: wiring\n"),
    "a second trip, and on with it": (
        BREAKER, "choices: {holds: closed, opens: opens_empty}\n\n  opens_empty:",
        "choices: {holds: closed, opens: add}\n\n  opens_empty:"),
}


@pytest.mark.parametrize("edit", EDITS)
def test_an_edit_that_closes_it_early_is_refused(edit):
    file, old, new = EDITS[edit]
    assert SHIPPED[file].count(old.encode()) == 1
    assert failures({**SHIPPED, file: SHIPPED[file].replace(old.encode(), new.encode())}).failures


def test_a_second_trip_ends_the_walk():
    """Wherever the breaker opens again, what follows says why and stops; only the breaker is renewed."""
    tree = from_texts(SHIPPED).trees[TREE]
    opened = {way.to for step in tree.steps.values() if isinstance(step, Look)
              for answer, way in step.choices.items() if answer in OPENED}
    ends, waiting = set(), list(opened)
    while waiting:
        name = waiting.pop()
        if name not in ends:
            ends.add(name)
            waiting += [way.to for _, way in ways_of(tree.steps[name])]
    assert len(opened) >= 5
    assert {name for name in ends if isinstance(tree.steps[name], Finding)} == {"weak_breaker"}
