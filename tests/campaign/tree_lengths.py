"""How long each complaint's tree can be to walk, and how long it is on the simulated houses:
python tests/campaign/tree_lengths.py [PROOF.json...].

Findings and stops that are something found, steps, and the longest path from the first question to an end, in
readings and in minutes: over the graph, through calls, with the procedures that the walk puts in front where
a circuit is not as a step needs it. Such a path may ask for answers that no one house gives together; nobody
walks a longer one. Causes, repairs and proofs of repair come after it and are not counted. Minutes are those
that the steps say.

With files of `python -m assistant prove --json`, the mean and the longest of the walks in its houses without
noise, up to the finding.
"""

from __future__ import annotations

import json
import sys
from collections.abc import Iterable
from dataclasses import dataclass
from functools import cache
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from assistant.resources import trees_folder
from assistant.tree import power
from assistant.tree.check.graph import Graph
from assistant.tree.library import Library, read_folder
from assistant.tree.model import Call, Do, Finding, HandOver, Measure, Return, Step, Stop, Tree, readings_of

States = tuple[tuple[str, str], ...]
"""Every circuit with its state, hashable."""
Length = tuple[float, float, int]
"""Readings, minutes, steps."""


@dataclass(frozen=True)
class Longest:
    """The longest way to each end: (how it comes back, or "" where the walk ends there; circuits) -> the most
    readings, minutes and steps, each by itself."""

    ends: dict[tuple[str, States], Length]

    def most(self) -> Length:
        """Over all ends."""
        return most(self.ends.values())


def most(lengths: Iterable[Length]) -> Length:
    """The greatest of each."""
    found = list(lengths)
    return (max(one[0] for one in found), max(one[1] for one in found), max(one[2] for one in found))


def plus(one: Length, other: Length) -> Length:
    return (one[0] + other[0], one[1] + other[1], one[2] + other[2])


class Measured:
    """The lengths of the trees of a library."""

    def __init__(self, library: Library) -> None:
        self.library, self.vocabulary = library, library.vocabulary
        self.graphs = {name: Graph(tree) for name, tree in library.trees.items()}
        self.longest = cache(self._longest)

    def of(self, tree: str) -> Longest:
        """The longest paths of a complaint's tree, every circuit unknown as at a visit's start."""
        return self.longest(tree, None, tuple(power.all_unknown(self.vocabulary).items()), ())

    def _longest(self, tree: str, circuit: str | None, states: States, inside: tuple[str, ...]) -> Longest:
        graph = self.graphs[tree]
        steps = graph.tree.steps
        at: dict[str, dict[States, Length]] = {graph.tree.start: {states: (0.0, 0.0, 0)}}
        ends: dict[tuple[str, States], Length] = {}
        for name in graph.order:
            step, here = steps[name], at.get(name, {})
            if isinstance(step, (Finding, Stop, HandOver, Return)):
                outcome = step.outcome if isinstance(step, Return) else ""
                for now, length in here.items():
                    put(ends, (outcome, now), length)
                continue
            for now, length in here.items():
                ready, over = self._made_ready(step, circuit, now, length, (*inside, tree))
                for stopped in over:
                    put(ends, ("", now), stopped)
                for prepared, so_far in ready.items():
                    self._on(graph, step, circuit, prepared, so_far, at, ends, (*inside, tree))
        return Longest(ends)

    def _made_ready(self, step: Step, circuit: str | None, states: States, length: Length,
                    inside: tuple[str, ...]) -> tuple[dict[States, Length], list[Length]]:
        """The circuits as the step needs them, after the procedures in front; and walks that end in those."""
        ready, over = {states: length}, []
        for name, wanted in power.needs_of(step, circuit).items():
            known = self.vocabulary.circuits[name]
            procedure = known.restore if wanted == "live" else known.make_dead
            after: dict[States, Length] = {}
            for now, so_far in ready.items():
                met = not power.lacking({name: wanted}, dict(now))
                if met or procedure is None or procedure in inside or procedure not in self.library.trees:
                    put(after, now, so_far)
                    continue
                for (outcome, then), more in self.longest(procedure, name, now, inside).ends.items():
                    if outcome == "done":
                        put(after, then, plus(so_far, more))
                    else:
                        over.append(plus(so_far, more))
            ready = after
        return ready, over

    def _on(self, graph: Graph, step: Step, circuit: str | None, states: States, length: Length,
            at: dict[str, dict[States, Length]], ends: dict[tuple[str, States], Length],
            inside: tuple[str, ...]) -> None:
        """From one step to those after it."""
        if isinstance(step, Call):
            bound = circuit if step.circuit == power.BOUND else step.circuit
            for (outcome, then), more in self.longest(step.tree, bound, states, inside).ends.items():
                if outcome in step.then:
                    put(at.setdefault(step.then[outcome].to, {}), then, plus(length, more))
                else:
                    put(ends, ("", then), plus(length, more))
            return
        after = plus(length, (len(readings_of(step)), step.common.minutes or 0.0, 1))
        for edge in graph.out[step.common.name]:
            now = dict(states)
            if isinstance(step, Do) and step.act:
                now, _ = power.after_act(self.vocabulary, step.act, now, {})
            if isinstance(step, Measure) and step.then is not None and edge.to == step.then.to and edge.sure:
                now = power.after_proof(now, power.proves_dead(step, circuit))
            put(at.setdefault(edge.to, {}), tuple(now.items()), after)


def put(found: dict, key: object, length: Length) -> None:
    """The greater of what stands there and `length`."""
    found[key] = most([length, found[key]]) if key in found else length


def found_by(tree: Tree) -> tuple[int, int, int]:
    """Findings of a fault, findings that nothing is broken, and stops that are something found."""
    faults = [step.fault for step in tree.steps.values() if isinstance(step, Finding)]
    stops = sum(isinstance(step, Stop) and step.finding is not None for step in tree.steps.values())
    return sum(faults), len(faults) - sum(faults), stops


def walked(paths: list[Path]) -> dict[str, list[dict]]:
    """The walks without noise of each tree, from the files of a proof."""
    found: dict[str, list[dict]] = {}
    for path in paths:
        for tree, faults in json.loads(path.read_text(encoding="utf-8"))["faults"].items():
            found.setdefault(tree, []).extend(faults.values())
    return found


def main(paths: list[Path]) -> None:
    library = read_folder(trees_folder())
    lengths, walks = Measured(library), walked(paths)
    print("| tree | faults found | nothing broken | stops found | steps | longest path: readings | minutes "
          "| steps | walks | mean readings | mean minutes | longest readings | longest minutes |")
    print("|" + "---|" * 13)
    for tree in library.trees.values():
        if tree.purpose != "complaint":
            continue
        readings, minutes, steps = lengths.of(tree.name).most()
        cells = [tree.name, *found_by(tree), len(tree.steps), f"{readings:g}", f"{minutes:g}", steps]
        own = walks.get(tree.name, [])
        if own:
            read, took = [one["readings"] for one in own], [one["minutes"] for one in own]
            assert max(read) <= readings and max(took) <= minutes, "a walk was longer than any path"
            cells += [len(own), f"{sum(read) / len(own):.1f}", f"{sum(took) / len(own):.1f}", max(read),
                      f"{max(took):g}"]
        else:
            cells += ["-"] * 5
        print("| " + " | ".join(map(str, cells)) + " |")


if __name__ == "__main__":
    main([Path(one) for one in sys.argv[1:]])
