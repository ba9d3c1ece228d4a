"""Carries one small state along every way through the trees, through calls and put-in procedures.

A rule says how a way changes its state ("the thermostat is off now"); the search says in which states each
step can be reached, and by which steps. It is a breadth-first search over (step, state), so the path it tells
is a shortest one, and it is linear in the steps as long as the states are few.
"""

from __future__ import annotations

from collections import deque
from collections.abc import Callable, Hashable, Iterable, Iterator
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from assistant.tree.check.circuits import Instance
from assistant.tree.check.graph import Edge
from assistant.tree.model import Call, Finding, HandOver, Return, Step, Tree
from assistant.tree.power import BOUND

if TYPE_CHECKING:
    from assistant.tree.check.study import Study

State = Hashable
Node = tuple[str, State, bool]
"""A step, the state it is in, and whether the procedures in front of it are done."""
Cross = Callable[[Tree, Step, Edge, State], State]
"""The state after leaving a step by a way."""


@dataclass
class Walked:
    """Where one search of one tree came: (step, state, ready) and the node before it. `ready`: after the
    procedures that the walker puts in front of the step."""

    came: dict[Node, Node | None] = field(default_factory=dict)
    entered: dict[State, tuple[Instance, Node]] = field(default_factory=dict)
    """State in which the tree begins -> where it was come from, for what came from another tree."""

    def ready(self) -> Iterable[tuple[str, State]]:
        """Every (step, state) in which a step is asked."""
        return ((name, state) for name, state, ready in self.came if ready)

    def path(self, step: str, state: State) -> list[str]:
        """The step names of a shortest path on which `step` is asked in `state`."""
        return self.path_to((step, state, True))

    def path_to(self, node: Node) -> list[str]:
        """The step names of a shortest path to a node, its own included."""
        return self.back_from(node)[0]

    def back_from(self, node: Node) -> tuple[list[str], State]:
        """The step names of a shortest path to a node, and the state in which that path begins."""
        names, before = [node[0]], self.came[node]
        state = node[1]
        while before is not None:
            if before[2]:
                names.append(before[0])
            state, before = before[1], self.came[before]
        return names[::-1], state


def path_through(everywhere: dict[Instance, Walked], instance: Instance, step: str,
                 state: State) -> list[str]:
    """A shortest path on which `step` is asked in `state`, from the tree in which it begins on: steps of
    other trees as `tree.step`."""
    names: list[str] = []
    at, node = instance, (step, state, True)
    seen: set[tuple[Instance, State]] = set()
    while True:
        here, begun = everywhere[at].back_from(node)
        names = [*(here if at.tree == instance.tree else (f"{at.tree}.{name}" for name in here)), *names]
        before = everywhere[at].entered.get(begun)
        if before is None or (at, begun) in seen:
            return names
        seen.add((at, begun))
        at, node = before


class Search:
    """A state carried through the trees of a study; `cross` says what a way does to it."""

    def __init__(self, study: Study, cross: Cross,
                 entering: Callable[[Call, State], State] = lambda _step, state: state) -> None:
        self.study = study
        self.cross = cross
        self.entering = entering
        """The state in which a called tree begins."""
        self._after: dict[tuple[Instance, State], dict[str, frozenset[State]]] = {}

    def walk(self, instance: Instance, starts: Iterable[State]) -> Walked:
        """The search of one tree from any of `starts`."""
        graph = self.study.graphs[instance.tree]
        walked = Walked()
        queue: deque[Node] = deque()

        def reach(node: Node, before: Node | None) -> None:
            if node not in walked.came:
                walked.came[node] = before
                queue.append(node)

        for start in starts:
            if graph.tree.start in graph.tree.steps:
                reach((graph.tree.start, start, False), None)
        while queue:
            node = queue.popleft()
            name, state, ready = node
            if not ready:
                for prepared in self._prepared(instance, name, state):
                    reach((name, prepared, True), node)
                continue
            step = graph.tree.steps[name]
            for edge in graph.out[name]:
                for after in self._over(instance, graph.tree, step, edge, state):
                    reach((edge.to, after, False), node)
        return walked

    def _prepared(self, instance: Instance, step: str, state: State) -> list[State]:
        states = {state: None}
        for procedure, may_skip in self.study.put_in(instance, step):
            after = [done for one in states for done in self.after(procedure, one).get("done", ())]
            states = dict.fromkeys([*states, *after] if may_skip else after)
        return list(states)

    def _over(self, instance: Instance, tree: Tree, step: Step, edge: Edge, state: State) -> Iterable[State]:
        if not isinstance(step, Call) or step.tree not in self.study.graphs or not edge.sure:
            return (self.cross(tree, step, edge, state),)
        called = self.study.called(instance, step)
        after = self.after(called, self.entering(step, state)).get(edge.outcome, frozenset())
        passed = {state} if self.study.may_pass(instance, step, edge) else frozenset()
        return [self.cross(tree, step, edge, one) for one in after | passed]

    def after(self, instance: Instance, state: State) -> dict[str, frozenset[State]]:
        """For each return of a tree entered in `state`, the states it can come back in."""
        key = (instance, state)
        if key not in self._after:
            self._after[key] = {}  # a circle of calls ends here; another rule reports it
            steps = self.study.graphs[instance.tree].tree.steps
            exits: dict[str, set[State]] = {}
            for name, at in self.walk(instance, [state]).ready():
                step = steps[name]
                if isinstance(step, Return):
                    exits.setdefault(step.outcome, set()).add(at)
            self._after[key] = {outcome: frozenset(states) for outcome, states in exits.items()}
        return self._after[key]

    def everywhere(self, starts: dict[Instance, set[State]],
                   follow: Callable[[Finding, State], Iterable[tuple[str, State]]] | None = None,
                   handed: Callable[[Tree, State], State] = lambda _tree, state: state,
                   ) -> dict[Instance, Walked]:
        """The search of every tree in every state it can be entered in: from its starts, by calls, by
        procedures put in front, by a hand-over from another complaint, and, where `follow` says so, as a
        cause or proof after a finding. `handed` is the state in which another complaint's tree begins."""
        entered = {instance: set(starts.get(instance, ())) for instance in self.study.instances}
        queue = deque(instance for instance in entered if entered[instance])
        waiting = set(queue)
        done: dict[Instance, Walked] = {}
        came: dict[Instance, dict[State, tuple[Instance, Node]]] = {one: {} for one in entered}

        def enter(instance: Instance, state: State, before: tuple[Instance, Node]) -> None:
            if instance in entered and state not in entered[instance]:
                entered[instance].add(state)
                came[instance][state] = before
                if instance not in waiting:
                    waiting.add(instance)
                    queue.append(instance)

        while queue:
            instance = queue.popleft()
            waiting.discard(instance)
            walked = done[instance] = self.walk(instance, entered[instance])
            walked.entered = came[instance]
            steps = self.study.graphs[instance.tree].tree.steps
            for node in walked.came:
                (name, state, ready), here = node, (instance, node)
                step = steps[name]
                if not ready:
                    for procedure, _ in self.study.put_in(instance, name):
                        enter(procedure, state, here)
                elif isinstance(step, Call) and step.tree in self.study.graphs:
                    enter(self.study.called(instance, step), self.entering(step, state), here)
                elif isinstance(step, Finding) and follow is not None:
                    for tree, after in follow(step, state):
                        enter(Instance(tree, None), after, here)
                elif isinstance(step, HandOver):
                    complaint = self.study.vocabulary.complaints.get(step.complaint)
                    tree = self.study.trees.get(complaint.tree or "") if complaint is not None else None
                    if tree is not None:
                        enter(Instance(tree.name, None), handed(tree, state), here)
        return done


def after_finding(search: Search, finding: Finding, state: State,
                  done: Callable[[str, State], State]) -> Iterator[tuple[str, State]]:
    """The trees that follow a finding with the states they are entered in: its causes one after the other,
    then the repair of one of them or of none, its own repair, and the proof. `done` is the state after an
    act.
    """
    study, states = search.study, {state}
    endings: set[tuple[State, tuple[str, ...]]] = set()
    for cause in finding.causes:
        yield from ((cause, at) for at in states)
        if cause not in study.graphs:
            continue
        returns = [step for step in study.trees[cause].steps.values() if isinstance(step, Return)]
        exits = [(outcome, at) for start in states
                 for outcome, ends in search.after(Instance(cause, None), start).items() for at in ends]
        endings |= {(at, step.repair) for outcome, at in exits for step in returns if step.outcome == outcome}
        states = {at for _, at in exits} or states
    for at, repair in (endings | {(at, ()) for at in states} if finding.proof else ()):
        for act in (*repair, *finding.repair):
            at = done(act, at)
        yield finding.proof, at


def bound(step: Call, circuit: str | None) -> str | None:
    """The circuit that a call passes on."""
    return circuit if step.circuit == BOUND else step.circuit
