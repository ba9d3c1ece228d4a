"""The drawing puts its marks where `at:` says, and the page says in words where the leads go. When the two
differ, one technician follows the picture and another the text, and the same number means two things. So a
page that reads at a spot has the words that the house gives to that spot.
"""

from __future__ import annotations

from assistant.tree.check.rule import Faults
from assistant.tree.check.said import one_of, text_of, unsaid
from assistant.tree.check.study import Study
from assistant.tree.model import Tree, readings_of

MEND = ("Say in the question or under how: where the lead, hose or probe goes, or mend at:; house.yaml gives "
        "each spot its words.")


def in_tree(study: Study, tree: Tree) -> Faults:
    """Readings taken at a spot that their page does not name."""
    for name, step in tree.steps.items():
        for reading in readings_of(step):
            text = text_of(step, reading)
            for point in reading.at:
                known = study.vocabulary.points.get(point)
                missing = unsaid(text, known.words) if known is not None else []
                if missing:
                    yield reading.place, (f"'{name}' reads at '{point}' ({known.label}) and its page does "
                                          f"not say so; write {' and '.join(map(one_of, missing))} into it, "
                                          "or another at:")
