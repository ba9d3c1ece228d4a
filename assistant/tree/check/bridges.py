"""A jumper, a bridged safety or a held door switch is a state of the house and not a remark: it goes on the
list of what must be undone, and nobody signs while it is there. So a step that bridges something does it by
an act that has its undo.
"""

from __future__ import annotations

import re

from assistant.tree.check.rule import Faults
from assistant.tree.check.study import Study
from assistant.tree.model import Do, Tree

MEND = "Do it by an act of house.yaml that has an undo: act, and put a caution on the step."

_BRIDGES = re.compile(
    r"\b(jumper|bridge|bypass|short across|hold|tape|wedge)\b[^.;:]*"
    r"\b(switch|limit|rollout|safety|fuse|breaker|terminals?|R and W|R to W)\b", re.IGNORECASE
)
_PUT_BACK = re.compile(
    r"\b(take|remove|release|pull)( the| your| any)? (jumper|bridge|holder)\b"
    r"|\b(jumper|bridge|holder)\b[^.]*\b(off|out)\b", re.IGNORECASE
)


def in_house(study: Study) -> Faults:
    """Acts that bridge something and name no undo."""
    for act in study.vocabulary.acts.values():
        if act.undo is None and _BRIDGES.search(act.say) and not _PUT_BACK.search(act.say):
            yield act.place, (f"'{act.name}' bridges or holds something in and names no undo; write undo: "
                              "and the act that takes it out again")


def in_tree(study: Study, tree: Tree) -> Faults:
    """Steps that bridge something without an act that must be undone."""
    for name, step in tree.steps.items():
        if not isinstance(step, Do) or not _BRIDGES.search(step.ask) or _PUT_BACK.search(step.ask):
            continue
        act = study.vocabulary.acts.get(step.act or "")
        if act is None or act.undo is None:
            yield step.common.place, (f"'{name}' bridges or holds something in, and nothing says that it "
                                      "must be undone; write act: with an act of house.yaml that has an "
                                      "undo")
