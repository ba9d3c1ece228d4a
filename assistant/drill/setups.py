"""What lies on every way to a step of a tree and stays so: hoses teed in, a door switch held, fifteen minutes
of running.
"""

from __future__ import annotations

from collections.abc import Callable

from assistant.drill.trial import minutes_of_tree
from assistant.house.model import Vocabulary
from assistant.tree.library import Library
from assistant.tree.model import Call, Do, Look, Measure, Step, Stop, Tree, Watch, ways_of

TESTS = (Look, Measure, Watch)


def start_of(tree: Tree, library: Library) -> tuple[str, ...]:
    """What comes before the tests: the first lasting thing done that most of them lie behind (a door held
    open), and what lies on every way to it. Nothing where there is no such thing. Where several steps do that
    thing, the one that least lies before.
    """
    before, done = on_every_way(tree), _on_every_way(tree, lambda name: same(tree.steps[name]))
    tests = [name for name in before if isinstance(tree.steps[name], TESTS)]
    for name in before:
        step = tree.steps[name]
        if not isinstance(step, Do) or not lasts(step, library):
            continue
        if 2 * sum(same(step) in done[test] for test in tests) > len(tests):
            alike = [one for one in before if same(tree.steps[one]) == same(step)]
            first = min(alike, key=lambda one: len(before[one]))
            return (*before[first], first)
    return ()


def tests_of(tree: Tree, library: Library) -> tuple[str, ...]:
    """The steps behind the start that tell faults apart."""
    done, start = _on_every_way(tree, lambda name: same(tree.steps[name])), start_of(tree, library)
    begun = same(tree.steps[start[-1]]) if start else ""
    return tuple(
        name
        for name, step in tree.steps.items()
        if isinstance(step, TESTS) and name in done and (not start or begun in done[name])
    )


def on_every_way(tree: Tree) -> dict[str, tuple[str, ...]]:
    """For each step that can be reached the steps that lie on every way to it, itself left out, in order."""
    found = _on_every_way(tree, lambda name: name)
    place = {name: number for number, name in enumerate(found)}
    return {name: tuple(sorted(steps, key=place.__getitem__)) for name, steps in found.items()}


def prepared(tree: Tree, library: Library) -> dict[str, tuple[str, ...]]:
    """For each step that can be reached one step each for the lasting things that are done on every way to it
    and not at the start, in order. Where several steps do one thing, as two branches that each fit the gauge,
    it is the cheapest of them.
    """
    place = {name: number for number, name in enumerate(_in_order(tree))}
    by_same: dict[str, list[str]] = {}
    for name in place:
        if lasts(tree.steps[name], library):
            by_same.setdefault(same(tree.steps[name]), []).append(name)
    one_of = {
        what: min(names, key=lambda name: (minutes_of(tree.steps[name], library), place[name]))
        for what, names in by_same.items()
    }
    begun = {same(tree.steps[name]) for name in start_of(tree, library)}
    done = _on_every_way(tree, lambda name: same(tree.steps[name]))
    return {
        name: tuple(sorted((one_of[what] for what in found & one_of.keys() - begun), key=place.__getitem__))
        for name, found in done.items()
    }


def minutes_of(step: Step, library: Library) -> float:
    """Minutes of a step; of a call those of the tree that it walks."""
    if isinstance(step, Call):
        return minutes_of_tree(library.trees[step.tree])
    return step.common.minutes or 0.0


def _on_every_way(tree: Tree, called: Callable[[str], str]) -> dict[str, set[str]]:
    """For each step that can be reached what lies on every way to it, by what a step is `called`."""
    order = _in_order(tree)
    before: dict[str, list[str]] = {name: [] for name in order}
    for name in order:
        for _, way in ways_of(tree.steps[name]):
            before[way.to].append(name)
    found: dict[str, set[str]] = {}
    for name in order:
        ways = [found[one] | {called(one)} for one in before[name]]
        found[name] = set.intersection(*ways) if ways else set()
    return found


def _in_order(tree: Tree) -> list[str]:
    """The steps that can be reached, each after all that lead to it. A tree has no circles."""
    done: list[str] = []
    seen: set[str] = set()
    stack: list[tuple[str, bool]] = [(tree.start, False)]
    while stack:
        name, left = stack.pop()
        if left:
            done.append(name)
        elif name not in seen:
            seen.add(name)
            stack.append((name, True))
            stack += [(way.to, False) for _, way in ways_of(tree.steps[name])]
    return done[::-1]


def stops(tree: Tree, name: str) -> bool:
    """Whether a test may stop the work: it leads to a stop with a finding, or is a look that does so once a
    reading has confirmed it. What the tree asks behind such a test on every way is not asked before it in any
    order.
    """
    ways = [way.to for _, way in ways_of(tree.steps[name])]
    if isinstance(tree.steps[name], Look):
        ways += [
            way.to
            for one in ways
            if isinstance(tree.steps[one], Measure)
            for _, way in ways_of(tree.steps[one])
        ]
    return any(isinstance(step := tree.steps[one], Stop) and step.finding is not None for one in ways)


def leads_to(tree: Tree, name: str | None) -> frozenset[str]:
    """Where a way leads without another question: the step itself, or what lies behind things to do."""
    found: set[str] = set()
    left = [name] if name in tree.steps else []
    while left:
        one = left.pop()
        found.add(one)
        if isinstance(tree.steps[one], (Do, Call)):
            left += [way.to for _, way in ways_of(tree.steps[one]) if way.to not in found]
    return frozenset(found)


def just_before(tree: Tree, name: str, library: Library) -> tuple[str, ...]:
    """What is done right before a step on every way to it and leaves nothing behind, such as a call; where
    several steps do one such thing, the cheapest of them.
    """
    before = _right_before(tree)
    known: dict[str, dict[str, str]] = {}

    def price(step: str) -> tuple[float, str]:
        return minutes_of(tree.steps[step], library), step

    def led_by(step: str) -> dict[str, str]:
        if step not in known:
            ways = []
            for one in sorted(before.get(step, ())):
                way = dict(led_by(one)) if isinstance(tree.steps[one], (Do, Call)) else {}
                if isinstance(tree.steps[one], (Do, Call)) and not lasts(tree.steps[one], library):
                    way[same(tree.steps[one])] = one
                ways.append(way)
            common = set.intersection(*(set(way) for way in ways)) if ways else set()
            known[step] = {what: min((way[what] for way in ways), key=price) for what in sorted(common)}
        return known[step]

    return tuple(led_by(name).values())


def seen_in(tree: Tree) -> dict[str, tuple[str, ...]]:
    """Looks that ask of a run that was started and watched, each with its watches: what comes right behind a
    watch, and a look at what goes on (live) where a watch lies on every way to it.
    """
    before, right_before = on_every_way(tree), _right_before(tree)
    found: dict[str, tuple[str, ...]] = {}
    for name, steps in before.items():
        step = tree.steps[name]
        ways = right_before.get(name, set())
        straight = len(ways) == 1 and all(_all_came(tree.steps[one], name) for one in ways)
        running = isinstance(step, Look) and "live" in step.common.needs.values()
        watches = [one for one in steps if isinstance(tree.steps[one], Watch)] if running else []
        if straight or watches:
            found[name] = tuple(dict.fromkeys((*watches, *(ways if straight else ()))))
    return found


def _all_came(step: Step, name: str) -> bool:
    return isinstance(step, Watch) and step.then.to == name


def _right_before(tree: Tree) -> dict[str, set[str]]:
    """The steps that lead straight to each step."""
    found: dict[str, set[str]] = {}
    for step in tree.steps.values():
        for _, way in ways_of(step):
            found.setdefault(way.to, set()).add(step.common.name)
    return found


def lasts(step: Step, library: Library) -> bool:
    """Whether a step changes the house in a way that stays: it has to be undone, it mends something, it takes
    a wire off, or it is a wait. A call that undoes what it did leaves nothing.
    """
    house = library.vocabulary
    if isinstance(step, Do):
        if step.act is None:
            return True
        act = house.acts[step.act]
        passes = act.sets or act.counts or any(other.undo == act.name for other in house.acts.values())
        return bool(act.undo or act.fits or step.wait or not passes)
    if isinstance(step, Call) and step.tree in library.trees:
        return bool(_left_by(library.trees[step.tree], house))
    return False


def same(step: Step) -> str:
    """A name for what a lasting step sets up: two steps with one name need not both be done."""
    if isinstance(step, Do) and step.act:
        return step.act
    return step.tree if isinstance(step, Call) else step.common.name


def _left_by(tree: Tree, house: Vocabulary) -> list[str]:
    """What a procedure does and does not undo."""
    acts = [step.act for step in tree.steps.values() if isinstance(step, Do) and step.act]
    undos = {house.acts[name].undo: name for name in acts if house.acts[name].undo}
    return [name for undo, name in undos.items() if undo not in acts]
