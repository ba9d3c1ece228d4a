"""The drawing puts its marks where `at:` says, and the page says in words where the leads go. When the two
differ, one technician follows the picture and another the text, and the same number means two things. So a
page that reads at a spot has the words that the house gives to that spot, and a reading that names another
spot of its page is not taken at one that it does not name.
"""

from __future__ import annotations

from assistant.house.model import Point, Vocabulary
from assistant.tree.check.points import ALONG, is_return
from assistant.tree.check.rule import Faults
from assistant.tree.check.said import one_of, text_of, unsaid
from assistant.tree.check.study import Study
from assistant.tree.model import Reading, Tree, readings_of

MEND = ("Say in the question or under how: where the lead, hose or probe goes, or mend at:; house.yaml gives "
        "each spot its words.")


def in_tree(study: Study, tree: Tree) -> Faults:
    """Readings taken at a spot that their page does not name, or at another than they name themselves."""
    for name, step in tree.steps.items():
        page = readings_of(step)
        for reading in page:
            text = text_of(step, reading)
            for point in reading.at:
                known = study.vocabulary.points.get(point)
                missing = unsaid(text, known.words) if known is not None else []
                if known is not None and missing:
                    yield reading.place, (f"'{name}' reads at '{point}' ({known.label}) and its page does "
                                          f"not say so; write {' and '.join(map(one_of, missing))} into it, "
                                          "or another at:")
                    continue
                other = _named(study.vocabulary, page, reading, known) if known is not None else None
                if other is not None:
                    yield reading.place, (f"'{name}' reads '{reading.ask}' at '{point}', which it does not "
                                          f"name, and names '{other}' of the same page; write that under "
                                          "at:, or say where this one is taken")


def _named(vocabulary: Vocabulary, page: tuple[Reading, ...], reading: Reading, point: Point) -> str | None:
    """Another spot of the page that a reading's own question names, where it does not name the spot at which
    it is taken. Between two spots it may name what lies on the way."""
    if not unsaid(reading.ask, point.words) or ALONG.search(reading.ask):
        return None
    for other in dict.fromkeys(spot for one in page if one is not reading for spot in one.at):
        known = vocabulary.points.get(other)
        if (known is not None and known.words and other not in reading.at and not is_return(vocabulary, other)
                and (known.circuit, known.of) == (point.circuit, point.of)
                and not unsaid(reading.ask, known.words)):
            return other
    return None
