"""What a step tells the technician to do is what the trail records, and the other way round. The record is
what asks for the undoing before the visit is signed: a thermostat turned off, a lead lifted or a port opened
by words alone stays so when the van leaves, and one that is recorded and not said was never done.
"""

from __future__ import annotations

from assistant.house.model import Act
from assistant.tree.check.rule import Faults
from assistant.tree.check.said import one_of, unsaid
from assistant.tree.check.study import Study
from assistant.tree.model import Do, Tree

MEND = ("Write act: with the act that the step's own words say, or say in the step what its act has done; "
        "house.yaml gives each act its words.")

_SMALL = frozenset(("a", "an", "and", "as", "at", "back", "by", "for", "from", "has", "have", "in", "into",
                    "is", "it", "its", "of", "off", "on", "once", "one", "or", "out", "over", "put", "set",
                    "than", "that", "the", "then", "they", "this", "to", "up", "was", "with"))


def in_tree(study: Study, tree: Tree) -> Faults:
    """Steps whose act and words do not go together."""
    acts = study.vocabulary.acts.values()
    owed = [act for act in acts if act.words]
    for name, step in tree.steps.items():
        if not isinstance(step, Do):
            continue
        act = study.vocabulary.acts.get(step.act or "")
        if act is not None:
            yield from _unsaid(name, step, act)
            continue
        for other in owed if step.act is None else ():
            if not unsaid(step.ask, other.words):
                yield step.common.place, (f"'{name}' says '{step.ask}' and records no act; write act: "
                                          f"{other.name}, which switches something, opens it or puts it back")


def _unsaid(name: str, step: Do, act: Act) -> Faults:
    missing = unsaid(step.ask, act.words) if act.words else _hardly_said(step.ask, act.say)
    if missing:
        yield step.common.place, (f"'{name}' records '{act.name}' and does not say it ('{step.ask}'); write "
                                  f"{' and '.join(map(one_of, missing))} into it, or another act:")


def _hardly_said(text: str, say: str) -> list[str]:
    """Of an act that has no words of its own: those of its sentence that a step lacks, where it has less than
    half of them."""
    words = [word for word in dict.fromkeys(say.lower().replace(",", " ").replace("'s", "").split())
             if word not in _SMALL]
    missing = unsaid(text, words)
    return missing if 2 * len(missing) > len(words) else []
