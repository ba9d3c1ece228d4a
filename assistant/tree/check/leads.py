"""A number between two spots says which two. Where the page says hot, neutral, ground or C, one lead is on
such a spot, and the two leads are never both on the neutral: between two neutrals a dead furnace and a live
one read the same. What stands at a plug is read at that plug's own hot and neutral; from another
one's it says what the wire between them does. Two readings of one quantity at the same spots on one page are
told apart by their moment, not by their names alone.
"""

from __future__ import annotations

import re
from itertools import combinations

from assistant.house.model import Vocabulary
from assistant.tree.check.points import ALONG, VOLTS, is_ground, is_return
from assistant.tree.check.rule import Faults
from assistant.tree.check.study import Study
from assistant.tree.model import Reading, Tree, readings_of

MEND = "Write the spots under at: that the question names, or name in the question those that are read."

_HOT = re.compile(r"\b(hot|black)\b(?! (slot|enough|surface))", re.IGNORECASE)
_NEUTRAL = re.compile(r"\b(neutral|white)\b", re.IGNORECASE)
_GROUND = re.compile(r"\bto (the |its |bare |clean )*(ground|shell|cabinet|metal)\b", re.IGNORECASE)
_C = re.compile(r"\bto (the |its )*(\w+'s )?C\b")
_OWN = ("neutral", "common")
"""Last words of the spots that are one thing's own way back."""
_MOMENT = re.compile(r"\b(lowest|highest|before|after|at rest|in the trial|alone|all|one side|other side"
                     r"|again|once more|first|second|then)\b", re.IGNORECASE)


def in_tree(study: Study, tree: Tree) -> Faults:
    """Readings whose leads are not where their question says."""
    for name, step in tree.steps.items():
        for reading in readings_of(step):
            wrong = _wrong(study.vocabulary, reading)
            if wrong:
                yield reading.place, f"'{name}' reads '{reading.ask}' at {' and '.join(reading.at)}, {wrong}"
        for one, other in combinations(readings_of(step), 2):
            if _same_spots(one, other) and not all(_MOMENT.search(each.ask) for each in (one, other)):
                yield other.place, (f"'{name}' reads '{one.ask}' and '{other.ask}' at the same spots; write "
                                    "another at:, or say the moment of each")


def _same_spots(one: Reading, other: Reading) -> bool:
    """Whether two readings take the same quantity at the same spots, and none is a check of the meter."""
    same = (one.kind, set(one.at)) == (other.kind, set(other.at)) and bool(one.at)
    return same and not (one.known_live or other.known_live)


def _wrong(vocabulary: Vocabulary, reading: Reading) -> str | None:
    """How a reading's two spots go against its question."""
    if len(reading.at) != 2 or any(point not in vocabulary.points for point in reading.at):
        return None
    grounds = [is_ground(vocabulary, point) for point in reading.at]
    returns = [is_return(vocabulary, point) for point in reading.at]
    neutral = [back and not ground for back, ground in zip(returns, grounds, strict=True)]
    if all(neutral) and not ALONG.search(reading.ask):
        return "both where the current goes back; write the fed spot under at:"
    if reading.kind in VOLTS and not all(neutral) and _of_two_things(vocabulary, reading):
        return "the hot of one thing and the way back of another; write both of the same"
    if _GROUND.search(reading.ask) and not any(grounds):
        return "and neither is a ground; write one under at:"
    if _NEUTRAL.search(reading.ask) and not any(neutral):
        return "and neither is a neutral; write one under at:"
    if _C.search(reading.ask) and not any(returns):
        return "and neither is a common; write one under at:"
    if _HOT.search(reading.ask) and all(returns):
        return "and neither is hot; write one under at:"
    return None


def _of_two_things(vocabulary: Vocabulary, reading: Reading) -> bool:
    """Whether one lead is on a thing's own neutral and the other on the same circuit elsewhere."""
    one, other = reading.at
    circuits = [vocabulary.points[point].circuit for point in reading.at]
    if circuits[0] != circuits[1] or circuits[0] is None:
        return False
    (first, _, end), (second, _, last) = one.rpartition("."), other.rpartition(".")
    return first != second and (end in _OWN) != (last in _OWN)
