"""The words of a band are what the technician reads off, what the report prints and what the customer hears.
They run with the numbers: "low" lies below "high", "nothing arrives" below "fed", a short below an open
circuit. Where they run the other way the tree may still take the right way on, and everybody is told the
opposite of what was read.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass
from itertools import combinations

from assistant.house.model import Vocabulary
from assistant.tree.check.points import ENERGIZED, across
from assistant.tree.check.rule import Faults
from assistant.tree.check.study import Study
from assistant.tree.model import Compute, Reading, Tree, readings_of

MEND = "Give the lower band the words for less (low, dead, shorted) and the upper one the words for more."


@dataclass(frozen=True)
class Scale:
    """Words for less, for what should be and for more of something. Where a band has words for less and for
    more, `less` counts, or `more` where it stands first; either counts before what should be."""

    less: re.Pattern[str]
    more: re.Pattern[str]
    right: re.Pattern[str] | None = None
    more_first: bool = False

    def rank(self, label: str) -> int | None:
        """-1 for less, 0 for what should be, 1 for more, None where the words do not say."""
        less, more = bool(self.less.search(label)), bool(self.more.search(label))
        if less and more:
            return 1 if self.more_first else -1
        if less or more:
            return more - less
        return 0 if self.right is not None and self.right.search(label) else None


def _any(words: str) -> re.Pattern[str]:
    return re.compile(rf"\b({words})\b", re.IGNORECASE)


AMOUNT = Scale(
    _any("below|low|lower|weak|weaker|little|smaller|less|cold|too cool|too slow|too small|falls"),
    re.compile(r"(?<!not )(?<!no )(?<!never )(?<!not too )(?<!moves no )(?<!any )\b(above|high|higher|strong"
               r"|stronger|over|too (much|long)|more|bigger|hot|hotter|warm|warmer|many times|up to speed"
               r"|rises)\b",
               re.IGNORECASE),
    _any("right|inside|in range|in time|within|supplied|what .* rated for|big enough"
         "|the wire carries|may carry|(on|at most|not above) (its|the) plate|as warm as"))
THERE = Scale(
    re.compile(r"\b(no|not|none|nothing|nobody|never|dead|missing|gone|empty|opened|opens|falls|fell|sags"
               r"|stopped|lets go|went|goes|ends|weak|low|breaks down|hardly|failed|badly|stood|let go|little"
               r"|pulled down)\b|(?<!it )(?<!driven )(?<!common is )\bopen\b", re.IGNORECASE),
    _any("live|fed|supplied|powered|arrives|arrived|passes|passed|sends|sent|there|here|held|hold|holds|hot|high"
         "|stays|calls|called|present|came|comes|charged|closed|driven|right|lifted|recovers|asks|proved|waits"
         "|takes|draws|runs|leaves|gives|stands before|floats|enough|plate|makes"))
PASSES = Scale(
    _any("shorted|grounded|closed|whole|touches|conducts|leaks|bridges|wet|low|breaks down"),
    _any("open|clear|not shorted|nothing across|dry|no leak|sound|poorly|rose|failing|too high|holds"),
    _any("a (winding|load)|an element|good enough|doubtful|damp|in range"), True)
DROPS = Scale(_any("closed|passes|tight"), _any("open|lost|loses|loose"), None, True)
CHOKES = Scale(_any("passes|within|carry|carries|pass|what .* rated for"),
               _any("chokes?|choked|too small|does not carry|too high|more than"), None, True)


def in_tree(study: Study, tree: Tree) -> Faults:
    """Bands whose words run against their numbers."""
    for step in tree.steps.values():
        whats = [one for _, one in step.page] if isinstance(step, Compute) else readings_of(step)
        for what in whats:
            scales = list(_scales(study.vocabulary, what))
            for low, high in combinations(what.bands, 2):
                ranks = [(scale.rank(low.label), scale.rank(high.label)) for scale in scales]
                if any(None not in (one, other) and one > other for one, other in ranks):
                    yield high.place, (f"'{low.label}' lies below '{high.label}', and its words say more; "
                                       "change the words about, or the limits")


def _scales(vocabulary: Vocabulary, what: Reading | Compute) -> Iterable[Scale]:
    """The scales on which a quantity's words lie."""
    if what.kind in ("resistance", "insulation"):
        return (PASSES,)
    if isinstance(what, Reading) and across(vocabulary, what):
        return (DROPS,)
    if what.kind == "pressure":
        return (AMOUNT, THERE, CHOKES)
    return (AMOUNT, THERE) if what.kind in ENERGIZED or what.kind == "dc_current" else (AMOUNT,)
