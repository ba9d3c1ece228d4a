"""Whether a part was condemned on proof: two facts where it costs money, and what a safety guards shown."""

from __future__ import annotations

from collections.abc import Iterator

from assistant.drill.practice.answers import tree_of
from assistant.drill.practice.entry import READ, Log
from assistant.drill.problem import FACTS_OF_A_PART
from assistant.tree.library import Library
from assistant.tree.model import Compute, Finding, Reading, Tree, readings_of


def unproved(library: Library, complaint: str, log: Log) -> list[str]:
    """Sentences about what the finding rests on and what it lacks. For free work; a tree asks for it all."""
    tree = tree_of(library, complaint)
    step = tree.steps.get(log.finding) if tree else None
    if tree is None or not isinstance(step, Finding) or not step.condemns:
        return []
    part = library.vocabulary.parts[step.condemns]
    taken = {
        (entry.quantity, frozenset(entry.points))
        for entry in log.entries
        if entry.kind == READ and not entry.blind
    }
    said: list[str] = []
    facts = {name: list(_readings(tree, name)) for name in step.shows}
    have = [name for name, readings in facts.items() if _any(readings, taken)]
    wanted = min(FACTS_OF_A_PART, len(facts)) if part.costs else min(1, len(facts))
    if len(have) < wanted:
        missing = [_words(readings) for name, readings in facts.items() if name not in have and readings]
        how = "on no reading that shows it" if not have else "on one reading alone"
        said.append(
            f"The {part.title} was condemned {how}. "
            f"It is shown by: {'; '.join(missing[:4]) or 'its own readings'}."
        )
    guards = library.vocabulary.conditions.get(part.guards or "", ())
    guarding = [reading for name in guards for reading in _readings(tree, name)]
    if part.safety and guarding and not _any(guarding, taken):
        said.append(
            f"The {part.title} is a safety: it may have done its work. "
            f"What it guards ({part.guards.replace('_', ' ')}) is shown normal first: {_words(guarding)}."
        )
    return said


def _any(readings: list[Reading], taken: set) -> bool:
    return any((reading.kind, frozenset(reading.at)) in taken for reading in readings)


def _readings(tree: Tree, name: str) -> Iterator[Reading]:
    """The readings behind a fact: its own, or those that a computed one is made of."""
    for step in tree.steps.values():
        for reading in readings_of(step):
            if (reading.name or step.common.name) == name:
                yield reading
        if isinstance(step, Compute) and step.result == name:
            for other in step.texts:
                if other != name:
                    yield from _readings(tree, other)


def _words(readings: list[Reading]) -> str:
    return " or ".join(dict.fromkeys(reading.ask for reading in readings[:2]))
