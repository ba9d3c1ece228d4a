"""A repair is proved by a reading, and by one that bears on what was found: taken at one of the spots that
condemned the part, computed by the same formula, or showing the condition that a safety guards. A proof that
reads something else proves something else.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from functools import partial

from assistant.tree.check.points import is_return
from assistant.tree.check.rule import Faults
from assistant.tree.check.study import Study
from assistant.tree.model import Call, Compute, Finding, Reading, Tree

MEND = "Name a proof tree that reads, after the repair, one of the spots or values that the finding shows."

Claim = tuple[str, str]


def in_tree(study: Study, tree: Tree) -> Faults:
    """Findings without a proof that bears on what they show."""
    for name, step in tree.steps.items():
        if not isinstance(step, Finding) or not step.fault:
            continue
        if step.proof is None:
            yield step.common.place, (f"'{name}' says what failed and not how the repair is proved; write "
                                      "proof: and a tree")
            continue
        proof = study.trees.get(step.proof)
        if proof is None or proof.purpose != "proof" or not step.shows:
            continue
        claims = set(_claims(study, tree, step))
        proved = study.keep(f"proved by {step.proof}", partial(_proved, study, step.proof))
        if claims and claims.isdisjoint(proved):
            spots = ", ".join(sorted({words for _, words in claims}))
            yield step.common.place, (f"the proof '{step.proof}' reads nothing that '{name}' rests on "
                                      f"({spots}); read one of these again after the repair")


def _claims(study: Study, tree: Tree, finding: Finding) -> Iterator[Claim]:
    named = study.named[tree.name]
    for shown in finding.shows:
        for _, what in named.get(shown, ()):
            yield from _of(study, tree, what)
    part = study.vocabulary.parts.get(finding.condemns or "")
    if part is not None and part.guards is not None:
        for name in study.vocabulary.conditions.get(part.guards, ()):
            yield "name", name


def _proved(study: Study, proof: str) -> set[Claim]:
    claims: set[Claim] = set()
    for name in called_from(study.trees, [proof]):
        tree = study.trees[name]
        for reading, takers in study.named[name].items():
            claims.add(("name", reading))
            for _, what in takers:
                claims.update(_of(study, tree, what))
    return claims


def _of(study: Study, tree: Tree, what: Reading | Compute) -> Iterator[Claim]:
    """What a reading or computed value bears on: its spots, its formula and the spots of what goes into
    it."""
    if isinstance(what, Reading):
        for point in what.at:
            if not is_return(study.vocabulary, point):
                yield "point", point
        return
    yield "formula", what.function
    named = study.named[tree.name]
    for argument in what.texts:
        for _, taken in named.get(argument, ()):
            if isinstance(taken, Reading):
                yield from _of(study, tree, taken)


def called_from(trees: dict[str, Tree], names: Iterable[str]) -> list[str]:
    """These trees and all they call, each once."""
    found = list(dict.fromkeys(name for name in names if name in trees))
    for name in found:
        for step in trees[name].steps.values():
            if isinstance(step, Call) and step.tree in trees and step.tree not in found:
                found.append(step.tree)
    return found
